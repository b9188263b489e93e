package withy.search;

import java.util.Objects;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;
import withy.mechanics.TaperProfile;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rules.Refusal;

/** The grips of one station on one blank, or on any: the least mass of each ({@link GripMass}) and which of them go on, worked out when first asked for. */
final class GripMasses {
    private final GripPlaces places;
    private final Cut[] cuts;
    private final Underlying on;
    private final @Nullable BlankShape shape;
    private final Refusal refusal = new Refusal();
    private final byte[] known;
    private final @Nullable GripMass[] masses;

    /**
     * @param on what they stand on
     * @param shape the blank, or null where each is taken to fit
     */
    GripMasses(GripPlaces places, Underlying on, @Nullable BlankShape shape) {
        this.places = places;
        this.cuts = places.cuts;
        this.on = on;
        this.shape = shape;
        this.known = new byte[cuts.length];
        this.masses = new GripMass[cuts.length];
    }

    private GripMass mass(int i) {
        GripMass mass = masses[i];
        if (mass == null) {
            mass = new GripMass(places, i, on);
            masses[i] = mass;
        }
        return mass;
    }

    /**
     * False where a grip of fixed length goes nowhere on the blank: too tight even at the thinnest place it could stand at, or too loose at the
     * thickest.
     */
    boolean possible(int i) {
        if (known[i] == 0) {
            boolean may = shape == null || cuts[i].fills() || fits(i, shape);
            known[i] = (byte) (may ? 1 : -1);
        }
        return known[i] > 0;
    }

    private boolean fits(int i, BlankShape shape) {
        GripPlaces.Reach reach = places.reach(i);
        return fits(i, shape, reach.loosestMm(), false) && fits(i, shape, reach.tightestMm(), true);
    }

    private boolean fits(int i, BlankShape shape, double rear, boolean thickest) {
        Placed placed = new Placed(places.station, cuts[i].grip(), rear, cuts[i].lengthMm());
        places.ground.rules.onPart(places.ground.anySetting(shape), placed, refusal.reset());
        return !refusal.refused() || thickest != refusal.check().equals("loose");
    }

    /** A number each costs no less than under these prices wherever the reel stands, with what follows it; {@link TrainGraph#NONE} where nothing does. */
    long[] floors(Linear k, double armMm, ToLongFunction<Cut> onward) {
        long[] floors = new long[cuts.length];
        for (int i = 0; i < floors.length; i++) {
            floors[i] = floor(i, k, armMm, onward);
        }
        return floors;
    }

    private long floor(int i, Linear k, double armMm, ToLongFunction<Cut> onward) {
        long on = onward.applyAsLong(cuts[i]);
        return TrainGraph.none(on) ? TrainGraph.NONE : mass(i).floor(k, armMm) + on;
    }

    /** All that may fit, by those numbers. */
    Ranked ranked(long[] floors) {
        return new Ranked(floors, this::possible);
    }

    /**
     * The same, by numbers that are worked out when they are asked for.
     *
     * @param lower numbers they are not below: those of any blank
     */
    Ranked ranked(Ranked lower, Linear k, double armMm, ToLongFunction<Cut> onward) {
        return Ranked.lazily(lower, this::possible, i -> floor(i, k, armMm, onward));
    }

    /** The same with the rear end at one place told from the reel foot. */
    Ranked rankedAt(double rearMm, Linear k, double armMm, ToLongFunction<Cut> onward) {
        long[] floors = new long[cuts.length];
        for (int i = 0; i < floors.length; i++) {
            long on = onward.applyAsLong(cuts[i]);
            floors[i] = TrainGraph.none(on) ? on : near(i, rearMm, rearMm, k, armMm) + on;
        }
        return new Ranked(floors, this::possible);
    }

    /**
     * Those of fixed length that lie wholly ahead of one place.
     *
     * @param lower what they cost at least wherever the reel stands
     * @param behindMm that place, told from the reel foot
     */
    Ranked rankedAhead(Ranked lower, double behindMm, Linear k, double armMm, ToLongFunction<Cut> onward) {
        return Ranked.lazily(lower, this::possible, i -> {
            GripPlaces.Reach reach = places.reach(i);
            double from = Math.max(reach.fromMm(), behindMm);
            long on = from > reach.toMm() ? TrainGraph.NONE : onward.applyAsLong(cuts[i]);
            return TrainGraph.none(on) ? TrainGraph.NONE : near(i, from, reach.toMm(), k, armMm) + on;
        });
    }

    /** Full grips that fill what lies between the butt and a seat whose reel foot stands at one place, mm from the butt. */
    Ranked filledAt(int footMm, Linear k, double armMm, ToLongFunction<Cut> onward) {
        double shortest = Math.max(0, footMm - places.behindMm);
        double longest = Math.max(shortest, footMm - places.shallowMm);
        TaperProfile profile = Objects.requireNonNull(shape).profile();
        GripMass.Stretch stretch = new GripMass.Stretch(
                footMm, shortest, longest, profile.largestBetween(0, longest), profile.at(longest));
        long[] floors = new long[cuts.length];
        for (int i = 0; i < floors.length; i++) {
            long on = onward.applyAsLong(cuts[i]);
            floors[i] = TrainGraph.none(on) ? on : mass(i).floor(stretch, k, armMm) + on;
        }
        return new Ranked(floors, this::possible);
    }

    /** Floor of a grip of fixed length with its rear end between two places told from the reel foot. */
    long near(int i, double fromMm, double toMm, Linear k, double armMm) {
        return mass(i).floor(fromMm, toMm, k, armMm);
    }
}
