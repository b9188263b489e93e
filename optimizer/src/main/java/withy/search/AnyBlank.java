package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.ReelSeat;
import withy.mechanics.TaperProfile;
import withy.rod.Station;

/**
 * Every blank that is open at once: as thick as the thickest and as thin as the thinnest of them, and every part goes on. What a handle costs at least on it, it
 * costs at least on each of them. Not for several threads at once.
 */
final class AnyBlank implements Underlying {
    /** Stretches that are looked at as a whole, mm. */
    private static final double STRETCH_MM = 20;

    private final Shelf shelf;
    private final double[] thickest;
    private final double[] thinnest;
    /** The largest from one stretch to another. */
    private final double[] @Nullable [] along;

    private final BitSet caps = new BitSet();
    private final GripMasses rears;
    private final GripMasses butts;
    private final GripMasses fores;

    AnyBlank(Shelf shelf) {
        this.shelf = shelf;
        double longest =
                shelf.ground.blanks.stream().mapToDouble(Blank::lengthMm).max().orElse(0);
        int stretches = stretch(longest) + 1;
        this.thickest = new double[stretches];
        this.thinnest = new double[stretches];
        Arrays.fill(thickest, Double.NaN);
        this.along = new double[stretches][];
        caps.set(0, shelf.ground.caps.size());
        this.rears = new GripMasses(shelf.rearPlaces, this, null);
        this.butts = new GripMasses(shelf.buttPlaces, this, null);
        this.fores = new GripMasses(shelf.forePlaces, this, null);
    }

    private static int stretch(double atMm) {
        return (int) Math.floor(Math.max(0, atMm) / STRETCH_MM);
    }

    /** The stretch a place lies in; beyond the end the last. */
    private int at(double atMm) {
        int stretch = Math.min(stretch(atMm), thickest.length - 1);
        if (Double.isNaN(thickest[stretch])) {
            look(stretch);
        }
        return stretch;
    }

    private void look(int stretch) {
        double from = stretch * STRETCH_MM;
        double to = from + STRETCH_MM;
        double most = 0;
        double least = Double.MAX_VALUE;
        for (Blank blank : shelf.ground.blanks) {
            TaperProfile profile = shelf.ground.shape(blank).profile();
            most = Math.max(most, profile.largestBetween(from, to));
            least = Math.min(least, profile.smallestBetween(from, to));
        }
        thickest[stretch] = most;
        thinnest[stretch] = least;
    }

    @Override
    public double thickest(double fromMm, double toMm) {
        int from = at(fromMm);
        int to = at(toMm);
        double[] of = along[from];
        if (of == null) {
            of = new double[thickest.length];
            of[from] = thickest[from];
            for (int stretch = from + 1; stretch < of.length; stretch++) {
                of[stretch] = Math.max(of[stretch - 1], thickest[at(stretch * STRETCH_MM)]);
            }
            along[from] = of;
        }
        return of[to];
    }

    @Override
    public double thinnest(double atMm) {
        return thinnest[at(atMm)];
    }

    @Override
    public long style(ReelSeat seat) {
        return shelf.ground.style.mostOfSeat(seat);
    }

    @Override
    public BitSet caps() {
        return caps;
    }

    @Override
    public boolean goes(Station station, int check) {
        return true;
    }

    @Override
    public GripMasses rears() {
        return rears;
    }

    @Override
    public GripMasses butts() {
        return butts;
    }

    @Override
    public GripMasses fores() {
        return fores;
    }
}
