package withy.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import withy.app.OutAnswer.Standing;
import withy.app.PlanAnswer;
import withy.app.PlanAnswer.JobLine;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** The answer of {@code plan} for a terminal of 80 columns. */
public final class PlanText {
    private static final Page.Column[] ORDERS = {
        new Page.Column(42, false), new Page.Column(6, true), new Page.Column(14, true), new Page.Column(15, false)
    };

    private PlanText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(PlanAnswer answer, QuantityText units) {
        Page page = new Page();
        Currency currency = Currency.getInstance(answer.currency());
        if (answer.jobs().isEmpty()) {
            page.paragraph("", Phrases.of("text.plan.none"));
            return page.toString();
        }
        for (JobLine job : answer.jobs()) {
            job(page, job, units, currency);
        }
        page.gap();
        summary(answer).forEach(line -> page.paragraph("", line));
        for (PlanAnswer.SupplierList list : answer.shopping()) {
            String supplier = list.supplier().isEmpty() ? Phrases.of("text.plan.anyone") : list.supplier();
            page.heading(Phrases.of("text.plan.order", supplier, Money.print(list.totalMinor(), currency)));
            for (PlanAnswer.OrderLine line : list.lines()) {
                String by = line.orderBy();
                page.row(
                        ORDERS,
                        line.name(),
                        Integer.toString(line.pieces()),
                        Money.print(line.priceMinor(), currency),
                        by == null ? "" : Phrases.of("text.plan.by", by));
                page.paragraph("    ", line.part());
            }
        }
        return page.toString();
    }

    private static void job(Page page, JobLine job, QuantityText units, Currency currency) {
        String wanted = job.wantedBy();
        page.paragraph(
                String.format(Locale.ROOT, "%3d  ", job.job()),
                job.name() + (wanted == null ? "" : ", " + Phrases.of("text.job.wanted", wanted)));
        if (!job.glued().isEmpty()) {
            page.paragraph(
                    "     ",
                    Phrases.of(
                            "text.plan.glued",
                            Phrases.list(
                                    job.glued().stream().map(Phrases::station).toList())));
        }
        Standing rod = job.rod();
        if (rod == null) {
            page.paragraph("     ", Phrases.of("text.plan.unserved"));
            return;
        }
        page.paragraph(
                "     ",
                Phrases.of(
                                "text.plan.rod",
                                units.mass(rod.weightG()),
                                units.partLength(Math.rint(rod.balanceMm())),
                                Money.print(rod.priceMinor(), currency))
                        + (job.kept() ? " " + Phrases.of("text.plan.kept") : ""));
        job.waitsFor().forEach(one -> page.paragraph("     ", one.sentence()));
        if (job.oneByOne() == null) {
            page.paragraph("     ", Phrases.of("text.plan.elseNone"));
        } else {
            String against = against(job, String.join(", ", job.differs()));
            if (!against.isEmpty()) {
                page.paragraph("     ", against);
            }
        }
    }

    /** What a job gains or gives way against taking the jobs one by one, with these parts; empty where that would read as nought. */
    public static String against(JobLine job, String parts) {
        String key = job.gain() >= 0 ? "text.plan.gains" : "text.plan.givesWay";
        return parts.isEmpty() || !shows(job.gain()) ? "" : Phrases.of(key, number(Math.abs(job.gain())), parts);
    }

    /** How good the plan is, line by line. */
    public static List<String> summary(PlanAnswer answer) {
        List<String> lines = new ArrayList<>();
        if (answer.unserved() > 0) {
            lines.add(Phrases.of("text.plan.left", answer.unserved()));
        }
        int more = answer.unservedOneByOne() - answer.unserved();
        if (more > 0) {
            lines.add(Phrases.of("text.plan.more", more));
        } else if (answer.gain() > 0 && shows(answer.gain())) {
            lines.add(Phrases.of("text.plan.gain", number(answer.gain())));
        } else if (answer.jobs().size() > 1) {
            lines.add(Phrases.of("text.plan.same"));
        }
        Double gap = answer.gap();
        if (answer.proven()) {
            lines.add(Phrases.of("text.plan.proven"));
        } else if (answer.unservedAtLeast() < answer.unserved()) {
            int fewer = answer.unserved() - answer.unservedAtLeast();
            lines.add(fewer == 1 ? Phrases.of("text.plan.fewerOne") : Phrases.of("text.plan.fewer", fewer));
        } else {
            lines.add(gap == null ? Phrases.of("text.plan.noBound") : Phrases.of("text.plan.gap", number(gap)));
        }
        return lines;
    }

    /** False for what would read as nought. */
    private static boolean shows(double steps) {
        return !number(Math.abs(steps)).equals(number(0));
    }

    private static String number(double steps) {
        return String.format(Locale.ROOT, "%.2f", steps);
    }
}
