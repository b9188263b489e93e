package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import withy.brief.Brief.Wish;
import withy.explain.Inquiry;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Station;
import withy.search.Proposal;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** What an answer says of its search. */
class ProposeTest {
    /** Time is up once the builds are found and the lightest is still looked for. */
    private record Late(Chooser own, Clock clock) implements Chooser {
        @Override
        public List<Proposal> offer(Query query, Watch watch) {
            List<Proposal> all = own.offer(query, watch);
            clock.offered = true;
            return all;
        }

        @Override
        public Solution solve(Query query, Watch watch) {
            clock.runsOutOnceAsked();
            return own.solve(query, watch);
        }

        @Override
        public Map<Station.Place, Fit> fits(Query query) {
            return own.fits(query);
        }
    }

    /** Runs out when that is wanted, once it was asked after the builds were found. */
    private static final class Clock implements Progress {
        private final CountDownLatch asked = new CountDownLatch(1);
        private volatile boolean offered;
        private volatile boolean out;

        void runsOutOnceAsked() {
            try {
                assertTrue(asked.await(1, TimeUnit.MINUTES));
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
            out = true;
        }

        @Override
        public boolean stopped() {
            boolean now = out;
            if (offered) {
                asked.countDown();
            }
            return now;
        }

        @Override
        public void better(double weightG, long priceMinor) {
            // nobody listens
        }
    }

    @Test
    void buildsFoundInTimeAreAllThereIsThoughTheLightestIsNot() {
        Fixtures shop = Fixtures.legal();
        Clock clock = new Clock();
        QuantityText units = new QuantityText(UnitSystem.METRIC);
        Chooser own = new SearchChooser(shop.catalog());
        Answer whole = Propose.run(shop.catalog(), shop.theBrief(), own, units, Progress.NONE);
        Answer late = Propose.run(shop.catalog(), shop.theBrief(), new Late(own, clock), units, clock);
        assertFalse(late.interrupted());
        assertEquals(whole.builds(), late.builds());
        assertEquals(whole.reasons(), late.reasons());
        Answer.Lightest lightest = late.lightestLegal();
        assertTrue(lightest == null || !lightest.proven());
    }

    @Test
    void whereAConflictIsToldNoOtherRuleIsGivenTheBlame() {
        Fixtures shop = Fixtures.legal().brief("packedMaxMm", 300.0);
        Answer answer = Propose.run(
                shop.catalog(),
                shop.theBrief(),
                new SearchChooser(shop.catalog()),
                new QuantityText(UnitSystem.METRIC),
                Progress.NONE);
        assertFalse(answer.impossible().conflicts().isEmpty());
        assertTrue(
                answer.reasons().contains("No blank fits: all 1 are refused. What decides is told next."),
                () -> answer.reasons().toString());
    }

    /** A keeper that would be nice keeps no rod from being the lightest, nor does a class of sturdiness. */
    @Test
    void theLightestIsSoByWeightAlone() {
        Fixtures shop = Fixtures.legal().brief("handle.keeper", new Wish<>(true, false, 2.0));
        QuantityText units = new QuantityText(UnitSystem.METRIC);
        Chooser own = new SearchChooser(shop.catalog());
        Answer answer = Propose.run(shop.catalog(), shop.theBrief(), own, units, Progress.NONE);
        Inquiry inquiry = Explain.inquiry(shop.catalog(), shop.theBrief(), SearchChooser::new, units, Progress.NONE);
        Answer.Lightest lightest = answer.lightestLegal();
        Reasons.BuildLine asked = Explain.lighter(inquiry, Progress.NONE).lightest();
        assertNotNull(lightest);
        assertNotNull(asked);
        assertTrue(lightest.proven());
        assertEquals(asked.weightG(), lightest.weightG());
        assertFalse(lightest.build().parts().stream()
                .anyMatch(part -> part.station().equals("keeper")));
    }

    /** What is found with a wish left out is no build of the brief. */
    @Test
    void buildsWithAWishLeftOutAreNotToldAsFound() {
        Fixtures shop = Fixtures.legal().brief("budgetMinor", 1000L);
        List<Long> told = new ArrayList<>();
        Progress listening = new Progress() {
            @Override
            public boolean stopped() {
                return false;
            }

            @Override
            public void better(double weightG, long priceMinor) {
                told.add(priceMinor);
            }
        };
        QuantityText units = new QuantityText(UnitSystem.METRIC);
        Answer answer =
                Propose.run(shop.catalog(), shop.theBrief(), new SearchChooser(shop.catalog()), units, listening);
        assertNotNull(answer.impossible());
        assertEquals(List.of(), told);
    }
}
