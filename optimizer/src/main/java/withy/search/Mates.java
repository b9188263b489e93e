package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.Predicate;

/**
 * The grips of a shelf without those that nothing goes with which must stand beside them: a rear grip of a split handle wants a butt grip and, where there has to be one,
 * a fore grip. Told by the parts alone.
 *
 * @param rears rear or full grips
 * @param butts butt grips
 * @param fores fore grips
 */
record Mates(Cut[] rears, Cut[] butts, Cut[] fores) {

    /**
     * Of all there are.
     *
     * @param mustHaveFore true where a handle must have a fore grip
     */
    static Mates of(Shelf shelf, Cut[] rears, Cut[] butts, Cut[] fores, boolean mustHaveFore) {
        BitSet beforeButts = new BitSet();
        for (Cut rear : rears) {
            beforeButts.set(rear.index(), !shelf.split || with(shelf, rear, butts));
        }
        BitSet behindFores = new BitSet();
        for (Cut fore : fores) {
            behindFores.or(beside(shelf, fore));
        }
        Cut[] mated =
                kept(rears, rear -> beforeButts.get(rear.index()) && (!mustHaveFore || behindFores.get(rear.index())));
        BitSet standing = new BitSet();
        BitSet before = new BitSet();
        for (Cut rear : mated) {
            standing.set(rear.index());
            if (shelf.split) {
                before.or(behind(shelf, rear));
            }
        }
        return new Mates(
                mated,
                kept(butts, butt -> before.get(butt.index())),
                kept(fores, fore -> beside(shelf, fore).intersects(standing)));
    }

    private static boolean with(Shelf shelf, Cut rear, Cut[] butts) {
        BitSet match = behind(shelf, rear);
        return Arrays.stream(butts).anyMatch(butt -> match.get(butt.index()));
    }

    private static BitSet behind(Shelf shelf, Cut rear) {
        return shelf.ground.gripMatch.buttsBeside(shelf.ground.anySetting(), rear.grip());
    }

    private static BitSet beside(Shelf shelf, Cut fore) {
        return shelf.ground.gripMatch.rearsBeside(shelf.ground.anySetting(), fore.grip(), shelf.split);
    }

    private static Cut[] kept(Cut[] cuts, Predicate<Cut> which) {
        return Arrays.stream(cuts).filter(which).toArray(Cut[]::new);
    }
}
