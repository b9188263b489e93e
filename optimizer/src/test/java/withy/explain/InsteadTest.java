package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Swaps that are passed over unmeasured are worse in one of the six, every one of them measured here. */
class InsteadTest {
    @ParameterizedTest
    @CsvSource({
        "very-small-budget, brackensett-featherlode-ratchet-hood-nop220-17, seat, true",
        "estuary-imperial, fellcork-featherlode-nop196-17, seat, true",
        "quay-squid-nice-wishes, tarnrigg-featherlode-x-nop211-16, seat, false",
        "child-first-rod, tarnrigg-featherlode-x-nop211-16, seat, false",
        "sea-trout-travel, ellerwater-burl-butt-90-nop488, buttGrip, false",
        "brook-trout-cork, lanternhead-saltglass-275-d8, guide-2, true",
        "big-handed, hollinbeck-surf-rear-150-nop365, rearGrip, false"
    })
    void noneThatIsWorseInNothingIsPassedOver(String scenario, String part, String place, boolean some)
            throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Search search = new Search(catalog);
        Inquiry inquiry = new Inquiry(
                catalog,
                Scenarios.brief(scenario, catalog),
                shop -> search,
                Watch.NONE,
                new QuantityText(UnitSystem.METRIC));
        Found opponent = inquiry.best(inquiry.query().forcing(Set.of(part)));
        assertNotNull(opponent);
        Station station = Station.parse(place);
        assertNotNull(station);
        assertTrue(opponent.build().partAt(station) != null, "nothing there to swap");
        Swaps swaps = new Swaps(inquiry, opponent.build(), station);
        List<Build> all = swaps.others();
        Set<Build> wanted = new HashSet<>(swaps.others(new Instead(inquiry, opponent)));
        int good = 0;
        for (Build other : all) {
            if (noneWorse(inquiry.measured(other).vector(), opponent.vector())) {
                good++;
                assertTrue(wanted.contains(other), other.signature());
            }
        }
        assertEquals(some, good > 0, "swaps that are worse in nothing: " + good);
        assertTrue(wanted.size() < all.size(), "none is passed over");
        assertTrue(new HashSet<>(all).containsAll(wanted), "not a swap");
        if (place.equals("seat")) {
            assertEquals(
                    good,
                    wanted.stream()
                            .filter(other -> other.choices().containsKey(station))
                            .count());
        }
    }

    private static boolean noneWorse(ObjectiveVector one, ObjectiveVector other) {
        return Arrays.stream(Objective.values()).allMatch(o -> one.loss(o) <= other.loss(o));
    }
}
