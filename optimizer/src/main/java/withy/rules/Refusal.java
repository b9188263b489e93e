package withy.rules;

/**
 * A bench that notes the first refusal and then hears no more; made once and reset, it allocates nothing. For the filter and the search, which
 * ask millions of times. Not for several threads at once.
 */
public final class Refusal implements Bench {
    private String rule = "";
    private boolean refused;
    private String refusedRule = "";
    private String check = "";
    private double measured;
    private double limit;
    private Unit unit = Unit.COUNT;
    private boolean unknown;
    private String partId = "";
    private String otherId = "";

    /** Ready for the next question. */
    public Refusal reset() {
        refused = false;
        return this;
    }

    /** True where a rule refused since the last reset. */
    public boolean refused() {
        return refused;
    }

    /** The first refusal as a verdict; only to be asked where something was refused. */
    public Verdict verdict() {
        if (!refused) {
            throw new IllegalStateException("nothing was refused");
        }
        Verdict.Outcome outcome = unknown ? Verdict.Outcome.UNKNOWN : Verdict.Outcome.FAIL;
        return new Verdict(refusedRule, check, outcome, measured, limit, unit, Protocol.parts(partId, otherId));
    }

    /** Code of the rule that refused first. */
    public String ruleCode() {
        return refusedRule;
    }

    /** Its check. */
    public String check() {
        return check;
    }

    /** What it measured; NaN where the check has no number. */
    public double measured() {
        return measured;
    }

    /** What it compared with; NaN where the check has no number. */
    public double limit() {
        return limit;
    }

    @Override
    public void rule(String code) {
        rule = code;
    }

    @Override
    public boolean decided() {
        return refused;
    }

    @Override
    public void atMost(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        if (!refused && !Protocol.within(measured, limit, unit)) {
            note(check, measured, limit, unit, partId, otherId);
        }
    }

    @Override
    public void atLeast(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        if (!refused && !Protocol.within(limit, measured, unit)) {
            note(check, measured, limit, unit, partId, otherId);
        }
    }

    @Override
    public void holds(String check, boolean kept, String partId, String otherId) {
        if (!refused && !kept) {
            note(check, Double.NaN, Double.NaN, Unit.COUNT, partId, otherId);
        }
    }

    @Override
    public void unknown(String check, double limit, Unit unit, String partId) {
        if (!refused) {
            note(check, Double.NaN, limit, unit, partId, "");
            unknown = true;
        }
    }

    private void note(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        this.refused = true;
        this.unknown = false;
        this.refusedRule = rule;
        this.check = check;
        this.measured = measured;
        this.limit = limit;
        this.unit = unit;
        this.partId = partId;
        this.otherId = otherId;
    }
}
