package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rules.Rulebook;

/** What a seat costs at least is the least of what it costs with each arbor there is, whichever are left out because another is lighter and cheaper. */
class SeatFloorsTest {
    private static final int PRICES = 40;
    private static final Stations ANY = new Stations(Map.of(), Set.of(), Map.of());

    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "beach-surf"})
    void noArborIsCheaperThanTheFloorSays(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Query query = Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard());
        Set<String> arbors = catalog.all(PartKind.ARBOR).stream().map(Part::id).collect(Collectors.toSet());
        Shelf every = shelf(catalog, query);
        Map<String, Shelf> alone = new TreeMap<>();
        for (String arbor : arbors) {
            Set<String> others = new HashSet<>(arbors);
            others.remove(arbor);
            alone.put(arbor, shelf(catalog, query.refusing(others)));
        }
        Random random = new Random(20261128);
        Set<String> cheapest = new HashSet<>();
        for (int i = 0; i < PRICES; i++) {
            Linear k = new Linear(random.nextInt(20_000) - 10_000, 0, 0, random.nextInt(10), 0, 0, 0);
            BlankPrices all = every.priced(k).onAny();
            for (int seat = 0; seat < every.seats.length; seat++) {
                String best = "";
                long least = Long.MAX_VALUE;
                for (Map.Entry<String, Shelf> one : alone.entrySet()) {
                    long floor = floor(one.getValue().priced(k).onAny(), one.getValue(), seat);
                    best = floor < least ? one.getKey() : best;
                    least = Math.min(least, floor);
                }
                assertEquals(least, floor(all, every, seat), "seat " + seat + ", " + best + ", " + k);
                cheapest.add(best);
            }
        }
        assertTrue(cheapest.size() > 1, "one arbor is the cheapest under all prices: " + cheapest);
    }

    /** Nor does any seat with what goes with it where it stands, whether weight there is a burden or welcome; and the floor is not far below the cheapest. */
    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "beach-surf", "brook-trout-cork"})
    void noSeatIsCheaperThanTheFloorSays(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard()));
        Random random = new Random(20261129);
        List<Site> sites = task.sites();
        int met = 0;
        int weighed = 0;
        int near = 0;
        for (int i = 0; i < PRICES; i++) {
            Linear k = prices(task, random);
            Site site = sites.get(random.nextInt(sites.size()));
            List<Layout> layouts = site.layouts();
            Layout layout = layouts.get(random.nextInt(layouts.size()));
            List<Stand> stands =
                    task.setting(site.shape(), layout).map(site::stands).orElse(List.of());
            for (Stand stand : stands) {
                SeatFloors floors = stand.shelf.priced(k).seats;
                OneBlank on = new OneBlank(stand.shelf, site.shape());
                int foot = layout.reelFootMm();
                for (int seat = 0; seat < stand.shelf.seats.length; seat++) {
                    long here = floors.of(seat, 1, on, foot, foot);
                    long anywhere = floors.of(seat, 1, on, task.ground.firstFoot(), task.ground.lastFoot());
                    assertTrue(anywhere <= here, "seat " + seat + ", " + k);
                    for (SeatGroup group : stand.seat(seat)) {
                        long cost = group.cheapest(k, 1);
                        assertTrue(here <= cost, "seat " + seat + " at " + layout + ", " + k);
                        met++;
                        weighed += k.perMg() != 0 ? 1 : 0;
                        near += k.perMg() != 0 && cost - here <= 6_000 * Math.abs(k.perMg()) ? 1 : 0;
                    }
                }
            }
        }
        assertTrue(met > 100, met + " seats met");
        assertTrue(near > weighed / 2, near + " of " + weighed + " within 6 g");
    }

    /** Under which a milligram at the seat is welcome as often as not. */
    private static Linear prices(Task task, Random random) {
        long perMg = task.scoring.perMg() * (random.nextInt(5) - 2);
        long perMilli = task.scoring.perCostMilli() * random.nextInt(3);
        return new Linear(perMg, 0, 0, perMilli, 0, 0, 0);
    }

    private static Shelf shelf(Catalog catalog, Query query) {
        return new Shelf(SmallShop.task(catalog, query).ground, ANY, HandleForm.SPLIT);
    }

    private static long floor(BlankPrices prices, Shelf shelf, int seat) {
        return prices.seat(seat, 1, shelf.ground.firstFoot(), shelf.ground.lastFoot());
    }
}
