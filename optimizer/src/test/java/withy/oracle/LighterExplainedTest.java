package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Curve;
import withy.explain.Found;
import withy.explain.Ledger;
import withy.explain.Lighter;
import withy.objectives.Scoring;
import withy.oracle.Enumeration.Legal;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/** The lighter ledger and the curve against every build of small catalogues. */
class LighterExplainedTest {
    private static final int SEEDS = 16;
    private static final long MOST_BUILDS = 2_000;

    @TestFactory
    Stream<DynamicTest> lighter() {
        return LongStream.range(100, 100 + SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> lighter(seed)));
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> lighterOnManyMore() {
        return LongStream.range(400, 600)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> lighter(seed)));
    }

    private static void lighter(long seed) {
        SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
        List<Legal> all = new Enumeration(shop.catalog(), shop.query(), true).legal();
        List<Curve.Point> told = new ArrayList<>();
        Lighter lighter =
                Lighter.of(ExplainedTest.inquiry(shop.catalog(), shop.query().brief()), told::add);
        String seeded = "seed " + seed;
        if (all.isEmpty()) {
            assertNull(lighter, seeded);
            return;
        }
        assertNotNull(lighter, seeded);
        Scoring scoring = Scoring.of(shop.query().brief(), shop.catalog().rates());
        long lightest =
                all.stream().mapToLong(one -> one.vector().weightMg()).min().orElseThrow();
        assertEquals(lightest, lighter.lightest().vector().weightMg(), seeded);
        assertEquals(told, lighter.curve(), seeded);
        for (Curve.Point point : lighter.curve()) {
            long most = Math.round(point.mostG() * 1000);
            List<Legal> within =
                    all.stream().filter(one -> one.vector().weightMg() <= most).toList();
            assertEquals(
                    Compared.least(within, scoring),
                    scoring.score(point.found().vector()),
                    seeded + ", within " + most);
        }
        assertEquals(
                lightest,
                lighter.curve().get(lighter.curve().size() - 1).found().vector().weightMg(),
                seeded);
        ledger(seeded, shop, lighter, scoring);
    }

    private static void ledger(String seeded, SmallShop.Case shop, Lighter lighter, Scoring scoring) {
        long best = scoring.score(lighter.first().vector());
        for (Ledger.Line line : lighter.ledger()) {
            String told = seeded + ", " + line.station() + " " + line.part();
            Part now = shop.catalog().find(lighter.first().build().partAt(line.station()));
            Part part = shop.catalog().find(line.part());
            assertTrue(part.massMg() < now.massMg(), told);
            Found found = line.found();
            if (line.breach() == null) {
                assertTrue(Judge.legal(Objects.requireNonNull(found, told).rod(), Rulebook.standard()), told);
                assertTrue(scoring.score(found.vector()) >= best, told);
                assertTrue(found.vector().weightMg() < lighter.first().vector().weightMg(), told);
            } else if (found != null) {
                assertTrue(
                        Judge.judge(found.rod(), Rulebook.standard())
                                .contains(line.breach().verdict()),
                        told);
            }
            if (line.station().place() == Station.Place.SEAT && line.breach() != null) {
                assertTrue(noSeatFits(shop, lighter.first().build(), part), told);
            }
        }
    }

    /** With every hood and every arbor, or none. */
    private static boolean noSeatFits(SmallShop.Case shop, Build build, Part seat) {
        List<String> hoods = new ArrayList<>(List.of(""));
        shop.catalog().all(PartKind.HOOD).forEach(hood -> hoods.add(hood.id()));
        List<String> arbors = new ArrayList<>(List.of(""));
        shop.catalog().all(PartKind.ARBOR).forEach(arbor -> arbors.add(arbor.id()));
        Build with = build.with(Station.SEAT, Build.Choice.of(seat.id()));
        for (String hood : hoods) {
            for (String arbor : arbors) {
                Build one = set(set(with, Station.HOOD, hood), Station.SEAT_ARBORS, arbor);
                if (Judge.legal(Rod.measure(shop.catalog(), shop.query().brief(), one), Rulebook.standard())) {
                    return false;
                }
            }
        }
        return true;
    }

    private static Build set(Build build, Station station, String id) {
        return id.isEmpty() ? build.without(station) : build.with(station, Build.Choice.of(id));
    }
}
