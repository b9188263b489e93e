package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.Consumer;
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
        BitSet lying = indexes(butts);
        BitSet beforeButts = indexes(rears);
        if (shelf.split) {
            eachGrip(
                    rears,
                    rear -> beforeButts.set(rear.index(), behind(shelf, rear).intersects(lying)));
        }
        BitSet behindFores = new BitSet();
        eachGrip(fores, fore -> behindFores.or(beside(shelf, fore)));
        Cut[] mated =
                kept(rears, rear -> beforeButts.get(rear.index()) && (!mustHaveFore || behindFores.get(rear.index())));
        BitSet standing = indexes(mated);
        BitSet before = new BitSet();
        if (shelf.split) {
            eachGrip(mated, rear -> before.or(behind(shelf, rear)));
        }
        return new Mates(
                mated,
                kept(butts, butt -> before.get(butt.index())),
                kept(fores, fore -> beside(shelf, fore).intersects(standing)));
    }

    private static BitSet indexes(Cut[] cuts) {
        BitSet indexes = new BitSet();
        for (Cut cut : cuts) {
            indexes.set(cut.index());
        }
        return indexes;
    }

    /** Shows a grip once, however many lengths it may be cut to: these lie side by side. */
    private static void eachGrip(Cut[] cuts, Consumer<Cut> to) {
        for (int i = 0; i < cuts.length; i++) {
            if (i == 0 || cuts[i].grip() != cuts[i - 1].grip()) {
                to.accept(cuts[i]);
            }
        }
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
