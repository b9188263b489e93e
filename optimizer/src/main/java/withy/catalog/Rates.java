package withy.catalog;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The shop's rates and habits, from {@code rates.json}.
 *
 * @param currency ISO 4217 code of every price in the catalogue
 * @param taxPercent tax on the customer's price, %
 * @param marginPercent added to parts, consumables and labour before tax, %
 * @param hourlyRateMinor labour per hour, minor units
 * @param labourDiscountPercent taken off all labour (a child's rod, say), %; usually 0
 * @param labourMinutes minutes by operation; each operation has an entry
 * @param sundriesMinor sandpaper, tape, cups, brushes, alcohol per rod, minor units
 * @param houseFinish id of the finish used unless a brief insists on another
 * @param houseAdhesive id of the adhesive used likewise
 * @param threadLetters thread size letters the shop wraps each rod type with
 * @param finishFilmMm thickness of cured finish over a wrap, mm, both coats together
 * @param adhesiveFilmMm thickness of a glue line, mm
 * @param finishMixMinMl smallest reliable mix of one coat, ml
 * @param adhesiveMixMl adhesive mixed for one rod, ml
 * @param tapeDensityGMm3 density of masking-tape rings, g/mm³
 * @param houseToleranceG ± of one catalogue weight by kind where the file states none, g per 100 g (percent)
 * @param workmanshipToleranceG ± of thread, finish and glue together, g
 * @param steps least difference worth noticing, defaults of the brief
 * @param usualPriceMinor usual price of a rod of the type, where a brief has no budget, minor units
 */
public record Rates(
        String currency,
        double taxPercent,
        double marginPercent,
        long hourlyRateMinor,
        double labourDiscountPercent,
        Map<Operation, Double> labourMinutes,
        long sundriesMinor,
        String houseFinish,
        String houseAdhesive,
        Map<RodType, List<String>> threadLetters,
        double finishFilmMm,
        double adhesiveFilmMm,
        double finishMixMinMl,
        double adhesiveMixMl,
        double tapeDensityGMm3,
        Map<PartKind, Double> houseToleranceG,
        double workmanshipToleranceG,
        Steps steps,
        Map<RodType, Long> usualPriceMinor) {

    public Rates {
        labourMinutes = Collections.unmodifiableMap(new EnumMap<>(labourMinutes));
        threadLetters = Collections.unmodifiableMap(new TreeMap<>(threadLetters));
        houseToleranceG = Collections.unmodifiableMap(new TreeMap<>(houseToleranceG));
        usualPriceMinor = Collections.unmodifiableMap(new TreeMap<>(usualPriceMinor));
    }

    /** True where the shop takes a part without being asked: a blank sold for the type of rod, a thread of its letters, the house's finish and adhesive. */
    public boolean usual(Part part, RodType type) {
        return switch (part.kind()) {
            case BLANK -> ((Blank) part).rodTypes().contains(type);
            case THREAD -> threadLetters.getOrDefault(type, List.of()).contains(((WrapThread) part).letter());
            case FINISH -> part.id().equals(houseFinish);
            case ADHESIVE -> part.id().equals(houseAdhesive);
            default -> true;
        };
    }

    /** The same with another ± of thread, finish and glue. */
    public Rates withWorkmanshipTolerance(double toleranceG) {
        return new Rates(
                currency,
                taxPercent,
                marginPercent,
                hourlyRateMinor,
                labourDiscountPercent,
                labourMinutes,
                sundriesMinor,
                houseFinish,
                houseAdhesive,
                threadLetters,
                finishFilmMm,
                adhesiveFilmMm,
                finishMixMinMl,
                adhesiveMixMl,
                tapeDensityGMm3,
                houseToleranceG,
                toleranceG,
                steps,
                usualPriceMinor);
    }

    /**
     * Steps of the six objectives: the least difference worth noticing.
     *
     * @param weightG g
     * @param balanceNmm N·mm
     * @param swingWeightKgM2 kg·m²
     * @param pricePercent % of the budget, or of the usual price
     * @param stylePoints points of 100
     * @param durabilityClasses classes
     */
    public record Steps(
            double weightG,
            double balanceNmm,
            double swingWeightKgM2,
            double pricePercent,
            double stylePoints,
            double durabilityClasses) {
        /** ASSUMED defaults of the project: 3 g, 15 N·mm, 0.0015 kg·m², 5 %, 10 points, 1 class. */
        public static final Steps ASSUMED = new Steps(3, 15, 0.0015, 5, 10, 1);
    }
}
