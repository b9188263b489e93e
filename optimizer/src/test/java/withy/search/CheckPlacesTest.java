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
import withy.rod.BlankShape;
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
        Task task = SmallShop.task(catalog, wideOpen(catalog));
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

    /** Outside the stretch where a check may lie it goes on nowhere that a handle may reach; the stretch is hardly wider than it must be. */
    @Test
    void outsideItsStretchItGoesNowhere() throws IOException {
        Task task = SmallShop.task(SampleCatalogs.wide(), wideOpen(SampleCatalogs.wide()));
        Random random = new Random(2);
        int told = 0;
        double wide = 0;
        double on = 0;
        for (int i = 0; i < ASKED / 4; i++) {
            Site site = task.sites().get(random.nextInt(task.sites().size()));
            Shelf shelf = site.shelf(HandleForm.SPLIT);
            int check = random.nextInt(shelf.checks.length);
            BlankShape shape = site.shape();
            double end = shape.joints().isEmpty()
                    ? shape.blank().lengthMm()
                    : shape.joints().get(0).fromMm();
            Stretch stretch = shelf.checkPlaces.stretch(Station.WINDING_CHECK, check, shape);
            String what = shelf.checks[check].id() + " on " + shape.blank().id() + ", " + stretch;
            assertFalse(goes(task.ground, site, shelf, check, 0, stretch.fromMm() - STEP_MM / 100), what);
            assertFalse(goes(task.ground, site, shelf, check, stretch.toMm() + STEP_MM / 100, stretch.endMm()), what);
            assertTrue(stretch.has(stretch.endMm() + STEP_MM) && end - stretch.endMm() < STEP_MM, what);
            told += stretch.fromMm() > 0 && stretch.toMm() < stretch.endMm() ? 1 : 0;
            if (stretch.toMm() - stretch.fromMm() > 4 * STEP_MM) {
                wide++;
                on += goes(task.ground, site, shelf, check, stretch.fromMm(), stretch.toMm()) ? 1 : 0;
            }
        }
        assertTrue(told > 100, "neither from butt nor to tip: " + told);
        assertTrue(on > 0.9 * wide, on + " of " + wide + " go on somewhere");
    }

    /** The same of fore grips. */
    @Test
    void outsideItsStretchAForeGripGoesNowhere() throws IOException {
        Task task = SmallShop.task(SampleCatalogs.wide(), wideOpen(SampleCatalogs.wide()));
        Random random = new Random(3);
        Refusal refusal = new Refusal();
        int loose = 0;
        int tight = 0;
        int on = 0;
        for (int i = 0; i < ASKED; i++) {
            Site site = task.sites().get(random.nextInt(task.sites().size()));
            Shelf shelf = site.shelf(HandleForm.SPLIT);
            int fore = random.nextInt(shelf.fores.length);
            Setting any = task.ground.anySetting(site.shape());
            Stretch stretch = shelf.given.foreGrip(fore, any);
            double x = random.nextDouble() * 700;
            Cut cut = shelf.fores[fore];
            task.ground.rules.onPart(
                    any, new Placed(Station.FORE_GRIP, cut.grip(), x, cut.lengthMm()), refusal.reset());
            assertFalse(
                    !refusal.refused() && !stretch.has(x),
                    cut.grip().id() + " at " + x + " on " + site.shape().blank().id() + ", " + stretch);
            on += refusal.refused() ? 0 : 1;
            loose += !stretch.has(x) && x > stretch.toMm() ? 1 : 0;
            tight += !stretch.has(x) && x < stretch.fromMm() ? 1 : 0;
            assertTrue(stretch.has(x) == stretch.meets(x, x), "at " + x + " of " + stretch);
        }
        assertTrue(on > 100 && loose > 100 && tight > 100, on + " on, " + loose + " loose, " + tight + " tight");
    }

    private static Query wideOpen(Catalog catalog) throws IOException {
        BriefDraft draft = new BriefDraft(Scenarios.brief("sea-trout-travel", catalog));
        draft.length(900, 6000);
        draft.pieces(1, 9);
        draft.packed(null);
        return Query.of(draft.brief(), Rulebook.standard()).forcing(Set.of());
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
