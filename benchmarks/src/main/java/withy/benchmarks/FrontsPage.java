package withy.benchmarks;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.Fronts.Case;

/** The page's part on how much of the exact front the three picks cover. */
record FrontsPage(List<Case> cases) {
    /** The bar: share of the best triple's volume. */
    private static final double BAR = 0.98;

    FrontsPage {
        cases = List.copyOf(cases);
    }

    String text() {
        StringBuilder text = new StringBuilder("## The three picks against the exact front\n\n");
        text.append("Excerpts of the curated catalogue of at most ")
                .append(String.format(Locale.ROOT, "%,d", Fronts.BUILDS))
                .append(
                        " builds with the reel where rank 1 has it (parts of the best builds under each objective alone and without what is seen of rank 1), every build enumerated and judged. Volume in steps of the six objectives and the nice wishes missed, up to one step beyond the worst of the front within the")
                .append(
                        " offer's regret (12 % of rank 1's score). Best triple: rank 1 and the two of that front that add most volume; it need not look")
                .append(
                        " different nor beat rank 1 by a noticeable step, which the offer's picks must; the second share compares with builds that look different. Bar: ")
                .append(BAR)
                .append(".\n\n");
        if (cases.isEmpty()) {
            return text.append("Not run: no time was left.\n\n").toString();
        }
        List<Double> shares = cases.stream().map(Case::share).toList();
        long met = shares.stream().filter(share -> share >= BAR).count();
        List<Double> different = cases.stream().map(Case::shareOfDifferent).toList();
        text.append("Of builds that look different: ")
                .append(different.stream().filter(share -> share >= BAR).count())
                .append(" of ")
                .append(cases.size())
                .append(" within the bar, median share ")
                .append(Table.number(Spread.of(different).medianMs()))
                .append(". Of any builds: ")
                .append(met)
                .append(" of ")
                .append(cases.size())
                .append("; median share ")
                .append(Table.number(Spread.of(shares).medianMs()))
                .append(", least ")
                .append(Table.number(Spread.of(shares).leastMs()))
                .append(".\n\n");
        Table table = new Table(
                "scenario",
                "parts",
                "builds",
                "legal builds",
                "exact front",
                "within the regret",
                "looks",
                "offered",
                "share of the best triple",
                "share of the best that looks different",
                "share of the whole front",
                "NSGA-II, " + Fronts.NSGA_SECONDS + " s, share of the whole front");
        for (Case one : cases) {
            table.row(
                    one.scenario(),
                    one.parts() + "",
                    one.builds() + "",
                    one.legal() + "",
                    one.front() + "",
                    one.within() + "",
                    one.looks() + "",
                    one.picks() + "",
                    Table.number(one.share()),
                    Table.number(one.shareOfDifferent()),
                    told(one.wholeShare()),
                    told(one.nsgaShare()));
        }
        return text.append(table.text()).toString();
    }

    private static String told(@Nullable Double share) {
        return share == null ? "front too large" : Table.number(share);
    }
}
