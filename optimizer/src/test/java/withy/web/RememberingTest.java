package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import withy.app.Chooser;
import withy.brief.Objective;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.Proposal;

/** What was proven once is not searched for again; what was cut short is. */
class RememberingTest {
    private final AtomicInteger asked = new AtomicInteger();
    private final List<@Nullable Solution> handed = new ArrayList<>();
    private boolean proves = true;
    private final Chooser search = new Chooser() {
        @Override
        public Solution solve(Query query, Watch watch) {
            asked.incrementAndGet();
            return new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, proves, 0);
        }

        @Override
        public List<Proposal> offer(Query query, Watch watch) {
            asked.incrementAndGet();
            return List.of();
        }

        @Override
        public List<Proposal> offer(Query query, Watch watch, @Nullable Solution known, Consumer<Proposal> best) {
            handed.add(known);
            return offer(query, watch);
        }

        @Override
        public boolean mayHold(Query query, Watch watch) {
            return false;
        }

        @Override
        public Map<Station.Place, Fit> fits(Query query) {
            return Map.of();
        }
    };
    private final Remembering remembering = new Remembering(search);

    private static Query plain() {
        return Query.of(Fixtures.legal().theBrief(), Rulebook.standard());
    }

    @Test
    void theSameQuestionReadAnewIsAnsweredFromMemory() {
        Solution first = remembering.solve(plain(), Watch.NONE);
        assertSame(first, remembering.solve(plain(), Watch.NONE));
        assertSame(first, remembering.any(plain(), Watch.NONE));
        assertEquals(1, asked.get());
    }

    @Test
    void anythingElseIsAskedForItself() {
        remembering.solve(plain(), Watch.NONE);
        remembering.solve(plain().refusing(Set.of("blank")), Watch.NONE);
        remembering.solve(plain().under(Map.of(Objective.WEIGHT, 1L)), Watch.NONE);
        remembering.solve(plain().withPriorities(Map.of(Objective.WEIGHT, 1.0)), Watch.NONE);
        remembering.solve(plain().withRulebook(Rulebook.standard().without("salt")), Watch.NONE);
        assertEquals(5, asked.get());
    }

    @Test
    void whatWasCutShortIsSearchedForAgain() {
        proves = false;
        remembering.solve(plain(), Watch.NONE);
        remembering.solve(plain(), Watch.NONE);
        assertEquals(2, asked.get());
    }

    @Test
    void anOfferIsLookedForOnceUnlessItWasCutShort() {
        Watch stopped = new Watch(() -> true, (build, objectives, score) -> {});
        remembering.offer(plain(), stopped);
        assertEquals(1, asked.get());
        List<Proposal> offer = remembering.offer(plain(), Watch.NONE);
        assertSame(offer, remembering.offer(plain(), Watch.NONE));
        assertEquals(2, asked.get());
    }

    @Test
    void theBestThatAnotherPageFoundIsHandedToTheOffer() {
        remembering.offer(plain(), Watch.NONE);
        Solution found = remembering.solve(plain().refusing(Set.of("blank")), Watch.NONE);
        remembering.offer(plain().refusing(Set.of("blank")), Watch.NONE);
        assertEquals(2, handed.size());
        assertNull(handed.get(0), "nothing was known of it");
        assertSame(found, handed.get(1));
    }

    @Test
    void whetherAnyHandleGoesOnIsTheSearchToTell() {
        assertFalse(remembering.mayHold(plain(), Watch.NONE));
    }
}
