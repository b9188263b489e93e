package withy.search;

import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Layout;
import withy.rod.Setting;

/**
 * Best-first search with proof. A node is a blank with one least class, then a layout of it; the node with the least bound is looked at more closely
 * ({@link Node.Stage}) or worked next, so the search ends when no open node can beat the best build found.
 */
final class Proof implements LayoutWork.Search {
    /** Builds a rule outside the chain may refuse before the proof is given up and left to the engine. */
    private static final long MOST_REFUSED = 50_000;

    /** The version of a node whose bound is that of another. */
    private static final int UNSEEN = -1;

    /** With fewer blanks open than this, multipliers are as soon learnt on the way. */
    private static final int WORTH_A_LOOK = 4;

    /** Blanks opened between two looks at whether to go on. */
    private static final int SITES_UNWATCHED = 32;

    private final Task task;
    private final Watch watch;
    private PriorityQueue<Node> open = new PriorityQueue<>(Node.BEST_FIRST);
    private final NodeBounds bounds;
    private final LayoutWork layouts;
    private final boolean complete;
    private final Learnt learnt;
    private Task.@Nullable Judged best;
    private Iterator<Site> sites = Collections.emptyIterator();
    private int looked;
    private long order;
    private long opened;
    private long weakestBound = Long.MAX_VALUE;
    private long under = Long.MAX_VALUE;
    private long refusedBuilds;
    /** True once a layout was met in which no build keeps its ceilings. */
    private boolean ceilingsBite;
    /** True where the first build found ends it. */
    private boolean firstWillDo;

    private Hopeless hopeless;
    private UnaryOperator<List<Site>> inOrder = UnaryOperator.identity();
    private final FirstLayout firstLayout;
    private Half half = Half.ODD;
    private @Nullable Halves halves;

    Proof(Task task, Watch watch) {
        this(task, watch, LayoutWork.firstSteps(task.query));
    }

    /** With another number of handles and builds met before a layout is put off. */
    Proof(Task task, Watch watch, long firstSteps) {
        this.task = task;
        this.watch = watch;
        this.complete = task.ground.complete();
        this.bounds = new NodeBounds(task);
        this.learnt = new Learnt(task, bounds);
        this.hopeless = new Hopeless(task, bounds, null);
        this.firstLayout = new FirstLayout(task, bounds);
        this.layouts = new LayoutWork(task, bounds, watch, this, firstSteps);
    }

    Solution run() {
        sites = complete ? inOrder.apply(task.sites()).iterator() : Collections.emptyIterator();
        boolean unopened = !openSites();
        boolean stopped = unopened;
        if (!unopened && !firstWillDo) {
            begin();
        }
        while (!stopped && !open.isEmpty() && !done() && open.element().bound() < limit()) {
            stopped = watch.interrupted().getAsBoolean() || refusedBuilds > MOST_REFUSED;
            if (stopped) {
                break;
            }
            Node node = open.remove();
            Node now = node.version() == learnt.version(node.site()) ? node : rebound(node);
            if (now.bound() > node.bound()
                    && !open.isEmpty()
                    && now.bound() > open.element().bound()) {
                if (now.bound() < limit()) {
                    open.add(now);
                }
            } else if (now.bound() < limit()) {
                work(now);
            }
            unopened = !done() && !openSites();
            stopped = unopened;
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
    Solution any(Lately lately) {
        inOrder = lately::likeliestFirst;
        open = new PriorityQueue<>(Node.DEEPEST_FIRST);
        ceilingsBite = true;
        firstWillDo = true;
        learnt.anyWillDo();
        hopeless = new Hopeless(task, bounds, lately);
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

    @Override
    public boolean firstWillDo() {
        return firstWillDo;
    }

    @Override
    public Prices prices(Site site) {
        return learnt.prices(site);
    }

    @Override
    public long limit() {
        Task.Judged found = best;
        long own = found == null ? under : found.score();
        return halves == null ? own : Math.min(own, halves.limit(half));
    }

    /** Only one half of the blanks; another thread has the other. */
    Proof half(Half which, Halves of) {
        half = which;
        halves = of;
        inOrder = which::of;
        return this;
    }

    /** Scores from here on are of no interest, because a build that is known to be open to the question has the score just below. */
    Proof under(long score) {
        under = score;
        return this;
    }

    /** Opens all, or where the first build ends it as many as are wanted to go on; false where it was interrupted on the way. */
    private boolean openSites() {
        Node next = open.peek();
        while (sites.hasNext() && !(firstWillDo && next != null && next.stage() != Node.Stage.WEIGHED)) {
            if (++looked % SITES_UNWATCHED == 0 && watch.interrupted().getAsBoolean()) {
                return false;
            }
            open(sites.next());
            next = open.peek();
        }
        return true;
    }

    private void open(Site site) {
        if (hopeless.is(site)) {
            return;
        }
        int highest = site.shape().blank().facts().durabilityClass();
        if (firstWillDo) {
            highest = Math.min(highest, task.leastClass()); // the least class has them all
        }
        long floor = Long.MIN_VALUE;
        for (int leastClass = task.leastClass(); leastClass <= highest; leastClass++) {
            Node node = Node.blank(order++, site, leastClass, hopeless.first(), learnt.version(site));
            if (firstWillDo) {
                if (bounds.mayAfford(node)) {
                    open.add(node);
                }
            } else if (leastClass == task.leastClass()) {
                floor = add(node).bound();
            } else if (!TrainGraph.none(floor)) {
                // a rod of a higher class is one of the lower, too, and a class is all that it is credited besides
                floor -= learnt.credit(site, leastClass);
                if (floor < limit()) {
                    open.add(node.bounded(floor, UNSEEN));
                }
            }
        }
    }

    /** Works one layout before the search begins. */
    private void begin() {
        Node first = open.peek();
        while (first != null && (first.version() == UNSEEN || first.stage() == Node.Stage.LISTED)) {
            if (first.version() == UNSEEN) {
                add(open.remove());
            } else {
                work(open.remove());
            }
            first = open.peek();
        }
        Node layout = first == null || open.size() < WORTH_A_LOOK
                ? null
                : firstLayout.of(first, learnt.linear(first), limit());
        if (layout != null) {
            work(layout);
        }
    }

    private Node rebound(Node node) {
        return node.bounded(bounds.of(node, learnt.linear(node), limit()), learnt.version(node.site()));
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
        if (hopeless.is(node, ceilingsBite, learnt.linear(node))) {
            return;
        }
        Setting setting = node.setting();
        if (setting != null && node.stage().compareTo(Node.Stage.TRAINED) >= 0) {
            complete(node, setting);
        } else if (node.stage() == Node.Stage.LOOKED && setting == null) {
            openLayouts(node);
        } else {
            add(node.closer());
        }
    }

    private void openLayouts(Node node) {
        Linear k = learnt.linear(node);
        for (Layout layout : node.site().layouts()) {
            long floor = bounds.of(node, layout, k);
            if (floor < limit() && !TrainGraph.none(floor) && !firstLayout.was(node, layout)) {
                openLayout(node, layout);
            }
        }
    }

    private void openLayout(Node node, Layout layout) {
        task.setting(node.shape(), layout).ifPresent(setting -> add(node.layout(order++, setting)));
    }

    private void complete(Node node, Setting setting) {
        if (node.stage() == Node.Stage.WEIGHED) {
            completeInSlices(node, setting);
            return;
        }
        opened++;
        long least = layouts.first(node, setting);
        if (least < limit()) {
            open.add(node.at(Node.Stage.WEIGHED).bounded(least, learnt.version(node.site())));
        }
    }

    private void completeInSlices(Node node, Setting setting) {
        long most = layouts.end(node);
        long least = layouts.slice(node, setting, most);
        if (least == Long.MAX_VALUE && most < limit()) {
            open.add(node.bounded(most, learnt.version(node.site())));
        } else if (least < Long.MAX_VALUE) {
            weakestBound = Math.min(weakestBound, most < limit() ? layouts.slice(node, setting, limit()) : least);
        }
    }

    @Override
    public void took(Site site, Dual.Outcome outcome, long refused) {
        refusedBuilds += refused;
        ceilingsBite |= outcome.bound() == Long.MAX_VALUE;
        Task.Judged found = outcome.best();
        if (found != null && found.score() < limit()) {
            best = found;
            if (halves == null) {
                watch.better().found(found.build(), found.vector(), found.score());
            } else {
                halves.found(half, found.build(), found.vector(), found.score());
            }
        }
        learnt.learn(site, outcome.prices());
    }
}
