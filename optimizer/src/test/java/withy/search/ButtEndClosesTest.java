package withy.search;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** A blank whose butt end nothing closes holds no handle wherever the reel stands. */
class ButtEndClosesTest {
    private static final Stations ANY = new Stations(Map.of(), Set.of(), Map.of());
    private static final int CAPS_KEPT = 2;
    private static final int SHOPS = 4;

    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "quay-squid-nice-wishes", "beach-surf"})
    void whatNothingClosesHoldsNoHandle(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Random random = new Random(20261128);
        int open = 0;
        int held = 0;
        for (int shop = 0; shop < SHOPS; shop++) {
            Rulebook rules =
                    shop % 2 == 0 ? Rulebook.standard() : Rulebook.standard().without("handle");
            Query query = Query.of(Scenarios.brief(scenario, catalog), rules);
            Ground ground = SmallShop.task(catalog, query.refusing(allCapsBut(catalog, random))).ground;
            for (HandleForm form : HandleForm.values()) {
                Shelf shelf = new Shelf(ground, ANY, form);
                for (Blank blank : ground.blanks) {
                    BlankShape shape = ground.shape(blank);
                    for (Ends.Group ends : new Ends(ground, ground.anySetting(shape)).groups()) {
                        boolean may = shelf.mayClose(shape, ends);
                        boolean holds = may && held > 0 || holdsSomewhere(shelf, shape, ends);
                        open += may ? 0 : 1;
                        held += may && holds ? 1 : 0;
                        assertFalse(!may && holds, blank.id() + " " + form + " " + ends);
                    }
                }
            }
        }
        assertTrue(open > 0, "every butt end may be closed");
        assertTrue(held > 0, "no handle goes anywhere");
    }

    private static Set<String> allCapsBut(Catalog catalog, Random random) {
        List<Part> caps = new ArrayList<>(catalog.all(PartKind.BUTT_CAP));
        Collections.shuffle(caps, random);
        Set<String> refused = new TreeSet<>();
        caps.subList(CAPS_KEPT, caps.size()).forEach(cap -> refused.add(cap.id()));
        return refused;
    }

    private static boolean holdsSomewhere(Shelf shelf, BlankShape shape, Ends.Group ends) {
        Ground ground = shelf.ground;
        Linear k = new Linear(1000, 0, 0, 1, 0, 0, 0);
        for (int foot : ground.feet) {
            Setting setting = Setting.of(
                    ground.catalog,
                    ground.brief,
                    shape,
                    new Layout(shape.blank().id(), foot, shelf.form, 8));
            Consumables with = new Consumables(ground.threads.get(0), ground.finishes.get(0), ground.adhesives.get(0));
            Stand stand = new Stand(shelf, ANY, setting, new Fitter(setting, with, ground.tariff), ends);
            if (SomeHandle.on(stand.priced(k), 1)) {
                return true;
            }
        }
        return false;
    }
}
