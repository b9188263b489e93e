package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;

/** The plan in a browser without script: it says that it is being worked out, looks again by itself, has a link to do so, and comes. */
class PlanPageTest {
    @TempDir
    Path scratch;

    @Test
    void withoutScriptThePlanComesAllTheSame() throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        CountDownLatch held = new CountDownLatch(1);
        AtomicReference<CountDownLatch> gate = new AtomicReference<>(free);
        try (ShopFolder shop = new ShopFolder(scratch, "bench", catalog -> new ComingTest.Slow(catalog, free, free) {
            @Override
            public Solution solve(Query query, Watch watch) {
                await(gate.get());
                return super.solve(query, watch);
            }
        })) {
            Caller page = new Caller(shop);
            String step = page.begun("brook");
            page.whole("/builds/" + step);
            assertEquals(
                    "/jobs/1",
                    page.form("/jobs", "once", "a", "step", step, "rank", "0").location());
            gate.set(held);
            String waiting = page.get("/plan").body();
            assertTrue(waiting.contains("<h1>A moment</h1>"), waiting);
            assertTrue(
                    waiting.contains("<noscript><meta http-equiv=\"refresh\" content=\"2\"></noscript>"),
                    "it looks again by itself: " + waiting);
            assertTrue(
                    waiting.matches(
                            "(?s).*<noscript><p class=\"ways\"><a class=\"button\" href=\"/plan\">Look again</a>.*"),
                    "or where it is told to: " + waiting);
            held.countDown();
            String plan = page.get("/plan").body();
            for (int i = 0; i < 600 && plan.contains("A moment"); i++) {
                Thread.sleep(100);
                plan = page.get("/plan").body();
            }
            assertTrue(plan.contains("<h1>All open jobs from one stock</h1>"), plan);
        }
    }
}
