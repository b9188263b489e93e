package withy.benchmarks.peer.engine;

import ai.timefold.solver.core.api.domain.solution.PlanningEntityCollectionProperty;
import ai.timefold.solver.core.api.domain.solution.PlanningScore;
import ai.timefold.solver.core.api.domain.solution.PlanningSolution;
import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Question;

/** One rod to be chosen. */
@PlanningSolution
public class SlotPlan {
    @PlanningEntityCollectionProperty
    private List<SlotRod> rods = new ArrayList<>();

    @PlanningEntityCollectionProperty
    private List<SlotStation> stations = new ArrayList<>();

    @PlanningScore
    private @Nullable HardSoftLongScore score;

    /** For the engine. */
    public SlotPlan() {}

    SlotPlan(Question question) {
        SlotRod rod = new SlotRod(question);
        rods.add(rod);
        stations.addAll(rod.stations());
    }

    SlotRod rod() {
        return rods.get(0);
    }
}
