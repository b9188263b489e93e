package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.explain.Finding.Outcome;
import withy.fixture.Scenarios;
import withy.objectives.Solver;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** What beats a part is looked for on its own blank and on all others at the same time: whichever thread is held up, the answer is the same. */
class BeatenTest {
    /** Longer than a whole question takes. */
    private static final long HELD_UP_MS = 700;

    @ParameterizedTest
    @CsvSource({
        "very-small-budget, fellcork-featherlode-nop196-16, LOSES",
        "sea-trout-travel, ellerwater-burl-butt-90-nop488, LOSES",
        "quay-squid-nice-wishes, tarnrigg-featherlode-x-nop211-16, DOMINATED",
        "very-small-budget, hollinbeck-featherlode-skeleton-hood-nop227-16, DOMINATED",
        "very-small-budget, marrick-brookside-walnut-nop185-16, DOMINATED",
        "very-small-budget, lanternhead-burl-butt-90-nop348, DOMINATED",
        "own-seat-insisted, ostermoor-ferryman-206-2-nop112, DOMINATED"
    })
    void theSameWhicheverThreadIsHeldUp(String scenario, String part, Outcome outcome) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        AtomicInteger own = new AtomicInteger();
        AtomicInteger others = new AtomicInteger();
        String plain = told(catalog, scenario, part, outcome, new HeldUp(catalog, true, 0, 0, own, others));
        assertTrue(own.get() > 0 && others.get() > 0, "nothing was looked for at the same time");
        assertEquals(
                plain, told(catalog, scenario, part, outcome, new HeldUp(catalog, true, HELD_UP_MS, 0, own, others)));
        assertEquals(
                plain, told(catalog, scenario, part, outcome, new HeldUp(catalog, true, 0, HELD_UP_MS, own, others)));
        assertEquals(
                plain,
                told(catalog, scenario, part, outcome, new HeldUp(catalog, false, 0, 0, own, others)),
                "by one thread");
    }

    private static String told(Catalog catalog, String scenario, String part, Outcome outcome, Solver shop)
            throws IOException {
        Inquiry inquiry = new Inquiry(
                catalog,
                Scenarios.brief(scenario, catalog),
                any -> shop,
                Solver.Watch.NONE,
                new QuantityText(UnitSystem.METRIC));
        Finding finding = WhyNot.reason(inquiry, Set.of(part));
        assertEquals(outcome, finding.outcome());
        assertFalse(finding.sentence().isEmpty());
        Found better = finding.better();
        return finding.sentence() + (better == null ? "" : better.build().signature());
    }

    /** A search of which the questions on one blank, or those on all others, begin late; for two threads or for one. */
    private static final class HeldUp implements Solver {
        private final Search search;
        private final boolean two;
        private final long ownMs;
        private final long othersMs;
        private final AtomicInteger own;
        private final AtomicInteger others;

        HeldUp(Catalog catalog, boolean two, long ownMs, long othersMs, AtomicInteger own, AtomicInteger others) {
            this.search = new Search(catalog);
            this.two = two;
            this.ownMs = ownMs;
            this.othersMs = othersMs;
            this.own = own;
            this.others = others;
        }

        @Override
        public boolean hasRoomForTwo() {
            return two;
        }

        @Override
        public Solution solve(Query query, Watch watch) {
            return search.solve(query, watch);
        }

        @Override
        public Solution solveAlone(Query query, Watch watch) {
            return search.solveAlone(query, watch);
        }

        @Override
        public Solution solveBelow(long limit, Query query, Watch watch) {
            boolean elsewhere = !query.refused().isEmpty();
            (elsewhere ? others : own).incrementAndGet();
            try {
                TimeUnit.MILLISECONDS.sleep(elsewhere ? othersMs : ownMs);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return search.solveBelow(limit, query, watch);
        }
    }
}
