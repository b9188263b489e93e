package withy.benchmarks.peer.engine;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import ai.timefold.solver.core.api.domain.variable.ShadowSources;
import ai.timefold.solver.core.api.domain.variable.ShadowVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Question.Judged;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;

/** The layout, and the rod that follows from it and all stations, measured once a move. */
@PlanningEntity
public class SlotRod {
    @PlanningId
    private String id = "rod";

    private @Nullable Question question;
    private List<SlotStation> stations = new ArrayList<>();

    @PlanningVariable(valueRangeProviderRefs = "layouts")
    private @Nullable Layout layout;

    @ShadowVariable(supplierName = "judge")
    private @Nullable Judged judged;

    /** For the engine. */
    public SlotRod() {}

    SlotRod(Question question) {
        this.question = question;
        question.slots().forEach(slot -> stations.add(new SlotStation(slot)));
    }

    @ValueRangeProvider(id = "layouts")
    public List<Layout> layouts() {
        return Objects.requireNonNull(question).layouts();
    }

    /** Null while the layout is open. */
    @ShadowSources({"layout", "stations[].choice"})
    public @Nullable Judged judge() {
        Build build = build();
        return build == null ? null : Objects.requireNonNull(question).judge(build);
    }

    @Nullable
    Build build() {
        Layout on = layout;
        if (on == null) {
            return null;
        }
        List<@Nullable Choice> chosen = new ArrayList<>();
        stations.forEach(station -> chosen.add(station.choice()));
        return Objects.requireNonNull(question).build(on, chosen);
    }

    List<SlotStation> stations() {
        return stations;
    }

    @Nullable
    Judged judged() {
        return judged;
    }

    @Override
    public String toString() {
        return id;
    }
}
