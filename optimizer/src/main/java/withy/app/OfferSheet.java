package withy.app;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a customer is handed: builds, prices, dates. It holds no cost, margin, supplier or stock, so that no paper made of it can show them. Its
 * fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param customer who it is for, or empty
 * @param date day it is made
 * @param validUntil last day it holds
 * @param depositPercent of the price, paid before parts are ordered
 * @param builds at most three, best first
 * @param cautions what to mind at the water
 */
public record OfferSheet(
        int schema,
        String customer,
        LocalDate date,
        LocalDate validUntil,
        int depositPercent,
        List<Choice> builds,
        List<String> cautions) {
    public OfferSheet {
        builds = List.copyOf(builds);
        cautions = List.copyOf(cautions);
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
     * @param ready day it can be ready
     * @param waitDays days until the last part arrives; 0 where nothing is waited for
     * @param waitFor that part in plain words, or null
     * @param parts what it is made of, by the customer's eye
     * @param summaries against each other build: what is gained, what is given up
     * @param outline what its picture needs
     */
    public record Choice(
            int rank,
            String name,
            long priceMinor,
            long taxMinor,
            long depositMinor,
            String currency,
            LocalDate ready,
            int waitDays,
            @Nullable String waitFor,
            double weightG,
            double finishedLengthMm,
            double packedLengthMm,
            double balanceFromReelFootMm,
            List<Seen> parts,
            List<BuildSheet.Summary> summaries,
            MachineSheet.Outline outline) {
        public Choice {
            parts = List.copyOf(parts);
            summaries = List.copyOf(summaries);
        }
    }

    /** A part by the customer's eye. */
    public record Seen(String station, String name) {}

    /**
     * What the builder promises.
     *
     * @param customer who it is for, or empty
     * @param date day it is made
     * @param validDays days it holds
     * @param depositPercent of the price, 0 to 100
     * @param benchDays days of work and curing once all parts are there
     */
    public record Terms(String customer, LocalDate date, int validDays, int depositPercent, int benchDays) {
        public Terms {
            if (validDays < 0 || benchDays < 0 || depositPercent < 0 || depositPercent > 100) {
                throw new IllegalArgumentException("terms out of range");
            }
        }
    }
}
