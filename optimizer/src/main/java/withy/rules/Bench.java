package withy.rules;

/**
 * Where a rule brings its comparisons. All limits are compared on quantised integers ({@link Unit}), so that filter, search and judge cannot
 * disagree by a rounding. {@code check} names the comparison within the rule and, after the rule's code, the message that words it.
 */
public interface Bench {

    /** The rule whose checks come next; told by the {@link Rulebook}. */
    default void rule(String code) {}

    /** True where nothing more needs to be asked. */
    default boolean decided() {
        return false;
    }

    /** Measured must be at most the limit. */
    void atMost(String check, double measured, double limit, Unit unit, String partId, String otherId);

    /** Measured must be at least the limit. */
    void atLeast(String check, double measured, double limit, Unit unit, String partId, String otherId);

    /** A condition without a number must hold. */
    void holds(String check, boolean kept, String partId, String otherId);

    /** The value needed is not known: never a pass. */
    void unknown(String check, double limit, Unit unit, String partId);

    /** The rule does not concern this brief or this part. */
    default void notApplicable(String check) {}

    /** Soft side: measured should be at least the limit; else a warning in the answer. Never refuses. */
    default void warnBelow(String check, double measured, double limit, Unit unit, String partId) {}

    /** Soft side: measured should be at most the limit; else a warning in the answer. Never refuses. */
    default void warnAbove(String check, double measured, double limit, Unit unit, String partId) {}

    /** One part concerned. */
    default void atMost(String check, double measured, double limit, Unit unit, String partId) {
        atMost(check, measured, limit, unit, partId, "");
    }

    /** One part concerned. */
    default void atLeast(String check, double measured, double limit, Unit unit, String partId) {
        atLeast(check, measured, limit, unit, partId, "");
    }

    /** One part concerned. */
    default void holds(String check, boolean kept, String partId) {
        holds(check, kept, partId, "");
    }
}
