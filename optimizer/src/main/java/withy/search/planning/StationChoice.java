package withy.search.planning;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.entity.PlanningPin;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.rod.Build.Choice;
import withy.rod.Station;

/** One station of one rod with the part that stands there, or none. */
@PlanningEntity
public class StationChoice {
    static final String CHOICE = "choice";

    @PlanningId
    private String id = "";

    private @Nullable Slot slot;

    @PlanningPin
    private boolean given;

    @PlanningVariable(valueRangeProviderRefs = "choices", allowsUnassigned = true)
    private @Nullable Choice choice;

    /** For the engine. */
    public StationChoice() {}

    StationChoice(String rodId, Slot slot) {
        this.id = rodId + "/" + slot.station().key();
        this.slot = slot;
        this.given = slot.given();
        this.choice = given && !slot.choices().isEmpty() ? slot.choices().get(0) : null;
    }

    /** Parts (grips at each cut) that may stand here. */
    @ValueRangeProvider(id = "choices")
    public List<Choice> choices() {
        return slot().choices();
    }

    Slot slot() {
        return Objects.requireNonNull(slot);
    }

    Station station() {
        return slot().station();
    }

    boolean given() {
        return given;
    }

    @Nullable
    Choice choice() {
        return choice;
    }

    void choose(@Nullable Choice other) {
        choice = other;
    }

    @Override
    public String toString() {
        return id;
    }
}
