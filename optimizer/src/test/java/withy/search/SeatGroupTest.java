package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.catalog.Arbor;
import withy.catalog.Catalog;
import withy.catalog.Hood;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** Hoods and arbors of a seat are told apart from each other, yet every pair is what the rules and the fitter say of both together. */
class SeatGroupTest {
    private static int filledEitherWay;
    private static int pairs;

    /** Reel places looked at, one in so many. */
    private static final int PLACES = 5;

    @TestFactory
    Stream<DynamicTest> pairsAreWhatBothTogetherAreInSmallShops() {
        return LongStream.range(0, 24)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    check(shop.catalog(), shop.query(Rulebook.standard()));
                }));
    }

    /** With arbors that go into any seat and keep half a millimetre of wall: they have a place in gaps that tape fills, too. */
    private static Catalog thinWalled(Catalog catalog) {
        List<Part> parts = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            parts.add(part instanceof Arbor arbor ? new Arbor(arbor.facts(), 40, 2, arbor.lengthMm(), 0.5) : part);
        }
        return new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts);
    }

    @TestFactory
    Stream<DynamicTest> pairsAreWhatBothTogetherAreOnTheCuratedCatalogue() {
        Catalog catalog = thinWalled(SampleCatalogs.bench());
        return Stream.of("kayak-estuary", "tiny-stream-ultralight", "beach-surf")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    check(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard()));
                }));
    }

    private static void check(Catalog catalog, Query query) {
        Opening opening = Opening.of(catalog, query, Aim.of(catalog, query));
        Ground ground = new Ground(opening, new Style(catalog, query.brief()), BlankShape::of);
        for (Site site : ground.sites(Stations.alternatives(catalog, query, Set.of()))) {
            for (int f = 0; f < ground.feet.size(); f += PLACES) {
                for (Stand stand : site.stands(site.spacings().at(ground.feet.get(f), 6))) {
                    check(stand);
                }
            }
        }
    }

    /** Seats that go on with arbors and without, where what holds them differs, were among them. */
    @AfterAll
    static void enoughWereMet() {
        assertTrue(filledEitherWay > 0, "seats that arbors or tape may hold: " + filledEitherWay);
        assertTrue(pairs >= 1000, "pairs: " + pairs);
    }

    private static void check(Stand stand) {
        Linear k = new Linear(3, 2, 1, 5, 7, 11, 0);
        for (int i = 0; i < stand.shelf.seats.length; i++) {
            int met = 0;
            for (SeatGroup group : stand.seat(i)) {
                List<SeatGroup.SeatOption> all = all(group, k, 1);
                long least = Long.MAX_VALUE;
                for (SeatGroup.SeatOption option : all) {
                    SeatSet set = option.set();
                    assertTrue(goes(stand.ground, stand.setting, set));
                    Share both =
                            stand.fitter.seat(set).plus(stand.fitter.hood(set)).plus(stand.fitter.arbors(set));
                    assertEquals(Sums.of(both), option.option().sums());
                    assertEquals(group.set().rearFaceMm(), set.rearFaceMm());
                    assertEquals(group.set().frontFaceMm(), set.frontFaceMm());
                    least = Math.min(least, option.option().cost(k));
                }
                assertEquals(least, group.cheapest(k, 1));
                met += all.size();
                boolean bare = all.stream().anyMatch(option -> option.set().arbor() == null);
                filledEitherWay +=
                        bare && all.stream().anyMatch(option -> option.set().arbor() != null) ? 1 : 0;
            }
            pairs += met;
            if (met > 0) {
                assertEquals(together(stand, stand.shelf.seats[i]), met);
            } else {
                assertFalse(stand.seat(i).stream().findAny().isPresent());
            }
        }
    }

    private static List<SeatGroup.SeatOption> all(SeatGroup group, Linear k, int leastClass) {
        List<SeatGroup.SeatOption> all = new ArrayList<>();
        group.below(k, leastClass, TrainGraph.NONE, option -> {
            all.add(option);
            return TrainGraph.NONE;
        });
        return all;
    }

    /** How many pairs of hood and arbor, none among them, the rules let stand. */
    private static int together(Stand stand, ReelSeat seat) {
        List<@Nullable Hood> hoods = new ArrayList<>(stand.shelf.hoodsFor(seat));
        hoods.add(null);
        List<@Nullable Arbor> arbors = new ArrayList<>(stand.shelf.arbors);
        arbors.add(null);
        int together = 0;
        double from = stand.setting.footMm() - seat.footCentreMm();
        for (Hood hood : hoods) {
            for (Arbor arbor : arbors) {
                together += goes(stand.ground, stand.setting, new SeatSet(seat, hood, arbor, from)) ? 1 : 0;
            }
        }
        return together;
    }

    private static boolean goes(Ground ground, Setting setting, SeatSet set) {
        Refusal refusal = new Refusal();
        ground.rules.onSeat(setting, set, refusal);
        return !refusal.refused();
    }
}
