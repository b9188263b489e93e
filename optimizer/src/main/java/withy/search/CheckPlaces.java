package withy.search;

import java.util.HashMap;
import java.util.Map;
import withy.mechanics.TaperProfile;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rod.Station;
import withy.rules.Refusal;

/** Where the checks of a shelf may lie, told from the reel foot, and which of them go there on a blank. Not for several threads at once. */
final class CheckPlaces {
    private final Shelf shelf;
    private final Map<Station, Map<String, byte[]>> known = new HashMap<>();

    CheckPlaces(Shelf shelf) {
        this.shelf = shelf;
    }

    /** From one place to another, mm ahead of the reel foot. */
    record Reach(double fromMm, double toMm) {}

    /** Where a check of one station may lie, whatever seat and grips stand beside it. */
    Reach reach(Station station) {
        double foremost = shelf.longestFrontMm + shelf.widestCheckMm;
        if (station.equals(Station.REAR_CHECK)) {
            return new Reach(-shelf.deepestMm - shelf.widestCheckMm, -shelf.shallowestMm);
        }
        boolean ends = station.equals(Station.WINDING_CHECK);
        return new Reach(shelf.shortestFrontMm, ends ? foremost + shelf.longestForeMm : foremost);
    }

    /**
     * False where a check goes nowhere on a blank, wherever the reel stands: too tight even at the thinnest place, or too loose even at the thickest. Asked of
     * the rules once a blank and station.
     */
    boolean goes(Station station, int check, BlankShape shape) {
        byte[] of = known.computeIfAbsent(station, any -> new HashMap<>())
                .computeIfAbsent(shape.blank().id(), any -> new byte[shelf.checks.length]);
        if (of[check] == 0) {
            boolean goes = goes(station, check, shape, shelf.ground.firstFoot(), shelf.ground.lastFoot());
            of[check] = (byte) (goes ? 1 : -1);
        }
        return of[check] > 0;
    }

    /** The same with the reel foot between two places, mm from the butt. */
    boolean goes(Station station, int check, BlankShape shape, int firstMm, int lastMm) {
        Reach reach = reach(station);
        double thickest = Math.max(0, firstMm + reach.fromMm - shelf.widestCheckMm);
        double thinnest = Math.max(thickest, lastMm + reach.toMm + shelf.widestCheckMm);
        return goesBetween(station, check, shape, thickest, thinnest);
    }

    /** False where it goes nowhere between two places, mm from the butt. */
    boolean goesBetween(Station station, int check, BlankShape shape, double thickest, double thinnest) {
        TaperProfile profile = shape.profile();
        boolean thicker = profile.largestBetween(thickest, thinnest) > profile.at(thickest); // beyond a joint
        boolean thinner = profile.smallestBetween(thickest, thinnest) < profile.at(thinnest);
        return (thicker || fits(station, check, shape, thickest, "tight"))
                && (thinner || fits(station, check, shape, thinnest, "loose"));
    }

    /** True where a joint makes the blank thicker again before a place. */
    static boolean stepsBeyond(BlankShape shape, double xMm) {
        return !shape.joints().isEmpty() && shape.joints().get(0).fromMm() <= xMm;
    }

    /** False where it does not fit there for another reason than one that another place may mend. */
    private boolean fits(Station station, int check, BlankShape shape, double xMm, String mendable) {
        Refusal refusal = new Refusal();
        Placed placed = new Placed(station, shelf.checks[check], xMm, shelf.checks[check].widthMm());
        shelf.ground.rules.onPart(shelf.ground.anySetting(shape), placed, refusal);
        return !refusal.refused() || refusal.check().endsWith(mendable);
    }
}
