package withy.rod;

import java.util.Collections;
import java.util.Comparator;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.Adhesive;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Finish;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.catalog.WrapThread;

/** A build measured once: where every part lies, what it adds, how the rod hangs, what it costs. Works for illegal builds too. */
public final class Rod {
    private final Build build;
    private final Setting setting;
    private final Consumables with;
    private final Tariff tariff;
    private final @Nullable SeatSet seat;
    private final SortedMap<Station, Placed> placed;
    private final SortedMap<Station, Share> shares;
    private final Share total;
    private final double handleFrontMm;
    /** Worked out when first asked for: most rods that are measured are only compared by their sums. */
    private @Nullable Figures figures;

    private Rod(
            Build build,
            Setting setting,
            Consumables with,
            Tariff tariff,
            @Nullable SeatSet seat,
            SortedMap<Station, Placed> placed,
            double handleFrontMm) {
        this.build = build;
        this.setting = setting;
        this.with = with;
        this.tariff = tariff;
        this.seat = seat;
        this.placed = Collections.unmodifiableSortedMap(placed);
        this.handleFrontMm = handleFrontMm;
        SortedMap<Station, Share> each = new TreeMap<>();
        Fitter fitter = new Fitter(setting, with, tariff);
        placed.forEach((station, part) -> each.put(station, share(fitter, part)));
        this.shares = Collections.unmodifiableSortedMap(each);
        this.total = each.values().stream().reduce(Share.NONE, Share::plus);
    }

    /**
     * Measures a build.
     *
     * @throws IllegalArgumentException where an id is not in the catalogue or not of the station's kind
     */
    public static Rod measure(Catalog catalog, Brief brief, Build build) {
        Parts parts = new Parts(catalog, build);
        Blank blank = parts.need(build.layout().blankId(), Blank.class);
        return measure(catalog, brief, build, BlankShape.of(blank));
    }

    /** Measures a build whose blank's shape is known. */
    public static Rod measure(Catalog catalog, Brief brief, Build build, BlankShape shape) {
        return measure(Setting.of(catalog, brief, shape, build.layout()), build);
    }

    /** Measures a build on its layout, already worked out. */
    public static Rod measure(Setting setting, Build build) {
        Catalog catalog = setting.catalog();
        BlankShape shape = setting.shape();
        Parts parts = new Parts(catalog, build);
        HandleWalk walk = HandleWalk.of(setting, parts);
        SortedMap<Station, Placed> placed = new TreeMap<>(walk.placed());
        double front = walk.frontMm();
        Keeper keeper = parts.at(Station.KEEPER, Keeper.class);
        if (keeper != null) {
            placed.put(Station.KEEPER, new Placed(Station.KEEPER, keeper, front + Fitter.KEEPER_AHEAD_MM, 0));
        }
        Decal decal = parts.at(Station.DECAL, Decal.class);
        if (decal != null) {
            placed.put(Station.DECAL, new Placed(Station.DECAL, decal, front + Fitter.DECAL_AHEAD_MM, decal.widthMm()));
        }
        for (int number = 1; number <= build.layout().guideCount(); number++) {
            Station station = Station.guide(number);
            Guide guide = parts.at(station, Guide.class);
            if (guide != null) {
                placed.put(station, new Placed(station, guide, setting.guideMm(number), 0));
            }
        }
        TipTop tipTop = parts.at(Station.TIP_TOP, TipTop.class);
        if (tipTop != null) {
            placed.put(
                    Station.TIP_TOP,
                    new Placed(Station.TIP_TOP, tipTop, shape.blank().lengthMm(), tipTop.addedMm()));
        }
        placed.put(
                Station.BLANK,
                new Placed(Station.BLANK, shape.blank(), 0, shape.blank().lengthMm()));
        Consumables with = parts.consumables();
        return new Rod(build, setting, with, new Tariff(catalog.rates(), setting.brief()), walk.seat(), placed, front);
    }

    public Build build() {
        return build;
    }

    public Setting setting() {
        return setting;
    }

    public Brief brief() {
        return setting.brief();
    }

    /** Thread, finish, adhesive it is made with. */
    public Consumables with() {
        return with;
    }

    public Tariff tariff() {
        return tariff;
    }

    /** The seat with hood and arbors, or null where the build has none. */
    public @Nullable SeatSet seat() {
        return seat;
    }

    /** Every placed part by station; thread, finish and adhesive have no place. */
    public SortedMap<Station, Placed> placed() {
        return placed;
    }

    /** What each placed part adds. */
    public SortedMap<Station, Share> shares() {
        return shares;
    }

    /** The sum of all shares. */
    public Share total() {
        return total;
    }

    /** Cost before margin and tax, thousandths of a minor unit. */
    public long costMilli() {
        return total.costMilli() + tariff.fixedMilli(with, total.finishUl());
    }

    /** Front end of the handle, mm. */
    public double handleFrontMm() {
        return handleFrontMm;
    }

    /** What a builder reads of it; the same whichever thread asks first. */
    public Figures figures() {
        Figures known = figures;
        if (known == null) {
            known = FiguresOf.rod(this);
            figures = known;
        }
        return known;
    }

    /** The part at a station (thread, finish, adhesive included), or null where it is empty. */
    public @Nullable Part partAt(Station station) {
        String id = build.partAt(station);
        return id == null ? null : setting.catalog().find(id);
    }

    /** How the rod hangs with the brief's reel. */
    public Balance balance() {
        return Balance.of(brief(), total.massMg(), total.momentMgMm());
    }

    /** Pieces of a station's part: arbors are cut from several. */
    public int pieces(Station station) {
        if (station.equals(Station.SEAT_ARBORS) && seat != null && seat.arbor() != null) {
            return SeatGap.of(seat, setting).pieces(seat.arbor());
        }
        return 1;
    }

    private Share share(Fitter fitter, Placed p) {
        return switch (p.part().kind()) {
            case BLANK -> fitter.blank();
            case REEL_SEAT -> fitter.seat(theSeat());
            case HOOD -> fitter.hood(theSeat());
            case ARBOR -> fitter.arbors(theSeat());
            case GRIP -> p.lengthMm() > 0 ? fitter.grip((Grip) p.part(), p.fromMm(), p.lengthMm()) : Share.NONE;
            case BUTT_CAP -> fitter.cap((ButtCap) p.part());
            case CHECK -> fitter.check((Check) p.part(), p.fromMm());
            case GUIDE -> fitter.guide((Guide) p.part(), p.station().number());
            case TIP_TOP -> fitter.tipTop((TipTop) p.part());
            case KEEPER -> fitter.keeper((Keeper) p.part(), handleFrontMm);
            case DECAL -> fitter.decal((Decal) p.part(), handleFrontMm);
            case THREAD, FINISH, ADHESIVE -> Share.NONE;
        };
    }

    private SeatSet theSeat() {
        if (seat == null) {
            throw new IllegalStateException("a hood or arbor without a seat has no place");
        }
        return seat;
    }

    /** Looks parts up by station. */
    record Parts(Catalog catalog, Build build) {
        <P extends Part> P need(String id, Class<P> type) {
            Part part = catalog.find(id);
            if (!type.isInstance(part)) {
                throw new IllegalArgumentException("part " + id + " is "
                        + (part == null
                                ? "not in the catalogue"
                                : "a " + part.kind().word()) + ", not a "
                        + type.getSimpleName());
            }
            return type.cast(part);
        }

        <P extends Part> @Nullable P at(Station station, Class<P> type) {
            String id = build.partAt(station);
            return id == null ? null : need(id, type);
        }

        Consumables consumables() {
            WrapThread thread = at(Station.THREAD, WrapThread.class);
            Finish finish = at(Station.FINISH, Finish.class);
            Adhesive adhesive = at(Station.ADHESIVE, Adhesive.class);
            return new Consumables(
                    thread != null ? thread : first(PartKind.THREAD, WrapThread.class),
                    finish != null ? finish : need(catalog.rates().houseFinish(), Finish.class),
                    adhesive != null ? adhesive : need(catalog.rates().houseAdhesive(), Adhesive.class));
        }

        private <P extends Part> P first(PartKind kind, Class<P> type) {
            return catalog.all(kind, type).stream()
                    .min(Comparator.comparing(Part::id))
                    .orElseThrow(() -> new IllegalArgumentException("the catalogue has no " + kind.word()));
        }
    }
}
