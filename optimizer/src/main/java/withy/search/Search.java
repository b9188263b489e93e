package withy.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Look;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.objectives.Solver;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Judge;
import withy.search.planning.EngineSettings;

/**
 * Finds the best legal build of a catalogue for a question and proves it: best-first over blanks and layouts by floors, each completed exactly. What cannot be proven
 * (a rule outside the chain) goes to the engine with the bound that was reached. For several threads; of many blanks another thread takes half ({@link Halves}).
 */
public final class Search implements Solver {
    private final Catalog catalog;
    private final Lately lately = new Lately();
    private final Map<String, BlankShape> shapes = new LinkedHashMap<>();
    private final Map<List<Object>, Style> styles = new LinkedHashMap<>();
    private final Grounds grounds = new Grounds();
    private final EngineSettings settings;
    private @Nullable Unpriced last;
    private volatile @Nullable Laid laid;

    /** A brief without its budget. */
    private record Unpriced(Brief of, Brief brief) {}

    /** A layout worked out for a brief. */
    private record Laid(Brief brief, Setting setting) {}

    /** Over one reading of the shop. */
    public Search(Catalog catalog) {
        this(catalog, EngineSettings.STANDARD);
    }

    /** The same with other settings for what cannot be proven. */
    public Search(Catalog catalog, EngineSettings settings) {
        this.catalog = catalog;
        this.settings = settings;
    }

    @Override
    public Solution solve(Query query, Watch watch) {
        return asked(query, task -> solve(task, watch, Halves.divides(task)));
    }

    @Override
    public Solution solveAlone(Query query, Watch watch) {
        return asked(query, task -> solve(task, watch, false));
    }

    @Override
    public Solution solveBelow(long limit, Query query, Watch watch) {
        Solution solution = below(limit, query, watch);
        return solution.proven() || watch.interrupted().getAsBoolean() ? solution : solveAlone(query, watch);
    }

    @Override
    public boolean hasRoomForTwo() {
        return Halves.hasRoom(catalog.size(), Runtime.getRuntime().maxMemory());
    }

    private Solution solve(Task task, Watch watch, boolean divided) {
        Task.Judged known = recall(task, forced(task.query));
        Solution solution = proof(task, watch, known == null ? Long.MAX_VALUE : known.score() + 1, divided);
        if (solution.build() == null && known != null) {
            if (watch.interrupted().getAsBoolean()) {
                return new Solution(
                        known.build(),
                        known.vector(),
                        known.score(),
                        solution.bound(),
                        false,
                        solution.layoutsOpened());
            }
            solution = proof(task, watch, Long.MAX_VALUE, divided);
        }
        remember(solution);
        if (solution.proven() || watch.interrupted().getAsBoolean()) {
            return solution;
        }
        return new Unproven(task).improve(solution, settings, watch);
    }

    /** The best build that scores less than a limit, with proof; by two threads where it is divided. */
    private Solution proof(Task task, Watch watch, long under, boolean divided) {
        if (!divided) {
            return new Proof(task, watch).under(under).run();
        }
        Halves halves = new Halves(under, watch);
        return halves.both(task, () -> asked(task.query, Half.EVEN, twin -> halves.half(twin, Half.EVEN)));
    }

    @Override
    public Solution any(Query query, Watch watch) {
        Solution solution = asked(query, task -> any(task, watch));
        boolean answered = solution.build() != null || solution.proven();
        return answered || watch.interrupted().getAsBoolean() ? solution : Solver.super.any(query, watch);
    }

    @Override
    public boolean answers(Query query, Build build) {
        boolean onlyRuled = query.ceilings().isEmpty()
                && query.fixed().isEmpty()
                && query.empty().isEmpty()
                && query.reelFootMm() == null;
        return onlyRuled
                && Ground.mayStand(query.brief(), build.layout().reelFootMm())
                && build.holds(forced(query))
                && Collections.disjoint(build.partIds(), query.refused())
                && catalog.find(build.layout().blankId()) instanceof Blank blank
                && Judge.legal(Rod.measure(setting(query.brief(), blank, build.layout()), build), query.rulebook());
    }

    /** The same again and again where one build after another of one layout is asked about. */
    private Setting setting(Brief brief, Blank blank, Layout layout) {
        Laid known = laid;
        if (known == null || known.brief != brief || !known.setting.layout().equals(layout)) {
            known = new Laid(brief, Setting.of(catalog, brief, shape(blank), layout, grounds.spots));
            laid = known;
        }
        return known.setting;
    }

    @Override
    public boolean mayHold(Query query, Watch watch) {
        return asked(
                query,
                task -> recall(task, forced(query)) != null || new HandleAnywhere(task, watch, lately).mayHold());
    }

    private Solution any(Task task, Watch watch) {
        Task.Judged known = recall(task, forced(task.query));
        if (known != null) {
            return new Solution(known.build(), known.vector(), known.score(), Long.MIN_VALUE, false, 0);
        }
        Solution solution = new Proof(task, watch).any(lately);
        remember(solution);
        return solution;
    }

    @Override
    public @Nullable Build soon(Query query, Watch watch) {
        Task.Judged known = asked(query, task -> recall(task, forced(query)));
        if (known != null) {
            return known.build();
        }
        boolean given = query.forced().stream().anyMatch(id -> catalog.find(id) instanceof Blank);
        for (String blank : given ? Set.<String>of() : lately.likelyBlanks()) {
            Set<String> forced = new TreeSet<>(query.forced());
            forced.add(blank);
            Build on = asked(query.forcing(forced), task -> any(task, watch)).build();
            if (on != null) {
                return on;
            }
        }
        return null;
    }

    /** The best build that scores less than a limit, or none where there is none such; proven where the search got to its end. */
    Solution below(long limit, Query query, Watch watch) {
        return asked(query, task -> new Proof(task, watch).under(limit).run());
    }

    private <A> A asked(Query query, Function<Task, A> work) {
        return asked(query, Half.ODD, work);
    }

    /** Works a question on ground that no other question stands on meanwhile. */
    private <A> A asked(Query query, Half half, Function<Task, A> work) {
        Aim aim = Aim.of(catalog, query);
        Opening opening = Opening.of(catalog, query, aim, unpriced(query.brief()));
        Ground lent = grounds.take(opening, half);
        Ground ground = lent == null ? new Ground(opening, style(query), this::shape, grounds.spots) : lent;
        A answer = work.apply(new Task(query, ground, aim, Stations.alternatives(catalog, query, forced(query))));
        grounds.giveBack(opening, half, ground);
        return answer;
    }

    private synchronized Brief unpriced(Brief brief) {
        Unpriced known = last;
        if (known == null || known.of != brief) {
            known = new Unpriced(brief, Opening.unpriced(brief));
            last = known;
        }
        return known.brief;
    }

    private static Set<String> forced(Query query) {
        Set<String> forced = new TreeSet<>(query.forced());
        if (query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("must"))) {
            query.brief().insisted().stream().filter(w -> w.hard()).forEach(w -> forced.add(w.partId()));
        }
        return forced;
    }

    /**
     * The best of the builds found lately that is open to this question, or null. It only tells the proof what scores are of no interest, so the
     * answer is the same with and without it.
     */
    private Task.@Nullable Judged recall(Task task, Set<String> forced) {
        Task.Judged best = null;
        for (Build build : lately.builds()) {
            if (openTo(task, forced, build) && catalog.find(build.layout().blankId()) instanceof Blank blank) {
                Task.Measured measured = task.measure(build, shape(blank));
                if (measured.legal() && (best == null || measured.score() < best.score())) {
                    best = new Task.Judged(build, measured.vector(), measured.score());
                }
            }
        }
        return best;
    }

    private static boolean openTo(Task task, Set<String> forced, Build build) {
        Query query = task.query;
        Integer foot = query.reelFootMm();
        Set<String> used = build.partIds();
        boolean open = (foot == null
                        ? Ground.mayStand(query.brief(), build.layout().reelFootMm())
                        : foot == build.layout().reelFootMm())
                && Collections.disjoint(used, query.refused());
        for (Map.Entry<Station, Build.Choice> filled : build.choices().entrySet()) {
            Build.Choice given = query.fixed().get(filled.getKey());
            open &= !query.empty().contains(filled.getKey()) && (given == null || given.equals(filled.getValue()));
        }
        for (Map.Entry<Station, Build.Choice> given : query.fixed().entrySet()) {
            open &= given.getValue().partId().equals(build.partAt(given.getKey()));
        }
        return open && used.containsAll(forced) && task.ground.offers(used);
    }

    private void remember(Solution solution) {
        Build build = solution.build();
        if (build != null) {
            lately.found(build);
        }
    }

    /** The catalogue fitted to a question, with what was refused and why. */
    public Candidates candidates(Query query) {
        return Candidates.of(catalog, query);
    }

    /** The catalogue it searches. */
    public Catalog catalog() {
        return catalog;
    }

    /** What a customer sees of a build at once: blank, seat, grip material, guide family and frame. */
    String visible(Build build) {
        return build.layout().blankId() + "|" + build.partAt(Station.SEAT) + "|" + grip(build) + "|" + guide(build);
    }

    private String grip(Build build) {
        String id = build.partAt(Station.REAR_GRIP);
        Part part = id == null ? null : catalog.find(id);
        return part == null ? "" : part.facts().material().word();
    }

    private String guide(Build build) {
        String id = build.partAt(Station.guide(1));
        return id != null && catalog.find(id) instanceof Guide guide ? guide.family() + " " + guide.frameFinish() : "";
    }

    private synchronized BlankShape shape(Blank blank) {
        return shapes.computeIfAbsent(blank.id(), id -> BlankShape.of(blank));
    }

    private synchronized Style style(Query query) {
        Look look = query.brief().look();
        List<Object> wished = List.of(look.theme(), look.likedMaterials(), look.likedColours());
        return styles.computeIfAbsent(wished, any -> new Style(catalog, query.brief()));
    }

    static List<Integer> feet(double fromMm, double toMm, int grid) {
        List<Integer> feet = new ArrayList<>();
        for (int x = (int) Math.ceil(fromMm / grid) * grid; x <= toMm; x += grid) {
            feet.add(x);
        }
        return feet;
    }
}
