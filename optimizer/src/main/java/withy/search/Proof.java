package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Refusal;

/**
 * Best-first search with proof. A node is a blank with one least class, then a layout of it; the node with the least bound is looked at more closely
 * ({@link Node.Stage}) or worked next, so the search ends when no open node can beat the best build found.
 */
final class Proof {
    /** Builds a rule outside the chain may refuse before the proof is given up and left to the engine. */
    private static final long MOST_REFUSED = 50_000;

    /** Handles and builds met in one walk through a layout, at first and when no other may hold a better one. */
    private static final long FIRST_STEPS = 20_000;

    private static final long MOST_STEPS = 20_000_000;

    /** The version of a node whose bound is that of another. */
    private static final int UNSEEN = -1;

    /** Layouts looked at for one to begin with. */
    private static final int MOST_TASTED = 6;

    /** Blanks opened between two looks at whether to go on. */
    private static final int SITES_UNWATCHED = 32;

    private final Task task;
    private final Watch watch;
    private final Slices slices = new Slices();
    private PriorityQueue<Node> open = new PriorityQueue<>(Node.BEST_FIRST);
    private final Refusal refusal = new Refusal();
    private final NodeBounds bounds;
    private final boolean complete;
    private Prices prices;
    private int version;
    private Task.@Nullable Judged best;
    private long order;
    private long opened;
    private long weakestBound = Long.MAX_VALUE;
    private long under = Long.MAX_VALUE;
    private long refusedBuilds;
    /** True once a layout was met in which no build keeps its ceilings. */
    private boolean ceilingsBite;
    /** True where the first build found ends it. */
    private boolean firstWillDo;

    Proof(Task task, Watch watch) {
        this.task = task;
        this.watch = watch;
        this.prices = Prices.start(task.scoring);
        this.complete = !task.ground.finishes.isEmpty()
                && !task.ground.adhesives.isEmpty()
                && !task.ground.threads.isEmpty()
                && !task.ground.blanks.isEmpty();
        this.bounds = new NodeBounds(task);
    }

    Solution run() {
        boolean unopened = complete && !openSites();
        if (!unopened && !firstWillDo) {
            taste();
        }
        boolean stopped = unopened;
        while (!stopped && !open.isEmpty() && !done() && open.element().bound() < limit()) {
            stopped = watch.interrupted().getAsBoolean() || refusedBuilds > MOST_REFUSED;
            if (stopped) {
                break;
            }
            Node node = open.remove();
            Node now = node.version() == version ? node : rebound(node);
            if (now.bound() > node.bound()
                    && !open.isEmpty()
                    && now.bound() > open.element().bound()) {
                if (now.bound() < limit()) {
                    open.add(now);
                }
            } else if (now.bound() < limit()) {
                work(now);
            }
        }
        long bound = unopened ? Long.MIN_VALUE : stopped ? open.element().bound() : limit();
        bound = Math.min(bound, weakestBound);
        Task.Judged found = best;
        if (found == null) {
            return new Solution(null, null, Long.MAX_VALUE, bound, !stopped && weakestBound == Long.MAX_VALUE, opened);
        }
        boolean proven = bound >= found.score();
        return new Solution(
                found.build(), found.vector(), found.score(), Math.min(bound, found.score()), proven, opened);
    }

    /** Some legal build, or the proof that there is none: layout after layout of one blank after another, until one is found. */
    Solution any() {
        open = new PriorityQueue<>(Node.DEEPEST_FIRST);
        ceilingsBite = true;
        firstWillDo = true;
        Solution ran = run();
        boolean none = ran.build() == null && ran.proven();
        return none ? ran : some(ran);
    }

    /** Nothing is known of how good a build is. */
    static Solution some(Solution one) {
        return new Solution(one.build(), one.objectives(), one.score(), Long.MIN_VALUE, false, one.layoutsOpened());
    }

    private boolean done() {
        return firstWillDo && best != null;
    }

    private long limit() {
        Task.Judged found = best;
        return found == null ? under : found.score();
    }

    /** Scores from here on are of no interest, because a build that is known to be open to the question has the score just below. */
    Proof under(long score) {
        under = score;
        return this;
    }

    private Linear linear(int leastClass) {
        return prices.linear(task.aim, leastClass - (long) task.brief.durabilityClass());
    }

    /** The class every load-bearing part must have at least. */
    int leastClass() {
        long asked = task.brief.durabilityClass();
        long wanted =
                task.bounds.marginClasses() == Long.MIN_VALUE ? Long.MIN_VALUE : asked + task.bounds.marginClasses();
        return (int) Math.max(task.ground.ruled("durability") ? asked : 0, wanted);
    }

    /** False where it was interrupted on the way. */
    private boolean openSites() {
        int looked = 0;
        for (Site site : task.ground.sites()) {
            if (++looked % SITES_UNWATCHED == 0 && watch.interrupted().getAsBoolean()) {
                return false;
            }
            open(site);
        }
        return true;
    }

    private void open(Site site) {
        if (site.ends().isEmpty()
                || !site.mayHaveGiven()
                || firstWillDo && !(site.mayHaveTrain() && site.mayJoinSeat())) {
            return;
        }
        int highest = site.shape().blank().facts().durabilityClass();
        if (firstWillDo) {
            highest = Math.min(highest, leastClass()); // the least class has them all
        }
        long floor = Long.MIN_VALUE;
        for (int leastClass = leastClass(); leastClass <= highest; leastClass++) {
            Node node = new Node(Long.MIN_VALUE, order++, site, leastClass, null, Node.Stage.OPENED, version);
            if (firstWillDo) {
                if (bounds.mayAfford(node)) {
                    open.add(node);
                }
            } else if (leastClass == leastClass()) {
                floor = add(node).bound();
            } else if (!TrainGraph.none(floor)) {
                // a rod of a higher class is one of the lower, too, and a class is all that it is credited besides
                floor -= linear(leastClass - 1).constant() - linear(leastClass).constant();
                if (floor < limit()) {
                    open.add(node.bounded(floor, UNSEEN));
                }
            }
        }
    }

    /**
     * Works a layout that looks good before the search begins, for multipliers that make floors tight: under those that it begins with a heavy handle is
     * welcome wherever the rod may hang too far ahead.
     */
    private void taste() {
        Node likely = likely();
        if (likely != null) {
            work(likely);
        }
    }

    /** A layout of the best blank in which there are builds, one that costs little at first sight; null where none is soon met. */
    private @Nullable Node likely() {
        Node first = open.peek();
        while (first != null && first.version() == UNSEEN) {
            add(open.remove());
            first = open.peek();
        }
        if (first == null) {
            return null;
        }
        Node blank = first.at(Node.Stage.LOOKED);
        Linear k = linear(blank.leastClass());
        Map<Layout, Long> floors = new LinkedHashMap<>();
        for (Layout layout : blank.site().layouts()) {
            floors.put(layout, bounds.of(blank, layout, k));
        }
        return floors.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(entry -> setting(blank.shape(), entry.getKey()))
                .flatMap(Optional::stream)
                .limit(MOST_TASTED)
                .map(setting -> rebound(new Node(
                        Long.MIN_VALUE,
                        order++,
                        blank.site(),
                        blank.leastClass(),
                        setting,
                        Node.Stage.HANDLED,
                        version)))
                .filter(node -> node.bound() < limit() && !TrainGraph.none(node.bound()))
                .findFirst()
                .orElse(null);
    }

    /** What a layout fixes, where it keeps the rules. */
    private Optional<Setting> setting(BlankShape shape, Layout layout) {
        Setting setting = Setting.of(task.ground.catalog, task.brief, shape, layout);
        task.ground.rules.onLayout(setting, refusal.reset());
        return refusal.refused() ? Optional.empty() : Optional.of(setting);
    }

    private Node rebound(Node node) {
        return node.bounded(bounds.of(node, linear(node.leastClass()), limit()), version);
    }

    /** Puts a node that was made or looked at more closely among the open ones, unless nothing in it can be of interest. */
    private Node add(Node node) {
        Node now = rebound(node);
        if (now.bound() < limit() && !TrainGraph.none(now.bound())) {
            open.add(now);
        }
        return now;
    }

    private void work(Node node) {
        if (ceilingsBite && !bounds.mayKeepCeilings(node)) {
            return;
        }
        if (firstWillDo && node.stage() == Node.Stage.OPENED && !bounds.maySeat(node)) {
            return;
        }
        if (firstWillDo && handleIsNext(node) && !bounds.mayHold(node, linear(node.leastClass()))) {
            return;
        }
        Setting setting = node.setting();
        if (setting != null && node.stage().compareTo(Node.Stage.HANDLED) >= 0) {
            complete(node, setting);
        } else if (node.stage() == Node.Stage.LOOKED && setting == null) {
            openLayouts(node);
        } else {
            add(node.closer());
        }
    }

    /** A handle is looked for before the guides, but after what the guides cost where money is short. */
    private boolean handleIsNext(Node node) {
        boolean budgeted = Prices.bounded(task.bounds, Prices.Kind.COST);
        return node.setting() == null && node.stage() == (budgeted ? Node.Stage.LOOKED : Node.Stage.OPENED);
    }

    private void openLayouts(Node node) {
        Linear k = linear(node.leastClass());
        for (Layout layout : node.site().layouts()) {
            long floor = bounds.of(node, layout, k);
            if (floor < limit() && !TrainGraph.none(floor)) {
                openLayout(node, layout);
            }
        }
    }

    private void openLayout(Node node, Layout layout) {
        setting(node.shape(), layout)
                .ifPresent(setting -> add(new Node(
                        node.bound(), order++, node.site(), node.leastClass(), setting, Node.Stage.LOOKED, version)));
    }

    private void complete(Node node, Setting setting) {
        if (node.stage() == Node.Stage.WEIGHED) {
            completeInSlices(node, setting);
            return;
        }
        opened++;
        long least = complete(node, setting, limit(), FIRST_STEPS);
        if (least < limit()) {
            open.add(node.at(Node.Stage.WEIGHED).bounded(least, version));
        }
    }

    private void completeInSlices(Node node, Setting setting) {
        long most = slices.end(node, limit());
        long least = complete(node, setting, most, MOST_STEPS);
        if (least == Long.MAX_VALUE && most < limit()) {
            open.add(node.bounded(most, version));
        } else if (least < Long.MAX_VALUE) {
            weakestBound =
                    Math.min(weakestBound, most < limit() ? complete(node, setting, limit(), MOST_STEPS) : least);
        }
    }

    private long complete(Node node, Setting setting, long most, long mostSteps) {
        long least = Long.MAX_VALUE;
        for (Stand stand : node.site().stands(setting)) {
            least = Math.min(least, complete(node, setting, stand, Math.min(most, limit()), mostSteps));
        }
        return least;
    }

    /**
     * The best build of a layout that scores less than a limit; a number what was not seen of it does not score below, or the largest where all was.
     */
    private long complete(Node node, Setting setting, Stand stand, long most, long mostSteps) {
        Linear k = linear(node.leastClass());
        List<Consumables> all = node.site().threads();
        long[] floors = TrainFloors.works(k) ? bounds.dressed(node, setting, stand, k, limit()) : new long[all.size()];
        List<Completion.Candidate> with = new ArrayList<>();
        for (int t = 0; t < all.size(); t++) {
            if (all.get(t).adhesive().equals(stand.fitter.with().adhesive())) {
                with.add(new Completion.Candidate(all.get(t), TrainFloors.works(k) ? floors[t] : Long.MIN_VALUE));
            }
        }
        if (with.isEmpty()) {
            return Long.MAX_VALUE;
        }
        Completion completion = new Completion(stand, setting, with, node.leastClass(), most);
        Dual dual = new Dual(task, completion, node.shape(), node.leastClass(), watch, mostSteps);
        if (firstWillDo) {
            dual.firstWillDo();
        }
        Prices before = slices.prices(node);
        Dual.Outcome outcome = before == null ? dual.solve(prices, most) : dual.settle(before, most);
        if (!outcome.whole()) {
            slices.putOff(node, outcome.prices());
        }
        refusedBuilds += dual.refused();
        ceilingsBite |= outcome.bound() == Long.MAX_VALUE;
        Task.Judged found = outcome.best();
        if (found != null && found.score() < limit()) {
            best = found;
            watch.better().found(found.build(), found.vector(), found.score());
        }
        learn(outcome.prices());
        return outcome.whole() ? Long.MAX_VALUE : outcome.bound();
    }

    /** Other multipliers make other floors; small changes are not worth new ones. */
    private void learn(Prices better) {
        if (better.differs(prices, task.scoring)) {
            prices = better;
            version++;
        }
    }
}
