package withy.benchmarks.peer;

import java.util.SortedMap;
import java.util.TreeMap;
import withy.rules.Bench;
import withy.rules.Unit;

/** By how much each rule is broken: a thousand for each failed check, and up to nine thousand more by its excess, so that a search feels which way is up. */
final class FaultTally implements Bench {
    private static final long FAILED = 1_000;
    private static final long MOST_EXCESS = 9_000;

    private final SortedMap<String, Long> broken = new TreeMap<>();
    private String rule = "";
    private int checks;

    SortedMap<String, Long> broken() {
        return broken;
    }

    /** Checks that failed. */
    int checks() {
        return checks;
    }

    @Override
    public void rule(String code) {
        rule = code;
    }

    @Override
    public void atMost(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        compare(measured, limit, unit);
    }

    @Override
    public void atLeast(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        compare(limit, measured, unit);
    }

    @Override
    public void holds(String check, boolean kept, String partId, String otherId) {
        if (!kept) {
            add(0);
        }
    }

    @Override
    public void unknown(String check, double limit, Unit unit, String partId) {
        add(0);
    }

    @Override
    public void notApplicable(String check) {
        // breaks nothing
    }

    @Override
    public void warnBelow(String check, double measured, double limit, Unit unit, String partId) {
        // breaks nothing
    }

    @Override
    public void warnAbove(String check, double measured, double limit, Unit unit, String partId) {
        // breaks nothing
    }

    private void compare(double low, double high, Unit unit) {
        if (Double.isNaN(low) || Double.isNaN(high)) {
            add(0);
        } else if (unit.quantise(low) > unit.quantise(high)) {
            double scale = Math.max(1, Math.max(Math.abs(low), Math.abs(high)));
            add(Math.min(MOST_EXCESS, Math.round(MOST_EXCESS * (low - high) / scale)));
        }
    }

    private void add(long excess) {
        checks++;
        broken.merge(rule, FAILED + excess, Long::sum);
    }
}
