package withy.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A bench that writes every verdict down. What a rule repeats of the same parts, or finds not to concern it twice, is written once. */
public final class Protocol implements Bench {
    private final Set<Verdict> verdicts = new LinkedHashSet<>();
    private final boolean refusalsOnly;
    private String rule = "";

    /** Writes everything down. */
    public Protocol() {
        this(false);
    }

    private Protocol(boolean refusalsOnly) {
        this.refusalsOnly = refusalsOnly;
    }

    /** One that writes down only what makes a rod illegal. */
    static Protocol ofRefusals() {
        return new Protocol(true);
    }

    /** What was said, in the order of the rules; "not applicable" only of checks that nothing else was said of. */
    public List<Verdict> verdicts(Rulebook book) {
        Map<String, List<Verdict>> byRule = new HashMap<>();
        verdicts.forEach(verdict -> byRule.computeIfAbsent(verdict.rule(), code -> new ArrayList<>())
                .add(verdict));
        List<Verdict> ordered = new ArrayList<>();
        for (Rule each : book.rules()) {
            List<Verdict> said = byRule.getOrDefault(each.code(), List.of());
            for (Verdict verdict : said) {
                if (!overtaken(verdict, said)) {
                    ordered.add(verdict);
                }
            }
        }
        return List.copyOf(ordered);
    }

    /** Every verdict as it was said. */
    List<Verdict> everything() {
        return List.copyOf(verdicts);
    }

    @Override
    public void rule(String code) {
        rule = code;
    }

    @Override
    public void atMost(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        add(check, hard(within(measured, limit, unit)), measured, limit, unit, partId, otherId);
    }

    @Override
    public void atLeast(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        add(check, hard(within(limit, measured, unit)), measured, limit, unit, partId, otherId);
    }

    @Override
    public void holds(String check, boolean kept, String partId, String otherId) {
        add(check, hard(kept), Double.NaN, Double.NaN, Unit.COUNT, partId, otherId);
    }

    @Override
    public void unknown(String check, double limit, Unit unit, String partId) {
        add(check, Verdict.Outcome.UNKNOWN, Double.NaN, limit, unit, partId, "");
    }

    @Override
    public void notApplicable(String check) {
        add(check, Verdict.Outcome.NOT_APPLICABLE, Double.NaN, Double.NaN, Unit.COUNT, "", "");
    }

    @Override
    public void warnBelow(String check, double measured, double limit, Unit unit, String partId) {
        add(check, soft(within(limit, measured, unit)), measured, limit, unit, partId, "");
    }

    @Override
    public void warnAbove(String check, double measured, double limit, Unit unit, String partId) {
        add(check, soft(within(measured, limit, unit)), measured, limit, unit, partId, "");
    }

    /** On the grid of the unit; a value that is no number is within nothing. */
    static boolean within(double low, double high, Unit unit) {
        return !Double.isNaN(low) && !Double.isNaN(high) && unit.quantise(low) <= unit.quantise(high);
    }

    /** The parts named, without empty ids. */
    static List<String> parts(String partId, String otherId) {
        if (partId.isEmpty()) {
            return otherId.isEmpty() ? List.of() : List.of(otherId);
        }
        return otherId.isEmpty() ? List.of(partId) : List.of(partId, otherId);
    }

    private static boolean overtaken(Verdict verdict, List<Verdict> ofItsRule) {
        if (verdict.outcome() != Verdict.Outcome.NOT_APPLICABLE) {
            return false;
        }
        for (Verdict other : ofItsRule) {
            if (other.outcome() != Verdict.Outcome.NOT_APPLICABLE
                    && other.check().equals(verdict.check())) {
                return true;
            }
        }
        return false;
    }

    private static Verdict.Outcome hard(boolean kept) {
        return kept ? Verdict.Outcome.PASS : Verdict.Outcome.FAIL;
    }

    private static Verdict.Outcome soft(boolean kept) {
        return kept ? Verdict.Outcome.PASS : Verdict.Outcome.WARNING;
    }

    private void add(
            String check,
            Verdict.Outcome outcome,
            double measured,
            double limit,
            Unit unit,
            String partId,
            String otherId) {
        if (!refusalsOnly || !outcome.legal()) {
            verdicts.add(new Verdict(rule, check, outcome, measured, limit, unit, parts(partId, otherId)));
        }
    }
}
