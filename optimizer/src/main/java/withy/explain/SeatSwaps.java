package withy.explain;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Fitter;
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Rulebook;
import withy.rules.Seams;

/** A build with another seat and the hoods and arbors that go with it, everything else as it is. */
final class SeatSwaps {
    private static final Rulebook RULES = Rulebook.standard();
    private static final Seams SEAMS = new Seams(RULES);

    private static final Set<Station.Place> SEATED =
            EnumSet.of(Station.Place.SEAT, Station.Place.HOOD, Station.Place.SEAT_ARBORS);

    private final Inquiry inquiry;
    private final Rod rod;
    private final Refusal refusal = new Refusal();
    private final Fitter fitter;
    private final Map<List<Double>, Share> rests = new HashMap<>();

    /**
     * @param rod the build, measured
     */
    SeatSwaps(Inquiry inquiry, Rod rod) {
        this.inquiry = inquiry;
        this.rod = rod;
        this.fitter = new Fitter(rod.setting(), rod.with(), rod.tariff());
    }

    /** With one seat: those that go on the blank here; the bare seat where none does. */
    List<Build> of(ReelSeat seat) {
        List<Build> builds = sets(seat, hood -> true).stream().map(this::seated).toList();
        return builds.isEmpty() ? List.of(seated(new SeatSet(seat, null, null, 0))) : builds;
    }

    /**
     * With one seat: those that go on the blank here between what stands behind the seat and ahead of it; no others are legal. Only of those that
     * are wanted.
     */
    List<Build> joined(ReelSeat seat, Swaps.Wanted wanted) {
        return sets(seat, hood -> wanted.part(Station.HOOD, hood)).stream()
                .filter(set -> wanted.equals(Swaps.Wanted.ANY) || wanted.sums(total(set)))
                .filter(this::joins)
                .map(this::seated)
                .toList();
    }

    /** What a rod has in all with a seat: seat, hood and arbors are added to what everything else adds where a seat begins and ends so. */
    private Share total(SeatSet set) {
        return rest(set).plus(fitter.seat(set)).plus(fitter.hood(set)).plus(fitter.arbors(set));
    }

    private Share rest(SeatSet set) {
        return rests.computeIfAbsent(List.of(set.fromMm(), set.toMm()), ends -> {
            Share rest = Share.NONE;
            Map<Station, Share> shares = Rod.measure(rod.setting(), seated(set)).shares();
            for (Map.Entry<Station, Share> share : shares.entrySet()) {
                rest = SEATED.contains(share.getKey().place()) ? rest : rest.plus(share.getValue());
            }
            return rest;
        });
    }

    private List<SeatSet> sets(ReelSeat seat, Predicate<Hood> willDo) {
        List<@Nullable Arbor> arbors = new ArrayList<>();
        arbors.add(null);
        arbors.addAll(inquiry.catalog().all(PartKind.ARBOR, Arbor.class));
        List<SeatSet> sets = new ArrayList<>();
        double rear = rod.setting().footMm() - seat.footCentreMm();
        for (Hood hood : hoods(seat)) {
            if (hood != null && !willDo.test(hood)) {
                continue;
            }
            for (Arbor arbor : arbors) {
                SeatSet set = new SeatSet(seat, hood, arbor, rear);
                RULES.onSeat(rod.setting(), set, refusal.reset());
                if (!refusal.refused()) {
                    sets.add(set);
                }
            }
        }
        return sets;
    }

    private List<@Nullable Hood> hoods(ReelSeat seat) {
        List<@Nullable Hood> hoods = new ArrayList<>();
        hoods.add(null);
        for (Hood hood : inquiry.catalog().all(PartKind.HOOD, Hood.class)) {
            if (hood.family().equals(seat.hoodFamily()) && hood.size() == seat.size()) {
                RULES.onCandidate(inquiry.brief(), inquiry.catalog(), hood, refusal.reset());
                if (!refusal.refused()) {
                    hoods.add(hood);
                }
            }
        }
        return hoods;
    }

    private boolean joins(SeatSet set) {
        Check foreCheck = part(Station.FORE_CHECK, Check.class);
        Grip foreGrip = part(Station.FORE_GRIP, Grip.class);
        Grip rearGrip = part(Station.REAR_GRIP, Grip.class);
        SEAMS.behindSeat(rod.setting(), rearGrip, part(Station.REAR_CHECK, Check.class), set, refusal.reset());
        if (!refusal.refused()) {
            SEAMS.aheadOfSeat(rod.setting(), set, foreCheck, foreGrip, refusal);
        }
        if (!refusal.refused()) {
            Check end = part(Station.WINDING_CHECK, Check.class);
            SEAMS.frontEnd(rod.setting(), set, foreCheck, foreGrip, end, refusal);
        }
        return !refusal.refused();
    }

    private <T extends Part> @Nullable T part(Station station, Class<T> kind) {
        Part part = rod.partAt(station);
        return kind.isInstance(part) ? kind.cast(part) : null;
    }

    private Build seated(SeatSet set) {
        Hood hood = set.hood();
        Arbor arbor = set.arbor();
        SortedMap<Station, Choice> choices = new TreeMap<>(rod.build().choices());
        choices.put(Station.SEAT, Choice.of(set.seat().id()));
        fill(choices, Station.HOOD, hood);
        fill(choices, Station.SEAT_ARBORS, arbor);
        return new Build(rod.build().layout(), choices);
    }

    private static void fill(SortedMap<Station, Choice> choices, Station station, @Nullable Part part) {
        if (part == null) {
            choices.remove(station);
        } else {
            choices.put(station, Choice.of(part.id()));
        }
    }
}
