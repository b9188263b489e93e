package withy.search.planning;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.rod.Build;
import withy.rod.Layout;

/** Completes a layout exactly, as far as the rules allow that. */
@FunctionalInterface
public interface Kernel {

    /**
     * The best build of a layout under a score.
     *
     * @param layout blank, reel position, form and guide count
     * @param without ids of parts that must not be used
     * @param under only builds that score less are wanted
     * @return the build, or null where the layout has none (or none was found)
     */
    @Nullable
    Build complete(Layout layout, Set<String> without, long under);
}
