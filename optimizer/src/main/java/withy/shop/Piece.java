package withy.shop;

import org.jspecify.annotations.Nullable;

/**
 * One piece.
 *
 * @param part catalogue id
 * @param number its number, to be written on the bag: {@code part#7}
 * @param state ordered, shelf, used, broken, returned, lost or cancelled
 * @param due day it is due, or null
 * @param weightG last scale reading, g, or null
 * @param job the job it is promised to or was used for, or null
 */
public record Piece(
        String part,
        int number,
        String state,
        @Nullable String due,
        @Nullable Double weightG,
        @Nullable Long job) {

    /** True where it is on its way. */
    public boolean ordered() {
        return state.equals("ordered");
    }

    /** Its name: {@code part#7}. */
    public String name() {
        return part + "#" + number;
    }
}
