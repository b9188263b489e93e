package withy.search;

import java.lang.ref.SoftReference;
import java.util.ArrayDeque;
import java.util.Iterator;
import org.jspecify.annotations.Nullable;

/** Grounds of the questions asked last, each lent to one question at a time. Where memory is short they are let go and laid out anew. */
final class Grounds {
    /** Grounds kept; one holds what was worked out for every blank. */
    private static final int MOST = 4;

    private final ArrayDeque<Kept> kept = new ArrayDeque<>();

    private record Kept(Opening opening, SoftReference<Ground> ground) {}

    /** One that was given back and fits, or null. */
    synchronized @Nullable Ground take(Opening opening) {
        for (Iterator<Kept> all = kept.iterator(); all.hasNext(); ) {
            Kept one = all.next();
            if (one.opening.equals(opening)) {
                all.remove();
                return one.ground.get();
            }
        }
        return null;
    }

    synchronized void giveBack(Opening opening, Ground ground) {
        kept.addFirst(new Kept(opening, new SoftReference<>(ground)));
        if (kept.size() > MOST) {
            kept.removeLast();
        }
    }
}
