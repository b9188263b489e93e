package withy.benchmarks.peer.engine;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Question.Slot;
import withy.rod.Build.Choice;

/** One station with its part, or none. */
@PlanningEntity
public class SlotStation {
    @PlanningId
    private String id = "";

    private List<Choice> choices = List.of();

    @PlanningVariable(valueRangeProviderRefs = "choices", allowsUnassigned = true)
    private @Nullable Choice choice;

    /** For the engine. */
    public SlotStation() {}

    SlotStation(Slot slot) {
        this.id = slot.station().key();
        this.choices = slot.choices().stream().filter(Objects::nonNull).toList();
    }

    @ValueRangeProvider(id = "choices")
    public List<Choice> choices() {
        return choices;
    }

    @Nullable
    Choice choice() {
        return choice;
    }

    @Override
    public String toString() {
        return id;
    }
}
