package withy.explain;

import java.util.Arrays;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rules.Rulebook;
import withy.units.Money;
import withy.units.QuantityText;

/**
 * One brief on one catalogue with a search to ask: what every explanation works with. Each question is put to the search once. For one
 * thread; only what {@link Swaps} asks may be asked from several.
 */
public final class Inquiry {
    private static final Solution NONE = new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, true, 0);

    private final Catalog catalog;
    private final Brief brief;
    private final Function<Catalog, ? extends Solver> shops;
    private final Solver solver;
    private final Watch watch;
    private final QuantityText units;
    private final Style style;
    private final NiceWishes wishes;
    private final Scoring scoring;
    private final TipsOnBlanks tips;
    private final Several several;
    private final Map<Query, Solution> known = new ConcurrentHashMap<>();
    private final Map<Query, Solution> some = new LinkedHashMap<>();
    private final Rulebooks rulebooks = new Rulebooks();
    private volatile boolean open;
    private volatile @Nullable Setting last;

    /**
     * @param catalog the shop
     * @param brief the wishes
     * @param shops makes a search over a catalogue: this one, or this one with a part at another price or weight
     * @param watch progress and interruption of every question
     * @param units the reader's units
     */
    public Inquiry(
            Catalog catalog, Brief brief, Function<Catalog, ? extends Solver> shops, Watch watch, QuantityText units) {
        this.catalog = catalog;
        this.brief = brief;
        this.shops = shops;
        this.solver = shops.apply(catalog);
        this.watch = watch;
        this.units = units;
        this.style = new Style(catalog, brief);
        this.wishes = new NiceWishes(brief);
        this.scoring = Scoring.of(brief, catalog.rates());
        this.tips = new TipsOnBlanks(catalog);
        this.several = new Several(this, solver, watch);
    }

    public Catalog catalog() {
        return catalog;
    }

    public Brief brief() {
        return brief;
    }

    public QuantityText units() {
        return units;
    }

    /** True where a question was given up before its end, so that what was said may be off. */
    public boolean open() {
        return open;
    }

    /** True where the asker wants it to stop. */
    public boolean stopped() {
        return watch.interrupted().getAsBoolean();
    }

    /** The plain question. */
    public Query query() {
        return Query.of(brief, Rulebook.standard());
    }

    /** The best legal build for the brief, or null. */
    public @Nullable Found first() {
        return best(query());
    }

    /** The best build for a question, measured for the brief, or null where none is legal. */
    public @Nullable Found best(Query query) {
        return found(solved(query));
    }

    /** What the search says to a question. */
    Solution solved(Query query) {
        Solution before = known.get(query);
        if (before != null) {
            return before;
        }
        Query asked = asked(query);
        Solution solution = asked == null ? NONE : solver.solve(asked, watch);
        noted(solution.proven());
        known.put(query, solution);
        return solution;
    }

    /** The same to a watch of the asker's own, which may count its steps; what that stops is not remembered and does not make the inquiry open. */
    Solution solved(Query query, Watch own) {
        Solution before = known.get(query);
        Query asked = before == null ? Split.where(catalog, query) : null;
        Solution solution = before != null ? before : asked == null ? NONE : solver.solveAlone(asked, own);
        if (solution.proven()) {
            known.put(query, solution);
        }
        return solution;
    }

    /** The same of builds that score less than a limit; what is found is not remembered. */
    Solution solvedBelow(long limit, Query query, Watch own) {
        Query asked = Split.where(catalog, query);
        return asked == null ? NONE : solver.solveBelow(limit, asked, own);
    }

    /** True where two threads may ask at once. */
    boolean hasRoomForTwo() {
        return solver.hasRoomForTwo();
    }

    /** The watch of every question. */
    Watch watch() {
        return watch;
    }

    private void noted(boolean settled) {
        open = open || !settled;
    }

    /** The same with the part of one id as if its facts were others. */
    Solution solvedWith(Part part, Query query) {
        Map<String, withy.catalog.PartFacts> other = Map.of(part.id(), part.facts());
        Solution solution = shops.apply(catalog.changed(other, catalog.hash())).solve(query, watch);
        noted(solution.proven());
        return solution;
    }

    /** True where some build answers a question. */
    boolean possible(Query query) {
        return any(query) != null;
    }

    /** What is asked of several questions at once. */
    Several several() {
        return several;
    }

    /** What the search is asked; null where brief and parts alone say that there is nothing. */
    @Nullable
    Query asked(Query query) {
        Query asked = Split.where(catalog, query);
        return asked == null || Outright.impossible(catalog, tips, asked) ? null : asked;
    }

    /** Some build that answers a question, or null; any will do. */
    @Nullable
    Build any(Query query) {
        Solution before = some.get(query);
        if (before != null) {
            return before.build();
        }
        Solution whole = known.get(query);
        if (whole != null && whole.proven()) {
            return whole.build();
        }
        Query asked = asked(query);
        Solution solution = asked == null ? NONE : solver.any(asked, watch);
        noted(solution.build() != null || solution.proven());
        some.put(query, solution);
        return solution.build();
    }

    /** The rules with some left out; the same book each time, so that a question is known again. */
    Rulebooks rulebooks() {
        return rulebooks;
    }

    private @Nullable Found found(Solution solution) {
        Build build = solution.build();
        Found f = build == null ? null : measured(build);
        return f == null ? null : new Found(f.build(), f.rod(), f.vector(), solution.proven(), off(solution));
    }

    private static double off(Solution solution) {
        return solution.proven() ? 0 : Scoring.steps(solution.score() - solution.bound());
    }

    /** The best build for a question with another brief, measured for that brief, or null where none is legal. */
    @Nullable
    Found bestFor(Query query) {
        Solution solution = solved(query);
        Build build = solution.build();
        ObjectiveVector vector = solution.objectives();
        if (build == null || vector == null) {
            return null;
        }
        return new Found(build, Rod.measure(catalog, query.brief(), build), vector, solution.proven(), off(solution));
    }

    /** Any build measured for the brief. */
    public Found measured(Build build) {
        Rod rod = Rod.measure(setting(build.layout()), build);
        return new Found(build, rod, vector(rod), true, 0);
    }

    /** A layout worked out; many builds on one layout are often measured one after another. */
    private Setting setting(Layout layout) {
        Setting before = last;
        if (before != null && before.layout().equals(layout)) {
            return before;
        }
        if (!(catalog.find(layout.blankId()) instanceof Blank blank)) {
            throw new IllegalArgumentException(layout.blankId() + " is no blank of the catalogue");
        }
        Setting setting = Setting.of(catalog, brief, BlankShape.of(blank), layout);
        last = setting;
        return setting;
    }

    /** Any build measured for another brief. */
    Found measuredFor(Brief other, Build build) {
        Rod rod = Rod.measure(catalog, other, build);
        Style otherStyle = other.look().equals(brief.look()) ? style : new Style(catalog, other);
        return new Found(build, rod, ObjectiveVector.of(rod, otherStyle, new NiceWishes(other)), true, 0);
    }

    Style style() {
        return style;
    }

    ObjectiveVector vector(Rod rod) {
        return ObjectiveVector.of(rod, style, wishes);
    }

    /** Score by the brief's own priorities; less is better. */
    long score(ObjectiveVector vector) {
        return scoring.score(vector);
    }

    Scoring scoring() {
        return scoring;
    }

    /** Only one objective counts, and nothing besides. */
    public static Map<Objective, Double> only(Objective one) {
        return Map.of(one, 1.0);
    }

    String money(long minor) {
        return Money.print(minor, Currency.getInstance(catalog.rates().currency()));
    }

    String name(String partId) {
        Part part = catalog.find(partId);
        return part == null ? partId : part.facts().name();
    }

    /** A part's name, a material's word, or the id of a part the lists do not have. */
    String spoken(String about) {
        boolean material =
                Arrays.stream(Material.values()).anyMatch(one -> one.word().equals(about));
        return material ? Phrases.of("material." + about) : name(about);
    }

    /** Names of parts, joined as in speech. */
    String names(Set<String> partIds) {
        return Phrases.list(partIds.stream().map(this::name).toList());
    }
}
