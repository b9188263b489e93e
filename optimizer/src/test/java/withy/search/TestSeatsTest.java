package withy.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief;
import withy.brief.Brief.Lure;
import withy.brief.BriefDraft;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** Seats are left out of a walk only where nothing with them keeps every test beside one and the same train. */
class TestSeatsTest {
    private static final int LAYOUTS = 8;
    private static final int HANDLES = 2_000;

    /** What is asked of a handle besides the score is near what the cheapest has. */
    private static final long NEAR = 20;

    private int handles;
    private int leftOut;

    /** Prices that pull against each other: every handle that is met fits where there is just room for it, as a whole and what stands ahead of it. */
    @ParameterizedTest
    @ValueSource(strings = {"very-small-budget", "quay-squid-nice-wishes", "kayak-estuary", "sea-trout-travel"})
    void whatIsMetMayStand(String name) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard()));
        Random random = new Random(name.hashCode());
        List<Site> sites = task.sites();
        for (int i = 0; i < LAYOUTS; i++) {
            Site site = sites.get(random.nextInt(sites.size()));
            List<Layout> layouts = site.layouts();
            Layout layout = layouts.get(random.nextInt(layouts.size()));
            Setting setting = task.setting(site.shape(), layout).orElse(null);
            if (setting != null) {
                for (Stand stand : site.stands(setting)) {
                    compare(task, site, stand);
                }
            }
        }
        assertTrue(handles > HANDLES, "handles: " + handles);
        assertTrue(leftOut > LAYOUTS, "seats left out: " + leftOut);
    }

    private void compare(Task task, Site site, Stand stand) {
        Prices score = Prices.start(task.scoring);
        Linear first = score.with(Prices.Kind.COST, task.scoring.perCostMilli() / 2)
                .slope(0)
                .linear(task.aim, 0)
                .withoutConstant();
        List<Walk.Test> tests = List.of(
                new Walk.Test(first, Long.MAX_VALUE),
                new Walk.Test(score.linear(task.aim, 0).withoutConstant(), Long.MAX_VALUE),
                new Walk.Test(Prices.only(Prices.Kind.COST), Long.MAX_VALUE),
                new Walk.Test(Prices.only(Prices.Kind.WEIGHT), Long.MAX_VALUE),
                new Walk.Test(new Linear(-100, 1, 0, 0, 0, 0, 0), Long.MAX_VALUE),
                new Walk.Test(new Linear(50, -1, 0, 0, 0, 0, 0), Long.MAX_VALUE));
        Consumables with = site.threads().get(0);
        int leastClass = task.leastClass();
        long least = stand.priced(first).least(stand.dress(with), leastClass, TrainGraph.NONE);
        if (TrainGraph.none(least)) {
            return;
        }
        long under = least + Math.abs(least) / NEAR;
        TestSeats seats =
                new TestSeats(stand, tests, new boolean[] {false, true, true, true, true, true}, leastClass, under);
        TestSeats few = new TestSeats(
                stand, tests, new boolean[] {false, true, false, true, false, true}, leastClass, least + 1);
        long[] none = new long[tests.size()];
        long[] cheapest = new long[tests.size()];
        int[] met = {0};
        stand.priced(first).below(stand.dress(with), leastClass, under, (handle, cost) -> {
            SeatGroup seat = handle.front().seat().group();
            long[] whole = sums(tests, handle.tally(new Tally(), stand.ground.style));
            long[] ahead = sums(tests, handle.front().tally(new Tally()));
            TrainRooms room = rooms(none, more(whole));
            assertTrue(seats.mayStand(seat, none, room), seat.set()::toString);
            assertTrue(seats.ahead(seat, room).hold(ahead), seat.set()::toString);
            assertTrue(few.mayStand(seat, none, room), seat.set()::toString);
            assertTrue(few.ahead(seat, room).hold(ahead), seat.set()::toString);
            assertNotNull(room.together(none, whole));
            if (cost == least) {
                System.arraycopy(whole, 0, cheapest, 0, whole.length);
            }
            handles++;
            return ++met[0] < HANDLES ? under : Long.MIN_VALUE;
        });
        TrainRooms room = rooms(more(cheapest));
        Handle handle = stand.priced(first);
        for (int s = handle.next(0, leastClass, under); s >= 0; s = handle.next(s + 1, leastClass, under)) {
            for (SeatGroup group : handle.seat(s, leastClass)) {
                leftOut += seats.mayStand(group, none, room) ? 0 : 1;
            }
        }
    }

    private static long[] sums(List<Walk.Test> tests, Tally tally) {
        return tests.stream().mapToLong(test -> tally.cost(test.k())).toArray();
    }

    private static long[] more(long[] sums) {
        long[] more = sums.clone();
        for (int f = 0; f < more.length; f++) {
            more[f]++;
        }
        return more;
    }

    /** Beside one train for each of these: what it leaves room for. */
    private static TrainRooms rooms(long[]... each) {
        TrainRooms.Trains trains = new TrainRooms.Trains() {
            @Override
            public int count() {
                return each.length;
            }

            @Override
            public long least(int test) {
                return Stream.of(each).mapToLong(room -> -room[test]).min().orElseThrow();
            }

            @Override
            public long least(int test, int train) {
                return -each[train][test];
            }
        };
        return new TrainRooms(trains, new long[each[0].length]);
    }

    /** What one train leaves room for in one test and another in the other goes with neither. */
    @Test
    void roomIsThatBesideOneTrain() {
        TrainRooms rooms = rooms(new long[] {10, 100}, new long[] {100, 10});
        long[] both = {50, 50};
        assertFalse(rooms.hold(both));
        assertNull(rooms.together(new long[] {25, 25}, new long[] {25, 25}));
        assertTrue(rooms.hold(new long[] {9, 99}));
        assertFalse(rooms.hold(new long[] {10, 99}), "as much is not less");
        assertTrue(rooms.beside(new long[] {0, 50}).hold(new long[] {9, 49}));
        assertFalse(rooms.beside(new long[] {0, 50}).hold(new long[] {9, 50}));
        assertArrayEquals(new long[] {100, 50}, rooms.beside(new long[] {0, 50}).widest());
    }

    /**
     * As handsome as little money buys: the best that can be paid scores far above what any one price promises, so that nearly every handle lies below the limit. Looks of the search at whether to
     * go on are counted, not time: 1,400; before handles were held against seats and trains in all tests at once 4,000 did not do.
     */
    @Test
    void looksForLittleMoneyAreProven() throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Brief poor = Scenarios.brief("very-small-budget", catalog);
        Brief brief = new BriefDraft(poor)
                .lure(new Lure(5.5, 13.2, 23.1))
                .length(1_940, 2_280)
                .reach(220, 275)
                .classes(1, 2)
                .priorities(Map.of(
                        Objective.WEIGHT, 0.0,
                        Objective.BALANCE, 1.0,
                        Objective.SWING_WEIGHT, 4.0,
                        Objective.PRICE, 0.0,
                        Objective.STYLE, 4.0,
                        Objective.DURABILITY, 1.0))
                .brief();
        long[] looks = {0};
        Solution solution = new Search(catalog)
                .solveAlone(
                        Query.of(brief, Rulebook.standard()),
                        new Watch(() -> ++looks[0] > 2_500, (build, objectives, score) -> {}));
        assertTrue(solution.proven(), "looks: " + looks[0] + ", layouts: " + solution.layoutsOpened());
        assertNotNull(solution.build());
    }
}
