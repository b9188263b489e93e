package withy.brief;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What came of reading a brief: a brief, or every fault at once.
 *
 * @param brief the resolved brief, or null where there is a fault
 * @param faults all faults in the order of the text, empty where there is a brief
 */
public record BriefReading(@Nullable Brief brief, List<BriefFault> faults) {

    public BriefReading {
        faults = List.copyOf(faults);
        if ((brief == null) == faults.isEmpty()) {
            throw new IllegalArgumentException("a brief reading holds either a brief or faults");
        }
    }

    /** The brief of a reading without faults. */
    public Brief orThrow() {
        if (brief == null) {
            throw new IllegalStateException(
                    String.join("\n", faults.stream().map(BriefFault::message).toList()));
        }
        return brief;
    }
}
