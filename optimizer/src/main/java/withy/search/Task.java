package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withy.brief.Brief;
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
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Tariff;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Seams;

/** One question with everything that is worked out once for it. Immutable but for caches that hold equal values. */
final class Task {
    final Catalog catalog;
    final Query query;
    final Brief brief;
    final Rulebook rules;
    final Seams seams;
    final Scoring scoring;
    final Style style;
    final NiceWishes wishes;
    final Tariff tariff;
    final Bounds bounds;
    final Candidates candidates;
    final List<Blank> blanks;
    final List<ReelSeat> seats;
    final List<Hood> hoods;
    final List<Arbor> arbors;
    final List<Grip> rearGrips;
    final List<Grip> fullGrips;
    final List<Grip> buttGrips;
    final List<Grip> foreGrips;
    final List<ButtCap> caps;
    final List<Check> checks;
    final List<Keeper> keepers;
    final List<TipTop> tipTops;
    /** The same by the length they add. */
    final List<TipTop> tipTopsByLength;

    final List<WrapThread> threads;
    final List<Finish> finishes;
    final List<Adhesive> adhesives;
    final List<Decal> decals;
    final GuideTable guides;
    final GripMatch gripMatch;
    /** True where the handle's own rule is in force, which settles wishes for keeper and fore grip. */
    final boolean handleRule;

    Task(Catalog catalog, Query query, Style style) {
        this.catalog = catalog;
        this.query = query;
        this.brief = query.brief();
        this.rules = query.rulebook();
        this.seams = new Seams(rules);
        this.scoring = Scoring.of(brief, catalog.rates(), query.priorities());
        this.style = style;
        this.wishes = new NiceWishes(brief);
        this.tariff = new Tariff(catalog.rates(), brief);
        this.bounds = Bounds.of(query, tariff);
        this.candidates = Candidates.of(catalog, query);
        this.blanks = candidates.of(PartKind.BLANK, Blank.class);
        this.seats = candidates.of(PartKind.REEL_SEAT, ReelSeat.class);
        this.hoods = candidates.of(PartKind.HOOD, Hood.class);
        this.arbors = candidates.of(PartKind.ARBOR, Arbor.class);
        this.rearGrips = grips(Grip.Place.REAR);
        this.fullGrips = grips(Grip.Place.FULL);
        this.buttGrips = grips(Grip.Place.BUTT);
        this.foreGrips = grips(Grip.Place.FORE);
        this.caps = candidates.of(PartKind.BUTT_CAP, ButtCap.class);
        this.checks = candidates.of(PartKind.CHECK, Check.class);
        this.keepers = candidates.of(PartKind.KEEPER, Keeper.class);
        this.tipTops = candidates.of(PartKind.TIP_TOP, TipTop.class);
        this.tipTopsByLength = tipTops.stream()
                .sorted(Comparator.comparingDouble(TipTop::addedMm))
                .toList();
        this.threads = candidates.of(PartKind.THREAD, WrapThread.class);
        this.finishes = candidates.of(PartKind.FINISH, Finish.class);
        this.adhesives = candidates.of(PartKind.ADHESIVE, Adhesive.class);
        this.decals = candidates.of(PartKind.DECAL, Decal.class);
        this.guides = new GuideTable(this);
        this.gripMatch = new GripMatch(rules, rearGrips, fullGrips, buttGrips);
        this.handleRule = rules.rules().stream().anyMatch(rule -> rule.code().equals("handle"));
    }

    /** Measures and judges a build. */
    Measured measure(Build build, BlankShape shape) {
        Rod rod = Rod.measure(catalog, brief, build, shape);
        ObjectiveVector vector = ObjectiveVector.of(rod, style, wishes);
        boolean legal = bounds.keeps(vector) && Judge.legal(rod, rules);
        return new Measured(
                build, vector, rod.balance().aheadMgMm(), rod.balance().behindMgMm(), scoring.score(vector), legal);
    }

    /** A build measured and judged; legal means within the question's bounds too. */
    record Measured(Build build, ObjectiveVector vector, long aheadMgMm, long behindMgMm, long score, boolean legal) {}

    /** A legal build with its score. */
    record Judged(Build build, ObjectiveVector vector, long score) {}

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
