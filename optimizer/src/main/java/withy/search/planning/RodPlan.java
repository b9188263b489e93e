package withy.search.planning;

import ai.timefold.solver.core.api.domain.solution.PlanningEntityCollectionProperty;
import ai.timefold.solver.core.api.domain.solution.PlanningScore;
import ai.timefold.solver.core.api.domain.solution.PlanningSolution;
import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The rods to be chosen with all their stations. One rod for one brief; a plan over several jobs holds more. */
@PlanningSolution
public class RodPlan {
    @PlanningEntityCollectionProperty
    private List<RodChoice> rods = new ArrayList<>();

    @PlanningEntityCollectionProperty
    private List<StationChoice> stations = new ArrayList<>();

    @PlanningScore
    private @Nullable HardSoftLongScore score;

    /** For the engine. */
    public RodPlan() {}

    /** A plan of one rod whose layout is still open. */
    RodPlan(Desk desk) {
        RodChoice rod = new RodChoice("rod", desk);
        rods.add(rod);
        stations.addAll(rod.stations());
    }

    /** The one rod. */
    RodChoice rod() {
        return rods.get(0);
    }

    @Nullable
    HardSoftLongScore score() {
        return score;
    }
}
