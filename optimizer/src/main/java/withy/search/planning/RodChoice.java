package withy.search.planning;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import ai.timefold.solver.core.api.domain.variable.ShadowSources;
import ai.timefold.solver.core.api.domain.variable.ShadowVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;

/** One rod: its layout in four variables, its stations, and the reading that follows from them all. */
@PlanningEntity
public class RodChoice {
    static final String BLANK = "blankId";
    static final String FOOT = "footMm";
    static final String FORM = "form";
    static final String COUNT = "guideCount";

    @PlanningId
    private String id = "";

    private @Nullable Desk desk;
    private List<StationChoice> stations = new ArrayList<>();
    private List<String> blankIds = List.of();
    private List<Integer> feetMm = List.of();
    private List<HandleForm> forms = List.of();
    private List<Integer> guideCounts = List.of();

    @PlanningVariable(valueRangeProviderRefs = "blankIds")
    private @Nullable String blankId;

    @PlanningVariable(valueRangeProviderRefs = "feetMm")
    private @Nullable Integer footMm;

    @PlanningVariable(valueRangeProviderRefs = "forms")
    private @Nullable HandleForm form;

    @PlanningVariable(valueRangeProviderRefs = "guideCounts")
    private @Nullable Integer guideCount;

    @ShadowVariable(supplierName = "read")
    private @Nullable Reading reading;

    /** For the engine. */
    public RodChoice() {}

    RodChoice(String id, Desk desk) {
        this.id = id;
        this.desk = desk;
        for (Slot slot : desk.problem().slots()) {
            stations.add(new StationChoice(id, slot));
        }
        List<Layout> layouts = desk.problem().layouts();
        this.blankIds = distinct(layouts, Layout::blankId);
        this.feetMm = distinct(layouts, Layout::reelFootMm);
        this.forms = distinct(layouts, Layout::form);
        this.guideCounts = distinct(layouts, Layout::guideCount);
    }

    @ValueRangeProvider(id = "blankIds")
    public List<String> blankIds() {
        return blankIds;
    }

    @ValueRangeProvider(id = "feetMm")
    public List<Integer> feetMm() {
        return feetMm;
    }

    @ValueRangeProvider(id = "forms")
    public List<HandleForm> forms() {
        return forms;
    }

    @ValueRangeProvider(id = "guideCounts")
    public List<Integer> guideCounts() {
        return guideCounts;
    }

    /** Measures and judges the rod once a move; null while its layout is open. */
    @ShadowSources({BLANK, FOOT, FORM, COUNT, "stations[].choice"})
    public @Nullable Reading read() {
        Build build = build();
        return build == null ? null : desk().read(build);
    }

    /** The rod as ids, guides beyond its count left out; null while its layout is open. */
    @Nullable
    Build build() {
        Layout layout = layout();
        if (layout == null) {
            return null;
        }
        SortedMap<Station, Choice> choices = new TreeMap<>();
        for (StationChoice station : stations) {
            Choice choice = station.choice();
            if (choice != null && station.station().number() <= layout.guideCount()) {
                choices.put(station.station(), choice);
            }
        }
        return new Build(layout, choices);
    }

    @Nullable
    Layout layout() {
        return blankId == null || footMm == null || form == null || guideCount == null
                ? null
                : new Layout(blankId, footMm, form, guideCount);
    }

    /** Changes one of the four variables, by its name. */
    void change(String variable, Layout to) {
        switch (variable) {
            case BLANK -> blankId = to.blankId();
            case FOOT -> footMm = to.reelFootMm();
            case FORM -> form = to.form();
            case COUNT -> guideCount = to.guideCount();
            default -> throw new IllegalArgumentException("no layout variable " + variable);
        }
    }

    Desk desk() {
        return Objects.requireNonNull(desk);
    }

    List<StationChoice> stations() {
        return stations;
    }

    @Nullable
    Reading reading() {
        return reading;
    }

    @Override
    public String toString() {
        return id;
    }

    private static <T> List<T> distinct(List<Layout> layouts, Function<Layout, T> part) {
        return layouts.stream().map(part).distinct().toList();
    }
}
