package withy.oracle;

import java.util.Set;
import withy.rules.Bench;
import withy.rules.Unit;

/** Notes whether a rule refuses that looks at the handle and the blank under it alone. */
final class HandleFaults implements Bench {
    private static final Set<String> HANDLE_RULES =
            Set.of("reel-fit", "seat-on-blank", "grip-on-blank", "ring-fit", "handle");

    /** Checks of those rules that look further than the handle. */
    private static final Set<String> FURTHER = Set.of("stripper-clear");

    private String rule = "";
    private boolean found;

    boolean found() {
        return found;
    }

    @Override
    public void rule(String code) {
        rule = code;
    }

    @Override
    public void atMost(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        note(check, unit.quantise(measured) <= unit.quantise(limit));
    }

    @Override
    public void atLeast(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        note(check, unit.quantise(measured) >= unit.quantise(limit));
    }

    @Override
    public void holds(String check, boolean kept, String partId, String otherId) {
        note(check, kept);
    }

    @Override
    public void unknown(String check, double limit, Unit unit, String partId) {
        note(check, false);
    }

    private void note(String check, boolean kept) {
        found |= !kept && HANDLE_RULES.contains(rule) && !FURTHER.contains(check);
    }
}
