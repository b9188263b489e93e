package withy.rules;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a rule says of a rod.
 *
 * @param rule the rule's code
 * @param check which of its comparisons
 * @param outcome pass, not applicable, fail, unknown, or warning (the soft side; a warning is legal)
 * @param measured measured value, in {@code unit}; NaN where the check has no number
 * @param limit what it is compared with; NaN where the check has no number
 * @param unit unit of both
 * @param parts ids of the parts concerned
 */
public record Verdict(
        String rule, String check, Outcome outcome, double measured, double limit, Unit unit, List<String> parts) {

    public Verdict {
        parts = List.copyOf(parts);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Verdict that
                && rule.equals(that.rule)
                && check.equals(that.check)
                && outcome == that.outcome
                && Double.compare(measured, that.measured) == 0
                && Double.compare(limit, that.limit) == 0
                && unit == that.unit
                && parts.equals(that.parts);
    }

    @Override
    public int hashCode() {
        return Objects.hash(rule, check, outcome.ordinal(), measured, limit, unit.ordinal(), parts);
    }

    /** Outcomes; only PASS, NOT_APPLICABLE and WARNING are legal. */
    public enum Outcome {
        PASS("pass"),
        NOT_APPLICABLE("notApplicable"),
        WARNING("warning"),
        FAIL("fail"),
        UNKNOWN("unknown");

        private final String key;

        Outcome(String key) {
            this.key = key;
        }

        /** Name in answers and message keys. */
        public String key() {
            return key;
        }

        /** True where a build may be offered. */
        public boolean legal() {
            return this == PASS || this == NOT_APPLICABLE || this == WARNING;
        }
    }
}
