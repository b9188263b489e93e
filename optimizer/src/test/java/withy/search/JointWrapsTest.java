package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Finish;
import withy.catalog.PartKind;
import withy.catalog.WrapThread;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Fixtures;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Wraps;
import withy.rules.Rulebook;

/**
 * What a blank with its joints costs is never above what it costs with any thread and finish as the measured rod adds them up, whether weight at the joints
 * is a burden or welcome; and with the cheapest it is near.
 */
class JointWrapsTest {
    private static final int PRICES = 6;

    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "sea-trout-travel", "brook-trout-cork", "tiny-stream-ultralight"})
    void neverAboveAnyThread(String name) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Ground ground = SmallShop.task(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard())).ground;
        Random random = new Random(name.hashCode());
        int jointed = 0;
        int welcome = 0;
        for (int i = 0; i < PRICES * ground.blanks.size(); i++) {
            BlankShape shape = ground.shape(ground.blanks.get(i % ground.blanks.size()));
            int foot = ground.feet.get(random.nextInt(ground.feet.size()));
            Layout layout = new Layout(shape.blank().id(), foot, HandleForm.SPLIT, 8);
            Setting setting = Setting.of(catalog, ground.brief, shape, layout);
            Linear k = new Linear(
                    random.nextInt(-4_000, 100_000),
                    random.nextInt(-40, 100),
                    random.nextInt(2),
                    random.nextInt(90),
                    7,
                    3,
                    0);
            BlankCost cost = BlankCost.of(ground, shape);
            long floor = cost.at(foot, k);
            long least = Long.MAX_VALUE;
            for (WrapThread thread : ground.threads) {
                for (Finish finish : ground.finishes) {
                    for (Adhesive adhesive : ground.adhesives) {
                        Consumables with = new Consumables(thread, finish, adhesive);
                        Share share = new Fitter(setting, with, ground.tariff).blank();
                        long milli = ground.tariff.fixedMilli(with, 0);
                        long exact = k.of(Sums.of(share)) + k.perMilli() * milli - k.perStyleCenti() * cost.style();
                        assertTrue(floor <= exact + k.perMilliStep() * cost.missed(), shape.blank() + ", " + k);
                        least = Math.min(least, exact + k.perMilliStep() * cost.missed());
                    }
                }
            }
            // 15 mg and half a cent a wrap: the lightest thread need not be the cheapest
            int wraps = 2 * shape.joints().size();
            double perMg = Math.abs(k.perMg()) + 2_000.0 * Math.abs(k.perMgMm()) + 4_000_000.0 * k.perMgMm2();
            assertTrue(least - floor <= (wraps + 1) * (15 * perMg + 500 * k.perMilli()), least - floor + ", " + k);
            jointed += wraps > 0 ? 1 : 0;
            welcome += k.leastPerMg(0, 2_000, 0) < 0 ? 1 : 0;
        }
        assertTrue(jointed > 20, "blanks with joints: " + jointed);
        assertTrue(welcome > 5, "where weight is welcome: " + welcome);
    }

    /** A blank of one piece has no joint to wrap. */
    @ParameterizedTest
    @ValueSource(strings = {"brook-trout-cork"})
    void nothingOnOnePiece(String name) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Ground ground = SmallShop.task(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard())).ground;
        Linear k = new Linear(1_000, 10, 1, 10, 0, 0, 0);
        int met = 0;
        for (Blank blank : catalog.all(PartKind.BLANK, Blank.class)) {
            BlankShape shape = BlankShape.of(blank);
            if (shape.joints().isEmpty()) {
                assertEquals(0, ground.jointWraps.floor(shape, 300, 0, k));
                met++;
            }
        }
        assertTrue(met > 0);
    }

    /** The turns of a thick thread slant so much on a thin blank that no straight line tells their length. */
    @Test
    void theSlantOfAThickThreadCounts() throws IOException {
        Fixtures fixtures =
                Fixtures.legal().part("thread", "diameterMm", 1.4).part("thread", "facts.priceMinor", 90_000);
        Catalog catalog = fixtures.catalog();
        Ground ground = SmallShop.task(catalog, Query.of(fixtures.theBrief(), Rulebook.standard())).ground;
        Consumables with = new Consumables(ground.threads.get(0), ground.finishes.get(0), ground.adhesives.get(0));
        assertEquals(1.4, with.thread().diameterMm());
        double film = catalog.rates().finishFilmMm();
        int met = 0;
        for (Blank blank : SampleCatalogs.wide().all(PartKind.BLANK, Blank.class)) {
            BlankShape shape = BlankShape.of(blank);
            for (Linear k : List.of(Prices.only(Prices.Kind.COST), Prices.only(Prices.Kind.WEIGHT))) {
                double exact = 0;
                for (Wraps.Place place : Wraps.atJoints(shape)) {
                    Wraps.Wrap wrap = Wraps.on(shape.profile().at(place.xMm()), place, with, film);
                    exact += k.perMg()
                            * (1000 * wrap.threadG()
                                    + wrap.finishUl() * with.finish().densityGMl());
                    exact += k.perMilli() * (double) ground.tariff.threadMilli(with.thread(), wrap.threadMm());
                    met++;
                }
                double floor = ground.jointWraps.floor(shape, 300, 0, k);
                assertTrue(floor <= exact, blank + ": " + floor + " above " + exact);
                assertTrue(floor >= exact * 0.9 - 20, blank + ": " + floor + " far below " + exact);
            }
        }
        assertTrue(met > 100, "wraps: " + met);
    }
}
