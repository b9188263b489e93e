package withy.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Station;
import withy.search.Search;

/** The quick run to its end; it fails on a wrong optimum, never on a time. */
class QuickTest {
    private static final Path HOME = Path.of(System.getProperty("withy.home", ".."));

    @Test
    void theQuickRunFindsNothingWrong() throws IOException {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        List<String> faults = new Quick(HOME, new PrintStream(said, true, StandardCharsets.UTF_8)).faults();
        assertEquals(List.of(), faults);
        for (String scenario : Quick.SCENARIOS) {
            assertTrue(said.toString(StandardCharsets.UTF_8).contains(scenario), scenario);
        }
    }

    @Test
    void anAnswerThatIsNotTheBestIsFound() throws IOException {
        Shop shop = Shop.bench();
        Query query = Scenario.all(HOME, shop.catalog()).stream()
                .filter(scenario -> scenario.name().equals("kayak-estuary"))
                .findFirst()
                .orElseThrow()
                .query();
        Search search = new Search(shop.catalog());
        Solution best = search.solve(query, Watch.NONE);
        String cap = Objects.requireNonNull(Objects.requireNonNull(best.build()).partAt(Station.BUTT_CAP));
        Solution second = search.solve(query.refusing(Set.of(cap)), Watch.NONE);
        Optimum optimum = new Optimum(shop.catalog(), query);
        assertEquals(List.of(), optimum.faults(best));
        assertFalse(optimum.faults(second).isEmpty(), "the best without " + cap + " passes for the best");
        Solution boast = new Solution(second.build(), second.objectives(), best.score(), best.bound(), true, 1);
        assertTrue(optimum.faults(boast).get(0).startsWith("said to score"), "a wrong score passes");
    }
}
