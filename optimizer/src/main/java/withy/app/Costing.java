package withy.app;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import withy.app.BuildSheet.LabourLine;
import withy.catalog.Operation;
import withy.catalog.Rates;
import withy.rod.Labour;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Tariff;

/**
 * Turns a rod's cost into lines of whole minor units that add up to the customer's price: each line is the rounded running sum up to it less the
 * rounded running sum before it, so no line is off by more than one minor unit and nothing is lost.
 */
final class Costing {
    private final Rates rates;
    private long runningMilli;

    Costing(Rates rates) {
        this.rates = rates;
    }

    /** The next line of cost. */
    long line(long milli) {
        long before = minor(runningMilli);
        runningMilli += milli;
        return minor(runningMilli) - before;
    }

    /** Margin on every line so far. */
    long margin() {
        return withMargin().setScale(0, RoundingMode.HALF_UP).longValueExact() - minor(runningMilli);
    }

    /** Tax on every line and the margin. */
    long tax() {
        BigDecimal taxed = withMargin().multiply(percentUp(rates.taxPercent()));
        return taxed.setScale(0, RoundingMode.HALF_UP).longValueExact()
                - withMargin().setScale(0, RoundingMode.HALF_UP).longValueExact();
    }

    /** Work of a whole rod by operation, in the order it is done. */
    List<LabourLine> labour(Rod rod) {
        Map<Operation, Integer> times = new EnumMap<>(Operation.class);
        Labour.Tally tally = (operation, count) -> times.merge(operation, count, Integer::sum);
        Labour.ofEveryRod(rod.setting().shape().joints().size(), tally);
        for (Placed placed : rod.placed().values()) {
            if (!placed.part().kind().equals(withy.catalog.PartKind.GRIP) || placed.lengthMm() > 0) {
                Labour.ofPart(placed.part(), rod.brief().durabilityClass(), tally);
            }
        }
        List<LabourLine> lines = new ArrayList<>();
        times.forEach((operation, count) -> {
            if (count > 0) {
                long milli = rod.tariff().operationMilli(operation) * count;
                double minutes = rod.tariff().minutes(operation) * count;
                lines.add(new LabourLine(operation.word(), count, minutes, line(milli)));
            }
        });
        return lines;
    }

    private BigDecimal withMargin() {
        return BigDecimal.valueOf(runningMilli)
                .multiply(percentUp(rates.marginPercent()))
                .divide(BigDecimal.valueOf(Tariff.MILLI));
    }

    private static long minor(long milli) {
        return BigDecimal.valueOf(milli)
                .divide(BigDecimal.valueOf(Tariff.MILLI))
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    private static BigDecimal percentUp(double percent) {
        return BigDecimal.ONE.add(BigDecimal.valueOf(percent).movePointLeft(2));
    }
}
