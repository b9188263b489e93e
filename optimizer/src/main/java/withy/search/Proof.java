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
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.WrapThread;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.GuidePlan;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Best-first search with proof. A node is a blank with one least class, then a layout of it; the node with the least bound is looked at more closely
 * ({@link Node.Stage}) or worked next, so the search ends when no open node can beat the best build found.
 */
final class Proof {
    /** Bores looser than this over the blank are refused whatever fills them, mm. */
    private static final double LOOSEST_BORE_MM = 2;

    /** Glue, arbors and rings of a handle weigh less than this, g; only used to see that a rod cannot hang behind its zone. */
    private static final double GLUE_AND_RINGS_G = 15;

    /** Builds a rule outside the chain may refuse before the proof is given up and left to the engine. */
    private static final long MOST_REFUSED = 50_000;

    /** Handles and builds met in one walk through a layout, at first and when no other may hold a better one. */
    private static final long FIRST_STEPS = 20_000;

    private static final long MOST_STEPS = 20_000_000;

    private final Task task;
    private final List<Stations> alternatives;
    private final Function<Blank, BlankShape> shapes;
    private final Watch watch;
    private final PriorityQueue<Node> open = new PriorityQueue<>(Node.BEST_FIRST);
    private final Refusal refusal = new Refusal();
    private final Map<FloorKey, Floors> floors = new HashMap<>();
    private final Map<ThreadKey, List<Consumables>> threads = new HashMap<>();
    private final Map<CountKey, List<Integer>> counts = new HashMap<>();
    private final Map<String, List<Ends.Group>> ends = new HashMap<>();
    private final Map<ShelfKey, Shelf> shelves = new HashMap<>();
    private final Map<StandKey, List<Stand>> stands = new HashMap<>();
    private final TrainFloors trainFloors;
    private final boolean complete;
    private final long fixedMilli;
    private Prices prices;
    private int version;
    private Task.@Nullable Judged best;
    private long order;
    private long opened;
    private long weakestBound = Long.MAX_VALUE;
    private long under = Long.MAX_VALUE;
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
        this.prices = Prices.start(task.scoring);
        this.trainFloors = new TrainFloors(task);
        this.complete = !task.finishes.isEmpty()
                && !task.adhesives.isEmpty()
                && !task.threads.isEmpty()
                && !task.blanks.isEmpty();
        this.fixedMilli = complete ? fixedMilli() : 0;
    }

    private record CountKey(String blankId, Stations stations) {}

    private record ThreadKey(Stations stations, String blankId) {}

    private record ShelfKey(Stations stations, HandleForm form) {}

    private record StandKey(String blankId, int foot, HandleForm form, Stations stations, int leastClass) {}

    private record FloorKey(Prices prices, int leastClass) {}

    Solution run() {
        if (complete) {
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
        return found == null ? under : found.score();
    }

    /** Scores from here on are of no interest, because a build that is known to be open to the question has the score just below. */
    Proof under(long score) {
        under = score;
        return this;
    }

    private Linear linear(int leastClass) {
        return prices.linear(task, leastClass - (long) task.brief.durabilityClass());
    }

    private Floors floors(int leastClass) {
        return floors.computeIfAbsent(
                new FloorKey(prices, leastClass), key -> new Floors(task, linear(leastClass), leastClass));
    }

    /** The class every load-bearing part must have at least. */
    int leastClass() {
        long asked = task.brief.durabilityClass();
        long wanted =
                task.bounds.marginClasses() == Long.MIN_VALUE ? Long.MIN_VALUE : asked + task.bounds.marginClasses();
        return (int) Math.max(task.ruled("durability") ? asked : 0, wanted);
    }

    private void openBlanks() {
        for (Blank blank : task.blanks) {
            BlankShape shape = shapes.apply(blank);
            if (ends(shape).isEmpty()) {
                continue;
            }
            for (Stations alternative : alternatives) {
                if (alternative.allows(Station.BLANK, blank)) {
                    int highest = blank.facts().durabilityClass();
                    for (int leastClass = leastClass(); leastClass <= highest; leastClass++) {
                        Node node = new Node(0, order++, shape, alternative, leastClass, null, Node.Stage.OPENED, -1);
                        long bound = bound(node);
                        if (!TrainGraph.none(bound)) {
                            open.add(new Node(
                                    bound,
                                    node.order(),
                                    shape,
                                    alternative,
                                    leastClass,
                                    null,
                                    Node.Stage.OPENED,
                                    version));
                        }
                    }
                }
            }
        }
    }

    /** Caps and tip-tops that go together on a blank; none where no pair makes a rod of the length wanted. */
    private List<Ends.Group> ends(BlankShape shape) {
        return ends.computeIfAbsent(shape.blank().id(), id -> {
            return new Ends(task, task.anySetting(shape)).groups();
        });
    }

    private Shelf shelf(Stations stations, HandleForm form) {
        return shelves.computeIfAbsent(new ShelfKey(stations, form), key -> new Shelf(task, stations, form));
    }

    /** The handle's side of a layout: one stand for each adhesive and each group of ends. */
    private List<Stand> stands(Node node, Setting setting) {
        HandleForm form = setting.layout().form();
        StandKey key =
                new StandKey(node.shape().blank().id(), setting.footMm(), form, node.alternative(), node.leastClass());
        return stands.computeIfAbsent(key, any -> {
            List<Stand> list = new ArrayList<>();
            for (Adhesive adhesive : task.adhesives) {
                if (node.alternative().allows(Station.ADHESIVE, adhesive)) {
                    Consumables with = new Consumables(task.threads.get(0), task.finishes.get(0), adhesive);
                    Fitter fitter = new Fitter(setting, with, task.tariff);
                    for (Ends.Group group : ends(node.shape())) {
                        list.add(new Stand(shelf(node.alternative(), form), setting, fitter, node.leastClass(), group));
                    }
                }
            }
            return list;
        });
    }

    /** A number no build of a node scores below, under the present floors: cheap for a blank just opened, better once it is looked at. */
    private long bound(Node node) {
        Linear k = linear(node.leastClass());
        boolean exactTrain = TrainFloors.works(k) && node.stage() != Node.Stage.OPENED;
        Setting setting = node.setting();
        if (setting != null) {
            long blank = blank(node.shape(), setting.footMm(), k);
            if (node.stage().compareTo(Node.Stage.HANDLED) >= 0) {
                return handled(node, setting, k, blank);
            }
            long train = exactTrain ? train(node, setting.guideCount(), k) : train(node);
            return sum(sum(handle(node, setting.layout().form(), k), train), blank);
        }
        long train = exactTrain ? TrainGraph.NONE : train(node);
        if (exactTrain) {
            for (int count : counts(node.shape(), node.alternative())) {
                train = Math.min(train, train(node, count, k));
            }
        }
        long handle = TrainGraph.NONE;
        for (HandleForm form : HandleForm.values()) {
            handle = Math.min(handle, handle(node, form, k));
        }
        long blank = TrainGraph.NONE;
        for (int foot : task.feet) {
            blank = Math.min(blank, blank(node.shape(), foot, k));
        }
        return sum(sum(handle, train), blank);
    }

    /** With the exact handle of a layout beside the least train. */
    private long handled(Node node, Setting setting, Linear k, long blank) {
        boolean works = TrainFloors.works(k);
        long train = works ? train(node, setting.guideCount(), k) : train(node);
        long besides = sum(train, blank);
        long least = TrainGraph.NONE;
        if (TrainGraph.none(besides)) {
            return least;
        }
        for (Stand stand : stands(node, setting)) {
            long under = Math.min(Math.min(limit(), least), TrainGraph.NONE) - besides;
            if (works) {
                least = Math.min(least, sum(besides, stand.leastUndressed(k, under)));
            } else {
                least = Math.min(least, besides + handle(node, setting.layout().form(), k));
            }
        }
        return least;
    }

    private long handle(Node node, HandleForm form, Linear k) {
        return shelf(node.alternative(), form).priced(k).handle(node.shape());
    }

    private long train(Node node) {
        return floors(node.leastClass()).train(node.shape());
    }

    private long train(Node node, int count, Linear k) {
        long least = TrainGraph.NONE;
        for (long floor : trains(node, count, k)) {
            least = Math.min(least, floor);
        }
        return least;
    }

    private long[] trains(Node node, int count, Linear k) {
        return trainFloors.of(
                node.shape(),
                node.alternative(),
                node.leastClass(),
                count,
                version,
                k,
                task.feet,
                threads(node.alternative(), node.shape().blank()));
    }

    /** Guide counts that can be spaced evenly somewhere on the blank. */
    private List<Integer> counts(BlankShape shape, Stations alternative) {
        return counts.computeIfAbsent(new CountKey(shape.blank().id(), alternative), key -> {
            boolean ruled = task.ruled("guide-train");
            int fewest = GuidePlan.fewestGuides(task.brief, shape.blank().lengthMm());
            List<Integer> possible = new ArrayList<>();
            for (int count = Math.max(ruled ? fewest : 3, alternative.lastGivenGuide());
                    count <= Station.MOST_GUIDES;
                    count++) {
                if (!ruled && count <= fewest + 2 || spacedSomewhere(shape, count)) {
                    possible.add(count);
                } else if (!possible.isEmpty()) {
                    break;
                }
            }
            return possible;
        });
    }

    private boolean spacedSomewhere(BlankShape shape, int count) {
        for (int foot : task.feet) {
            Layout layout = new Layout(shape.blank().id(), foot, HandleForm.SPLIT, count);
            if (Setting.of(task.catalog, task.brief, shape, layout).spaced()) {
                return true;
            }
        }
        return false;
    }

    private static long sum(long a, long b) {
        return TrainGraph.none(a) || TrainGraph.none(b) ? TrainGraph.NONE : a + b;
    }

    private Node rebound(Node node) {
        return node.bounded(bound(node), version);
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

    private void work(Node node) {
        Setting setting = node.setting();
        if (setting != null && node.stage().compareTo(Node.Stage.HANDLED) >= 0) {
            complete(node, setting);
        } else if (node.stage() == Node.Stage.LOOKED && setting == null) {
            openLayouts(node);
        } else {
            Node closer = rebound(node.closer());
            if (closer.bound() < limit() && !TrainGraph.none(closer.bound())) {
                open.add(closer);
            }
        }
    }

    private void openLayouts(Node node) {
        BlankShape shape = node.shape();
        Linear k = linear(node.leastClass());
        boolean exactTrain = TrainFloors.works(k);
        for (int count : counts(node.shape(), node.alternative())) {
            long train = exactTrain ? train(node, count, k) : train(node);
            for (int foot : task.feet) {
                long blank = sum(blank(shape, foot, k), train);
                for (HandleForm form : HandleForm.values()) {
                    long floor = sum(handle(node, form, k), blank);
                    if (floor < limit() && !TrainGraph.none(floor)) {
                        openLayout(node, new Layout(shape.blank().id(), foot, form, count));
                    }
                }
            }
        }
    }

    /** Every layout of a blank that is looked at. */
    List<Layout> layouts(BlankShape shape, Stations alternative) {
        List<Layout> layouts = new ArrayList<>();
        for (int count : counts(shape, alternative)) {
            for (int foot : task.feet) {
                for (HandleForm form : HandleForm.values()) {
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
        Node layoutNode = new Node(
                node.bound(),
                order++,
                node.shape(),
                node.alternative(),
                node.leastClass(),
                setting,
                Node.Stage.LOOKED,
                version);
        Node bounded = rebound(layoutNode);
        if (bounded.bound() < limit() && !TrainGraph.none(bounded.bound())) {
            open.add(bounded);
        }
    }

    private void complete(Node node, Setting setting) {
        boolean again = node.stage() == Node.Stage.WEIGHED;
        opened += again ? 0 : 1;
        long least = Long.MAX_VALUE;
        for (Stand stand : stands(node, setting)) {
            least = Math.min(least, complete(node, setting, stand, again ? MOST_STEPS : FIRST_STEPS));
        }
        if (again) {
            weakestBound = Math.min(weakestBound, least);
        } else if (least < limit()) {
            open.add(node.at(Node.Stage.WEIGHED).bounded(least, version));
        }
    }

    /** The best build of a layout; a number what was not seen of it does not score below, or the largest where all was. */
    private long complete(Node node, Setting setting, Stand stand, long mostSteps) {
        List<Consumables> all = threads(node.alternative(), setting.blank());
        List<Consumables> with = new ArrayList<>();
        List<Integer> which = new ArrayList<>();
        for (int t = 0; t < all.size(); t++) {
            if (all.get(t).adhesive().equals(stand.fitter.with().adhesive())) {
                with.add(all.get(t));
                which.add(t);
            }
        }
        if (with.isEmpty()) {
            return Long.MAX_VALUE;
        }
        Completion completion = new Completion(stand, setting, with, node.leastClass());
        Linear k = linear(node.leastClass());
        if (TrainFloors.works(k)) {
            long[] trains = trains(node, setting.guideCount(), k);
            long blank = blank(node.shape(), setting.footMm(), k);
            long least = train(node, setting.guideCount(), k);
            long handle = stand.leastUndressed(k, Math.min(limit(), TrainGraph.NONE) - sum(least, blank));
            completion.narrow(
                    which.stream()
                            .mapToLong(t -> sum(sum(trains[t], blank), handle))
                            .toArray(),
                    limit());
        }
        Dual dual = new Dual(task, completion, node.shape(), node.leastClass(), watch, mostSteps);
        Dual.Outcome outcome = dual.solve(prices, limit());
        refusedBuilds += dual.refused();
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

    private List<Consumables> threads(Stations stations, Blank blank) {
        return threads.computeIfAbsent(new ThreadKey(stations, blank.id()), key -> {
            List<Consumables> with = new ArrayList<>();
            boolean mayHangBehind = mayHangBehind(blank);
            for (WrapThread thread : ThreadChoice.on(task, stations, blank, mayHangBehind)) {
                for (Finish finish : task.finishes) {
                    for (Adhesive adhesive : task.adhesives) {
                        if (stations.allows(Station.FINISH, finish) && stations.allows(Station.ADHESIVE, adhesive)) {
                            with.add(new Consumables(thread, finish, adhesive));
                        }
                    }
                }
            }
            return with;
        });
    }

    /** False where blank and reel alone keep the rod from hanging behind its zone, whatever a handle weighs. */
    private boolean mayHangBehind(Blank blank) {
        BlankShape shape = shapes.apply(blank);
        double near = task.brief.zoneNearMm();
        for (int foot : task.feet) {
            double ahead = shape.mass().firstGmm()
                    - shape.mass().massG() * (foot + near)
                    + task.brief.reel().massG() * (task.brief.reel().centreOffsetMm() - near);
            double behind = heaviestG(PartKind.REEL_SEAT) * (near + Task.LONGEST_CAP_MM)
                    + heaviestGripsG(blank) * (foot + near)
                    + heaviestG(PartKind.BUTT_CAP) * (foot + near + Task.LONGEST_CAP_MM)
                    + GLUE_AND_RINGS_G * (foot + near);
            if (ahead < behind) {
                return true;
            }
        }
        return false;
    }

    /** Heaviest grips of a handle on a blank: one full, or rear and butt grip, no longer than the reach. */
    private double heaviestGripsG(Blank blank) {
        return Math.max(
                heaviestG(blank, task.fullGrips), heaviestG(blank, task.rearGrips) + heaviestG(blank, task.buttGrips));
    }

    private double heaviestG(Blank blank, List<Grip> grips) {
        double heaviest = 0;
        for (Grip grip : grips) {
            if (!task.ruled("grip-on-blank") || grip.boreMm() <= blank.buttOdMm() + LOOSEST_BORE_MM) {
                double share = Math.min(1, task.brief.reachMaxMm() / grip.lengthMm());
                heaviest = Math.max(heaviest, grip.massMg() / 1000.0 * share);
            }
        }
        return heaviest;
    }

    private double heaviestG(PartKind kind) {
        return task.candidates.of(kind).stream().mapToLong(Part::massMg).max().orElse(0) / 1000.0;
    }

    /** Cheapest sundries, adhesive and finish. */
    private long fixedMilli() {
        long least = Long.MAX_VALUE;
        for (Finish finish : task.finishes) {
            for (Adhesive adhesive : task.adhesives) {
                least = Math.min(
                        least, task.tariff.fixedMilli(new Consumables(task.threads.get(0), finish, adhesive), 0));
            }
        }
        return least;
    }
}
