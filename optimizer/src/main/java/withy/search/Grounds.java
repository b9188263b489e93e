package withy.search;

import java.lang.ref.SoftReference;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;
import withy.rod.GuideSpots;

/** Grounds of the questions asked last, each lent to one question at a time. Where memory is short they are let go and laid out anew. */
final class Grounds {
    /** Grounds kept; one holds what was worked out for every blank it was asked about. */
    private static final int MOST = 6;

    /** Where guides are, the same on whichever. */
    final GuideSpots spots = new GuideSpots();

    private final ArrayDeque<Kept> kept = new ArrayDeque<>();

    private record Kept(Opening opening, Half half, SoftReference<Ground> ground) {}

    /** One that was given back and fits, rather one that was lent to the same half of the blanks before; or null. */
    synchronized @Nullable Ground take(Opening opening, Half half) {
        Kept found = null;
        for (Kept one : kept) {
            if (one.opening.equals(opening) && (found == null || found.half != half && one.half == half)) {
                found = one;
            }
        }
        Kept taken = found;
        kept.removeIf(one -> one == taken);
        return found == null ? null : found.ground.get();
    }

    synchronized void giveBack(Opening opening, Half half, Ground ground) {
        kept.addFirst(new Kept(opening, half, new SoftReference<>(ground)));
        if (kept.size() > MOST) {
            kept.removeLast();
        }
    }
}
