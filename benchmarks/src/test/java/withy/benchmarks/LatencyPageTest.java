package withy.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

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
}
