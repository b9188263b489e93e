package withy.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Objective;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.WrapThread;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rules.Rulebook;

/** Which threads are worth looking at is told of every blank as if it were the only one that was asked about. */
class ThreadChoiceTest {
    private static final Stations ANY = new Stations(Map.of(), Set.of(), Map.of());

    @Test
    void whatIsKnownOfOneBlankIsToldOfNoOther() throws IOException {
        Ground ground = ground(Map.of());
        Set<List<WrapThread>> choices = new HashSet<>();
        Set<List<Integer>> beaten = new HashSet<>();
        for (Blank blank : ground.blanks) {
            ThreadChoice fresh = new ThreadChoice(ground);
            List<WrapThread> few = fresh.on(ANY, blank, false);
            assertEquals(few, ground.threadChoice.on(ANY, blank, false), blank.id());
            int[] beaters = fresh.beaters(blank, ground.threads);
            assertArrayEquals(beaters, ground.threadChoice.beaters(blank, ground.threads), blank.id());
            choices.add(few);
            beaten.add(Arrays.stream(beaters).boxed().toList());
        }
        assertTrue(choices.size() > 1 && beaten.size() > 1, "every blank is dressed alike");
    }

    @Test
    void aThreadIsLeftOutOnlyWhereAnotherDoesAsWell() throws IOException {
        Ground ground = ground(Map.of());
        Blank blank = ground.blanks.get(0);
        List<WrapThread> kept = ground.threadChoice.on(ANY, blank, false);
        int[] beaters = ground.threadChoice.beaters(blank, ground.threads);
        for (int t = 0; t < beaters.length; t++) {
            assertEquals(
                    beaters[t] == t,
                    kept.contains(ground.threads.get(t)),
                    ground.threads.get(t).id());
        }
        assertTrue(kept.size() < ground.threads.size(), "none is left out");
    }

    @Test
    void everyThreadIsLookedAtWhereWeightMayBeWelcome() throws IOException {
        Ground welcome = ground(Map.of(Objective.BALANCE, 1.0));
        assertTrue(!welcome.weightIsBurden, "weight is a burden");
        Blank blank = welcome.blanks.get(0);
        assertEquals(
                welcome.threads.size(),
                welcome.threadChoice.on(ANY, blank, true).size());
        assertTrue(welcome.threadChoice.on(ANY, blank, false).size() < welcome.threads.size());
    }

    private static Ground ground(Map<Objective, Double> priorities) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Query query = Query.of(Scenarios.brief("kayak-estuary", catalog), Rulebook.standard());
        return SmallShop.task(catalog, priorities.isEmpty() ? query : query.withPriorities(priorities)).ground;
    }
}
