package withy.search;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.Catalog;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** An arbor that is said to go on nowhere fills no seat of the shelf at any place of the reel. */
class GivenPartsTest {

    @ParameterizedTest
    @ValueSource(strings = {"brook-trout-cork", "kayak-estuary", "beach-surf"})
    void whatIsSaidToGoNowhereGoesNowhere(String scenario) throws Exception {
        Catalog catalog = SampleCatalogs.bench();
        Brief brief = Scenarios.brief(scenario, catalog);
        int nowhere = 0;
        int somewhere = 0;
        for (Arbor arbor : catalog.all(PartKind.ARBOR, Arbor.class)) {
            Task task =
                    SmallShop.task(catalog, Query.of(brief, Rulebook.standard()).forcing(Set.of(arbor.id())));
            for (Site site : task.sites()) {
                boolean goes = false;
                for (int foot : task.ground.feet) {
                    Layout layout = new Layout(site.shape().blank().id(), foot, HandleForm.SPLIT, 5);
                    goes |= goes(site, arbor, Setting.of(catalog, brief, site.shape(), layout));
                }
                boolean may = site.mayHaveGiven();
                assertFalse(
                        goes && !may, arbor.id() + " on " + site.shape().blank().id());
                nowhere += may ? 0 : 1;
                somewhere += goes ? 1 : 0;
            }
        }
        assertTrue(nowhere > 0 && somewhere > 0, nowhere + " nowhere, " + somewhere + " somewhere");
    }

    private static boolean goes(Site site, Arbor arbor, Setting setting) {
        Refusal refusal = new Refusal();
        for (ReelSeat seat : site.shelf(HandleForm.SPLIT).seats) {
            double from = setting.footMm() - seat.footCentreMm();
            Rulebook.standard().onSeat(setting, new SeatSet(seat, null, arbor, from), refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }
}
