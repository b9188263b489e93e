package withy.search.planning;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One job and the number of the way it is served. */
@PlanningEntity
public class JobChoice {
    @PlanningId
    private int job;

    private List<Integer> ways = new ArrayList<>();

    @PlanningVariable(valueRangeProviderRefs = "ways")
    private @Nullable Integer way;

    /** For the engine. */
    public JobChoice() {}

    JobChoice(int job, int ways, int first) {
        this.job = job;
        for (int n = 0; n < ways; n++) {
            this.ways.add(n);
        }
        this.way = first;
    }

    @ValueRangeProvider(id = "ways")
    public List<Integer> ways() {
        return ways;
    }

    int job() {
        return job;
    }

    int way() {
        return way == null ? 0 : way;
    }
}
