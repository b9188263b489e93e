package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** The grips that lie ready are those that stand in some row of grips which the rules allow, row by row looked at. */
class MatesTest {
    /** A butt grip of rubber cork: no fore grip of the catalogue is of that, and the one scenario must have one. */
    private static final String BUTT = "askham-vale-burl-butt-90-nop453";

    private static final String SEAT = "askham-vale-plain-surf-nop179-22";

    @ParameterizedTest
    @CsvSource({
        "harbour-jigging, SPLIT, " + BUTT,
        "child-first-rod, SPLIT, " + BUTT,
        "child-first-rod, FULL, " + SEAT,
        "big-handed, SPLIT, " + SEAT,
        "beach-surf, FULL, " + SEAT
    })
    void gripsThatLieReadyHaveMates(String scenario, HandleForm form, String given) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Query query = Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard())
                .forcing(Set.of(given));
        Task task = SmallShop.task(catalog, query);
        Ground ground = task.ground;
        Shelf shelf = new Shelf(ground, task.alternatives.get(0), form);
        boolean split = form == HandleForm.SPLIT;
        List<@Nullable Grip> rears = new ArrayList<>(split ? ground.rearGrips : ground.fullGrips);
        rears.removeIf(rear -> split && !edge(ground, rear, true));
        List<@Nullable Grip> butts = new ArrayList<>(split ? ground.buttGrips : List.of());
        butts.removeIf(butt ->
                !edge(ground, butt, false) || !given.equals(SEAT) && !butt.id().equals(given));
        List<@Nullable Grip> fores = new ArrayList<>(ground.foreGrips);
        Set<String> standing = new TreeSet<>();
        butts.addAll(split ? List.of() : Arrays.asList((Grip) null));
        fores.addAll(shelf.mustHaveForeGrip() ? List.of() : Arrays.asList((Grip) null));
        for (Grip rear : rears) {
            for (Grip butt : butts) {
                for (Grip fore : fores) {
                    if (beside(ground, butt, rear) && beside(ground, rear, fore)) {
                        standing.addAll(ids(rear, butt, fore));
                    }
                }
            }
        }
        assertEquals(standing, ids(shelf));
        assertEquals(scenario.equals("harbour-jigging"), standing.isEmpty(), standing.toString());
        assertTrue(rears.size() * butts.size() * fores.size() > 0, "nothing to choose from");
    }

    private static boolean edge(Ground ground, @Nullable Grip grip, boolean rear) {
        Refusal refusal = new Refusal();
        if (rear) {
            ground.seams.rearGripEdge(ground.anySetting(), grip, refusal.reset());
        } else {
            ground.seams.buttGripEdge(ground.anySetting(), grip, refusal.reset());
        }
        return !refusal.refused();
    }

    private static boolean beside(Ground ground, @Nullable Grip one, @Nullable Grip other) {
        if (one == null || other == null) {
            return true;
        }
        Refusal refusal = new Refusal();
        ground.rules.onGrips(ground.anySetting(), one, other, refusal.reset());
        return !refusal.refused();
    }

    private static Set<String> ids(@Nullable Grip... grips) {
        return Arrays.stream(grips).filter(grip -> grip != null).map(Grip::id).collect(Collectors.toSet());
    }

    private static Set<String> ids(Shelf shelf) {
        Set<String> ids = new TreeSet<>();
        for (Cut[] cuts : List.of(shelf.rears, shelf.butts, shelf.fores)) {
            Arrays.stream(cuts).map(cut -> cut.grip().id()).forEach(ids::add);
        }
        return ids;
    }
}
