package withy.benchmarks.peer.engine;

import ai.timefold.solver.core.api.solver.Solver;
import ai.timefold.solver.core.api.solver.SolverFactory;
import ai.timefold.solver.core.config.score.director.ScoreDirectorFactoryConfig;
import ai.timefold.solver.core.config.solver.SolverConfig;
import ai.timefold.solver.core.config.solver.termination.TerminationConfig;
import withy.benchmarks.peer.Peer;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Race;
import withy.benchmarks.peer.TwoThreads;
import withy.rod.Build;

/**
 * The planning engine on the plain slot model, without seed, decoder or moves of ours: construction heuristic, then late acceptance over changes and
 * swaps, as it configures itself.
 */
public final class EngineAlone implements Peer {
    @Override
    public String name() {
        return "engine alone (Timefold)";
    }

    @Override
    public String setUp() {
        return "timefold-solver-core 1.32.0, its default phases and moves on constraint streams; solving with several threads is not in the free edition, so"
                + " two solvers with seeds " + SEED + " and " + (SEED + 1);
    }

    @Override
    public boolean proves() {
        return false;
    }

    @Override
    public void run(Question question, Race race) throws Exception {
        if (question.layouts().isEmpty()) {
            return;
        }
        TwoThreads.run(index -> {
            SolverConfig config = new SolverConfig()
                    .withSolutionClass(SlotPlan.class)
                    .withEntityClasses(SlotRod.class, SlotStation.class)
                    .withScoreDirectorFactory(
                            new ScoreDirectorFactoryConfig().withConstraintProviderClass(SlotConstraints.class))
                    .withRandomSeed(SEED + index)
                    .withTerminationConfig(new TerminationConfig()
                            .withMillisecondsSpentLimit(Math.max(1, Math.round(race.secondsLeft() * 1000))));
            Solver<SlotPlan> solver = SolverFactory.<SlotPlan>create(config).buildSolver();
            solver.addEventListener(event -> offer(race, event.getNewBestSolution()));
            offer(race, solver.solve(new SlotPlan(question)));
        });
    }

    private static void offer(Race race, SlotPlan plan) {
        Build build = plan.rod().build();
        if (build != null) {
            race.offer(build);
        }
    }
}
