package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What {@code bend} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was computed with
 * @param brief the brief with nothing left open
 * @param defaultsUsed what was left out and what was taken instead
 * @param name what the build is called
 * @param weightG the finished rod without reel, g
 * @param machine the rod as a machine
 * @param train guide trains compared
 * @param odds against another build, or null where none was named
 * @param cautions what to mind
 */
public record BendAnswer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        List<String> defaultsUsed,
        String name,
        double weightG,
        MachineSheet machine,
        TrainSheet train,
        @Nullable OddsSheet odds,
        List<String> cautions) {
    public BendAnswer {
        defaultsUsed = List.copyOf(defaultsUsed);
        cautions = List.copyOf(cautions);
    }
}
