package withy.app;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;

/**
 * What a customer is handed: builds, prices, dates. It holds no cost, margin, supplier or stock, so that no paper made of it can show them. It is
 * kept with a job's offer and inside the file that is sent, and prints the same ever after.
 *
 * @param schema format of the answer
 * @param customer who it is for, or empty
 * @param name what the rod is for, as the brief calls it, or empty
 * @param date day it is made, ISO 8601
 * @param validUntil last day it holds, likewise
 * @param depositPercent of the price, paid before parts are ordered
 * @param builds at most three, best first
 * @param cautions what to mind at the water
 */
public record OfferSheet(
        int schema,
        String customer,
        String name,
        String date,
        String validUntil,
        int depositPercent,
        List<Choice> builds,
        List<String> cautions) {
    public OfferSheet {
        builds = List.copyOf(builds);
        cautions = List.copyOf(cautions);
    }

    /**
     * The build of a number.
     *
     * @throws IllegalArgumentException where there is none
     */
    public Choice build(int rank) {
        return builds.stream()
                .filter(choice -> choice.rank() == rank)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no build " + rank));
    }

    /**
     * One build to choose.
     *
     * @param rank number on the offer
     * @param name a few words to call it by
     * @param priceMinor what the customer pays, tax included, minor units
     * @param taxMinor tax in it
     * @param depositMinor paid first, rounded up
     * @param currency ISO 4217 code
     * @param ready day it can be ready, ISO 8601
     * @param waitDays days until the last part arrives; 0 where nothing is waited for
     * @param waitFor that part in plain words, or null
     * @param parts what it is made of, by the customer's eye
     * @param against each other build: what is gained, what is given up
     * @param outline what its picture needs
     * @param colours {@code #rrggbb} by station, as far as the lists tell them
     */
    public record Choice(
            int rank,
            String name,
            long priceMinor,
            long taxMinor,
            long depositMinor,
            String currency,
            String ready,
            int waitDays,
            @Nullable String waitFor,
            double weightG,
            double finishedLengthMm,
            double packedLengthMm,
            double balanceFromReelFootMm,
            List<Seen> parts,
            List<Against> against,
            MachineSheet.Outline outline,
            Map<String, String> colours) {
        public Choice {
            parts = List.copyOf(parts);
            against = List.copyOf(against);
            colours = Collections.unmodifiableMap(new TreeMap<>(colours));
            colours.values().forEach(colour -> {
                if (!colour.matches("#[0-9a-f]{6}")) {
                    throw new IllegalArgumentException("no colour: " + colour);
                }
            });
        }
    }

    /** What a customer would notice against another build; empty where nothing. */
    public record Against(int rank, List<Difference> differences) {
        public Against {
            differences = List.copyOf(differences);
        }
    }

    /**
     * One thing a customer would notice.
     *
     * @param objective what it is about
     * @param better true where this build has the better of it
     * @param size how much: g, minor units, classes; of the swing weight percent of the other's; of balance and style 0
     */
    public record Difference(Objective objective, boolean better, double size) {}

    /** A part by the customer's eye. */
    public record Seen(String station, String name) {}

    /**
     * What the builder promises.
     *
     * @param customer who it is for, or empty
     * @param name what the rod is for, as the brief calls it, or empty
     * @param date day it is made
     * @param validDays days it holds
     * @param depositPercent of the price, 0 to 100
     * @param benchDays days of work and curing once all parts are there
     */
    public record Terms(String customer, LocalDate date, int validDays, int depositPercent, int benchDays) {
        /** ASSUMED: days an offer holds. */
        public static final int VALID_DAYS = 14;

        /** ASSUMED: deposit, percent of the price. */
        public static final int DEPOSIT_PERCENT = 40;

        /** ASSUMED: days of work and curing. */
        public static final int BENCH_DAYS = 14;

        public Terms {
            if (validDays < 0 || benchDays < 0 || depositPercent < 0 || depositPercent > 100) {
                throw new IllegalArgumentException("terms out of range");
            }
        }
    }
}
