package withy.rules;

import java.util.List;

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
