package withy.search.planning;

import ai.timefold.solver.core.api.solver.Solver;
import ai.timefold.solver.core.api.solver.SolverFactory;
import ai.timefold.solver.core.config.heuristic.selector.entity.EntitySelectorConfig;
import ai.timefold.solver.core.config.heuristic.selector.move.MoveSelectorConfig;
import ai.timefold.solver.core.config.heuristic.selector.move.composite.UnionMoveSelectorConfig;
import ai.timefold.solver.core.config.heuristic.selector.move.factory.MoveIteratorFactoryConfig;
import ai.timefold.solver.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import ai.timefold.solver.core.config.heuristic.selector.move.generic.SwapMoveSelectorConfig;
import ai.timefold.solver.core.config.localsearch.LocalSearchPhaseConfig;
import ai.timefold.solver.core.config.localsearch.decider.acceptor.LocalSearchAcceptorConfig;
import ai.timefold.solver.core.config.localsearch.decider.forager.LocalSearchForagerConfig;
import ai.timefold.solver.core.config.phase.PhaseConfig;
import ai.timefold.solver.core.config.phase.custom.CustomPhaseConfig;
import ai.timefold.solver.core.config.score.director.ScoreDirectorFactoryConfig;
import ai.timefold.solver.core.config.solver.EnvironmentMode;
import ai.timefold.solver.core.config.solver.SolverConfig;
import ai.timefold.solver.core.config.solver.termination.TerminationConfig;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rules.Rule;

/**
 * Goes on where proof gave up. Three phases: the seed is put in; layouts completed by the kernel are tried; parts are changed, swapped and fitted
 * together station by station under every rule, in the kernel's chain or not. Ends by counts; equal input gives equal answers.
 */
public final class Engine {
    /** Tries layouts greedily: a layout is taken where it is at least as good as this many steps ago. */
    private static final int LAYOUT_LATE_ACCEPTANCE = 5;

    private static final double CHANGES = 4;
    private static final double SWAPS = 1;
    private static final double TOGETHER = 5;

    private Engine() {}

    /**
     * Looks for a better build.
     *
     * @param problem the question
     * @param seed build to begin with, or null
     * @param settings how long
     * @param watch told each better build; asked whether to stop
     */
    public static Improvement improve(Problem problem, @Nullable Build seed, EngineSettings settings, Watch watch) {
        Desk desk = new Desk(problem, settings, watch.interrupted());
        SolverFactory<RodPlan> factory = SolverFactory.create(config(problem, seed, settings));
        Solver<RodPlan> solver = factory.buildSolver();
        desk.onInterruption(solver::terminateEarly);
        solver.addEventListener(event -> {
            RodChoice rod = event.getNewBestSolution().rod();
            Build build = rod.build();
            Reading reading = rod.reading();
            if (build != null && reading != null && reading.legal()) {
                watch.better()
                        .found(build, reading.objectives(), problem.scoring().score(reading.objectives()));
            }
        });
        Build best = solver.solve(new RodPlan(desk)).rod().build();
        long measured = desk.measured();
        Reading last = best == null ? null : desk.read(best);
        return best == null || last == null || !last.legal()
                ? new Improvement(null, null, Long.MAX_VALUE, measured, desk.completed())
                : new Improvement(
                        best,
                        last.objectives(),
                        problem.scoring().score(last.objectives()),
                        measured,
                        desk.completed());
    }

    /** The engine's list of phases is a raw type in its own signature. */
    @SuppressWarnings("rawtypes")
    static SolverConfig config(Problem problem, @Nullable Build seed, EngineSettings settings) {
        List<PhaseConfig> phases = new ArrayList<>();
        phases.add(new CustomPhaseConfig().withCustomPhaseCommandList(List.of(new SeedPhase(seed))));
        if (settings.layouts() > 0) {
            phases.add(localSearch(layouts(), LAYOUT_LATE_ACCEPTANCE, settings.layouts()));
        }
        if (settings.slotMoves() > 0) {
            phases.add(localSearch(slots(), settings.lateAcceptance(), settings.slotMoves()));
        }
        List<String> codes =
                problem.rules().rules().stream().map(Rule::code).distinct().toList();
        return new SolverConfig()
                .withSolutionClass(RodPlan.class)
                .withEntityClasses(RodChoice.class, StationChoice.class)
                .withScoreDirectorFactory(new ScoreDirectorFactoryConfig()
                        .withConstraintProviderClass(RodConstraints.class)
                        .withConstraintProviderCustomProperties(
                                Map.of("codes", String.join(RodConstraints.SEPARATOR, codes))))
                .withEnvironmentMode(settings.checked() ? EnvironmentMode.FULL_ASSERT : EnvironmentMode.PHASE_ASSERT)
                .withRandomSeed(settings.seed())
                .withPhaseList(phases);
    }

    private static LocalSearchPhaseConfig localSearch(MoveSelectorConfig<?> moves, int lateAcceptance, long count) {
        return new LocalSearchPhaseConfig()
                .withMoveSelectorConfig(moves)
                .withAcceptorConfig(new LocalSearchAcceptorConfig().withLateAcceptanceSize(lateAcceptance))
                .withForagerConfig(new LocalSearchForagerConfig().withAcceptedCountLimit(1))
                .withTerminationConfig(new TerminationConfig().withMoveCountLimit(count));
    }

    private static MoveSelectorConfig<?> layouts() {
        return new MoveIteratorFactoryConfig().withMoveIteratorFactoryClass(LayoutMoves.class);
    }

    private static MoveSelectorConfig<?> slots() {
        EntitySelectorConfig stations = new EntitySelectorConfig().withEntityClass(StationChoice.class);
        return new UnionMoveSelectorConfig()
                .withMoveSelectors(
                        new ChangeMoveSelectorConfig()
                                .withEntitySelectorConfig(stations)
                                .withFixedProbabilityWeight(CHANGES),
                        new SwapMoveSelectorConfig()
                                .withEntitySelectorConfig(stations.copyConfig())
                                .withFixedProbabilityWeight(SWAPS),
                        new MoveIteratorFactoryConfig()
                                .withMoveIteratorFactoryClass(FitTogetherMoves.class)
                                .withFixedProbabilityWeight(TOGETHER));
    }
}
