package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashSet;
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
            Linear k = new Linear(random.nextInt(10_000), 0, 0, random.nextInt(10), 0, 0, 0);
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

    private static Shelf shelf(Catalog catalog, Query query) {
        return new Shelf(SmallShop.task(catalog, query).ground, ANY, HandleForm.SPLIT);
    }

    private static long floor(BlankPrices prices, Shelf shelf, int seat) {
        return prices.seat(seat, 1, shelf.ground.firstFoot(), shelf.ground.lastFoot());
    }
}
