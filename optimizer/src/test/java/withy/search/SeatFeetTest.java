package withy.search;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief.HandleForm;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/**
 * A seat that is left out on a stand goes on there with no hood and no arbor, and a handle with a given part goes on no stand that is left out for it. Asked of handles of
 * any reach, on blanks of any length, where parts go in one stretch of the places for the reel.
 */
class SeatFeetTest {
    /** Anything goes on where prices are all none. */
    private static final Linear MONEY = Prices.only(Prices.Kind.COST);

    private static final int EVERY_BLANK = 7;
    private static final int EVERY_FOOT = 3;

    private int seatsOut;
    private int seatsOn;
    private int standsOut;
    private int standsOn;

    @ParameterizedTest
    @CsvSource({
        "kayak-estuary, ARBOR, 40, 150, 450",
        "beach-surf, ARBOR, 10, 500, 800",
        "sea-trout-travel, CHECK, 40, 150, 450",
        "pier-mackerel-garfish, CHECK, 40, 150, 450",
        "quay-squid-nice-wishes, GRIP, 9, 150, 450",
        "big-handed, GRIP, 9, 150, 450"
    })
    void whatIsLeftOutGoesNowhere(String scenario, PartKind kind, int every, double shortestMm, double longestMm)
            throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        BriefDraft draft = new BriefDraft(Scenarios.brief(scenario, catalog));
        draft.length(900, 6000);
        draft.pieces(1, 9);
        draft.reach(shortestMm, longestMm);
        List<Part> parts = new ArrayList<>(catalog.all(kind));
        parts.removeIf(part -> part instanceof Grip grip && grip.place() != Grip.Place.FORE);
        for (int p = 0; p < parts.size(); p += every) {
            Query query = Query.of(draft.brief(), Rulebook.standard())
                    .forcing(Set.of(parts.get(p).id()));
            Task task = SmallShop.task(catalog, query);
            for (int s = 0; s < task.sites().size(); s += EVERY_BLANK) {
                look(task, task.sites().get(s));
            }
        }
        String told = seatsOut + " seats left out, " + seatsOn + " on; " + standsOut + " stands left out, " + standsOn
                + " with a handle";
        assertTrue(seatsOn > 50 && standsOn > 20, told);
        assertTrue((kind == PartKind.ARBOR ? seatsOut : standsOut) > 20, told);
    }

    private void look(Task task, Site site) {
        for (int f = 0; f < task.ground.feet.size(); f += EVERY_FOOT) {
            for (HandleForm form : HandleForm.values()) {
                Layout layout = new Layout(site.shape().blank().id(), task.ground.feet.get(f), form, 5);
                Setting setting = Setting.of(task.ground.catalog, task.brief, site.shape(), layout);
                if (site.shelf(form).room.at(setting.footMm())) {
                    site.stands(setting).forEach(stand -> look(stand, task.leastClass()));
                }
            }
        }
    }

    private void look(Stand stand, int leastClass) {
        BitSet seats = stand.shelf.given.seats(stand.setting);
        String told = stand.stations.given() + " on " + stand.setting.layout();
        for (int s = 0; s < stand.shelf.seats.length; s++) {
            boolean goes = !stand.seat(s).isEmpty();
            assertFalse(goes && !seats.get(s), stand.shelf.seats[s].id() + " with " + told);
            seatsOut += seats.get(s) ? 0 : 1;
            seatsOn += goes ? 1 : 0;
        }
        boolean holds = SomeHandle.on(stand.priced(MONEY), leastClass);
        boolean may = stand.shelf.given.mayStand(stand.setting);
        assertFalse(holds && !may, told);
        standsOut += may ? 0 : 1;
        standsOn += holds ? 1 : 0;
    }
}
