package withy.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.search.Search;

/** The tables of times: every job has its row, run or not, and medians are those of the runs. */
class LatencyPageTest {
    @Test
    void everyJobHasARowWithItsFigures() {
        Shop shop = Shop.bench();
        List<Row> rows = new ArrayList<>();
        for (Job job : Job.values()) {
            Sample short1 = new Sample(2, 1, 3, 1, true, false);
            Sample long1 = new Sample(4, 3, 3, 1, true, false);
            rows.add(new Row(shop, job, "one", List.of(short1, long1)));
            rows.add(new Row(shop, job, "none", List.of()));
        }
        String text = new LatencyPage(rows).text();
        for (Job job : Job.values()) {
            String row = text.lines()
                    .filter(line -> line.startsWith("| " + job.words() + " |"))
                    .findFirst()
                    .orElseThrow();
            List<String> cells = List.of(row.split(" \\| ", -1));
            assertEquals("2", cells.get(3), row);
            assertEquals("3.00", cells.get(4), row);
            assertEquals("2.00", cells.get(8), row);
        }
        assertTrue(text.contains("not run"), "what there was no time for is said");
    }

    /** Where runs ask about parts of one kind after another, the kind of the longest is named, and one kind that is slow misses the bar. */
    @Test
    void theSlowestKindIsNamedAndCounts() {
        Shop shop = Shop.bench();
        int bar = Job.REASONS.targetMs(shop);
        Sample seat = new Sample(bar / 4.0, 1, Sample.NOT_COUNTED, 1, true, false).about("reel seat");
        Sample check = new Sample(bar * 2.0, 1, Sample.NOT_COUNTED, 1, true, false).about("check");
        Row slow = new Row(shop, Job.REASONS, "slow", List.of(seat, seat, check));
        Row quick = new Row(shop, Job.REASONS, "quick", List.of(seat, seat));
        assertFalse(slow.met());
        assertTrue(quick.met());
        String text = new LatencyPage(List.of(slow, quick)).text();
        assertTrue(text.contains("| slow, longest: check |"), text);
        assertTrue(text.contains("| quick, longest: reel seat |"), text);
    }

    /** As many runs as there are kinds ask about each kind the best build has, and never about a part that it has. */
    @Test
    void eachKindTheBuildHasIsAskedAbout() throws IOException {
        Shop shop = Shop.bench();
        Query query = Scenario.all(Path.of(System.getProperty("withy.home", "..")), shop.catalog())
                .get(0)
                .query();
        Build build = new Search(shop.catalog()).solve(query, Watch.NONE).build();
        Set<String> kinds = new TreeSet<>();
        for (List<String> parts : Why.others(shop, Objects.requireNonNull(build))) {
            kinds.add(Why.kind(shop, parts.get(0)));
            assertTrue(Collections.disjoint(parts, build.partIds()), parts.toString());
        }
        assertTrue(kinds.containsAll(Set.of("blank", "reel seat", "grip", "guide", "tip top")), kinds.toString());
        Set<String> asked = new TreeSet<>();
        for (int run = 0; run < kinds.size(); run++) {
            asked.add(Objects.requireNonNull(Job.REASONS.once(shop, query, run)).about());
        }
        assertEquals(kinds, asked);
    }
}
