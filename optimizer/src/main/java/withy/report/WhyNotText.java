package withy.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.Reasons.BuildLine;
import withy.app.Reasons.ConflictLine;
import withy.app.Reasons.FlipLine;
import withy.app.Reasons.ImpossibleLines;
import withy.app.Reasons.RepairLine;
import withy.app.WhyNotAnswer;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** The answer of {@code whynot} for a terminal of 80 columns. */
public final class WhyNotText {
    /** Rules besides the first that are told one by one. */
    private static final int MOST_ALSO = 3;

    private final Page page = new Page();
    private final QuantityText units;
    private final Currency currency;

    private WhyNotText(QuantityText units, Currency currency) {
        this.units = units;
        this.currency = currency;
    }

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(WhyNotAnswer answer, QuantityText units, Currency currency) {
        WhyNotText text = new WhyNotText(units, currency);
        text.write(answer);
        return text.page.toString();
    }

    private void write(WhyNotAnswer answer) {
        page.paragraph("", answer.brief().path("name").asText());
        page.gap().paragraph("", answer.sentence());
        also(answer);
        flips(answer);
        beside(answer);
        if (answer.impossible() != null) {
            impossible(page, answer.impossible(), units);
        }
        if (answer.interrupted()) {
            page.gap().paragraph("", Phrases.of("text.whynot.open"));
        }
    }

    /** Further rules broken: a few of them, then how many more. */
    private void also(WhyNotAnswer answer) {
        List<String> others = besides(answer);
        boolean all = others.size() <= MOST_ALSO + 1;
        List<String> told = all ? others : others.subList(0, MOST_ALSO);
        told.forEach(also -> page.paragraph("", also));
        if (!all) {
            int rest = others.size() - MOST_ALSO;
            page.paragraph("", Phrases.counted(answer.parts().size(), "text.whynot.others", rest));
        }
    }

    /** What stands against the parts besides what is told first, a sentence each. */
    public static List<String> besides(WhyNotAnswer answer) {
        return answer.breaks().stream()
                .skip(1)
                .map(broken -> Phrases.of("text.whynot.also", Phrases.clause(broken.sentence())))
                .toList();
    }

    private void flips(WhyNotAnswer answer) {
        List<FlipLine> flips = answer.flips();
        if (flips.isEmpty()) {
            return;
        }
        if (flips.stream().allMatch(flip -> flip.wins() == null)) {
            flips.forEach(flip -> page.gap().paragraph("", Phrases.sentence(flip.sentence()) + "."));
            return;
        }
        String heading = answer.breaks().isEmpty() ? "text.whynot.flips" : "text.whynot.lets";
        page.heading(Phrases.counted(answer.parts().size(), heading));
        flips.forEach(flip -> page.paragraph("· ", Phrases.sentence(flip.sentence()) + "."));
    }

    private void beside(WhyNotAnswer answer) {
        BuildLine first = answer.first();
        BuildLine opponent = answer.opponent();
        if (first == null || opponent == null || answer.tradeOffs().isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.whynot.beside"));
        Page.Column[] columns = {new Page.Column(10, false), new Page.Column(69, false)};
        page.row(columns, Phrases.of("text.whynot.best"), build(first));
        page.row(columns, Phrases.counted(answer.parts().size(), "text.whynot.with"), build(opponent));
        BuildLine better = answer.better();
        if (better != null && !better.build().equals(first.build())) {
            page.row(columns, Phrases.of("text.whynot.better"), build(better));
        }
        differences(answer.tradeOffs()).forEach(line -> page.paragraph("· ", line));
        if (first.proven() && opponent.proven()) {
            page.gap().paragraph("", Phrases.counted(answer.parts().size(), "text.whynot.proof"));
        }
    }

    /** What one build has more or less than another, then in one line what is the same. */
    public static List<String> differences(List<TradeOffLine> tradeOffs) {
        List<String> lines = new ArrayList<>();
        List<String> same = new ArrayList<>();
        for (TradeOffLine line : tradeOffs) {
            if (line.sentence().equals(Phrases.of("tradeOff." + line.objective() + ".same"))) {
                same.add(Phrases.of("objective." + line.objective()));
            } else {
                lines.add(line.sentence());
            }
        }
        if (!same.isEmpty()) {
            lines.add(Phrases.of("text.whynot.same", Phrases.list(same)));
        }
        return lines;
    }

    private String build(BuildLine build) {
        return figures(build, units, currency) + " · " + build.name();
    }

    static String figures(BuildLine build, QuantityText units, Currency currency) {
        return Money.print(build.priceMinor(), currency) + " · " + units.mass(build.weightG());
    }

    /** Why nothing can be built, and what would do. */
    static void impossible(Page page, ImpossibleLines lines, QuantityText units) {
        Currency currency = Currency.getInstance(lines.currency());
        page.heading(Phrases.of("text.conflict"));
        if (!lines.wishesAreToBlame()) {
            page.paragraph("", Phrases.of("text.conflict.nothing"));
            return;
        }
        for (ConflictLine conflict : lines.conflicts()) {
            page.paragraph("· ", conflict.sentence());
            nearest(page, conflict);
        }
        if (!lines.allConflicts()) {
            page.paragraph("", Phrases.of("text.conflict.more"));
        }
        page.heading(Phrases.of("text.repairs"));
        for (RepairLine repair : lines.repairs()) {
            BuildLine build = repair.build();
            String price = Money.print(build.priceMinor(), currency);
            String weight = units.mass(build.weightG());
            boolean priced = repair.sentence().contains(price);
            page.paragraph(
                    "· ",
                    priced
                            ? Phrases.of("text.repair.priced", repair.sentence(), weight)
                            : Phrases.of("text.repair", repair.sentence(), price, weight));
        }
        if (lines.repairs().isEmpty()) {
            page.paragraph("", Phrases.of("text.repairs.none"));
        }
    }

    private static void nearest(Page page, ConflictLine conflict) {
        if (conflict.breaks() != null) {
            String clause = Phrases.clause(conflict.breaks().sentence());
            page.paragraph("  ", Phrases.of("text.conflict.nearest", clause));
        }
    }
}
