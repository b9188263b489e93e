package withy.rod;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import withy.brief.Brief;
import withy.catalog.Operation;
import withy.catalog.Part;
import withy.catalog.Rates;
import withy.catalog.WrapThread;

/**
 * Turns parts, metres, minutes into money: thousandths of a minor unit until the one rounding at the end. Price = (parts + consumables +
 * labour) × (1 + margin) × (1 + tax), half up to a minor unit.
 */
public final class Tariff {
    /** Thousandths in a minor unit. */
    public static final long MILLI = 1000;

    private static final double MINUTES_PER_HOUR = 60;

    private final Rates rates;
    private final Brief brief;
    /** Few, so that looking through them beats looking them up. */
    private final List<String> owned;

    private final long[] unitMilli = new long[Operation.values().length];

    /** The rates as they apply to one brief (parts the customer owns cost nothing). */
    public Tariff(Rates rates, Brief brief) {
        this.rates = rates;
        this.brief = brief;
        this.owned = List.copyOf(brief.owned());
        for (Operation operation : Operation.values()) {
            double hours = minutes(operation) / MINUTES_PER_HOUR * (1 - rates.labourDiscountPercent() / 100);
            unitMilli[operation.ordinal()] = Math.round(hours * rates.hourlyRateMinor() * MILLI);
        }
    }

    /** Minutes of one such operation. */
    public double minutes(Operation operation) {
        Double value = rates.labourMinutes().get(operation);
        return value == null ? 0 : value;
    }

    /** Price of one such operation. */
    public long operationMilli(Operation operation) {
        return unitMilli[operation.ordinal()];
    }

    /** Price of the work one part brings. */
    public long workMilli(Part part) {
        Sum sum = new Sum();
        Labour.ofPart(part, brief.durabilityClass(), sum);
        return sum.milli;
    }

    /** Price of the work every rod brings. */
    public long everyRodMilli(int joints) {
        Sum sum = new Sum();
        Labour.ofEveryRod(joints, sum);
        return sum.milli;
    }

    /** Price of pieces of a part; nothing where the customer brings it. */
    public long partMilli(Part part, int pieces) {
        return owned(part) ? 0 : part.facts().priceMinor() * MILLI * pieces;
    }

    private boolean owned(Part part) {
        return owned.contains(part.id());
    }

    /** Price of thread used. */
    public long threadMilli(WrapThread thread, double lengthMm) {
        if (owned(thread)) {
            return 0;
        }
        return Math.round(thread.facts().priceMinor() * (double) MILLI * lengthMm / (thread.metresPerSpool() * 1000));
    }

    /**
     * Consumables that do not depend on single parts: sundries, the adhesive mixed, and two coats of finish, of each coat at least the smallest
     * reliable mix and else twice what stays on the rod.
     *
     * @param finishUl finish applied, both coats, µl
     */
    public long fixedMilli(Consumables with, long finishUl) {
        return rates.sundriesMinor() * MILLI + adhesiveMilli(with) + finishMilli(with, finishUl);
    }

    /** Price of the adhesive mixed. */
    public long adhesiveMilli(Consumables with) {
        return owned(with.adhesive())
                ? 0
                : perMl(with.adhesive().facts().priceMinor(), with.adhesive().packMl(), rates.adhesiveMixMl());
    }

    /** Price of the finish mixed for the applied volume, µl. */
    public long finishMilli(Consumables with, long finishUl) {
        return owned(with.finish())
                ? 0
                : perMl(with.finish().facts().priceMinor(), with.finish().packMl(), finishMixedMl(finishUl));
    }

    /** Finish mixed for two coats, ml, of which the applied volume (µl) stays on the rod. */
    public double finishMixedMl(long finishUl) {
        return 2 * Math.max(rates.finishMixMinMl(), finishUl / 1000.0);
    }

    /** Customer's price over cost: margin and tax. */
    public double factor() {
        return (1 + rates.marginPercent() / 100) * (1 + rates.taxPercent() / 100);
    }

    /** What the customer pays, minor units, rounded half up once. */
    public long priceMinor(long costMilli) {
        return BigDecimal.valueOf(costMilli)
                .multiply(percentUp(rates.marginPercent()))
                .multiply(percentUp(rates.taxPercent()))
                .divide(BigDecimal.valueOf(MILLI))
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    /** Highest cost whose price is still within a ceiling (the price grows with the cost). */
    public long costWithin(long ceilingMinor) {
        long low = -1;
        long high = Math.max(1, 2 * ceilingMinor) * MILLI;
        while (high - low > 1) {
            long middle = (low + high) >>> 1;
            if (priceMinor(middle) <= ceilingMinor) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static BigDecimal percentUp(double percent) {
        return BigDecimal.ONE.add(BigDecimal.valueOf(percent).movePointLeft(2));
    }

    private static long perMl(long priceMinor, double packMl, double usedMl) {
        return Math.round(priceMinor * (double) MILLI * usedMl / packMl);
    }

    /** Prices what a tally counts. */
    private final class Sum implements Labour.Tally {
        private long milli;

        @Override
        public void add(Operation operation, int times) {
            milli += operationMilli(operation) * times;
        }
    }
}
