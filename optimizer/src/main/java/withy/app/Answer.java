package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.app.Reasons.ImpossibleLines;

/**
 * What {@code propose} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was made from
 * @param brief the brief with nothing left open
 * @param defaultsUsed what was left out and what was taken instead
 * @param candidates how many parts fit the brief, by station, in station order
 * @param builds at most three, best first
 * @param lightestLegal the lightest build that breaks no rule, or null where there is none
 * @param reasons why there are fewer than three builds; empty where there are three
 * @param cautions what to mind at the bench and at the water
 * @param impossible why nothing can be built; null where something can, or where the search was stopped
 * @param interrupted true where the search was stopped before its end
 */
public record Answer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        List<String> defaultsUsed,
        Map<String, Count> candidates,
        List<BuildSheet> builds,
        @Nullable Lightest lightestLegal,
        List<String> reasons,
        List<String> cautions,
        @Nullable ImpossibleLines impossible,
        boolean interrupted) {
    /** Format of every answer. */
    public static final int SCHEMA = 1;

    public Answer {
        defaultsUsed = List.copyOf(defaultsUsed);
        candidates = Collections.unmodifiableMap(new LinkedHashMap<>(candidates));
        builds = List.copyOf(builds);
        reasons = List.copyOf(reasons);
        cautions = List.copyOf(cautions);
    }

    /**
     * Parts for one station.
     *
     * @param offered fit the brief
     * @param refused do not
     */
    public record Count(int offered, int refused) {}

    /**
     * The lightest legal build.
     *
     * @param weightG its weight, g
     * @param proven true where no legal build weighs less
     * @param build what it is made of, as a build file has it
     */
    public record Lightest(double weightG, boolean proven, BuildFile build) {}
}
