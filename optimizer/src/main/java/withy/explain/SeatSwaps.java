package withy.explain;

import java.util.ArrayList;
import java.util.List;
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
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Rulebook;
import withy.rules.Seams;

/** A build with another seat and the hoods and arbors that go with it, everything else as it is. */
final class SeatSwaps {
    private static final Rulebook RULES = Rulebook.standard();
    private static final Seams SEAMS = new Seams(RULES);

    private final Inquiry inquiry;
    private final Rod rod;
    private final Refusal refusal = new Refusal();

    /**
     * @param rod the build, measured
     */
    SeatSwaps(Inquiry inquiry, Rod rod) {
        this.inquiry = inquiry;
        this.rod = rod;
    }

    /** With one seat: those that go on the blank here; the bare seat where none does. */
    List<Build> of(ReelSeat seat) {
        List<Build> builds = sets(seat).stream().map(this::seated).toList();
        return builds.isEmpty() ? List.of(seated(new SeatSet(seat, null, null, 0))) : builds;
    }

    /** With one seat: those that go on the blank here between what stands behind the seat and ahead of it; no others are legal. */
    List<Build> joined(ReelSeat seat) {
        return sets(seat).stream().filter(this::joins).map(this::seated).toList();
    }

    private List<SeatSet> sets(ReelSeat seat) {
        List<@Nullable Arbor> arbors = new ArrayList<>();
        arbors.add(null);
        arbors.addAll(inquiry.catalog().all(PartKind.ARBOR, Arbor.class));
        List<SeatSet> sets = new ArrayList<>();
        double rear = rod.setting().footMm() - seat.footCentreMm();
        for (Hood hood : hoods(seat)) {
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
        Build with = rod.build().with(Station.SEAT, Choice.of(set.seat().id()));
        with = hood == null ? with.without(Station.HOOD) : with.with(Station.HOOD, Choice.of(hood.id()));
        return arbor == null
                ? with.without(Station.SEAT_ARBORS)
                : with.with(Station.SEAT_ARBORS, Choice.of(arbor.id()));
    }
}
