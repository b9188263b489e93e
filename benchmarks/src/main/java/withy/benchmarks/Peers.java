package withy.benchmarks;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Refusal;
import withy.search.Search;

/** What a builder's habit and a restarted greedy pick reach, on the same rules and the same score as the proven best. */
final class Peers {
    /** When the restarted greedy's best so far is looked at, ms. */
    static final List<Integer> AT_MS = List.of(50, 200, 1_000, 5_000);

    static final long SEED = 20_261_125L;

    private final Catalog catalog;
    private final Query query;
    private final Scoring scoring;
    private final Style style;
    private final NiceWishes wishes;
    private final List<Part> menu = new ArrayList<>();
    private final List<Layout> layouts = new ArrayList<>();

    Peers(Catalog catalog, Query query) {
        this.catalog = catalog;
        this.query = query;
        this.scoring = Scoring.of(query.brief(), catalog.rates(), query.priorities());
        this.style = new Style(catalog, query.brief());
        this.wishes = new NiceWishes(query.brief());
        Refusal refusal = new Refusal();
        for (Part part : catalog.byId().values()) {
            query.rulebook().onCandidate(query.brief(), catalog, part, refusal.reset());
            if (!refusal.refused()) {
                menu.add(part);
            }
        }
        menu.forEach(part -> {
            if (part instanceof Blank blank
                    && blank.rodTypes().contains(query.brief().rodType())) {
                layOut(blank, refusal);
            }
        });
    }

    /**
     * One scenario.
     *
     * @param scenario its name
     * @param best the proven best, steps
     * @param bestMs how long the proof took, ms
     * @param picks what each peer reached
     */
    record Line(String scenario, double best, double bestMs, List<Pick> picks) {
        Line {
            picks = List.copyOf(picks);
        }
    }

    /**
     * What a peer reached.
     *
     * @param peer its name
     * @param gap steps above the proven best, or null where it has no legal build
     * @param weightG weight of what it built, legal or not, g; NaN where it built nothing
     * @param priceMinor its price
     */
    record Pick(String peer, @Nullable Double gap, double weightG, long priceMinor) {}

    /** Null where the search does not prove an optimum in time or there is no legal build. */
    @Nullable
    Line line(String scenario, List<Integer> atMs, List<String> faults) {
        Cap cap = new Cap(Cap.SECONDS);
        long start = System.nanoTime();
        Solution solution = new Search(catalog).solve(query, cap.watch());
        double ms = Job.millisSince(start);
        if (!solution.proven() || solution.build() == null) {
            return null;
        }
        List<Pick> picks = new ArrayList<>();
        picks.add(habit("lightest, station by station", rod -> rod.figures().weightG(), lightest(), solution));
        picks.add(habit("cheapest, station by station", rod -> rod.figures().priceMinor(), cheapest(), solution));
        picks.addAll(restarts(atMs, solution));
        for (Pick pick : picks) {
            if (pick.gap() != null && pick.gap() < 0) {
                faults.add(
                        scenario + ", " + pick.peer() + ": suspicious: better than the proven best by " + -pick.gap());
            }
        }
        return new Line(scenario, Scoring.steps(solution.score()), ms, picks);
    }

    private static Comparator<Blank> lightest() {
        return Comparator.comparingLong(Blank::massMg);
    }

    private static Comparator<Blank> cheapest() {
        return Comparator.comparingLong(blank -> blank.facts().priceMinor());
    }

    /** The habit's blank, fewest guides, the reel in the middle of the reach. */
    private Pick habit(String name, ToDoubleFunction<Rod> worst, Comparator<Blank> first, Solution best) {
        double middle = (query.brief().reachMinMm() + query.brief().reachMaxMm()) / 2 - 7;
        Wish<HandleForm> form = query.brief().handle().form();
        HandleForm wanted = form == null ? HandleForm.SPLIT : form.value();
        Comparator<Layout> usual = Comparator.<Layout, Blank>comparing(layout -> blank(layout), first)
                .thenComparing(layout -> layout.form() == wanted ? 0 : 1)
                .thenComparing(Layout::guideCount)
                .thenComparing(layout -> Math.abs(layout.reelFootMm() - middle));
        Layout layout = layouts.stream().min(usual).orElse(null);
        Build build = layout == null ? null : new StationByStation(catalog, query, menu, worst).on(layout);
        return pick(name, build, best);
    }

    private List<Pick> restarts(List<Integer> atMs, Solution best) {
        Random random = new Random(SEED);
        List<Pick> picks = new ArrayList<>();
        Build found = null;
        long least = Long.MAX_VALUE;
        long start = System.nanoTime();
        for (int ms : atMs) {
            while (System.nanoTime() - start < TimeUnit.MILLISECONDS.toNanos(ms) && !layouts.isEmpty()) {
                List<Part> shuffled = new ArrayList<>(menu);
                Collections.shuffle(shuffled, random);
                Layout layout = layouts.get(random.nextInt(layouts.size()));
                Build build = new StationByStation(catalog, query, shuffled, this::score).on(layout);
                Rod rod = Rod.measure(catalog, query.brief(), build);
                long score = (long) score(rod);
                if (score < least && Judge.legal(rod, query.rulebook())) {
                    least = score;
                    found = build;
                }
            }
            picks.add(pick("greedy, random restarts, " + ms + " ms", found, best));
        }
        return picks;
    }

    private Pick pick(String name, @Nullable Build build, Solution best) {
        if (build == null) {
            return new Pick(name, null, Double.NaN, 0);
        }
        Rod rod = Rod.measure(catalog, query.brief(), build);
        Double gap = Judge.legal(rod, query.rulebook())
                ? Double.valueOf(Scoring.steps((long) score(rod) - best.score()))
                : null;
        return new Pick(name, gap, rod.figures().weightG(), rod.figures().priceMinor());
    }

    /** Whole number below 2⁵³, so exact as a double. */
    private double score(Rod rod) {
        return scoring.score(ObjectiveVector.of(rod, style, wishes));
    }

    private Blank blank(Layout layout) {
        if (catalog.find(layout.blankId()) instanceof Blank blank) {
            return blank;
        }
        throw new IllegalStateException(layout.blankId() + " is no blank");
    }

    private void layOut(Blank blank, Refusal refusal) {
        BlankShape shape = BlankShape.of(blank);
        int from = (int) Math.ceil(query.brief().reachMinMm() / Layout.GRID_MM) * Layout.GRID_MM - 3 * Layout.GRID_MM;
        for (int foot = from; foot <= query.brief().reachMaxMm(); foot += Layout.GRID_MM) {
            for (HandleForm form : HandleForm.values()) {
                for (int count = 3; count <= Station.MOST_GUIDES; count++) {
                    Layout layout = new Layout(blank.id(), foot, form, count);
                    query.rulebook().onLayout(Setting.of(catalog, query.brief(), shape, layout), refusal.reset());
                    if (!refusal.refused()) {
                        layouts.add(layout);
                    }
                }
            }
        }
    }
}
