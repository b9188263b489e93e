package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.ChangeLadder;
import withy.search.ChangeLadder.Rung;
import withy.search.ChangeLadder.Situation;
import withy.search.Search;

/**
 * The change ladder against every build there is with so few changes, on seeded small catalogues from which a part is taken. Three builds of four were agreed when
 * other things counted for more, so that a second and a third change are worth something.
 */
class LadderTest {
    private static final long SEEDS = 120;
    private static final long BUILDS = 12_000;

    private static int asked;
    private static int climbed;
    private static int lockedOnes;
    /** Ladders on which so many changes are better than one fewer. */
    private static final int[] stepped = new int[4];

    @TestFactory
    Stream<DynamicTest> everyRungIsTheBestWithSoFewChanges() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> compare(seed)));
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> everyRungOnManyMore() {
        return LongStream.range(SEEDS, 800)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> compare(seed)));
    }

    @AfterAll
    static void questionsWereWorthAsking() {
        if (asked >= SEEDS) {
            assertTrue(climbed >= 15, "ladders with a build: " + climbed);
            assertTrue(lockedOnes >= 8, "with something glued: " + lockedOnes);
            assertTrue(stepped[2] >= 3, "where a second change is better: " + stepped[2]);
            assertTrue(stepped[3] >= 8, "where a third change is better: " + stepped[3]);
        }
    }

    private static void compare(long seed) {
        asked++;
        SmallShop.Case shop = SmallShop.of(seed, BUILDS);
        Random random = new Random(seed * 31 + 5);
        Query agreed = seed % 4 == 0 ? shop.query() : shop.query().withPriorities(otherPriorities(random));
        Solution first = new Search(shop.catalog()).solve(agreed, Watch.NONE);
        Build current = first.build();
        if (current == null) {
            return;
        }
        List<Station> filled = new ArrayList<>(current.choices().keySet());
        filled.remove(Station.FINISH);
        filled.remove(Station.ADHESIVE);
        filled.add(Station.BLANK);
        Station out = filled.get(random.nextInt(filled.size()));
        String lost = current.partAt(out);
        assertNotNull(lost);
        if (shop.query().brief().owned().contains(lost)) {
            return;
        }
        Set<Station> locked = new TreeSet<>();
        if (random.nextInt(3) == 0) {
            Station glued = filled.get(random.nextInt(filled.size()));
            if (!lost.equals(current.partAt(glued)) && !lost.equals(current.partAt(Station.BLANK))) {
                locked.add(glued);
            }
        }
        lockedOnes += locked.isEmpty() ? 0 : 1;
        Situation situation = new Situation(without(shop.catalog(), lost), shop.query(), current, locked, Set.of(lost));
        List<Rung> rungs = ChangeLadder.climb(situation, 3, Watch.NONE);
        assertEquals(4, rungs.size());
        check(seed, situation, rungs);
        int fewest = 0;
        while (fewest < 3 && rungs.get(fewest).build() == null) {
            fewest++;
        }
        assertEquals(rungs.subList(0, fewest + 1), ChangeLadder.fewest(situation, 3, Watch.NONE), "seed " + seed);
    }

    /** What the customer held most important before he thought again. */
    private static Map<Objective, Double> otherPriorities(Random random) {
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            priorities.put(objective, (double) (random.nextInt(3) * random.nextInt(4)));
        }
        return priorities;
    }

    private static void check(long seed, Situation situation, List<Rung> rungs) {
        long before = Long.MAX_VALUE;
        for (Rung rung : rungs) {
            Enumeration.Found found = new Enumeration(situation.catalog(), situation.query(), true)
                    .among(build -> near(situation, build) && changes(situation.current(), build) <= rung.most())
                    .run();
            String what = "seed " + seed + ", lost " + situation.lost() + ", glued " + situation.locked() + ", "
                    + rung.most() + " changes of " + situation.current().signature() + ", best " + found.best()
                    + ", ladder " + rung;
            assertTrue(rung.proven(), what);
            assertEquals(found.score(), rung.score(), what);
            Build build = rung.build();
            if (build == null) {
                assertNull(found.best(), what);
                continue;
            }
            climbed += before == Long.MAX_VALUE ? 1 : 0;
            if (before != Long.MAX_VALUE && rung.score() < before) {
                stepped[rung.most()]++;
            }
            before = rung.score();
            assertTrue(near(situation, build), what);
            assertTrue(changes(situation.current(), build) <= rung.most(), what);
            assertEquals(rung.changed(), changes(situation.current(), build), what);
        }
    }

    /** What is glued stays as it is, the blank and the reel's place with it; no guide is added. */
    private static boolean near(Situation situation, Build build) {
        Build current = situation.current();
        for (Station glued : situation.locked()) {
            boolean same = glued.equals(Station.BLANK)
                    ? true
                    : current.choices().get(glued).equals(build.choices().get(glued));
            if (!same) {
                return false;
            }
        }
        boolean kept = situation.locked().isEmpty()
                || current.layout().blankId().equals(build.layout().blankId())
                        && current.layout().reelFootMm() == build.layout().reelFootMm();
        return kept && build.layout().guideCount() <= current.layout().guideCount();
    }

    /** Parts that went from any of their places, and places that were empty and are not: counted station by station, written a second time. */
    private static int changes(Build before, Build after) {
        Set<String> gone = new TreeSet<>();
        int added = 0;
        List<Station> all = new ArrayList<>(List.of(Station.BLANK));
        for (Station.Place place : Station.Place.values()) {
            if (place == Station.Place.GUIDE) {
                for (int n = 1; n <= Station.MOST_GUIDES; n++) {
                    all.add(Station.guide(n));
                }
            } else if (place != Station.Place.BLANK) {
                all.add(new Station(place, 0));
            }
        }
        for (Station station : all) {
            String old = before.partAt(station);
            String now = after.partAt(station);
            if (old == null) {
                added += now == null ? 0 : 1;
            } else if (!old.equals(now)) {
                gone.add(old);
            }
        }
        return gone.size() + added;
    }

    private static Catalog without(Catalog catalog, String lost) {
        Part part = catalog.find(lost);
        assertNotNull(part);
        var facts = Changed.with(part.facts(), "stock", 0);
        return catalog.changed(Map.of(lost, Changed.with(facts, "leadDays", null)), "without " + lost);
    }
}
