package withy.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Finish;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.Keeper;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.TipTop;
import withy.catalog.WrapThread;
import withy.objectives.NiceWishes;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.GuideSpots;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Tariff;
import withy.rules.Rulebook;
import withy.rules.Seams;

/**
 * What a question leaves open of the catalogue, with everything that is worked out of it once: parts, rules and places, but not what is wanted of a
 * build. Questions with other priorities, ceilings, forced parts or refused blanks, seats, grips and guides stand on the same ground. Not for several threads at once.
 */
final class Ground {
    /** Longest butt cap considered when the reel foot's grid is laid out, mm. */
    static final double LONGEST_CAP_MM = 60;

    /** With fewer blanks than this, each is as soon looked at as all. */
    private static final int MANY_BLANKS = 6;

    final Catalog catalog;
    final Brief brief;
    final Rulebook rules;
    final Seams seams;
    final Style style;
    final NiceWishes wishes;
    final Tariff tariff;
    final Candidates candidates;
    final List<Blank> blanks;
    final List<ReelSeat> seats;
    final List<Hood> hoods;
    final List<Arbor> arbors;
    /** The same without those another arbor does as well as in everything. */
    final List<Arbor> arborsWorthIt;

    final List<Grip> rearGrips;
    final List<Grip> fullGrips;
    final List<Grip> buttGrips;
    final List<Grip> foreGrips;
    final List<ButtCap> caps;
    final List<Check> checks;
    final List<Keeper> keepers;
    final List<TipTop> tipTops;
    /** One of each length that is added. */
    final List<TipTop> oneTipTopOfLength;

    /** One cap of each length that is added, null for none, by that length, mm. */
    final Map<Double, @Nullable ButtCap> oneCapOfLength;

    final List<WrapThread> threads;
    final List<Finish> finishes;
    final List<Adhesive> adhesives;
    final List<Decal> decals;
    final GuideTable guides;
    final ThreadChoice threadChoice;
    final GripMatch gripMatch;
    final Hang hang;
    final JointWraps jointWraps = new JointWraps(this);
    /** True where the handle's own rule is in force, which settles wishes for keeper and fore grip. */
    final boolean handleRule;
    /** True where a rule keeps grips from being reamed wider than their makers allow. */
    final boolean reamRuled;
    /** True where a seat must go over the blank. */
    final boolean boreRuled;
    /** Density of the lightest adhesive, g/ml. */
    final double thinnestGlueGMl;
    /** Density of the heaviest adhesive, g/ml. */
    final double thickestGlueGMl;
    /** Reel foot positions, rising, mm. */
    final List<Integer> feet;

    /** True where a milligram more ahead of the reel foot never makes a rod better, wherever it hangs. */
    final boolean weightIsBurden;

    private final @Nullable Integer givenFoot;
    private final Function<Blank, BlankShape> shapes;
    /** Where guides are. */
    final GuideSpots spots;

    private @Nullable Setting some;
    /** Of the blank that was asked about last. */
    private @Nullable Setting last;

    private @Nullable Set<String> offered;
    private @Nullable Long endDressMg;

    /** The stands laid out last. */
    final LastStands lastStands;

    private final Sites sites;

    /**
     * @param shapes gives a blank's shape
     */
    Ground(Opening opening, Style style, Function<Blank, BlankShape> shapes) {
        this(opening, style, shapes, new GuideSpots());
    }

    /** With what is known of where guides are on these blanks. */
    Ground(Opening opening, Style style, Function<Blank, BlankShape> shapes, GuideSpots spots) {
        this.spots = spots;
        Query query = opening.query();
        this.catalog = opening.catalog();
        this.shapes = shapes;
        this.weightIsBurden = opening.weightIsBurden();
        this.givenFoot = query.reelFootMm();
        this.brief = query.brief();
        this.rules = query.rulebook();
        this.seams = new Seams(rules);
        this.style = style;
        this.wishes = new NiceWishes(brief);
        this.tariff = new Tariff(catalog.rates(), brief);
        this.candidates = Candidates.of(catalog, query);
        this.blanks = candidates.of(PartKind.BLANK, Blank.class);
        this.seats = candidates.of(PartKind.REEL_SEAT, ReelSeat.class);
        this.hoods = candidates.of(PartKind.HOOD, Hood.class);
        this.arbors = candidates.of(PartKind.ARBOR, Arbor.class);
        this.arborsWorthIt = opening.fewArbors() ? ArborChoice.of(this) : arbors;
        this.rearGrips = grips(Grip.Place.REAR);
        this.fullGrips = grips(Grip.Place.FULL);
        this.buttGrips = grips(Grip.Place.BUTT);
        this.foreGrips = grips(Grip.Place.FORE);
        this.caps = candidates.of(PartKind.BUTT_CAP, ButtCap.class);
        this.checks = candidates.of(PartKind.CHECK, Check.class);
        this.keepers = candidates.of(PartKind.KEEPER, Keeper.class);
        this.tipTops = candidates.of(PartKind.TIP_TOP, TipTop.class);
        this.oneTipTopOfLength = Ends.oneTipTopOfLength(tipTops);
        this.oneCapOfLength = Ends.oneCapOfLength(caps);
        this.threads = candidates.of(PartKind.THREAD, WrapThread.class);
        this.finishes = candidates.of(PartKind.FINISH, Finish.class);
        this.adhesives = candidates.of(PartKind.ADHESIVE, Adhesive.class);
        this.decals = candidates.of(PartKind.DECAL, Decal.class);
        this.guides = new GuideTable(this);
        this.threadChoice = new ThreadChoice(this);
        this.gripMatch = new GripMatch(rules, rearGrips, fullGrips, buttGrips);
        this.hang = new Hang(this);
        this.handleRule = ruled("handle");
        this.reamRuled = ruled("grip-on-blank");
        this.boreRuled = ruled("seat-on-blank");
        this.thinnestGlueGMl =
                adhesives.stream().mapToDouble(Adhesive::densityGMl).min().orElse(0);
        this.thickestGlueGMl =
                adhesives.stream().mapToDouble(Adhesive::densityGMl).max().orElse(0);
        this.feet = feet();
        this.lastStands = new LastStands(catalog.size(), Runtime.getRuntime().maxMemory());
        this.sites = new Sites(this);
    }

    /**
     * True where weight is a burden under these prices from a place on, and the more so the further out: then nothing there costs less than the same as near as it
     * comes, and no thread than none.
     *
     * @param fromMm told from the reel foot, mm
     */
    boolean burdens(Linear k, double fromMm) {
        double arm = Setting.armMm(brief);
        return k.perMgMm() >= 0 && k.perMgMm2() >= 0 && fromMm + arm >= 0 && k.perMgAt(fromMm, arm) >= 0;
    }

    /**
     * A number that thread and finish at a handle's front end do not cost less than, but for their price: below nought only where weight there is welcome.
     *
     * @param frontMm where the handle ends, told from the reel foot, mm
     */
    long endDress(Linear k, double frontMm) {
        double perMg = k.leastPerMg(frontMm, frontMm + EndDress.REACH_MM, Setting.armMm(brief));
        if (perMg >= 0) {
            return 0;
        }
        Long most = endDressMg;
        if (most == null) {
            most = EndDress.mostMg(this);
            endDressMg = most;
        }
        return (long) Math.floor(perMg * most);
    }

    /** True where all these parts are still offered. */
    boolean offers(Set<String> ids) {
        Set<String> known = offered;
        if (known == null) {
            known = candidates.ids();
            offered = known;
        }
        return known.containsAll(ids);
    }

    /** False where there is nothing of what no rod goes without. */
    boolean complete() {
        return !finishes.isEmpty() && !adhesives.isEmpty() && !threads.isEmpty() && !blanks.isEmpty();
    }

    /** True where a rule is in force. */
    boolean ruled(String code) {
        return rules.rules().stream().anyMatch(rule -> rule.code().equals(code));
    }

    /** Reel foot nearest the butt, mm. */
    int firstFoot() {
        return feet.isEmpty() ? 0 : feet.get(0);
    }

    /** Reel foot furthest from the butt, mm. */
    int lastFoot() {
        return feet.isEmpty() ? 0 : feet.get(feet.size() - 1);
    }

    /** What a layout fixes. */
    Setting setting(BlankShape shape, Layout layout) {
        return Setting.of(catalog, brief, shape, layout, spots);
    }

    /** Some layout of a blank, for rules that hold wherever the reel stands. */
    Setting anySetting(BlankShape shape) {
        Setting known = last;
        if (known == null || known.shape() != shape) {
            Layout layout = new Layout(shape.blank().id(), firstFoot(), HandleForm.SPLIT, 5);
            known = setting(shape, layout);
            last = known;
        }
        return known;
    }

    /** Some layout, for rules that hold on every blank. */
    Setting anySetting() {
        Setting known = some;
        if (known == null) {
            known = anySetting(BlankShape.of(blanks.get(0)));
            some = known;
        }
        return known;
    }

    /** False where the reel stands further off than any build of a question has it: whoever's rules are let go, the reach is not quite. */
    static boolean mayStand(Brief brief, int footMm) {
        return footMm >= brief.reachMinMm() - LONGEST_CAP_MM && footMm <= brief.reachMaxMm();
    }

    private List<Integer> feet() {
        if (givenFoot != null) {
            return List.of(givenFoot);
        }
        double longest =
                handleRule ? caps.stream().mapToDouble(ButtCap::addedMm).max().orElse(0) : LONGEST_CAP_MM;
        return Search.feet(brief.reachMinMm() - Math.min(longest, LONGEST_CAP_MM), brief.reachMaxMm(), Layout.GRID_MM);
    }

    /** True where it is worth while to look at all blanks at once before each. */
    boolean manyBlanks() {
        return blanks.size() >= MANY_BLANKS;
    }

    /** Every blank under every placing of the forced parts that allows it. */
    List<Site> sites(List<Stations> alternatives) {
        return sites.under(alternatives);
    }

    BlankShape shape(Blank blank) {
        return shapes.apply(blank);
    }

    private List<Grip> grips(Grip.Place place) {
        List<Grip> of = new ArrayList<>();
        for (Grip grip : candidates.of(PartKind.GRIP, Grip.class)) {
            if (grip.place() == place) {
                of.add(grip);
            }
        }
        return List.copyOf(of);
    }
}
