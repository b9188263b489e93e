package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.app.Answer;
import withy.app.Chooser;
import withy.app.LocalPage;
import withy.app.SearchChooser;
import withy.app.Workshop;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Station;
import withy.search.Proposal;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** An answer that takes long: the best build first, the others when they are found, and kept even where it was cut short. */
class ComingTest {
    @TempDir
    Path scratch;

    /** The program's own search, that waits where it is told to. */
    static class Slow implements Chooser {
        private final Chooser own;
        private final CountDownLatch best;
        private final CountDownLatch others;

        Slow(Catalog catalog, CountDownLatch best, CountDownLatch others) {
            this.own = new SearchChooser(catalog);
            this.best = best;
            this.others = others;
        }

        @Override
        public List<Proposal> offer(Query query, Watch watch) {
            return own.offer(query, watch);
        }

        @Override
        public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> told) {
            await(best);
            return own.offer(query, watch, first -> {
                told.accept(first);
                await(others);
            });
        }

        static void await(CountDownLatch latch) {
            try {
                latch.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        @Override
        public Solution solve(Query query, Watch watch) {
            return own.solve(query, watch);
        }

        @Override
        public Map<Station.Place, Fit> fits(Query query) {
            return own.fits(query);
        }
    }

    @Test
    void theBestIsShownWhileTheOthersAreLookedFor() throws Exception {
        CountDownLatch best = new CountDownLatch(1);
        CountDownLatch others = new CountDownLatch(1);
        AtomicInteger begun = new AtomicInteger();
        Function<Catalog, Chooser> slow = catalog -> new Slow(catalog, best, others) {
            @Override
            public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> told) {
                begun.incrementAndGet();
                return super.offer(query, watch, told);
            }
        };
        try (ShopFolder shop = new ShopFolder(scratch, "bench", slow)) {
            Caller page = new Caller(shop);
            String path = page.form("/brief", "from", "", "start", "estuary").location();
            String waiting = page.get(path).body();
            assertTrue(waiting.contains("Looking for the best build"), waiting);
            assertTrue(waiting.contains("http-equiv=\"refresh\""), "without script it looks again");
            assertEquals(0, builds(waiting));
            assertEquals(0, builds(page.get(path).body()), "loaded again in the middle");
            assertTrue(waiting.contains("data-rest=\"best\""), "with script it asks for the best first");
            best.countDown();
            String first = page.get(path + "?show=best").body();
            assertEquals(1, builds(first));
            assertTrue(first.contains("Two to put beside it"), first);
            assertTrue(first.contains("data-rest=\"rest\""), first);
            others.countDown();
            String whole = page.get(path + "?show=rest").body();
            assertEquals(3, builds(whole));
            assertFalse(whole.contains("Two to put beside it"));
            assertFalse(whole.contains("http-equiv=\"refresh\""));
            assertEquals(
                    Caller.found("<strong>([^<]* EUR)</strong>", first),
                    Caller.found("<strong>([^<]* EUR)</strong>", whole),
                    "the best stays the best");
            assertEquals(1, begun.get(), "however often the page is loaded");
        }
    }

    /** Builds are looked for from the moment a brief is told, pasted or changed, not only once their page is asked for. */
    @Test
    void buildsAreLookedForBeforeTheirPageIsAskedFor() throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        BlockingQueue<String> begun = new LinkedBlockingQueue<>();
        try (ShopFolder shop = new ShopFolder(scratch, "bench", catalog -> new Slow(catalog, free, free) {
            @Override
            public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> told) {
                begun.add(query.brief().name() + query.brief().priority(Objective.WEIGHT));
                return super.offer(query, watch, told);
            }
        })) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            String first = begun.poll(60, TimeUnit.SECONDS);
            assertNotNull(first, "told");
            page.form("/change", "step", step, "do", "priorities", "priorities.weight", "9");
            String changed = begun.poll(60, TimeUnit.SECONDS);
            assertNotNull(changed, "changed");
            assertNotEquals(first, changed);
            Path brief = Path.of(System.getProperty("withy.home"), "scenarios", "beach-surf", "brief.json");
            page.form("/paste", "json", Files.readString(brief));
            assertNotNull(begun.poll(60, TimeUnit.SECONDS), "pasted");
            page.get("/builds/" + step + "?show=rest");
            assertEquals(0, begun.size(), "and once only");
        }
    }

    @Test
    void whatIsUsuallyBegunWithIsSolvedAndItsPagesDrawnBeforeItIsAsked() throws Exception {
        LocalDate day = LocalDate.of(2026, 6, 1);
        Path lists = Path.of(System.getProperty("withy.home"), "catalog-samples", "bench");
        Catalog catalog = CatalogReader.read(lists, day).catalog();
        assertNotNull(catalog);
        Workshop workshop = new Workshop(scratch, catalog, day);
        CountDownLatch solved = new CountDownLatch(Starts.all().size());
        Chooser counting = new Slow(catalog, new CountDownLatch(0), new CountDownLatch(0)) {
            @Override
            public Solution solve(Query query, Watch watch) {
                Solution solution = super.solve(query, watch);
                assertNotNull(solution.build(), query.brief().name());
                solved.countDown();
                return solution;
            }
        };
        Bench bench = new Bench(
                new LocalPage.Setting(() -> workshop, any -> counting, new QuantityText(UnitSystem.METRIC), 0),
                () -> 0);
        BlockingQueue<String> drawn = new LinkedBlockingQueue<>();
        Steps steps = new Steps(scratch);
        Pages pages = Pages.of(new Door(), steps, bench);
        bench.answers().prepare(new FirstPages(pages, drawn::add));
        assertTrue(String.valueOf(drawn.poll(60, TimeUnit.SECONDS)).contains("What will it fish for?"));
        assertTrue(String.valueOf(drawn.poll(60, TimeUnit.SECONDS)).contains("id=\"lure-usual\""));
        String builds = String.valueOf(drawn.poll(60, TimeUnit.SECONDS));
        assertEquals(1, builds(builds), builds);
        assertTrue(builds.contains("<svg"), "with its rod");
        assertTrue(solved.await(60, TimeUnit.SECONDS), "left: " + solved.getCount());
        assertEquals(List.of(), steps.latest(1), "no talk was begun");
        assertFalse(Files.exists(scratch.resolve(Steps.FOLDER)), "and nothing kept");
        bench.close();
    }

    /** What takes longer than a moment says so at once, and is there when it is asked for again. */
    @Test
    void whatIsWorkedOutLongerSaysSoAtOnce() throws Exception {
        CountDownLatch held = new CountDownLatch(1);
        CountDownLatch free = new CountDownLatch(0);
        AtomicReference<CountDownLatch> gate = new AtomicReference<>(free);
        Function<Catalog, Chooser> slow = catalog -> new Slow(catalog, free, free) {
            @Override
            public Solution solve(Query query, Watch watch) {
                await(gate.get());
                return super.solve(query, watch);
            }
        };
        try (ShopFolder shop = new ShopFolder(scratch, "bench", slow)) {
            Caller page = new Caller(shop);
            String builds = page.form("/brief", "from", "", "start", "estuary").location();
            page.get(builds + "?show=rest");
            gate.set(held);
            String why = builds.replace("/builds/", "/why/") + "/marrick-tideway-r-16";
            String waiting = page.get(why).body();
            assertTrue(waiting.contains("The best rod with it is being looked for"), waiting);
            assertTrue(
                    waiting.contains("data-rest=\"1\""),
                    "the best is known, the best with it is asked for: " + waiting);
            assertTrue(waiting.contains("http-equiv=\"refresh\""), "without script it looks again");
            assertTrue(waiting.contains("href=\"" + builds + "\""), "and there is a way back");
            String drawer = builds.replace("/builds/", "/drawer/") + "/1/blank";
            assertTrue(page.get(drawer).body().contains("being looked through"));
            held.countDown();
            assertTrue(page.get(why + "?show=1").body().contains("Beside the best"));
            assertTrue(page.get(why).body().contains("Beside the best"));
            assertTrue(page.whole(drawer).contains("Try this"));
        }
    }

    /** The search of a part put in is let through, all that follows is held: what is known stands there, the rest comes below it. */
    @Test
    void whatIsKnownFirstIsShownFirst() throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        CountDownLatch why = new CountDownLatch(1);
        CountDownLatch light = new CountDownLatch(1);
        String seat = "marrick-tideway-r-16";
        Function<Catalog, Chooser> slow = catalog -> new Slow(catalog, free, free) {
            @Override
            public Solution solve(Query query, Watch watch) {
                boolean plain = query.forced().isEmpty() || query.forced().equals(Set.of(seat));
                await(!query.ceilings().isEmpty() ? light : plain ? free : why);
                return super.solve(query, watch);
            }
        };
        try (ShopFolder shop = new ShopFolder(scratch, "bench", slow)) {
            Caller page = new Caller(shop);
            String builds = page.form("/brief", "from", "", "start", "estuary").location();
            page.get(builds + "?show=rest");
            String lighter = builds.replace("/builds/", "/lighter/");
            String best = page.get(lighter).body();
            assertTrue(best.contains("The best rod for what was asked"), best);
            assertTrue(best.contains("The lightest is being looked for"), best);
            String part = builds.replace("/builds/", "/why/") + "/" + seat;
            String beside = page.get(part + "?show=1").body();
            assertTrue(beside.contains("Why not is being looked for"), beside);
            assertTrue(beside.contains("With it: "), beside);
            why.countDown();
            light.countDown();
            assertTrue(page.whole(part).contains("class=\"answer\""));
            String whole = page.whole(lighter);
            assertTrue(whole.contains("The lightest rod that keeps every rule weighs"), whole);
            assertTrue(whole.contains("Lighter parts, and why not"), whole);
        }
    }

    private static int builds(String body) {
        return body.split("<article class=\"build\"", -1).length - 1;
    }

    @Test
    void whatWasCutShortIsKeptAndALongerLookStandsInForIt() throws Exception {
        LocalDate day = LocalDate.of(2026, 6, 1);
        Path lists = Path.of(System.getProperty("withy.home"), "catalog-samples", "bench");
        Catalog catalog = CatalogReader.read(lists, day).catalog();
        assertNotNull(catalog);
        Workshop workshop = new Workshop(scratch, catalog, day);
        AtomicInteger offers = new AtomicInteger();
        AtomicLong clock = new AtomicLong();
        Chooser counting = new Slow(catalog, new CountDownLatch(0), new CountDownLatch(0)) {
            @Override
            public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> told) {
                offers.incrementAndGet();
                return super.offer(query, watch, first -> {
                    told.accept(first);
                    clock.addAndGet(20_000);
                });
            }
        };
        Bench bench = new Bench(
                new LocalPage.Setting(() -> workshop, any -> counting, new QuantityText(UnitSystem.METRIC), 0),
                clock::get);
        Bench.Asked asked = bench.read(Starts.brief("estuary"));
        Answer cut = bench.answers().answer(asked, Answers.PATIENCE_S);
        assertTrue(cut.interrupted());
        assertFalse(cut.builds().isEmpty());
        assertSame(cut, bench.answers().answer(asked, Answers.PATIENCE_S));
        assertEquals(1, offers.get());
        Answer longer = bench.answers().answer(asked, Answers.MOST_PATIENCE_S);
        assertFalse(longer.interrupted());
        assertEquals(2, offers.get());
        assertSame(longer, bench.answers().answer(asked, Answers.PATIENCE_S));
        assertEquals(2, offers.get());
        bench.close();
    }
}
