package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Fixtures;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;

/** Two threads answer as one does, whichever of them is the quicker. */
class HalvesTest {
    private static final int AGAIN = 30;

    private final Catalog catalog = SampleCatalogs.bench();

    private Query query(String scenario) throws IOException {
        return Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kayak-estuary",
                "brook-trout-cork",
                "very-small-budget",
                "rock-wrasse-strong-line",
                "harbour-lift-on-light-leader"
            })
    void twoAnswerAsOne(String scenario) throws IOException {
        Solution one = new Search(catalog).solveAlone(query(scenario), Watch.NONE);
        Solution two = new Search(catalog).solve(query(scenario), Watch.NONE);
        assertTrue(two.proven());
        assertEquals(one.build(), two.build());
        assertEquals(one.score(), two.score());
        assertEquals(one.objectives(), two.objectives());
    }

    /** Of blanks alike to a hair the first is taken, however the threads come by them, and whichever half it is in. */
    @ParameterizedTest
    @ValueSource(strings = {"blank", "blank-b"})
    void twinsAreTakenInTheirOrder(String first) {
        Fixtures fixtures = Fixtures.legal();
        for (String twin : List.of("blank-b", "blank-c", "blank-d")) {
            fixtures.copy("blank", twin);
        }
        if (!first.equals("blank")) {
            fixtures.part("blank", "facts.priceMinor", 8_990).part("blank", "facts.weightG", 60.0);
        }
        Query query = Query.of(fixtures.theBrief(), Rulebook.standard());
        Set<String> taken = new HashSet<>();
        for (int time = 0; time < AGAIN; time++) {
            taken.add(blank(new Search(fixtures.catalog()).solve(query, Watch.NONE)));
        }
        assertEquals(Set.of(first), taken);
        assertEquals(first, blank(new Search(fixtures.catalog()).solveAlone(query, Watch.NONE)));
    }

    private static String blank(Solution found) {
        return Objects.requireNonNull(found.build()).layout().blankId();
    }

    /** What one half has found leaves the other its chance at one as good. */
    @Test
    void aTwinFoundSoonerLeavesTheOtherItsChance() {
        Halves halves = new Halves(Long.MAX_VALUE, Watch.NONE);
        Solution best = new Search(catalog).solveAlone(question(), Watch.NONE);
        halves.found(Half.EVEN, Objects.requireNonNull(best.build()), Objects.requireNonNull(best.objectives()), 7);
        assertEquals(8, halves.limit(Half.ODD));
        assertEquals(Long.MAX_VALUE, halves.limit(Half.EVEN));
    }

    private Query question() {
        try {
            return query("kayak-estuary");
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void everyBlankIsInOneHalf() {
        Task task = SmallShop.task(catalog, question());
        List<Site> sites = task.sites();
        List<Site> odd = Half.ODD.of(sites);
        List<Site> even = Half.EVEN.of(sites);
        assertTrue(Math.abs(odd.size() - even.size()) <= 1, odd.size() + " and " + even.size());
        List<Site> all = new ArrayList<>(odd);
        all.addAll(even);
        assertEquals(sites.size(), all.size());
        assertEquals(new HashSet<>(sites), new HashSet<>(all));
        assertSame(sites.get(0), odd.get(0));
        assertSame(sites.get(1), even.get(0));
    }

    /** A blank on which a part may be placed in several ways is not divided. */
    @Test
    void aBlankStaysWhole() {
        Query forcing = question()
                .forcing(Set.of(
                        SmallShop.task(catalog, question()).ground.checks.get(0).id()));
        List<Site> sites = SmallShop.task(catalog, forcing).sites();
        Set<Object> odd = new HashSet<>();
        Half.ODD.of(sites).forEach(site -> odd.add(site.shape()));
        assertTrue(sites.size() > sites.stream().map(Site::shape).distinct().count());
        assertTrue(Half.EVEN.of(sites).stream().noneMatch(site -> odd.contains(site.shape())));
    }

    @Test
    void whatIsToldGetsBetter() {
        List<Long> told = new ArrayList<>();
        Watch watch = new Watch(() -> false, (build, objectives, score) -> told.add(score));
        Solution found = new Search(catalog).solve(question(), watch);
        assertFalse(told.isEmpty());
        for (int i = 1; i < told.size(); i++) {
            assertTrue(told.get(i) < told.get(i - 1), () -> "told " + told);
        }
        assertEquals(found.score(), told.get(told.size() - 1));
    }

    /** Stopped on the way, both stop, and what they have bounds the best there is. */
    @Test
    void stoppedOnTheWay() {
        long best = new Search(catalog).solve(question(), Watch.NONE).score();
        for (int asks = 0; asks < 100; asks += 9) {
            AtomicInteger left = new AtomicInteger(asks);
            Watch watch = new Watch(() -> left.decrementAndGet() < 0, Watch.NONE.better());
            Solution found = new Search(catalog).solve(question(), watch);
            assertTrue(found.bound() <= best, asks + " asks: " + found);
            assertTrue(found.score() >= best, asks + " asks: " + found);
            assertEquals(found.bound() == found.score(), found.proven(), asks + " asks: " + found);
        }
    }

    /** Of very many parts one ground is laid: two would fill the memory. */
    @Test
    void veryManyPartsAreNotDivided() {
        long gib = 1L << 30;
        assertTrue(Halves.hasRoom(1_500, gib / 4));
        assertTrue(Halves.hasRoom(20_000, 4 * gib));
        assertFalse(Halves.hasRoom(20_000, 2 * gib));
        assertFalse(Halves.hasRoom(100_000, 2 * gib));
        assertTrue(Halves.hasRoom(100_000, 16 * gib));
        assertTrue(Halves.divides(SmallShop.task(catalog, question())));
    }

    /** What goes wrong beside is told, and the next question is answered. */
    @Test
    void aFaultBesideIsTold() {
        Thread own = Thread.currentThread();
        Search search = new Search(catalog);
        Watch faulty = new Watch(
                () -> {
                    if (Thread.currentThread() != own) {
                        throw new UnsupportedOperationException("beside");
                    }
                    return false;
                },
                Watch.NONE.better());
        IllegalStateException told = assertThrows(IllegalStateException.class, () -> search.solve(question(), faulty));
        assertInstanceOf(UnsupportedOperationException.class, told.getCause());
        assertTrue(search.solve(question(), Watch.NONE).proven());
    }

    /** A watch that counts is asked by one thread, as often each time. */
    @Test
    void aloneIsCounted() {
        Set<Integer> counts = new HashSet<>();
        Set<Thread> threads = new HashSet<>();
        for (int time = 0; time < 3; time++) {
            int[] asked = {0};
            Watch counting = new Watch(
                    () -> {
                        asked[0]++;
                        threads.add(Thread.currentThread());
                        return false;
                    },
                    Watch.NONE.better());
            new Search(catalog).solveAlone(question(), counting);
            counts.add(asked[0]);
        }
        assertEquals(1, counts.size());
        assertEquals(Set.of(Thread.currentThread()), threads);
    }
}
