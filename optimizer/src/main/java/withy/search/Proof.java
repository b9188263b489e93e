package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.Blank;
import withy.catalog.Finish;
import withy.catalog.WrapThread;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.GuidePlan;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Best-first search with proof. A node is a blank, then a layout of it, then a layout with one thread and one least class; the node with the
 * least bound is worked next, so the search ends when no open node can beat the best build found.
 */
final class Proof {
    /** Longest butt cap considered when the reel foot's grid is laid out, mm. */
    private static final double LONGEST_CAP_MM = 60;

    /** Counts tried beyond the floor. */
    private static final int MORE_GUIDES = 2;

    /** Builds a rule outside the chain may refuse before the proof is given up and left to the engine. */
    private static final long MOST_REFUSED = 50_000;

    private final Task task;
    private final List<Stations> alternatives;
    private final Function<Blank, BlankShape> shapes;
    private final Watch watch;
    private final PriorityQueue<Node> open = new PriorityQueue<>(Node.BEST_FIRST);
    private final Refusal refusal = new Refusal();
    private final Map<FloorKey, Floors> floors = new HashMap<>();
    private final long fixedMilli;
    private Prices prices;
    private int version;
    private Task.@Nullable Judged best;
    private long order;
    private long opened;
    private long weakestBound = Long.MAX_VALUE;
    private long refusedBuilds;

    /**
     * @param alternatives placings of the forced parts, any of which will do
     * @param shapes gives a blank's shape
     */
    Proof(Task task, List<Stations> alternatives, Function<Blank, BlankShape> shapes, Watch watch) {
        this.task = task;
        this.alternatives = alternatives;
        this.shapes = shapes;
        this.watch = watch;
        this.fixedMilli = leastFixedMilli(task);
        this.prices = Prices.start(task.scoring);
    }

    private record FloorKey(Prices prices, int leastClass) {}

    Solution run() {
        boolean whole = !task.finishes.isEmpty() && !task.adhesives.isEmpty() && !task.threads.isEmpty();
        if (whole && !task.blanks.isEmpty()) {
            openBlanks();
        }
        boolean stopped = false;
        while (!open.isEmpty() && open.element().bound() < limit()) {
            if (watch.interrupted().getAsBoolean() || refusedBuilds > MOST_REFUSED) {
                stopped = true;
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
        long bound = stopped ? open.element().bound() : limit();
        bound = Math.min(bound, weakestBound);
        Task.Judged found = best;
        if (found == null) {
            return new Solution(null, null, Long.MAX_VALUE, bound, !stopped && weakestBound == Long.MAX_VALUE, opened);
        }
        boolean proven = bound >= found.score();
        return new Solution(
                found.build(), found.vector(), found.score(), Math.min(bound, found.score()), proven, opened);
    }

    private long limit() {
        Task.Judged found = best;
        return found == null ? Long.MAX_VALUE : found.score();
    }

    private Linear linear(int leastClass) {
        return prices.linear(task, leastClass - (long) task.brief.durabilityClass());
    }

    private Floors floors(int leastClass) {
        return floors.computeIfAbsent(
                new FloorKey(prices, leastClass), key -> new Floors(task, linear(leastClass), leastClass));
    }

    private boolean ruled(String code) {
        return task.rules.rules().stream().anyMatch(rule -> rule.code().equals(code));
    }

    /** The class every load-bearing part must have at least. */
    int leastClass() {
        long asked = task.brief.durabilityClass();
        long wanted =
                task.bounds.marginClasses() == Long.MIN_VALUE ? Long.MIN_VALUE : asked + task.bounds.marginClasses();
        return (int) Math.max(ruled("durability") ? asked : 0, wanted);
    }

    private void openBlanks() {
        for (Blank blank : task.blanks) {
            BlankShape shape = shapes.apply(blank);
            for (Stations alternative : alternatives) {
                if (alternative.allows(Station.BLANK, blank)) {
                    int highest = blank.facts().durabilityClass();
                    for (int leastClass = leastClass(); leastClass <= highest; leastClass++) {
                        Node node = new Node(0, order++, shape, alternative, leastClass, null, -1);
                        long bound = bound(node);
                        if (!TrainGraph.none(bound)) {
                            open.add(new Node(bound, node.order(), shape, alternative, leastClass, null, version));
                        }
                    }
                }
            }
        }
    }

    /** A number no build of a node scores below, under the present floors. */
    private long bound(Node node) {
        Linear k = linear(node.leastClass());
        Floors with = floors(node.leastClass());
        Setting setting = node.setting();
        if (setting != null) {
            long besides = with.besidesBlank(node.shape(), setting.layout().form());
            return TrainGraph.none(besides) ? besides : besides + blank(node.shape(), setting.footMm(), k);
        }
        long least = TrainGraph.NONE;
        for (HandleForm form : HandleForm.values()) {
            least = Math.min(least, with.besidesBlank(node.shape(), form));
        }
        return TrainGraph.none(least) ? least : least + leastBlank(node.shape(), k);
    }

    private Node rebound(Node node) {
        return node.bounded(bound(node), version);
    }

    private long leastBlank(BlankShape shape, Linear k) {
        long least = Long.MAX_VALUE;
        for (int foot : feet()) {
            least = Math.min(least, blank(shape, foot, k));
        }
        return least;
    }

    /** Blank, reel and fixed consumables at one reel position. */
    private long blank(BlankShape shape, int foot, Linear k) {
        double hand = task.brief.rodType().spinningReel() ? foot : foot - 25;
        double moment = (shape.mass().firstGmm() - shape.mass().massG() * foot) * 1000;
        double inertia = shape.mass().inertiaGmm2(hand) * 1000;
        long milli = task.tariff.partMilli(shape.blank(), 1)
                + task.tariff.everyRodMilli(shape.joints().size())
                + fixedMilli;
        long style = task.style.part(shape.blank(), HandleForm.SPLIT, Station.BLANK, shape.blank(), 1);
        return k.constant()
                + k.perMg() * shape.blank().massMg()
                + (long) (k.perMgMm() * moment)
                + (long) (k.perMgMm2() * inertia)
                + k.perMilli() * milli
                - k.perStyleCenti() * style;
    }

    private List<Integer> feet() {
        Integer given = task.query.reelFootMm();
        if (given != null) {
            return List.of(given);
        }
        return Search.feet(task.brief.reachMinMm() - LONGEST_CAP_MM, task.brief.reachMaxMm(), Layout.GRID_MM);
    }

    private void work(Node node) {
        Setting setting = node.setting();
        if (setting == null) {
            openLayouts(node);
        } else {
            complete(node, setting);
        }
    }

    private void openLayouts(Node node) {
        for (Layout layout : layouts(node.shape(), node.alternative())) {
            openLayout(node, layout);
        }
    }

    /** Every layout of a blank that is looked at. */
    List<Layout> layouts(BlankShape shape, Stations alternative) {
        int fewest = GuidePlan.fewestGuides(task.brief.rodType(), shape.blank().lengthMm());
        int from = Math.max(ruled("guide-train") ? fewest : 3, alternative.lastGivenGuide());
        List<Layout> layouts = new ArrayList<>();
        for (int foot : feet()) {
            for (HandleForm form : HandleForm.values()) {
                for (int count = from; count <= Math.max(from, fewest + MORE_GUIDES); count++) {
                    layouts.add(new Layout(shape.blank().id(), foot, form, count));
                }
            }
        }
        return layouts;
    }

    private void openLayout(Node node, Layout layout) {
        Setting setting = Setting.of(task.catalog, task.brief, node.shape(), layout);
        task.rules.onLayout(setting, refusal.reset());
        if (refusal.refused()) {
            return;
        }
        Node layoutNode =
                new Node(node.bound(), order++, node.shape(), node.alternative(), node.leastClass(), setting, version);
        Node bounded = rebound(layoutNode);
        if (bounded.bound() < limit() && !TrainGraph.none(bounded.bound())) {
            open.add(bounded);
        }
    }

    private void complete(Node node, Setting setting) {
        opened++;
        Stations stations = node.alternative();
        for (Adhesive adhesive : task.adhesives) {
            List<Consumables> with = new ArrayList<>();
            for (WrapThread thread : ThreadChoice.on(task, stations, setting.blank())) {
                for (Finish finish : task.finishes) {
                    if (stations.allows(Station.FINISH, finish) && stations.allows(Station.ADHESIVE, adhesive)) {
                        with.add(new Consumables(thread, finish, adhesive));
                    }
                }
            }
            if (!with.isEmpty()) {
                complete(node, setting, with);
            }
        }
    }

    /** With one adhesive: the handle's glue lines are the same for all. */
    private void complete(Node node, Setting setting, List<Consumables> with) {
        Completion completion = new Completion(task, setting, with, node.alternative(), node.leastClass());
        Dual dual = new Dual(task, completion, node.shape(), node.leastClass(), watch);
        long handleFloor =
                floors(node.leastClass()).handle(node.shape(), setting.layout().form());
        Dual.Outcome outcome = dual.solve(prices, limit(), handleFloor);
        refusedBuilds += dual.refused();
        Task.Judged found = outcome.best();
        if (found != null && found.score() < limit()) {
            best = found;
            watch.better().found(found.build(), found.vector(), found.score());
        }
        learn(outcome.prices());
        if (!outcome.whole()) {
            weakestBound = Math.min(weakestBound, outcome.bound());
        }
    }

    /** Other multipliers make other floors; small changes are not worth new ones. */
    private void learn(Prices better) {
        if (better.differs(prices, task.scoring)) {
            prices = better;
            version++;
        }
    }

    /** Least price of sundries, adhesive and finish. */
    private static long leastFixedMilli(Task task) {
        long least = Long.MAX_VALUE;
        for (WrapThread thread : task.threads) {
            for (Finish finish : task.finishes) {
                for (Adhesive adhesive : task.adhesives) {
                    least = Math.min(least, task.tariff.fixedMilli(new Consumables(thread, finish, adhesive), 0));
                }
            }
        }
        return least;
    }
}
