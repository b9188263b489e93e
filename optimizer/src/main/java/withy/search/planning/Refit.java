package withy.search.planning;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.impl.heuristic.move.AbstractMove;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;

/** Changes a rod's layout and any number of its stations at once. */
final class Refit extends AbstractMove<RodPlan> {
    private static final List<String> LAYOUT =
            List.of(RodChoice.BLANK, RodChoice.FOOT, RodChoice.FORM, RodChoice.COUNT);

    private final RodChoice rod;
    private final @Nullable Layout layout;
    private final Map<StationChoice, @Nullable Choice> choices;

    /**
     * @param layout layout to change to, or null to leave it
     * @param choices what to put at which station, null = nothing
     */
    Refit(RodChoice rod, @Nullable Layout layout, Map<StationChoice, @Nullable Choice> choices) {
        this.rod = rod;
        this.layout = layout;
        this.choices = choices;
    }

    /** To a whole build; guides beyond its count are left as they are. */
    static Refit to(RodChoice rod, Build build) {
        Map<StationChoice, @Nullable Choice> choices = new LinkedHashMap<>();
        for (StationChoice station : rod.stations()) {
            if (station.station().number() <= build.layout().guideCount()) {
                choices.put(station, build.choices().get(station.station()));
            }
        }
        return new Refit(rod, build.layout(), choices);
    }

    @Override
    public boolean isMoveDoable(ScoreDirector<RodPlan> director) {
        boolean changes = layout != null && !layout.equals(rod.layout());
        for (Map.Entry<StationChoice, @Nullable Choice> entry : choices.entrySet()) {
            boolean same = Objects.equals(entry.getKey().choice(), entry.getValue());
            if (!same && entry.getKey().given()) {
                return false;
            }
            changes |= !same;
        }
        return changes;
    }

    @Override
    protected void doMoveOnGenuineVariables(ScoreDirector<RodPlan> director) {
        apply(director);
    }

    /** Puts everything in; what is the same already is left alone. */
    void apply(ScoreDirector<RodPlan> director) {
        Layout from = rod.layout();
        if (layout != null && !layout.equals(from)) {
            for (String variable : LAYOUT) {
                director.beforeVariableChanged(rod, variable);
                rod.change(variable, layout);
                director.afterVariableChanged(rod, variable);
            }
        }
        choices.forEach((station, choice) -> {
            if (!Objects.equals(station.choice(), choice)) {
                director.beforeVariableChanged(station, StationChoice.CHOICE);
                station.choose(choice);
                director.afterVariableChanged(station, StationChoice.CHOICE);
            }
        });
    }

    @Override
    public Collection<?> getPlanningEntities() {
        List<Object> entities = new ArrayList<>(choices.keySet());
        if (layout != null) {
            entities.add(rod);
        }
        return entities;
    }

    @Override
    public Collection<?> getPlanningValues() {
        return new ArrayList<@Nullable Object>(choices.values());
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Refit refit
                && rod == refit.rod
                && Objects.equals(layout, refit.layout)
                && choices.equals(refit.choices);
    }

    @Override
    public int hashCode() {
        return Objects.hash(layout, choices.values());
    }

    @Override
    public String toString() {
        return "refit " + (layout == null ? "" : layout + " ") + choices;
    }
}
