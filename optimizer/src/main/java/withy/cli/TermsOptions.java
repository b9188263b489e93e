package withy.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withy.app.OfferSheet.Terms;
import withy.explain.Phrases;

/** What the builder promises with an offer. What he does not tell is assumed, and told so. */
final class TermsOptions {
    private static final int MOST_DAYS = 730;

    @Option(names = "--customer", paramLabel = "NAME", description = "Who the offer is for.")
    private @Nullable String customer;

    @Option(
            names = "--valid",
            paramLabel = "DAYS",
            description = "Days the offer holds; assumed are " + Terms.VALID_DAYS + ".")
    private @Nullable Integer validDays;

    @Option(
            names = "--deposit",
            paramLabel = "PERCENT",
            description = "Of the price, paid before parts are ordered; assumed are " + Terms.DEPOSIT_PERCENT + ".")
    private @Nullable Integer deposit;

    @Option(
            names = "--bench-days",
            paramLabel = "DAYS",
            description = "Days of work and curing once all parts are there; assumed are " + Terms.BENCH_DAYS + ".")
    private @Nullable Integer benchDays;

    /** True where any was told. */
    boolean told() {
        return customer != null || validDays != null || deposit != null || benchDays != null;
    }

    /** The terms from a day on. */
    Terms from(LocalDate day) {
        return new Terms(
                customer == null ? "" : customer,
                day,
                within("--valid", validDays, Terms.VALID_DAYS, MOST_DAYS, "days"),
                within("--deposit", deposit, Terms.DEPOSIT_PERCENT, 100, "percent"),
                within("--bench-days", benchDays, Terms.BENCH_DAYS, MOST_DAYS, "days"));
    }

    /** What was not told, one line each. */
    List<String> assumed() {
        List<String> lines = new ArrayList<>();
        if (validDays == null) {
            lines.add(Phrases.of("paper.assumed.valid", Terms.VALID_DAYS));
        }
        if (deposit == null) {
            lines.add(Phrases.of("paper.assumed.deposit", Terms.DEPOSIT_PERCENT));
        }
        if (benchDays == null) {
            lines.add(Phrases.of("paper.assumed.bench", Terms.BENCH_DAYS));
        }
        return lines;
    }

    private static int within(String option, @Nullable Integer told, int usual, int most, String unit) {
        if (told == null) {
            return usual;
        }
        if (told < 0 || told > most) {
            throw new Stop(
                    Exit.USAGE,
                    option + " " + told + ": allowed is 0 to " + most + " " + unit + ".",
                    "Maybe a digit too many was typed.");
        }
        return told;
    }
}
