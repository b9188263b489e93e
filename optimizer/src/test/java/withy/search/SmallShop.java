package withy.search;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Catalog;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.planning.Kernel;
import withy.search.planning.Problem;

/** A small catalogue around the legal rod of the fixtures: two to three variants of every part, drawn from a seed. */
public final class SmallShop {
    private static final List<String> VARIED = List.of(
            "blank",
            "seat",
            "rear-grip",
            "butt-grip",
            "full-grip",
            "fore-grip",
            "cap",
            "check",
            "guide-20",
            "guide-10",
            "guide-6",
            "guide-5",
            "tip-top",
            "keeper",
            "thread");
    private static final List<String> MAKERS = List.of("Tarn", "Wold", "Fell");

    private final Catalog catalog;
    private final Brief brief;

    private SmallShop(Catalog catalog, Brief brief) {
        this.catalog = catalog;
        this.brief = brief;
    }

    /** The catalogue of a seed; every third one has a budget that binds. */
    public static SmallShop of(long seed) {
        Random random = new Random(seed);
        Fixtures fixtures = Fixtures.legal();
        for (String id : VARIED) {
            int copies = 1 + random.nextInt(2);
            for (int n = 1; n <= copies; n++) {
                String copy = id + "-" + (char) ('a' + n);
                double weight = fixtures.partOf(id).facts().weightG();
                fixtures.copy(id, copy)
                        .part(copy, "facts.weightG", weight * (0.7 + 0.6 * random.nextDouble()))
                        .part(copy, "facts.priceMinor", 100 + random.nextInt(3000))
                        .part(copy, "facts.durabilityClass", 2 + random.nextInt(4))
                        .part(copy, "facts.stock", 2 + random.nextInt(12))
                        .part(copy, "facts.maker", MAKERS.get(random.nextInt(MAKERS.size())))
                        .part(copy, "facts.material", random.nextBoolean() ? Material.CORK : Material.EVA)
                        .part(copy, "facts.colour", new Lab(20 + random.nextInt(60), random.nextInt(20), 0));
            }
        }
        fixtures.brief("handle.mixedGrips", true);
        if (seed % 3 == 0) {
            fixtures.brief("budgetMinor", 44_000 + random.nextInt(4000));
        }
        return new SmallShop(fixtures.catalog(), fixtures.theBrief());
    }

    public Catalog catalog() {
        return catalog;
    }

    /** The plain question under these rules. */
    public Query query(Rulebook rules) {
        return Query.of(brief, rules);
    }

    /** The question with most of the rod given, so that every build can be counted out: check, keeper and three guides are open. */
    public Query narrow(Rulebook rules) {
        Brief split = Changed.with(brief, "handle.form", new Wish<>(HandleForm.SPLIT, true, 0));
        Map<Station, Choice> given = new TreeMap<>();
        given.put(Station.BLANK, Choice.of("blank"));
        given.put(Station.SEAT, Choice.of("seat"));
        given.put(Station.REAR_GRIP, new Choice("rear-grip", 60));
        given.put(Station.BUTT_GRIP, new Choice("butt-grip", 80));
        given.put(Station.THREAD, Choice.of("thread"));
        given.put(Station.guide(1), Choice.of("guide-20"));
        given.put(Station.guide(2), Choice.of("guide-10"));
        given.put(Station.guide(3), Choice.of("guide-6"));
        given.put(Station.guide(4), Choice.of("guide-5"));
        given.put(Station.TIP_TOP, Choice.of("tip-top"));
        given.put(Station.BUTT_CAP, Choice.of("cap"));
        Set<Station> empty = Set.of(
                Station.guide(8),
                Station.guide(9),
                Station.HOOD,
                Station.SEAT_ARBORS,
                Station.FORE_GRIP,
                Station.FORE_CHECK,
                Station.REAR_CHECK);
        return Query.of(split, rules).fixing(given, empty, 240);
    }

    /** The best build by proof alone, whether it got to the end or not. */
    public Solution proof(Query query) {
        return new Proof(task(query), Watch.NONE).run();
    }

    /** A question as the engine takes it. */
    public Problem problem(Query query) {
        Unproven unproven = new Unproven(task(query));
        Set<Layout> layouts = new LinkedHashSet<>(unproven.layouts());
        return unproven.problem(layouts, Watch.NONE);
    }

    /** The same of one layout only. */
    public Problem problem(Query query, Layout layout) {
        Problem all = problem(query);
        return of(all, List.of(layout), all.kernel());
    }

    /** The same with another kernel. */
    public Problem withKernel(Problem problem, Kernel kernel) {
        return of(problem, problem.layouts(), kernel);
    }

    private static Problem of(Problem all, List<Layout> layouts, Kernel kernel) {
        return new Problem(
                all.catalog(),
                all.brief(),
                all.rules(),
                all.scoring(),
                all.style(),
                all.wishes(),
                all.shapes(),
                all.ceilings(),
                all.forced(),
                layouts,
                all.slots(),
                kernel);
    }

    /** True where a build is legal for a question, as the search itself judges. */
    public boolean legal(Query query, Build build) {
        return task(query)
                .measure(
                        build,
                        shape(Objects.requireNonNull(catalog.find(build.layout().blankId()))))
                .legal();
    }

    /** Score of a build for a question. */
    public long score(Query query, Build build) {
        return task(query)
                .measure(
                        build,
                        shape(Objects.requireNonNull(catalog.find(build.layout().blankId()))))
                .score();
    }

    private Task task(Query query) {
        return task(catalog, query);
    }

    /** A question on ground of its own. */
    static Task task(Catalog catalog, Query query) {
        Aim aim = Aim.of(catalog, query);
        Style style = new Style(catalog, query.brief());
        List<Stations> alternatives = Stations.alternatives(catalog, query, query.forced());
        return new Task(query, new Ground(Opening.of(catalog, query, aim), style, BlankShape::of), aim, alternatives);
    }

    private static BlankShape shape(Object blank) {
        return BlankShape.of((withy.catalog.Blank) blank);
    }
}
