package withy.search;

import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import withy.mechanics.MassSum;
import withy.rod.BlankShape;
import withy.rod.GripFit;
import withy.rod.Station;

/**
 * The grips of one station of a shelf with what is the same on every blank: where the rear end of each may lie, and its masses as sold. Worked out when first
 * asked for. Not for several threads at once.
 */
final class GripPlaces {
    final Ground ground;
    final Station station;
    final Cut[] cuts;
    /** How far behind the reel foot a grip that fills ends at most, mm. */
    final double behindMm;
    /** How far at least, mm. */
    final double shallowMm;

    private final Shelf shelf;
    private final DoubleFunction<Range> ranges;
    private final @Nullable Reach[] reaches;
    private final @Nullable MassSum[] sold;
    private final Map<String, GripMasses> onBlanks = new HashMap<>();

    private GripPlaces(Shelf shelf, Cut[] cuts, Station station, DoubleFunction<Range> ranges) {
        this.shelf = shelf;
        this.ground = shelf.ground;
        this.cuts = cuts;
        this.station = station;
        this.ranges = ranges;
        this.behindMm = shelf.deepestMm + shelf.widestCheckMm;
        this.shallowMm = shelf.shallowestMm;
        this.reaches = new Reach[cuts.length];
        this.sold = new MassSum[cuts.length];
    }

    /** Where the rear end of a grip lies at least and at most, told from the reel foot, mm; at the butt it lies wherever that is. */
    private record Range(double fromMm, double toMm, boolean atButt) {}

    /**
     * Where a grip may stand.
     *
     * @param fromMm its rear end at least, told from the reel foot
     * @param toMm its rear end at most
     * @param tightestMm its rear end where the blank under it is thickest, mm from the butt
     * @param loosestMm its rear end where it is thinnest, mm from the butt
     */
    record Reach(double fromMm, double toMm, double tightestMm, double loosestMm) {}

    /** Of the rear or full grips of a shelf. */
    static GripPlaces rears(Shelf shelf) {
        double behind = shelf.deepestMm + shelf.widestCheckMm;
        return new GripPlaces(shelf, shelf.rears, Station.REAR_GRIP, length -> {
            return Double.isNaN(length)
                    ? atButt(shelf)
                    : new Range(-behind - length, -shelf.shallowestMm - length, false);
        });
    }

    /** Of the butt grips. */
    static GripPlaces butts(Shelf shelf) {
        Range butt = atButt(shelf);
        return new GripPlaces(shelf, shelf.butts, Station.BUTT_GRIP, length -> butt);
    }

    /** Of the fore grips. */
    static GripPlaces fores(Shelf shelf) {
        Range ahead = new Range(shelf.shortestFrontMm, shelf.longestFrontMm + shelf.widestCheckMm, false);
        return new GripPlaces(shelf, shelf.fores, Station.FORE_GRIP, length -> ahead);
    }

    private static Range atButt(Shelf shelf) {
        return new Range(-shelf.ground.lastFoot(), -shelf.ground.firstFoot(), true);
    }

    /** The grips on one blank. */
    GripMasses on(BlankShape shape) {
        return onBlanks.computeIfAbsent(
                shape.blank().id(), id -> new GripMasses(this, new OneBlank(shelf, shape), shape));
    }

    /** Where one may stand. */
    Reach reach(int i) {
        Reach known = reaches[i];
        if (known == null) {
            known = reachNow(cuts[i]);
            reaches[i] = known;
        }
        return known;
    }

    private Reach reachNow(Cut cut) {
        Range range = ranges.apply(cut.lengthMm());
        double length = cut.fills() ? 0 : cut.lengthMm();
        double rear = range.atButt ? 0 : Math.max(0, ground.firstFoot() + range.fromMm);
        double front = Math.max(rear, (range.atButt ? 0 : ground.lastFoot() + range.toMm) + length);
        return new Reach(range.fromMm, range.toMm, rear, Math.max(rear, front - length));
    }

    /** Masses of one of fixed length as sold and cut, its bore not yet made, told from its rear end, g. */
    MassSum sold(int i) {
        MassSum known = sold[i];
        if (known == null) {
            known = new GripFit(0, 0, 0, 0).mass(cuts[i].grip(), 0, cuts[i].lengthMm());
            sold[i] = known;
        }
        return known;
    }
}
