package withy.search.planning;

import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;

/**
 * What the engine came to.
 *
 * @param build best legal build, the seed included; null where none was found
 * @param objectives its objectives, or null
 * @param score its score; {@link Long#MAX_VALUE} without a build
 * @param measured builds measured and judged on the way
 * @param completed layouts the kernel completed on the way
 */
public record Improvement(
        @Nullable Build build, @Nullable ObjectiveVector objectives, long score, long measured, long completed) {}
