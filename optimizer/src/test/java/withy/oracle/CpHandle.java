package withy.oracle;

import static withy.oracle.CpRod.byPart;
import static withy.oracle.CpRod.sum;
import static withy.oracle.CpRod.where;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.oracle.CpRod.Piece;
import withy.oracle.CpRod.SeatPiece;
import withy.rod.Build.Choice;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.SeatGap;
import withy.rod.SeatSet;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Seams;
import withy.rules.Unit;

/**
 * The handle of one layout in a constraint model. Places follow from the parts between them and the seat: each station's literals leave from the
 * places the one before may reach, as many as arrive there.
 */
final class CpHandle {
    private final CpRod rod;
    private final Seams seams;
    private final boolean split;
    private final List<SeatPiece> seats = new ArrayList<>();
    private final List<Piece> caps = new ArrayList<>();
    private final List<Piece> butts = new ArrayList<>();
    private List<Piece> rearChecks = List.of();
    private List<Piece> rears = List.of();
    private List<Piece> foreChecks = List.of();
    private List<Piece> fores = List.of();
    private List<Piece> endChecks = List.of();
    private List<Piece> keepers = List.of();
    private List<Piece> decals = List.of();
    private Map<Long, List<Piece>> fronts = Map.of();

    CpHandle(CpRod rod) {
        this.rod = rod;
        this.seams = new Seams(rod.rules);
        this.split = rod.setting.layout().form() == HandleForm.SPLIT;
    }

    /** How one station's parts lie from a place on. */
    private interface Lay {
        /** Length the choice takes from here, mm. */
        double length(Part part, Choice choice, double fromMm);
    }

    List<SeatPiece> seats() {
        return seats;
    }

    List<Piece> caps() {
        return caps;
    }

    void build() {
        seatSets();
        butt();
        Map<Long, List<Piece>> behind = new TreeMap<>();
        Map<Long, List<Piece>> ahead = new TreeMap<>();
        for (SeatPiece seat : seats) {
            at(behind, seat.set().fromMm()).add(seat.seat());
            at(ahead, seat.set().toMm()).add(seat.seat());
        }
        Map<Long, List<Piece>> reached = new TreeMap<>();
        List<@Nullable Choice> checks = rod.menu.at(Station.REAR_CHECK, PartKind.CHECK, true);
        rearChecks = stage(Station.REAR_CHECK, checks, behind, reached, -1, (p, c, x) -> ((Check) p).widthMm());
        List<@Nullable Choice> grips =
                rod.menu.grips(Station.REAR_GRIP, split ? Grip.Place.REAR : Grip.Place.FULL, false);
        Lay rearLay = (part, choice, x) -> split ? cut((Grip) part, choice) : x;
        rears = stage(Station.REAR_GRIP, grips, reached, new TreeMap<>(), -1, rearLay);
        reached = new TreeMap<>();
        checks = rod.menu.at(Station.FORE_CHECK, PartKind.CHECK, true);
        foreChecks = stage(Station.FORE_CHECK, checks, ahead, reached, 1, (p, c, x) -> ((Check) p).widthMm());
        Map<Long, List<Piece>> further = new TreeMap<>();
        grips = rod.menu.grips(Station.FORE_GRIP, Grip.Place.FORE, true);
        fores = stage(Station.FORE_GRIP, grips, reached, further, 1, (part, choice, x) -> cut((Grip) part, choice));
        fronts = new TreeMap<>();
        checks = rod.menu.at(Station.WINDING_CHECK, PartKind.CHECK, true);
        endChecks = stage(Station.WINDING_CHECK, checks, further, fronts, 1, (p, c, x) -> ((Check) p).widthMm());
        keepers = atFront(Station.KEEPER, rod.menu.at(Station.KEEPER, PartKind.KEEPER, true));
        decals = atFront(Station.DECAL, rod.menu.decals());
        wish(rod.brief.handle().keeper(), keepers);
        wish(rod.brief.handle().foreGrip(), fores);
        seamsBehind();
        seamsAhead();
    }

    private void seatSets() {
        for (Choice seatChoice : rod.menu.at(Station.SEAT, PartKind.REEL_SEAT, false)) {
            ReelSeat seat = (ReelSeat) part(seatChoice);
            double from = rod.setting.footMm() - seat.footCentreMm();
            for (Choice hoodChoice : rod.menu.at(Station.HOOD, PartKind.HOOD, true)) {
                for (Choice arborChoice : rod.menu.at(Station.SEAT_ARBORS, PartKind.ARBOR, true)) {
                    Hood hood = hoodChoice == null ? null : (Hood) part(hoodChoice);
                    Arbor arbor = arborChoice == null ? null : (Arbor) part(arborChoice);
                    seatSet(new SeatSet(seat, hood, arbor, from), seatChoice, hoodChoice, arborChoice);
                }
            }
        }
        rod.model.addEquality(sum(seats.stream().map(SeatPiece::seat).toList()), 1);
    }

    private void seatSet(SeatSet set, Choice seatChoice, @Nullable Choice hoodChoice, @Nullable Choice arborChoice) {
        rod.rules.onSeat(rod.setting, set, rod.refusal.reset());
        boolean kept = !rod.refusal.refused();
        double length = set.seat().lengthMm();
        Placed at = new Placed(Station.SEAT, set.seat(), set.fromMm(), length);
        kept = kept && rod.fits(at);
        Placed hoodAt = set.hood() == null ? null : new Placed(Station.HOOD, set.hood(), set.fromMm(), 0);
        Placed arborAt =
                set.arbor() == null ? null : new Placed(Station.SEAT_ARBORS, set.arbor(), set.fromMm(), length);
        kept = kept && (hoodAt == null || rod.fits(hoodAt)) && (arborAt == null || rod.fits(arborAt));
        if (!kept) {
            return;
        }
        Piece seat = rod.add(Station.SEAT, seatChoice, set.seat(), at, rod.fitter.seat(set), 1);
        Piece hood =
                hoodAt == null ? null : rod.add(Station.HOOD, hoodChoice, set.hood(), hoodAt, rod.fitter.hood(set), 1);
        Piece arbor = null;
        if (arborAt != null && set.arbor() != null) {
            int count = SeatGap.of(set, rod.setting).pieces(set.arbor());
            arbor = rod.add(Station.SEAT_ARBORS, arborChoice, set.arbor(), arborAt, rod.fitter.arbors(set), count);
        }
        for (Piece other : new Piece[] {hood, arbor}) {
            if (other != null) {
                rod.model.addEquality(other.literal(), seat.literal());
            }
        }
        seats.add(new SeatPiece(seat, hood, arbor, set));
    }

    private void butt() {
        for (Choice choice : rod.menu.at(Station.BUTT_CAP, PartKind.BUTT_CAP, true)) {
            if (choice == null) {
                caps.add(rod.empty(Station.BUTT_CAP));
            } else {
                ButtCap cap = (ButtCap) part(choice);
                Placed placed = new Placed(Station.BUTT_CAP, cap, -cap.addedMm(), cap.addedMm());
                if (rod.fits(placed)) {
                    caps.add(rod.add(Station.BUTT_CAP, choice, cap, placed, rod.fitter.cap(cap), 1));
                }
            }
        }
        rod.model.addEquality(sum(caps), 1);
        if (split) {
            for (Choice choice : rod.menu.buttGrips(HandleForm.SPLIT)) {
                Grip grip = (Grip) part(choice);
                Placed placed = new Placed(Station.BUTT_GRIP, grip, 0, cut(grip, choice));
                if (rod.fits(placed)) {
                    Share share = rod.fitter.grip(grip, 0, placed.lengthMm());
                    butts.add(rod.add(Station.BUTT_GRIP, choice, grip, placed, share, 1));
                }
            }
            rod.model.addEquality(sum(butts), 1);
        }
    }

    /** Lays one station's choices from every place reached; as many leave a place as arrive there. */
    private List<Piece> stage(
            Station station,
            List<@Nullable Choice> choices,
            Map<Long, List<Piece>> from,
            Map<Long, List<Piece>> to,
            int direction,
            Lay lay) {
        List<Piece> all = new ArrayList<>();
        from.forEach((place, arriving) -> {
            double x = place / 1000.0;
            List<Piece> leaving = new ArrayList<>();
            for (Choice choice : choices) {
                Part part = choice == null ? null : part(choice);
                double length = part == null || choice == null ? 0 : lay.length(part, choice, x);
                double start = direction < 0 ? x - length : x;
                Piece piece = piece(station, choice, part, start, length);
                if (piece != null) {
                    leaving.add(piece);
                    at(to, x + direction * length).add(piece);
                }
            }
            rod.model.addEquality(sum(leaving), sum(arriving));
            all.addAll(leaving);
        });
        return all;
    }

    private @Nullable Piece piece(Station station, @Nullable Choice choice, @Nullable Part part, double x, double mm) {
        if (part == null) {
            return rod.empty(station);
        }
        Placed placed = new Placed(station, part, x, mm);
        if (!rod.fits(placed)) {
            return null;
        }
        Share share = part instanceof Grip grip
                ? mm > 0 ? rod.fitter.grip(grip, x, mm) : Share.NONE
                : rod.fitter.check((Check) part, x);
        return rod.add(station, choice, part, placed, share, 1);
    }

    /** Keeper or inscription ahead of the handle. */
    private List<Piece> atFront(Station station, List<@Nullable Choice> choices) {
        List<Piece> all = new ArrayList<>();
        fronts.forEach((place, arriving) -> {
            double front = place / 1000.0;
            List<Piece> leaving = new ArrayList<>();
            for (Choice choice : choices) {
                Part part = choice == null ? null : part(choice);
                if (part instanceof Keeper keeper) {
                    Placed placed = new Placed(station, keeper, front + Fitter.KEEPER_AHEAD_MM, 0);
                    leaving.add(rod.wrapped(station, choice, keeper, placed, fitter -> fitter.keeper(keeper, front)));
                } else if (part instanceof Decal decal) {
                    Placed placed = new Placed(station, decal, front + Fitter.DECAL_AHEAD_MM, decal.widthMm());
                    leaving.add(rod.wrapped(station, choice, decal, placed, fitter -> fitter.decal(decal, front)));
                } else {
                    leaving.add(rod.empty(station));
                }
            }
            rod.model.addEquality(sum(leaving), sum(arriving));
            all.addAll(leaving);
        });
        return all;
    }

    private void wish(@Nullable Wish<Boolean> wish, List<Piece> some) {
        if (wish != null && wish.hard()) {
            rod.model.addEquality(sum(where(some, piece -> !piece.empty())), wish.value() ? 1 : 0);
        }
    }

    /** Butt end, edges, the bare stretch, and rear grip against check and seat. */
    private void seamsBehind() {
        Station first = split ? Station.BUTT_GRIP : Station.REAR_GRIP;
        Map<String, List<Piece>> firsts = byPart(split ? butts : rears);
        byPart(caps)
                .forEach((capId, ofCap) -> firsts.forEach((id, ofGrip) -> {
                    seams.butt(rod.setting, (ButtCap) rod.catalog.find(capId), first, grip(id), rod.refusal.reset());
                    forbid(ofCap, ofGrip);
                }));
        if (split) {
            byPart(butts).forEach((id, of) -> {
                seams.buttGripEdge(rod.setting, grip(id), rod.refusal.reset());
                forbid(of);
            });
            byPart(rears).forEach((id, of) -> {
                seams.rearGripEdge(rod.setting, grip(id), rod.refusal.reset());
                forbid(of);
            });
            for (Piece butt : butts) {
                for (Piece rear : rears) {
                    seams.split(rod.setting, placed(butt), placed(rear), rod.refusal.reset());
                    forbid(List.of(butt), List.of(rear));
                }
            }
        }
        faces().forEach((face, ofSeat) -> byPart(rearChecks)
                .forEach((checkId, ofCheck) -> byPart(rears).forEach((id, ofGrip) -> {
                    Check check = (Check) rod.catalog.find(checkId);
                    seams.behindSeat(rod.setting, grip(id), check, face, rod.refusal.reset());
                    forbid(seatPieces(ofSeat), ofCheck, ofGrip);
                })));
    }

    /** Seat, fore check, fore grip, winding check; grips of one material; room for stripper and joint. */
    private void seamsAhead() {
        byPart(rears)
                .forEach((rearId, ofRear) -> byPart(where(fores, p -> !p.empty()))
                        .forEach((foreId, ofFore) -> {
                            rod.rules.onGrips(rod.setting, grip(rearId), grip(foreId), rod.refusal.reset());
                            forbid(ofRear, ofFore);
                        }));
        faces().forEach((face, ofSeat) -> byPart(foreChecks)
                .forEach((checkId, ofCheck) -> byPart(fores).forEach((foreId, ofFore) -> {
                    Check check = (Check) rod.catalog.find(checkId);
                    Grip fore = (Grip) rod.catalog.find(foreId);
                    seams.aheadOfSeat(rod.setting, face, check, fore, rod.refusal.reset());
                    forbid(seatPieces(ofSeat), ofCheck, ofFore);
                    byPart(endChecks).forEach((endId, ofEnd) -> {
                        Check end = (Check) rod.catalog.find(endId);
                        seams.frontEnd(rod.setting, face, check, fore, end, rod.refusal.reset());
                        forbid(seatPieces(ofSeat), ofCheck, ofFore, ofEnd);
                    });
                })));
    }

    /** Handle, keeper and inscription end before the stripper's rear foot and the first joint. */
    void clear(List<Piece> strippers) {
        fronts.forEach((place, some) -> keepClear(place / 1000.0, some, strippers));
        for (Piece keeper : where(keepers, p -> !p.empty())) {
            keepClear(placed(keeper).fromMm() + ((Keeper) part(keeper)).footLengthMm(), List.of(keeper), strippers);
        }
        for (Piece decal : where(decals, p -> !p.empty())) {
            keepClear(placed(decal).fromMm() + ((Decal) part(decal)).widthMm(), List.of(decal), strippers);
        }
    }

    private void keepClear(double endMm, List<Piece> some, List<Piece> strippers) {
        if (!rod.setting.shape().joints().isEmpty()) {
            double joint = rod.setting.shape().joints().get(0).fromMm();
            if (Unit.MM.quantise(joint - endMm) < 0) {
                rod.model.addEquality(sum(some), 0);
            }
        }
        for (Piece stripper : strippers) {
            double foot = ((withy.catalog.Guide) part(stripper)).footLengthMm();
            if (Unit.MM.quantise(placed(stripper).fromMm() - foot - endMm) < 0) {
                rod.notTogether(some, List.of(stripper));
            }
        }
    }

    /** Seat sets by what their neighbours see: seat and hood. */
    private Map<SeatSet, List<SeatPiece>> faces() {
        Map<SeatSet, List<SeatPiece>> faces = new java.util.LinkedHashMap<>();
        for (SeatPiece seat : seats) {
            SeatSet set = seat.set();
            SeatSet face = new SeatSet(set.seat(), set.hood(), null, set.fromMm());
            faces.computeIfAbsent(face, key -> new ArrayList<>()).add(seat);
        }
        return faces;
    }

    private static List<Piece> seatPieces(List<SeatPiece> some) {
        return some.stream().map(SeatPiece::seat).toList();
    }

    @SafeVarargs
    private void forbid(List<Piece>... groups) {
        if (rod.refusal.refused()) {
            rod.notTogether(groups);
        }
    }

    private static List<Piece> at(Map<Long, List<Piece>> places, double x) {
        return places.computeIfAbsent(Math.round(x * 1000), key -> new ArrayList<>());
    }

    private Part part(@Nullable Choice choice) {
        return java.util.Objects.requireNonNull(
                rod.catalog.find(java.util.Objects.requireNonNull(choice).partId()));
    }

    private static Part part(Piece piece) {
        return java.util.Objects.requireNonNull(piece.part());
    }

    private static Placed placed(Piece piece) {
        return java.util.Objects.requireNonNull(piece.placed());
    }

    private Grip grip(String id) {
        return (Grip) java.util.Objects.requireNonNull(rod.catalog.find(id));
    }

    private static double cut(Grip grip, @Nullable Choice choice) {
        return choice != null && choice.cutMm() > 0 ? choice.cutMm() : grip.lengthMm();
    }
}
