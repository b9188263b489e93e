package withy.rod;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.Adhesive;
import withy.catalog.Finish;
import withy.catalog.WrapThread;

/**
 * What every wrap and glue line of one rod is made with.
 *
 * @param thread wrapping thread
 * @param finish coat over the wraps
 * @param adhesive glue
 */
public record Consumables(WrapThread thread, Finish finish, Adhesive adhesive) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Consumables that
                && Objects.equals(thread, that.thread)
                && Objects.equals(finish, that.finish)
                && Objects.equals(adhesive, that.adhesive);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * thread.id().hashCode() + finish.id().hashCode())
                + adhesive.id().hashCode();
    }
}
