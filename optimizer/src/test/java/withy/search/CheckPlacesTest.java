package withy.search;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief.HandleForm;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** A check that is said to go nowhere between two places of a blank goes on at none of them, joints between them or not. */
class CheckPlacesTest {
    private static final int ASKED = 20_000;
    private static final double STEP_MM = 2;

    @Test
    void nowhereIsNowhere() throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        BriefDraft draft = new BriefDraft(Scenarios.brief("sea-trout-travel", catalog));
        draft.length(900, 6000);
        draft.pieces(1, 9);
        draft.packed(null);
        Task task = SmallShop.task(
                catalog, Query.of(draft.brief(), Rulebook.standard()).forcing(Set.of()));
        Random random = new Random(1);
        int nowhere = 0;
        int beyondAJoint = 0;
        for (int i = 0; i < ASKED; i++) {
            Site site = task.sites().get(random.nextInt(task.sites().size()));
            Shelf shelf = site.shelf(HandleForm.SPLIT);
            int check = random.nextInt(shelf.checks.length);
            double from = random.nextInt(700);
            double to = from + random.nextInt(300);
            boolean may = shelf.checkPlaces.goesBetween(Station.WINDING_CHECK, check, site.shape(), from, to);
            boolean goes = goes(task.ground, site, shelf, check, from, to);
            assertFalse(
                    goes && !may,
                    shelf.checks[check].id() + " on " + site.shape().blank().id() + ", " + from + " to " + to);
            boolean joint = CheckPlaces.stepsBeyond(site.shape(), to)
                    && site.shape().joints().get(0).fromMm() > from;
            nowhere += may ? 0 : 1;
            beyondAJoint += joint && !may ? 1 : 0;
        }
        assertTrue(nowhere < ASKED && beyondAJoint > 0, nowhere + " nowhere, with a joint " + beyondAJoint);
    }

    private static boolean goes(Ground ground, Site site, Shelf shelf, int check, double from, double to) {
        Refusal refusal = new Refusal();
        Setting any = ground.anySetting(site.shape());
        for (double x = from; x <= to; x += STEP_MM) {
            double width = shelf.checks[check].widthMm();
            ground.rules.onPart(any, new Placed(Station.WINDING_CHECK, shelf.checks[check], x, width), refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }
}
