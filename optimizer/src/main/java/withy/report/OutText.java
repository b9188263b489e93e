package withy.report;

import java.util.Currency;
import org.jspecify.annotations.Nullable;
import withy.app.OutAnswer;
import withy.app.OutAnswer.JobLadder;
import withy.app.OutAnswer.RungLine;
import withy.app.OutAnswer.Swap;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** The answer of {@code out} for a terminal of 80 columns. */
public final class OutText {
    private OutText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(OutAnswer answer, QuantityText units) {
        Page page = new Page();
        Currency currency = Currency.getInstance(answer.currency());
        OutAnswer.Applied applied = answer.applied();
        if (answer.jobs().isEmpty()) {
            page.paragraph("", Phrases.of("text.out.none", name(answer.name())));
        }
        for (JobLadder job : answer.jobs()) {
            page.paragraph("", Phrases.of("text.job.title", job.job(), job.name()));
            String wanted = job.wantedBy();
            page.paragraph(
                    "",
                    Phrases.of(
                                    "text.out.agreed",
                                    units.mass(job.agreed().weightG()),
                                    units.partLength(Math.rint(job.agreed().balanceMm())),
                                    Money.print(job.agreed().priceMinor(), currency))
                            + (wanted == null ? "" : ", " + Phrases.of("text.job.wanted", wanted)));
            for (RungLine rung : job.rungs()) {
                rung(page, rung, units, currency);
            }
            if (job.rungs().isEmpty()) {
                page.gap().paragraph("", Phrases.of("text.out.noRung"));
            }
            if (answer.part() != null) {
                waiting(page, job);
            }
            page.gap();
        }
        if (applied != null) {
            page.paragraph("", Phrases.of("text.out.applied", applied.rung(), applied.job()));
        } else if (!answer.jobs().isEmpty()) {
            page.paragraph("", Phrases.of("text.out.looked"));
        }
        return page.toString();
    }

    private static void rung(Page page, RungLine rung, QuantityText units, Currency currency) {
        page.gap().paragraph(rung.rung() + "  ", Phrases.of("text.out.changes." + rung.changes()));
        for (Swap swap : rung.swaps()) {
            page.paragraph(
                    "   · ",
                    Phrases.of(
                            "text.out.swap",
                            Phrases.stations(
                                    swap.stations().get(0),
                                    swap.stations().get(swap.stations().size() - 1)),
                            name(swap.fromName()),
                            name(swap.toName()),
                            swap.why()));
        }
        page.paragraph(
                "   ",
                Phrases.of(
                        "text.out.then",
                        units.mass(rung.standing().weightG()),
                        (rung.weightG() >= 0 ? "+" : "-")
                                + units.massBetween(
                                        rung.standing().weightG(),
                                        rung.standing().weightG() - rung.weightG()),
                        units.partLength(Math.rint(rung.standing().balanceMm())),
                        Money.print(rung.standing().priceMinor(), currency),
                        (rung.priceMinor() >= 0 ? "+" : "") + Money.print(rung.priceMinor(), currency)));
        String ready = rung.ready();
        page.paragraph(
                "   ",
                ready == null
                        ? Phrases.of("text.out.never")
                        : Phrases.of("text.out.ready", ready) + WaitWords.late(rung.daysLate()));
        if (!rung.proven()) {
            page.paragraph("   ", Phrases.of("text.out.unproven"));
        }
    }

    private static void waiting(Page page, JobLadder job) {
        page.gap().paragraph("", WaitWords.besides(job.waiting()));
    }

    private static String name(@Nullable String name) {
        return name == null ? Phrases.of("text.out.nothing") : name;
    }
}
