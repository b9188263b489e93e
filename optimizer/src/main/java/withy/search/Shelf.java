package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * What lies ready for the handle under one placing of the forced parts and one handle form: everything that is the same wherever on a blank the
 * reel stands. Rules between two parts, and of an edge, are asked here once: they depend on brief and parts only.
 */
final class Shelf {
    final Ground ground;
    final Stations stations;
    final HandleForm form;
    final boolean split;
    final Cut[] rears;
    final Cut[] butts;
    final Cut[] fores;
    final ReelSeat[] seats;
    final List<Arbor> arbors;
    final Check[] checks;
    /** Furthest and least that a seat reaches behind the foot centre, mm. */
    final double deepestMm;

    final double shallowestMm;
    /** Furthest and least that a seat reaches ahead of the foot centre, mm. */
    final double longestFrontMm;

    final double shortestFrontMm;
    final double widestCheckMm;
    /** Longest fore grip, mm. */
    final double longestForeMm;
    /** Which grips go beside which. */
    final Neighbours neighbours;
    /** Which fore grips go ahead of which seat. */
    final ForeJoins foreJoins;
    /** Which checks go where on a blank. */
    final CheckPlaces checkPlaces;
    /** What checks are worth. */
    final CheckWorth checkWorth = new CheckWorth(this);
    /** What is told of the seat where there is one only. */
    final OneSeat oneSeat;
    /** What is told of parts that are given. */
    final GivenParts given;

    final GripPlaces rearPlaces;
    final GripPlaces buttPlaces;
    final GripPlaces forePlaces;
    /** Where the reel foot may stand by the lengths of what lies here. */
    final Room room;

    private final Map<Station, int[]> checksFor = new HashMap<>();
    private final Map<String, BitSet> caps = new HashMap<>();
    private final Map<Double, Joins> joins = new HashMap<>();
    private final Map<String, List<Joins>> joinsOf = new HashMap<>();
    private @Nullable AnyBlank anyBlank;
    private final Map<String, List<Hood>> hoods = new HashMap<>();
    private final PriceLists lists = new PriceLists(this);

    Shelf(Ground ground, Stations stations, HandleForm form) {
        this.ground = ground;
        this.stations = stations;
        this.form = form;
        this.split = form == HandleForm.SPLIT;
        Refusal refusal = new Refusal();
        // a full handle has no place for a butt grip that is asked for
        boolean buttGripGiven = stations.givenAt(Station.BUTT_GRIP) != null;
        List<Grip> full = buttGripGiven ? List.of() : ground.fullGrips;
        Mates mates = Mates.of(
                this,
                cuts(Station.REAR_GRIP, split ? ground.rearGrips : full, refusal),
                cuts(Station.BUTT_GRIP, split ? ground.buttGrips : List.of(), refusal),
                cuts(Station.FORE_GRIP, ground.foreGrips, refusal),
                mustHaveForeGrip());
        this.rears = mates.rears();
        this.butts = mates.butts();
        this.fores = mates.fores();
        this.seats = ground.seats.stream()
                .filter(seat -> stations.allows(Station.SEAT, seat))
                .filter(seat ->
                        stations.optional(Station.HOOD) || !hoodsFor(seat).isEmpty())
                .toArray(ReelSeat[]::new);
        boolean anyArbor = stations.optional(Station.SEAT_ARBORS);
        this.arbors = (anyArbor ? ground.arborsWorthIt : ground.arbors)
                .stream()
                        .filter(arbor -> stations.allows(Station.SEAT_ARBORS, arbor))
                        .toList();
        this.checks = ground.checks.toArray(Check[]::new);
        double deepest = 0;
        double shallowest = Double.MAX_VALUE;
        double longest = 0;
        double shortest = Double.MAX_VALUE;
        for (ReelSeat seat : seats) {
            deepest = Math.max(deepest, seat.footCentreMm());
            shallowest = Math.min(shallowest, seat.footCentreMm());
            longest = Math.max(longest, seat.lengthMm() - seat.footCentreMm());
            shortest = Math.min(shortest, seat.lengthMm() - seat.footCentreMm());
        }
        this.deepestMm = deepest;
        this.shallowestMm = seats.length == 0 ? 0 : shallowest;
        this.longestFrontMm = longest;
        this.shortestFrontMm = seats.length == 0 ? 0 : shortest;
        this.longestForeMm =
                ground.foreGrips.stream().mapToDouble(Grip::lengthMm).max().orElse(0);
        this.widestCheckMm =
                ground.checks.stream().mapToDouble(Check::widthMm).max().orElse(0);
        this.rearPlaces = GripPlaces.rears(this);
        this.buttPlaces = GripPlaces.butts(this);
        this.forePlaces = GripPlaces.fores(this);
        this.neighbours = new Neighbours(this);
        this.foreJoins = new ForeJoins(this);
        this.checkPlaces = new CheckPlaces(this);
        this.oneSeat = new OneSeat(this);
        this.given = new GivenParts(this);
        this.room = new Room(this);
    }

    private Cut[] cuts(Station station, List<Grip> grips, Refusal refusal) {
        List<Cut> cuts = new ArrayList<>();
        for (Grip grip : grips) {
            if (!stations.allows(station, grip) || !edgeFinished(station, grip, refusal)) {
                continue;
            }
            int index = station.equals(Station.FORE_GRIP) ? -1 : ground.gripMatch.index(grip, split);
            long milli = ground.tariff.partMilli(grip, 1) + ground.tariff.workMilli(grip);
            long style = ground.style.part(ground.blanks.get(0), form, station, grip, 1);
            long missed = ground.wishes.part(station, grip, 1)
                    + (station.equals(Station.FORE_GRIP) ? ground.wishes.foreGrip(true) : 0);
            List<Double> lengths = station.equals(Station.REAR_GRIP) && !split
                    ? List.of(Double.NaN)
                    : lengths(stations.cutMm(station), grip);
            for (double length : lengths) {
                cuts.add(new Cut(grip, length, index, milli, style, missed));
            }
        }
        return cuts.toArray(Cut[]::new);
    }

    /** A split handle's grips show an edge to the bare blank between them. */
    private boolean edgeFinished(Station station, Grip grip, Refusal refusal) {
        if (!split || station.equals(Station.FORE_GRIP)) {
            return true;
        }
        if (station.equals(Station.BUTT_GRIP)) {
            ground.seams.buttGripEdge(ground.anySetting(), grip, refusal.reset());
        } else {
            ground.seams.rearGripEdge(ground.anySetting(), grip, refusal.reset());
        }
        return !refusal.refused();
    }

    private static List<Double> lengths(double givenMm, Grip grip) {
        return givenMm > 0 ? List.of(givenMm) : Cut.lengthsOf(grip);
    }

    /** Checks that may stand at a station, as indexes into those that are open. */
    int[] checksFor(Station station) {
        return checksFor.computeIfAbsent(
                station,
                any -> IntStream.range(0, checks.length)
                        .filter(c -> stations.allows(station, checks[c]))
                        .toArray());
    }

    /** Moving hoods of a seat's family and size. */
    List<Hood> hoodsFor(ReelSeat seat) {
        return hoods.computeIfAbsent(seat.id(), id -> {
            List<Hood> fitting = new ArrayList<>();
            for (Hood hood : ground.hoods) {
                if (hood.size() == seat.size()
                        && hood.family().equals(seat.hoodFamily())
                        && stations.allows(Station.HOOD, hood)) {
                    fitting.add(hood);
                }
            }
            return fitting;
        });
    }

    /** True where a handle must have a fore grip. */
    boolean mustHaveForeGrip() {
        Wish<Boolean> wish = foreGripWish();
        return !stations.optional(Station.FORE_GRIP) || wish != null && wish.hard() && wish.value();
    }

    /** True where a handle may have one. */
    boolean mayHaveForeGrip() {
        Wish<Boolean> wish = foreGripWish();
        return fores.length > 0 && (wish == null || !wish.hard() || wish.value());
    }

    private @Nullable Wish<Boolean> foreGripWish() {
        return ground.handleRule ? ground.brief.handle().foreGrip() : null;
    }

    /** Caps that fit the blank's butt, whatever else stands where, as indexes into those that are open ({@link Ground#caps}). */
    BitSet capsOn(BlankShape shape) {
        return caps.computeIfAbsent(shape.blank().id(), id -> {
            Setting any = ground.anySetting(shape);
            Refusal refusal = new Refusal();
            BitSet fitting = new BitSet();
            for (int c = 0; c < ground.caps.size(); c++) {
                ButtCap cap = ground.caps.get(c);
                Placed placed = new Placed(Station.BUTT_CAP, cap, -cap.addedMm(), cap.addedMm());
                ground.rules.onPart(any, placed, refusal.reset());
                fitting.set(c, !refusal.refused() && stations.allows(Station.BUTT_CAP, cap));
            }
            return fitting;
        });
    }

    /** False where nothing closes the butt end of a blank, wherever the reel stands: no cap of a group that goes on goes beside a grip there, and no grip goes without. */
    boolean mayClose(BlankShape shape, Ends.Group ends) {
        BitSet on = capsOn(shape);
        for (BitSet may : neighbours.capSets()) {
            if (may.get(ground.caps.size()) && ends.withoutCap()) {
                return true;
            }
            for (int c = on.nextSetBit(0); c >= 0; c = on.nextSetBit(c + 1)) {
                if (may.get(c) && ends.has(ground.caps.get(c))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** What joins rear grips to a seat, the same for every set with such a rear face. */
    Joins joins(SeatSet set) {
        return joins.computeIfAbsent(set.rearFaceMm(), any -> new Joins(this, set));
    }

    /** The same of a seat with each hood it may have, and without one where it may be. */
    List<Joins> joinsOf(ReelSeat seat) {
        return joinsOf.computeIfAbsent(seat.id(), any -> {
            List<Joins> all = new ArrayList<>();
            if (stations.optional(Station.HOOD)) {
                all.add(joins(new SeatSet(seat, null, null, 0)));
            }
            for (Hood hood : hoodsFor(seat)) {
                Joins hooded = joins(new SeatSet(seat, hood, null, 0));
                if (!all.contains(hooded)) {
                    all.add(hooded);
                }
            }
            return all;
        });
    }

    GripMasses rearMasses(BlankShape shape) {
        return rearPlaces.on(shape);
    }

    GripMasses buttMasses(BlankShape shape) {
        return buttPlaces.on(shape);
    }

    GripMasses foreMasses(BlankShape shape) {
        return forePlaces.on(shape);
    }

    /** Every blank that is open at once. */
    AnyBlank anyBlank() {
        AnyBlank known = anyBlank;
        if (known == null) {
            known = new AnyBlank(this);
            anyBlank = known;
        }
        return known;
    }

    /** The list under some prices. */
    PriceList priced(Linear k) {
        return lists.under(k);
    }
}
