package withy.search;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import withy.rules.Seams;

/**
 * How much room a handle takes behind the reel foot, told by the lengths of what lies ready alone: the same on every blank.
 *
 * <pre>
 *   |butt grip|   bare   |rear grip|==seat==
 *   0                                 foot
 *   |<-------   at least this long -->|
 * </pre>
 *
 * <p>For one shelf; a handle that is not ruled takes any.
 */
final class Room {
    /** As much as lengths may seem to be short by rounding, mm. */
    private static final double ROUNDING_MM = 0.01;

    private final double shortestMm;
    private final double longestMm;
    private final boolean somewhere;
    private final Shelf shelf;
    private int @Nullable [] butts;

    Room(Shelf shelf) {
        this.shelf = shelf;
        boolean ruled = shelf.ground.handleRule && shelf.seats.length > 0 && shelf.rears.length > 0;
        if (!ruled) {
            this.shortestMm = 0;
            this.longestMm = Double.MAX_VALUE;
        } else if (shelf.split) {
            this.shortestMm = shelf.shallowestMm
                    + least(shelf.rears, Cut::lengthMm)
                    + Seams.BARE_MM
                    + least(shelf.butts, Cut::lengthMm);
            this.longestMm = Double.MAX_VALUE;
        } else {
            this.shortestMm =
                    shelf.shallowestMm + least(shelf.rears, cut -> cut.grip().shortestMm());
            this.longestMm = shelf.deepestMm
                    + shelf.widestCheckMm
                    - least(shelf.rears, cut -> -cut.grip().lengthMm());
        }
        this.somewhere = shelf.ground.feet.stream().anyMatch(this::at);
    }

    private static double least(Cut[] cuts, ToDoubleFunction<Cut> mm) {
        return Arrays.stream(cuts).mapToDouble(mm).min().orElse(0);
    }

    /** Butt grips of the shelf by their place there, the shortest first. */
    int[] shortestButtsFirst() {
        int[] known = butts;
        if (known == null) {
            known = IntStream.range(0, shelf.butts.length)
                    .boxed()
                    .sorted(Comparator.comparingDouble(b -> shelf.butts[b].lengthMm()))
                    .mapToInt(b -> b)
                    .toArray();
            butts = known;
        }
        return known;
    }

    /** False where there is room for no handle, wherever the reel foot stands. */
    boolean somewhere() {
        return somewhere;
    }

    /** False where no handle goes with the reel foot at one place. */
    boolean at(int footMm) {
        return footMm >= shortestMm - ROUNDING_MM && footMm <= longestMm + ROUNDING_MM;
    }
}
