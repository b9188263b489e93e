package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import withy.mechanics.TaperProfile;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rod.Station;
import withy.rules.Refusal;

/** Where the checks of a shelf may lie, told from the reel foot, and which of them go there on a blank. Not for several threads at once. */
final class CheckPlaces {
    /** As closely as ends of a stretch are told, mm. */
    private static final double NEAR_MM = 0.5;

    private final Shelf shelf;
    private final Map<Station, Map<String, byte[]>> known = new HashMap<>();
    private final Map<Station, double[]> widths = new HashMap<>();
    private final Map<Station, Map<String, @Nullable Reach[]>> stretches = new HashMap<>();

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
        return (thicker || fits(station, check, shape, thickest, "tight"))
                && (thinner || fits(station, check, shape, thinnest, "loose"));
    }

    /**
     * From where to where on a blank a check may lie with a handle that must end before the first joint, mm from the butt: nearer the butt it is too tight, further
     * from it too loose. Told within {@value #NEAR_MM} mm, rather too wide; wherever a handle may go beyond a joint, all of the blank.
     */
    Reach stretch(Station station, int check, BlankShape shape) {
        Reach[] of = stretches
                .computeIfAbsent(station, any -> new HashMap<>())
                .computeIfAbsent(shape.blank().id(), any -> new Reach[shelf.checks.length]);
        Reach known = of[check];
        if (known == null) {
            known = stretchNow(station, check, shape);
            of[check] = known;
        }
        return known;
    }

    private Reach stretchNow(Station station, int check, BlankShape shape) {
        double end = shape.blank().lengthMm();
        if (!shape.joints().isEmpty()) {
            if (!shelf.ground.handleRule) {
                return new Reach(0, end);
            }
            end = shape.joints().get(0).fromMm();
        }
        return new Reach(
                furthest(station, check, shape, 0, end, "tight"), furthest(station, check, shape, end, 0, "loose"));
    }

    /** From a place toward another as far as it does not go for one reason, which holds nearer the first where it holds further off. */
    private double furthest(
            Station station, int check, BlankShape shape, double fromMm, double towardMm, String reason) {
        double far = fromMm;
        double free = towardMm;
        if (said(station, check, shape, far).endsWith(reason)) {
            while (Math.abs(free - far) > NEAR_MM) {
                double middle = (far + free) / 2;
                boolean still = said(station, check, shape, middle).endsWith(reason);
                far = still ? middle : far;
                free = still ? free : middle;
            }
        }
        return far;
    }

    /** True where a joint makes the blank thicker again before a place. */
    static boolean stepsBeyond(BlankShape shape, double xMm) {
        return !shape.joints().isEmpty() && shape.joints().get(0).fromMm() <= xMm;
    }

    /** False where it does not fit there for another reason than one that another place may mend. */
    private boolean fits(Station station, int check, BlankShape shape, double xMm, String mendable) {
        String said = said(station, check, shape, xMm);
        return said.isEmpty() || said.endsWith(mendable);
    }

    /** Why it does not go there, empty where it does. */
    private String said(Station station, int check, BlankShape shape, double xMm) {
        Refusal refusal = new Refusal();
        Placed placed = new Placed(station, shelf.checks[check], xMm, shelf.checks[check].widthMm());
        shelf.ground.rules.onPart(shelf.ground.anySetting(shape), placed, refusal);
        return refusal.refused() ? refusal.check() : "";
    }
}
