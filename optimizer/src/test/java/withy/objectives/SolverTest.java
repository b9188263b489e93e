package withy.objectives;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.rules.Rulebook;

/** Questions and the plain way to ask whether anything can be built. */
class SolverTest {
    private static final Fixtures FIXTURE = Fixtures.legal();
    private static final Query PLAIN = Query.of(FIXTURE.theBrief(), Rulebook.standard());
    private static final ObjectiveVector FIGURES = new ObjectiveVector(1, 2, 3, 4, 5, 6, 7);

    /** Ten builds, one a turn, each better. */
    private static int turns(Watch watch) {
        AtomicInteger turns = new AtomicInteger();
        Solver counting = (query, seen) -> {
            Build build = FIXTURE.build();
            while (turns.get() < 10 && !seen.interrupted().getAsBoolean()) {
                seen.better().found(build, FIGURES, -turns.incrementAndGet());
            }
            return new Solution(build, FIGURES, 0, 0, false, turns.get());
        };
        long told = counting.any(PLAIN, watch).layoutsOpened();
        assertEquals(turns.get(), told);
        return turns.get();
    }

    @Test
    void theFirstBuildWillDo() {
        assertEquals(1, turns(Watch.NONE));
    }

    @Test
    void whoIsInterruptedStopsBeforeTheFirst() {
        assertEquals(0, turns(new Watch(() -> true, (build, objectives, score) -> {})));
    }

    @Test
    void aQuestionChangesInOneThingOnly() {
        Brief other = Changed.with(FIXTURE.theBrief(), "name", "other");
        Query all = PLAIN.withPriorities(Map.of(Objective.PRICE, 2.0))
                .forcing(Set.of("cap"))
                .refusing(Set.of("keeper"))
                .under(Map.of(Objective.WEIGHT, 90_000L))
                .fixing(Map.of(Station.SEAT, Choice.of("seat")), Set.of(Station.DECAL), 240);
        assertEquals(Map.of(Objective.PRICE, 2.0), all.priorities());
        assertEquals(Set.of("cap"), all.forced());
        assertEquals(Set.of("keeper"), all.refused());
        assertEquals(Map.of(Objective.WEIGHT, 90_000L), all.ceilings());
        assertEquals(Map.of(Station.SEAT, Choice.of("seat")), all.fixed());
        assertEquals(Set.of(Station.DECAL), all.empty());
        assertEquals(240, all.reelFootMm());
        assertNull(PLAIN.reelFootMm());
        assertEquals(PLAIN.brief().priorities(), PLAIN.priorities());
        Query moved = all.withBrief(other);
        assertSame(other, moved.brief());
        assertEquals(all, moved.withBrief(FIXTURE.theBrief()));
        Rulebook less = Rulebook.standard().without("lift");
        Query looser = all.withRulebook(less);
        assertSame(less, looser.rulebook());
        assertEquals(all.ceilings(), looser.ceilings());
        assertTrue(all.fixing(Map.of(), Set.of(), null).fixed().isEmpty());
    }
}
