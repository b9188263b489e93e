package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Rates;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build.Choice;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.Search;

/** A blank so short that no count of guides can be spaced evenly: with the guides' rule nothing goes on it, without that rule something does. */
class UnevenTrainTest {
    private static final double SHORT_MM = 800;

    private final Fixtures shop = Fixtures.legal();
    private final Catalog catalog;

    UnevenTrainTest() {
        List<Blank.OdStation> stations = List.of(
                new Blank.OdStation(0, 12),
                new Blank.OdStation(500, 10.5),
                new Blank.OdStation(560, 7.5),
                new Blank.OdStation(SHORT_MM, 1.8));
        shop.part("blank", "lengthMm", SHORT_MM)
                .part("blank", "sectionLengthsMm", List.of(430.0, 430.0))
                .part("blank", "stations", stations);
        shop.brief("lengthMinMm", 700.0).brief("lengthMaxMm", 1000.0);
        Catalog all = shop.catalog();
        Rates housed = Changed.with(Changed.with(all.rates(), "houseFinish", "finish"), "houseAdhesive", "adhesive");
        catalog = new Catalog(housed, all.asOf(), all.hash(), all.byId().values());
    }

    /** One handle and one of four guides are left, so that all builds can be measured. */
    private Query query(Rulebook rules) {
        SortedMap<Station, Choice> handle = new TreeMap<>(shop.build().choices());
        handle.keySet().removeIf(station -> station.place() == Station.Place.GUIDE);
        Set<Station> empty = new TreeSet<>(List.of(Station.REAR_CHECK, Station.HOOD, Station.SEAT_ARBORS));
        empty.addAll(List.of(Station.FORE_CHECK, Station.FORE_GRIP, Station.KEEPER, Station.DECAL));
        return Query.of(shop.theBrief(), rules)
                .refusing(Set.of("guide-10", "guide-6", "guide-5"))
                .fixing(handle, empty, shop.build().layout().reelFootMm());
    }

    private Query loose() {
        return query(Rulebook.standard().without("guide-train"));
    }

    @Test
    void nothingGoesOnWithTheRule() {
        Query query = Query.of(shop.theBrief(), Rulebook.standard());
        assertNull(new Search(catalog).any(query, Watch.NONE).build());
        assertNull(new Search(catalog).solve(query, Watch.NONE).build());
    }

    @Test
    void theBestOfAllWithoutIt() {
        Solution best = new Search(catalog).solve(loose(), Watch.NONE);
        assertTrue(best.proven());
        assertNotNull(best.build());
        assertEquals(new Enumeration(catalog, loose(), true).run().score(), best.score());
    }

    /** Where money is short the least that a train costs is looked at first. */
    @Test
    void someForJustEnoughMoney() {
        long cheapest = new Enumeration(catalog, loose(), true)
                .legal().stream()
                        .mapToLong(one -> Rod.measure(catalog, shop.theBrief(), one.build())
                                .figures()
                                .priceMinor())
                        .min()
                        .orElseThrow();
        assertNotNull(new Search(catalog).any(loose(), Watch.NONE).build());
        shop.brief("budgetMinor", cheapest);
        assertNotNull(new Search(catalog).any(loose(), Watch.NONE).build());
        shop.brief("budgetMinor", cheapest - 1);
        assertNull(new Search(catalog).any(loose(), Watch.NONE).build());
    }
}
