package withy.search.planning;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.api.solver.phase.PhaseCommand;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import withy.rod.Build;

/** Puts the exact build in that was handed over; without one, the first layout with empty stations. */
final class SeedPhase implements PhaseCommand<RodPlan> {
    private final @Nullable Build seed;

    SeedPhase(@Nullable Build seed) {
        this.seed = seed;
    }

    @Override
    public void changeWorkingSolution(ScoreDirector<RodPlan> director, BooleanSupplier isTerminated) {
        RodChoice rod = director.getWorkingSolution().rod();
        Refit refit =
                seed == null ? new Refit(rod, rod.desk().problem().layouts().get(0), Map.of()) : Refit.to(rod, seed);
        refit.apply(director);
        director.triggerVariableListeners();
    }
}
