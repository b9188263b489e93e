package withy.search;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Unit;

/**
 * A blank with the reel at one place and one handle form: what may stand where behind the seat, under it and ahead of it, whatever guides follow.
 * Options are made when first asked for and kept. Not for several threads at once.
 */
final class Stand {
    final Ground ground;
    final Setting setting;
    final Fitter fitter;
    final Shelf shelf;
    final Stations stations;
    private final Stations given;
    final boolean split;
    final Refusal refusal = new Refusal();
    final Ends.Group ends;
    private final Seats seats;
    private final Fits<Check> rearChecks;
    private final Fits<Check> foreChecks;
    private final Fits<Check> endChecks;
    private final Fits<Grip> rears;
    private final Fits<Grip> butts;
    private final Fits<Grip> fores;
    private final Map<Integer, Map<Consumables, TrainGraph>> trains = new HashMap<>();
    private final Map<Integer, Placing> placings = new HashMap<>();
    private final Known known;

    /** What was worked out of the handle. */
    private static final class Known {
        private final Map<Consumables, Fitter> dresses = new HashMap<>();
        private final Undressed undressed = new Undressed();
        private @Nullable List<Option<ButtCap>> caps;
        private @Nullable Handle priced;
        private @Nullable Boolean mayStand;
    }

    /**
     * @param given what is given of guides, too
     * @param setting any layout with this reel position and handle form
     * @param fitter with the adhesive that is used
     * @param ends caps that may be used
     */
    Stand(Shelf shelf, Stations given, Setting setting, Fitter fitter, Ends.Group ends) {
        this.ground = shelf.ground;
        this.shelf = shelf;
        this.setting = setting;
        this.ends = ends;
        this.fitter = fitter;
        this.stations = shelf.stations;
        this.given = given;
        this.split = shelf.split;
        this.known = new Known();
        this.seats = new Seats(this);
        this.rearChecks = new Fits<>(
                shelf.checks.length,
                (i, at) -> check(Station.REAR_CHECK, shelf.checks[i], at - shelf.checks[i].widthMm()));
        this.foreChecks = new Fits<>(shelf.checks.length, (i, at) -> check(Station.FORE_CHECK, shelf.checks[i], at));
        this.endChecks = new Fits<>(shelf.checks.length, (i, at) -> check(Station.WINDING_CHECK, shelf.checks[i], at));
        this.rears = new Fits<>(shelf.rears.length, this::rear);
        this.butts = new Fits<>(
                shelf.butts.length, (i, at) -> grip(Station.BUTT_GRIP, shelf.butts[i], 0, shelf.butts[i].lengthMm()));
        this.fores = new Fits<>(
                shelf.fores.length, (i, at) -> grip(Station.FORE_GRIP, shelf.fores[i], at, shelf.fores[i].lengthMm()));
    }

    /** The handle's side of another, with another train. */
    private Stand(Stand of, Stations given) {
        this.ground = of.ground;
        this.shelf = of.shelf;
        this.setting = of.setting;
        this.ends = of.ends;
        this.fitter = of.fitter;
        this.stations = of.stations;
        this.given = given;
        this.split = of.split;
        this.known = of.known;
        this.seats = of.seats;
        this.rearChecks = of.rearChecks;
        this.foreChecks = of.foreChecks;
        this.endChecks = of.endChecks;
        this.rears = of.rears;
        this.butts = of.butts;
        this.fores = of.fores;
    }

    /** The same with something else given of guides: what is worked out of the handle they share. */
    Stand under(Stations other) {
        return other.equals(given) ? this : new Stand(this, other);
    }

    /** False where a front end of the handle lies in the blank's first joint or beyond it. */
    boolean mayReach(double frontMm) {
        return !ground.handleRule
                || setting.shape().joints().isEmpty()
                || Unit.MM.quantise(setting.shape().joints().get(0).fromMm() - frontMm) >= 0;
    }

    /** The handle under some prices; one obtained earlier under others is no longer valid. */
    Handle priced(Linear k) {
        Handle handle = known.priced;
        if (handle == null || !handle.k.equals(k.withoutConstant())) {
            handle = new Handle(this, shelf.priced(k).on(setting.shape()));
            known.priced = handle;
        }
        return handle;
    }

    /** Cost of the cheapest handle of at least one class whatever the thread of its ends, as {@link Handle#leastUndressed}. */
    long leastUndressed(Linear k, int leastClass, long under) {
        if (!mayStand()) {
            return TrainGraph.NONE;
        }
        AtClass asked = new AtClass(k.withoutConstant(), leastClass);
        return known.undressed.least(asked, under, limit -> priced(k).leastUndressed(leastClass, limit));
    }

    /** True where some handle of at least one class costs less than a limit, whatever the thread of its ends; the first found ends it. */
    boolean anyUndressed(Linear k, int leastClass, long under) {
        if (!mayStand()) {
            return false;
        }
        AtClass asked = new AtClass(k.withoutConstant(), leastClass);
        return known.undressed.any(
                asked, Math.min(under, TrainGraph.NONE), limit -> priced(k).anyUndressed(leastClass, limit));
    }

    /** False where no handle of at least one class goes here, but for the thread of its ends. */
    boolean holds(Linear k, int leastClass) {
        return mayStand() && (shelf.seats.length == 1 || someSeat()) && SomeHandle.on(priced(k), leastClass);
    }

    /** False where what is given goes nowhere here for what is soon told of it, or the one seat there is does not. */
    private boolean mayStand() {
        Boolean may = known.mayStand;
        if (may == null) {
            may = (stations.given().isEmpty() || shelf.given.mayStand(setting))
                    && (shelf.seats.length != 1 || seatFits());
            known.mayStand = may;
        }
        return may;
    }

    /** False where the one seat there is does not fit, or no rear grip joins it. */
    boolean seatFits() {
        for (SeatGroup group : seat(0)) {
            if (!shelf.joins(group.set()).none()) {
                return true;
            }
        }
        return false;
    }

    private boolean someSeat() {
        return shelf.given.seats(setting).stream().anyMatch(i -> !seat(i).isEmpty());
    }

    /** The train that goes with one count of guides and one thread, made when first asked for. */
    TrainGraph train(Setting guides, Fitter fitter, Consumables with) {
        Map<Consumables, TrainGraph> of = trains.computeIfAbsent(guides.guideCount(), count -> new HashMap<>());
        return of.computeIfAbsent(with, one -> new TrainGraph(ground, guides, fitter, given, List.of(ends)));
    }

    /** Floors of the trains with one count of guides, made when first asked for. */
    Placing placing(int guideCount, Supplier<Placing> made) {
        return placings.computeIfAbsent(guideCount, count -> made.get());
    }

    /** Puts the ends of the handle on with one thread. */
    Fitter dress(Consumables with) {
        return known.dresses.computeIfAbsent(with, any -> new Fitter(setting, with, ground.tariff));
    }

    /** A seat of the shelf with every hood and arbor that goes with it here; none where it does not fit. */
    List<SeatGroup> seat(int i) {
        return seats.at(i);
    }

    /** A check of the shelf with its front face here, or null. */
    @Nullable
    Option<Check> rearCheck(int i, double frontMm) {
        return rearChecks.at(i, frontMm);
    }

    /** A check of the shelf between seat and fore grip, its rear face here, or null. */
    @Nullable
    Option<Check> foreCheck(int i, double rearMm) {
        return foreChecks.at(i, rearMm);
    }

    /** A check of the shelf that ends the handle, its rear face here, or null. */
    @Nullable
    Option<Check> endCheck(int i, double rearMm) {
        return endChecks.at(i, rearMm);
    }

    private @Nullable Option<Check> check(Station station, Check check, double fromMm) {
        if (!stations.allows(station, check)) {
            return null;
        }
        ground.rules.onPart(setting, new Placed(station, check, fromMm, check.widthMm()), refusal.reset());
        return refusal.refused()
                ? null
                : Work.option(ground, setting, station, check, fromMm, check.widthMm(), fitter.check(check, fromMm));
    }

    /** A rear or full grip of the shelf with its front face here, or null. */
    @Nullable
    Option<Grip> rearGrip(int i, double frontMm) {
        return rears.at(i, frontMm);
    }

    private @Nullable Option<Grip> rear(int i, double frontMm) {
        Cut cut = shelf.rears[i];
        double length = cut.fills() ? frontMm : cut.lengthMm();
        return grip(Station.REAR_GRIP, cut, frontMm - length, length);
    }

    /** A butt grip of the shelf, or null. */
    @Nullable
    Option<Grip> buttGrip(int i) {
        return butts.at(i, 0);
    }

    /** A fore grip of the shelf with its rear face here, or null. */
    @Nullable
    Option<Grip> foreGrip(int i, double rearMm) {
        return fores.at(i, rearMm);
    }

    private @Nullable Option<Grip> grip(Station station, Cut cut, double fromMm, double lengthMm) {
        if (lengthMm <= 0 || fromMm < 0) {
            return null;
        }
        Grip grip = cut.grip();
        ground.rules.onPart(setting, new Placed(station, grip, fromMm, lengthMm), refusal.reset());
        return refusal.refused()
                ? null
                : new Option<>(
                        grip,
                        fromMm,
                        lengthMm,
                        Sums.of(fitter.grip(grip, fromMm, lengthMm)),
                        cut.style(),
                        cut.missed());
    }

    /** Caps that may close the butt end here, whatever grip stands before it; the empty choice first (closed grips need none). */
    List<Option<ButtCap>> caps() {
        List<Option<ButtCap>> all = known.caps;
        if (all == null) {
            all = new ButtCaps(this).all();
            known.caps = all;
        }
        return all;
    }

    static long key(double mm) {
        return Math.round(mm * 1000);
    }
}
