package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import withy.mechanics.TaperProfile;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rod.Station;
import withy.rules.Refusal;

/** Where the checks of a shelf may lie, told from the reel foot, and which of them go there on a blank. Not for several threads at once. */
final class CheckPlaces {
    /** What rules say of a check that is too tight. */
    private static final Set<String> TIGHT = Set.of("check-tight", "soft-check-tight");

    /** The same where it is too loose. */
    private static final Set<String> LOOSE = Set.of("check-loose", "soft-check-loose");

    private final Shelf shelf;
    private final Map<Station, Map<String, byte[]>> known = new HashMap<>();
    private final Map<Station, double[]> widths = new HashMap<>();
    private final Map<Station, Map<String, @Nullable Stretch[]>> stretches = new HashMap<>();

    CheckPlaces(Shelf shelf) {
        this.shelf = shelf;
    }

    /** From one place to another, mm. */
    record Reach(double fromMm, double toMm) {}

    /** Where a check of one station may lie, told from the reel foot, whatever seat and grips stand beside it. */
    Reach reach(Station station) {
        double foremost = shelf.longestFrontMm + shelf.widestCheckMm;
        if (station.equals(Station.REAR_CHECK)) {
            return new Reach(-shelf.deepestMm - shelf.widestCheckMm, -shelf.shallowestMm);
        }
        boolean ends = station.equals(Station.WINDING_CHECK);
        return new Reach(shelf.shortestFrontMm, ends ? foremost + shelf.longestForeMm : foremost);
    }

    /** How wide what may lie at a station is, mm, each width once; 0 where nothing need. */
    double[] widthsMm(Station station) {
        return widths.computeIfAbsent(station, any -> {
            DoubleStream rings = Arrays.stream(shelf.checksFor(station)).mapToDouble(c -> shelf.checks[c].widthMm());
            DoubleStream none = shelf.stations.optional(station) ? DoubleStream.of(0) : DoubleStream.empty();
            return DoubleStream.concat(none, rings).distinct().toArray();
        });
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
        return (thicker || fits(station, check, shape, thickest, TIGHT))
                && (thinner || fits(station, check, shape, thinnest, LOOSE));
    }

    /** From where to where a check may lie on a blank. */
    Stretch stretch(Station station, int check, BlankShape shape) {
        @Nullable
        Stretch[] of = stretches
                .computeIfAbsent(station, any -> new HashMap<>())
                .computeIfAbsent(shape.blank().id(), any -> new Stretch[shelf.checks.length]);
        Stretch known = of[check];
        if (known == null) {
            known = Stretch.of(shape, 0, xMm -> said(station, check, shape, xMm), TIGHT, LOOSE);
            of[check] = known;
        }
        return known;
    }

    /** True where a joint makes the blank thicker again before a place. */
    static boolean stepsBeyond(BlankShape shape, double xMm) {
        return !shape.joints().isEmpty() && shape.joints().get(0).fromMm() <= xMm;
    }

    /** False where it does not fit there for another reason than one that another place may mend. */
    private boolean fits(Station station, int check, BlankShape shape, double xMm, Set<String> mendable) {
        String said = said(station, check, shape, xMm);
        return said.isEmpty() || mendable.contains(said);
    }

    /** Why it does not go there, empty where it does. */
    private String said(Station station, int check, BlankShape shape, double xMm) {
        Refusal refusal = new Refusal();
        Placed placed = new Placed(station, shelf.checks[check], xMm, shelf.checks[check].widthMm());
        shelf.ground.rules.onPart(shelf.ground.anySetting(shape), placed, refusal);
        return refusal.refused() ? refusal.check() : "";
    }
}
