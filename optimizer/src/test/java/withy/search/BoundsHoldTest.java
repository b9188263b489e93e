package withy.search;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Objective;
import withy.catalog.Blank;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.LoadBearing;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Rulebook;

/**
 * The bounds that decide what is worth an exact completion are never above what a legal build really costs: every sum is worked out here from the
 * measured rod alone. Builds are the best for many weightings, reel positions and missing parts, so that they press on the bounds; prices are the
 * score's and others, with slopes and multipliers drawn from a seed.
 */
class BoundsHoldTest {
    private static final int BUILDS = 8;
    private static final int PRICES = 4;
    /** Slopes may be this many times what the brief asks for balance, as where balance counts for most. */
    private static final int STEEP = 20;

    private static final Set<Station.Place> TRAIN = Set.of(Station.Place.GUIDE, Station.Place.TIP_TOP);

    private static int handles;
    private static int trains;
    private static int closer;
    private static int welcome;
    private static int dressed;

    @TestFactory
    Stream<DynamicTest> neverAboveALegalBuild() {
        return LongStream.range(0, 16)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    Random random = new Random(seed);
                    Query plain = shop.query(Rulebook.standard());
                    Set<String> refused = new TreeSet<>();
                    for (int i = 0; i < BUILDS; i++) {
                        Query query = asked(plain, refused, random);
                        Solution solution = new Search(shop.catalog()).solve(query, Watch.NONE);
                        if (solution.build() == null) {
                            refused.clear();
                        } else {
                            check(shop, query, solution.build(), random, "seed " + seed + ", build " + i);
                            refused.add(used(solution.build(), random));
                        }
                    }
                }));
    }

    /** Each kind of bound was asked often enough to mean something. */
    @AfterAll
    static void enoughWereAsked() {
        assertTrue(handles >= 300, "handles: " + handles);
        assertTrue(trains >= 150, "trains: " + trains);
        assertTrue(closer >= 60, "one seat told more: " + closer);
        assertTrue(welcome >= 10, "weight welcome by the reel, a burden ahead: " + welcome);
        assertTrue(dressed >= 10, "thread welcome where the handle ends, a burden at the guides: " + dressed);
    }

    private static Query asked(Query plain, Set<String> refused, Random random) {
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            priorities.put(objective, (double) random.nextInt(4));
        }
        return plain.withPriorities(priorities).refusing(refused);
    }

    /** A part of the build, to be left out next time. */
    private static String used(Build build, Random random) {
        List<String> ids = new ArrayList<>();
        build.choices().forEach((station, choice) -> {
            if (!Set.of(Station.THREAD, Station.FINISH, Station.ADHESIVE).contains(station)) {
                ids.add(choice.partId());
            }
        });
        return ids.get(random.nextInt(ids.size()));
    }

    private static void check(SmallShop shop, Query query, Build build, Random random, String told) {
        Task task = SmallShop.task(shop.catalog(), query);
        Rod rod = Rod.measure(shop.catalog(), query.brief(), build);
        int weakest = LoadBearing.weakestClass(rod);
        for (int i = 0; i < PRICES; i++) {
            Prices prices = i == 0 ? Prices.start(task.scoring) : prices(task, random);
            int leastClass = weakest - random.nextInt(2);
            Linear k = prices.linear(task.aim, leastClass - (long) query.brief().durabilityClass());
            floors(task, rod, k, leastClass, told + ", prices " + prices + ", class " + leastClass);
        }
    }

    private static void floors(Task task, Rod rod, Linear k, int leastClass, String told) {
        Layout layout = rod.build().layout();
        BlankShape shape = BlankShape.of((Blank) Objects.requireNonNull(task.ground.catalog.find(layout.blankId())));
        Costs costs = new Costs(task, rod, k);
        Floors floors = new Floors(task.ground, k, leastClass);
        Stations any = new Stations(Map.of(), Set.of(), Map.of());
        long handle =
                new Shelf(task.ground, any, layout.form()).priced(k).on(shape).handle(leastClass);
        assertTrue(handle <= costs.handle(), () -> told + ": handle " + handle + " above " + costs.handle());
        long cheap = floors.train(shape);
        assertTrue(cheap <= costs.train(), () -> told + ": cheap train " + cheap + " above " + costs.train());
        handles++;
        long alone = seatGiven(task, rod).priced(k).on(shape).handle(leastClass);
        assertTrue(alone <= costs.handle(), () -> told + ": handle of one seat " + alone + " above " + costs.handle());
        closer += alone > handle ? 1 : 0;
        Site site =
                new Site(task.ground, new Spacings(task.ground, shape), any, form -> new Shelf(task.ground, any, form));
        if (site.burdens(k)) {
            int thread = site.threads().indexOf(rod.with());
            long[] each = site.trains(layout.guideCount(), leastClass, k);
            long train = thread < 0 ? Arrays.stream(each).min().orElseThrow() : each[thread];
            assertTrue(train <= costs.train(), () -> told + ": train " + train + " above " + costs.train());
            trains++;
            welcome += k.perMg() < 0 ? 1 : 0;
            dressed += task.ground.endDress(k, seatFrontMm(rod)) < 0 ? 1 : 0;
        }
        nodes(task, site, rod, k.withoutConstant(), leastClass, told);
    }

    /** Where the seat ends, told from the reel foot, mm. */
    private static double seatFrontMm(Rod rod) {
        ReelSeat seat = (ReelSeat) Objects.requireNonNull(rod.partAt(Station.SEAT));
        return seat.lengthMm() - seat.footCentreMm();
    }

    /** A shelf with no seat but the rod's. */
    private static Shelf seatGiven(Task task, Rod rod) {
        Part seat = Objects.requireNonNull(rod.partAt(Station.SEAT));
        Stations given = Stations.alternatives(task.ground.catalog, task.query, Set.of(seat.id()))
                .get(0);
        return new Shelf(task.ground, given, rod.build().layout().form());
    }

    /** However closely a node is looked at, the build in it costs at least its bound. */
    private static void nodes(Task task, Site site, Rod rod, Linear k, int leastClass, String told) {
        Setting setting = Setting.of(
                task.ground.catalog, task.brief, site.shape(), rod.build().layout());
        ObjectiveVector vector = ObjectiveVector.of(rod, task.ground.style, task.ground.wishes);
        Tally sums = new Tally()
                .add(vector.weightMg(), rod.total().momentMgMm(), vector.inertiaMgMm2(), vector.costMilli())
                .looks(vector.styleCenti(), vector.missedMilliSteps());
        long cost = sums.cost(k);
        NodeBounds bounds = new NodeBounds(task);
        Node node = new Node(0, 0, site, leastClass, null, Node.Stage.OPENED, 0);
        for (Node.Stage stage : List.of(Node.Stage.OPENED, Node.Stage.LOOKED)) {
            long bound = bounds.of(node.at(stage), k, Long.MAX_VALUE);
            assertTrue(bound <= cost, () -> told + ": " + stage + " " + bound + " above " + cost);
        }
        Node ofLayout = new Node(0, 0, site, leastClass, setting, Node.Stage.LOOKED, 0);
        for (Node.Stage stage : List.of(Node.Stage.LOOKED, Node.Stage.HANDLED, Node.Stage.TRAINED)) {
            long bound = bounds.of(ofLayout.at(stage), k, Long.MAX_VALUE);
            assertTrue(bound <= cost, () -> told + ": layout " + stage + " " + bound + " above " + cost);
        }
    }

    private static Prices prices(Task task, Random random) {
        long own = task.scoring.perOutsideMgMm() * (random.nextInt(3) == 0 ? STEEP : 1);
        long slope = Math.round(own * (2 * random.nextDouble() - 1));
        return new Prices(
                slope,
                multiplier(Prices.scale(task.scoring, Prices.Kind.WEIGHT), random),
                multiplier(Prices.scale(task.scoring, Prices.Kind.INERTIA), random),
                multiplier(Prices.scale(task.scoring, Prices.Kind.COST), random),
                multiplier(Prices.scale(task.scoring, Prices.Kind.STYLE), random));
    }

    private static long multiplier(long scale, Random random) {
        return random.nextBoolean() ? 0 : Math.round(scale * 2 * random.nextDouble());
    }

    /** What a measured rod costs under linear prices, part by part. */
    private record Costs(Task task, Rod rod, Linear k) {
        long train() {
            int n = rod.setting().guideCount();
            long cost = sum(true);
            Part thread = rod.with().thread();
            return cost
                    - k.perStyleCenti()
                            * task.ground.style.part(
                                    rod.setting().blank(),
                                    rod.setting().layout().form(),
                                    Station.THREAD,
                                    thread,
                                    n)
                    + k.perMilliStep() * task.ground.wishes.part(Station.THREAD, thread, n);
        }

        long handle() {
            long cost = sum(false);
            Part seat = Objects.requireNonNull(rod.partAt(Station.SEAT));
            Part rear = Objects.requireNonNull(rod.partAt(Station.REAR_GRIP));
            cost -= k.perStyleCenti() * task.ground.style.gripAndSeat(rear, seat);
            cost += k.perMilliStep() * task.ground.wishes.seat((ReelSeat) seat);
            cost += k.perMilliStep() * task.ground.wishes.keeper(rod.partAt(Station.KEEPER) != null);
            return cost + k.perMilliStep() * task.ground.wishes.foreGrip(rod.partAt(Station.FORE_GRIP) != null);
        }

        private long sum(boolean ofTrain) {
            long[] cost = {0};
            int n = rod.setting().guideCount();
            rod.shares().forEach((station, share) -> {
                if (!station.equals(Station.BLANK) && TRAIN.contains(station.place()) == ofTrain) {
                    Part part = Objects.requireNonNull(rod.partAt(station));
                    long style = task.ground.style.part(
                            rod.setting().blank(), rod.setting().layout().form(), station, part, n);
                    cost[0] += k.of(Sums.of(share), style, task.ground.wishes.part(station, part, n));
                }
            });
            return cost[0];
        }
    }
}
