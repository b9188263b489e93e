package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What {@code measure} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was measured with
 * @param brief the brief with nothing left open
 * @param defaultsUsed what was left out and what was taken instead
 * @param legal true where the build breaks no rule
 * @param build the builder's own, rank 0, compared with the best
 * @param best the best proposal for the brief, rank 1, or null where there is none
 * @param cautions what to mind at the bench and at the water
 * @param interrupted true where the search for the best was stopped before its end
 */
public record MeasureAnswer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        List<String> defaultsUsed,
        boolean legal,
        BuildSheet build,
        @Nullable BuildSheet best,
        List<String> cautions,
        boolean interrupted) {
    public MeasureAnswer {
        defaultsUsed = List.copyOf(defaultsUsed);
        cautions = List.copyOf(cautions);
    }
}
