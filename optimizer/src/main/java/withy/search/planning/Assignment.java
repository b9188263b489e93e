package withy.search.planning;

import ai.timefold.solver.core.api.solver.SolverFactory;
import ai.timefold.solver.core.config.heuristic.selector.move.composite.UnionMoveSelectorConfig;
import ai.timefold.solver.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import ai.timefold.solver.core.config.localsearch.LocalSearchPhaseConfig;
import ai.timefold.solver.core.config.localsearch.decider.acceptor.LocalSearchAcceptorConfig;
import ai.timefold.solver.core.config.localsearch.decider.forager.LocalSearchForagerConfig;
import ai.timefold.solver.core.config.score.director.ScoreDirectorFactoryConfig;
import ai.timefold.solver.core.config.solver.EnvironmentMode;
import ai.timefold.solver.core.config.solver.SolverConfig;
import ai.timefold.solver.core.config.solver.termination.TerminationConfig;
import java.util.List;
import java.util.function.ToLongFunction;

/**
 * Gives every job one of the ways found for it: no piece promised twice, then as few jobs without a rod as can be, then the least sum of scores,
 * then the fewest orders. Ends by counts; equal input gives equal answers; never worse than what it begins with.
 */
public final class Assignment {
    private static final long SEED = 20_261_125L;
    private static final int LATE_ACCEPTANCE = 60;
    private static final long MOVES = 30_000;

    private Assignment() {}

    /** One way to serve a job. */
    public interface Way {
        /** True where the job gets a rod. */
        boolean served();

        /** Its score; less is better. */
        long score();
    }

    /**
     * Picks.
     *
     * @param pool the ways of each job
     * @param start what it begins with; within the pool and without excess
     * @param excess pieces wanted beyond what there is
     * @param orders orders to be sent
     */
    public static <W extends Way> List<W> pick(
            List<List<W>> pool, List<W> start, ToLongFunction<List<W>> excess, ToLongFunction<List<W>> orders) {
        if (pool.stream().allMatch(ways -> ways.size() < 2)) {
            return start;
        }
        PlanBoard board = new PlanBoard(pool, start, excess, orders);
        PlanBoard best = SolverFactory.<PlanBoard>create(config()).buildSolver().solve(board);
        return best.picked();
    }

    private static SolverConfig config() {
        return new SolverConfig()
                .withSolutionClass(PlanBoard.class)
                .withEntityClasses(JobChoice.class)
                .withScoreDirectorFactory(
                        new ScoreDirectorFactoryConfig().withEasyScoreCalculatorClass(PlanScore.class))
                .withEnvironmentMode(EnvironmentMode.PHASE_ASSERT)
                .withRandomSeed(SEED)
                .withPhaseList(List.of(new LocalSearchPhaseConfig()
                        .withMoveSelectorConfig(
                                new UnionMoveSelectorConfig().withMoveSelectors(new ChangeMoveSelectorConfig()))
                        .withAcceptorConfig(new LocalSearchAcceptorConfig().withLateAcceptanceSize(LATE_ACCEPTANCE))
                        .withForagerConfig(new LocalSearchForagerConfig().withAcceptedCountLimit(1))
                        .withTerminationConfig(new TerminationConfig().withMoveCountLimit(MOVES))));
    }
}
