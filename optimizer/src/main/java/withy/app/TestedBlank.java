package withy.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.jspecify.annotations.Nullable;
import withy.mechanics.StiffnessProfile;
import withy.mechanics.TaperProfile;

/**
 * A blank's stiffness by the shop's own bend test, EI = c·d^p, as an answer of {@code bendtest} holds it.
 *
 * @param blankId the blank tested
 * @param scale c, d in mm and EI in N·mm²
 * @param exponent p
 */
public record TestedBlank(String blankId, double scale, double exponent) {
    private static final double MOST_EXPONENT = 6;

    /**
     * What came of reading.
     *
     * @param tested the test, or null
     * @param fault two lines: what is wrong and what is allowed, then a suggestion; or null
     */
    public record Reading(
            @Nullable TestedBlank tested, @Nullable String fault) {}

    /** Reads the JSON answer of a bend test of the blank a build is made on. */
    public static Reading read(String json, String blankId) {
        JsonNode root;
        try {
            root = new ObjectMapper().readTree(json);
        } catch (JsonProcessingException e) {
            return fault("no JSON", "Maybe it was printed without --json.");
        }
        JsonNode scale = root.path("scaleNmm");
        JsonNode exponent = root.path("exponent");
        if (root.path("schema").asInt() != Answer.SCHEMA || !scale.isNumber() || !exponent.isNumber()) {
            return fault("no answer of withy bendtest", "Maybe it is another answer, or of a newer version.");
        }
        if (!root.path("blank").asText().equals(blankId)) {
            return fault(
                    "a test of " + root.path("blank").asText(),
                    "Maybe the build is on another blank: this one is on " + blankId + ".");
        }
        double c = scale.asDouble();
        double p = exponent.asDouble();
        return c > 0 && Double.isFinite(c) && p >= 0 && p <= MOST_EXPONENT
                ? new Reading(new TestedBlank(blankId, c, p), null)
                : fault("scaleNmm " + c + ", exponent " + p, "Maybe it was edited by hand.");
    }

    private static Reading fault(String value, String maybe) {
        return new Reading(
                null,
                "bendtest: " + value + "; allowed is an answer of withy bendtest --json for this blank.\n" + maybe);
    }

    StiffnessProfile stiffness(TaperProfile diameter) {
        return new StiffnessProfile.OfDiameter(diameter, scale, exponent);
    }
}
