package withy.search.planning;

import java.util.SortedMap;
import java.util.TreeMap;
import withy.rules.Bench;
import withy.rules.Unit;

/**
 * A bench that adds up by how much each rule is broken, so that a search among illegal builds feels which way is up: {@value #BROKEN} a failed
 * check and up to {@value #MOST_EXCESS} more in proportion to the excess over the limit.
 */
public final class BrokenRules implements Bench {
    static final long BROKEN = 1_000;
    static final long MOST_EXCESS = 9_000;

    private final SortedMap<String, Long> broken = new TreeMap<>();
    private String rule = "";
    private int checks;

    /** Size of the failures by rule; rules that are kept are not in it. */
    public SortedMap<String, Long> broken() {
        return broken;
    }

    /** Checks that failed. */
    public int checks() {
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
        broken.merge(rule, BROKEN + excess, Long::sum);
    }
}
