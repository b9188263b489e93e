package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.FewBuilds.Weighed;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Scoring;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/** Lighter rods and drawers, held against the list of all builds there are. */
class LighterTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));

    private static Scoring scoring() {
        return Scoring.of(BRIEF, SHOP.catalog().rates());
    }

    private static List<Weighed> legal() {
        return SHOP.legal(SHOP.catalog(), BRIEF);
    }

    /** A gram counts as much as before. */
    private static Brief noticing(double grams) {
        Map<Objective, Double> steps = new EnumMap<>(BRIEF.steps());
        steps.put(Objective.WEIGHT, grams);
        Brief brief = FewBuilds.weighing(BRIEF, Map.of(Objective.WEIGHT, grams / 3));
        return Changed.with(brief, "steps", steps);
    }

    private static Found first(Inquiry inquiry) {
        Found first = inquiry.first();
        assertNotNull(first);
        return first;
    }

    /**
     * Steps from the best down to the lightest of what is noticed, or a twelfth of the way where that is more; at each the best within it. Where a step
     * brings nothing there is no point, and the last is the lightest.
     */
    @ParameterizedTest
    @ValueSource(doubles = {3, 0.5, 5, 7.3, 50})
    void theCurveIsTheBestAtEachWeight(double noticed) {
        Brief brief = noticing(noticed);
        List<Curve.Point> told = new ArrayList<>();
        Lighter lighter = Lighter.of(SHOP.inquiry(brief), told::add);
        assertNotNull(lighter);
        long lightest = legal(brief).stream()
                .mapToLong(one -> one.vector().weightMg())
                .min()
                .orElseThrow();
        assertEquals(lightest, lighter.lightest().vector().weightMg());
        assertEquals(told, lighter.curve());
        long from = lighter.first().vector().weightMg();
        assertTrue(from - lightest > 15_000, "worth a curve: " + (from - lightest));
        List<Long> expected = new ArrayList<>(List.of(from));
        long step = Math.max(Math.round(noticed * 1000), (from - lightest + 11) / 12);
        long now = from;
        for (long most = from - step; most > lightest; most -= step) {
            if (now > most) {
                now = best(brief, most).vector().weightMg();
                expected.add(now);
            }
        }
        if (now > lightest) {
            expected.add(lightest);
        }
        assertEquals(
                expected,
                lighter.curve().stream().map(p -> p.found().vector().weightMg()).toList());
        assertTrue(
                lighter.curve().size() >= (noticed > 10 ? 2 : 3),
                "points: " + lighter.curve().size());
        Scoring scoring = Scoring.of(brief, SHOP.catalog().rates());
        for (int i = 1; i < lighter.curve().size(); i++) {
            Curve.Point point = lighter.curve().get(i);
            Found before = lighter.curve().get(i - 1).found();
            assertEquals(
                    scoring.score(best(brief, Math.round(point.mostG() * 1000)).vector()),
                    scoring.score(point.found().vector()));
            double saved = (before.vector().weightMg() - point.found().vector().weightMg()) / 1000.0;
            String words = SHOP.inquiry(BRIEF).units().mass(saved);
            assertTrue(point.sentence().startsWith("the next " + words + ": "), point.sentence());
            assertFalse(
                    point.sentence().contains("lighter,") || point.sentence().contains("g lighter"), point.sentence());
            assertEquals(6, point.tradeOffs().size());
        }
        assertEquals("", lighter.curve().get(0).sentence());
        assertEquals(from / 1000.0, lighter.curve().get(0).mostG());
        assertTrue(lighter.sentence().startsWith("The lightest rod that keeps every rule weighs "), lighter.sentence());
        assertTrue(lighter.sentence().contains("dearer"), lighter.sentence());
    }

    private static List<Weighed> legal(Brief brief) {
        return SHOP.legal(SHOP.catalog(), brief);
    }

    private static Weighed best(Brief brief, long mostMg) {
        Scoring scoring = Scoring.of(brief, SHOP.catalog().rates());
        Weighed best = FewBuilds.best(legal(brief), scoring, one -> one.vector().weightMg() <= mostMg);
        assertNotNull(best);
        return best;
    }

    /** The lightest is worth any money, and of equally light ones it is the best for the brief. */
    @Test
    void theLightestIsLighterByAMilligram() {
        Fixtures fixture = Fixtures.legal().copy("cap", "cap-dear").copy("cap", "cap-less-dear");
        fixture.brief("budgetMinor", null);
        fixture.part("cap-dear", "facts.measuredG", 3.999).part("cap-dear", "facts.priceMinor", 300_000);
        fixture.part("cap-less-dear", "facts.measuredG", 3.999).part("cap-less-dear", "facts.priceMinor", 200_000);
        FewBuilds some = FewBuilds.of(fixture).or(Station.BUTT_CAP, "cap-dear", "cap-less-dear");
        Inquiry inquiry = some.inquiry(fixture.theBrief());
        Found first = inquiry.first();
        assertNotNull(first);
        assertEquals("cap", first.build().partAt(Station.BUTT_CAP));
        Lighter lighter = Lighter.of(inquiry, point -> {});
        assertNotNull(lighter);
        assertEquals("cap-less-dear", lighter.lightest().build().partAt(Station.BUTT_CAP));
        assertEquals(
                1,
                lighter.first().vector().weightMg()
                        - lighter.lightest().vector().weightMg());
        String last = lighter.curve().get(lighter.curve().size() - 1).sentence();
        assertTrue(last.startsWith("lighter by a hair, but "), last);
    }

    @Test
    void theBestMayBeTheLightest() {
        Brief light = FewBuilds.weighing(BRIEF, Map.of(Objective.WEIGHT, 80.0, Objective.PRICE, 0.0));
        Lighter lighter = Lighter.of(SHOP.inquiry(light), point -> {});
        assertNotNull(lighter);
        assertEquals(lighter.first().vector(), lighter.lightest().vector());
        assertTrue(
                lighter.sentence().startsWith("The best rod is also the lightest that keeps every rule: "),
                lighter.sentence());
        assertEquals(1, lighter.curve().size());
        assertNull(Lighter.of(SHOP.inquiry(Changed.with(BRIEF, "budgetMinor", 1L)), point -> {}));
    }

    /** Every lighter part of every station, with what measuring and judging says of the rod with it. */
    @Test
    void theLedgerIsEveryLighterPart() {
        Inquiry inquiry = SHOP.inquiry(BRIEF);
        Found first = first(inquiry);
        List<Ledger.Line> ledger = Ledger.of(inquiry, first);
        TreeSet<String> told = new TreeSet<>();
        for (Ledger.Line line : ledger) {
            told.add(line.station().key() + " " + line.part());
            Part part = SHOP.catalog().find(line.part());
            Part now = first.rod().partAt(line.station());
            assertEquals((now.massMg() - part.massMg()) / 1000.0, line.partSavesG(), 1e-12);
            assertTrue(line.partSavesG() > 0);
            if (line.breach() != null) {
                assertTrue(line.tradeOffs().isEmpty());
                assertEquals(line.breach().sentence(), line.sentence());
            } else {
                assertEquals(6, line.tradeOffs().size());
                assertTrue(Judge.legal(line.found().rod(), Rulebook.standard()));
                long saves = first.vector().weightMg() - line.found().vector().weightMg();
                assertEquals(saves / 1000.0, line.savesG(), 1e-12);
                assertTrue(saves > 0);
            }
        }
        TreeSet<String> expected = new TreeSet<>();
        for (Station station : List.of(Station.BUTT_CAP, Station.SEAT, Station.BLANK)) {
            PartKind kind = first.rod().partAt(station).kind();
            for (Part part : SHOP.catalog().all(kind)) {
                if (part.massMg() < first.rod().partAt(station).massMg()) {
                    expected.add(station.key() + " " + part.id());
                }
            }
        }
        assertTrue(expected.size() >= 3 && told.containsAll(expected), told + " has all of " + expected);
        List<String> caps = ledger.stream()
                .filter(line -> line.station().equals(Station.BUTT_CAP))
                .map(Ledger.Line::part)
                .toList();
        assertEquals(List.of("cap-light", "cap-sold"), caps, "what can be had comes first, though it saves less");
        for (int i = 1; i < ledger.size(); i++) {
            Ledger.Line a = ledger.get(i - 1);
            Ledger.Line b = ledger.get(i);
            if (a.station().equals(b.station())) {
                boolean legalFirst = a.breach() == null || b.breach() != null;
                boolean mostFirst = (a.breach() == null) != (b.breach() == null) || a.partSavesG() >= b.partSavesG();
                assertTrue(legalFirst && mostFirst, a.part() + " before " + b.part());
            }
        }
    }

    /** The drawer of the cap: every cap, legal ones by score, the one that is there among them. */
    @Test
    void theDrawerOfTheCap() {
        Inquiry inquiry = SHOP.inquiry(BRIEF);
        Found first = first(inquiry);
        Drawer drawer = Drawer.of(inquiry, first, Station.BUTT_CAP);
        assertEquals(
                new TreeSet<>(List.of("cap", "cap-light", "cap-gilded", "cap-twin", "cap-sold")),
                new TreeSet<>(drawer.lines().stream()
                        .map(Drawer.Line::part)
                        .filter(id -> !id.isEmpty())
                        .toList()));
        List<Drawer.Line> legal =
                drawer.lines().stream().filter(line -> line.breach() == null).toList();
        List<Long> scores =
                legal.stream().map(line -> inquiry.score(line.found().vector())).toList();
        assertEquals(scores.stream().sorted().toList(), scores);
        for (Drawer.Line line : legal) {
            if (!line.part().isEmpty()) {
                Build with = first.build().with(Station.BUTT_CAP, Choice.of(line.part()));
                assertEquals(inquiry.measured(with).vector(), line.found().vector());
            }
        }
        for (Drawer.Line line : drawer.lines()) {
            if (!line.here()) {
                List<TradeOffs.TradeOff> tradeOffs = line.breach() != null
                        ? List.of()
                        : TradeOffs.between(line.found().side(0), first.side(1), inquiry.units());
                assertEquals(tradeOffs, line.tradeOffs());
                String sentence = line.breach() != null
                        ? line.breach().sentence()
                        : Ledger.noticed(inquiry, first, line.found(), tradeOffs);
                assertEquals(sentence, line.sentence());
            }
        }
        Drawer.Line here =
                drawer.lines().stream().filter(Drawer.Line::here).findFirst().orElseThrow();
        assertEquals(first.build().partAt(Station.BUTT_CAP), here.part());
        assertEquals(Phrases.of("drawer.here"), here.sentence());
        Drawer.Line sold = drawer.lines().stream()
                .filter(line -> line.part().equals("cap-sold"))
                .findFirst()
                .orElseThrow();
        assertEquals("stock", sold.breach().verdict().rule());
        assertEquals(drawer.lines().size() - 1, drawer.lines().indexOf(sold), "refused ones last");
        boolean empty = drawer.lines().stream().anyMatch(line -> line.part().isEmpty());
        Rod bare = Rod.measure(SHOP.catalog(), BRIEF, first.build().without(Station.BUTT_CAP));
        assertEquals(Judge.legal(bare, Rulebook.standard()), empty);
    }

    /** The drawer of an empty place and of the blank, on which the best rod there is stands. */
    @Test
    void theDrawersOfKeeperAndBlank() {
        Inquiry inquiry = SHOP.inquiry(BRIEF);
        Found first = first(inquiry);
        assertNull(first.build().partAt(Station.KEEPER));
        Drawer keeper = Drawer.of(inquiry, first, Station.KEEPER);
        assertEquals(
                List.of("", "keeper"),
                keeper.lines().stream().map(Drawer.Line::part).sorted().toList());
        assertEquals(
                Phrases.of("drawer.empty"),
                keeper.lines().stream()
                        .filter(Drawer.Line::here)
                        .findFirst()
                        .orElseThrow()
                        .name());
        Inquiry kept = SHOP.inquiry(Changed.with(BRIEF, "handle.keeper", new Wish<>(true, false, 9)));
        Found withKeeper = first(kept);
        assertEquals("keeper", withKeeper.build().partAt(Station.KEEPER));
        Drawer.Line emptied =
                Drawer.of(kept, withKeeper, Station.KEEPER).lines().get(1);
        assertEquals(List.of("", Phrases.of("drawer.empty")), List.of(emptied.part(), emptied.name()));
        assertTrue(emptied.sentence().endsWith("without a hook keeper, which would be nice"), emptied.sentence());
        Drawer blanks = Drawer.of(inquiry, first, Station.BLANK);
        Drawer.Line light = blanks.lines().stream()
                .filter(line -> line.part().equals("blank-light"))
                .findFirst()
                .orElseThrow();
        Weighed best = FewBuilds.best(legal(), scoring(), one -> one.holds("blank-light"));
        assertNotNull(best);
        assertEquals(best.vector(), light.found().vector());
        assertEquals(2, blanks.lines().size());
    }

    /** Legal builds one part away, counted here one by one. */
    @Test
    void neighbours() {
        Inquiry inquiry = SHOP.inquiry(BRIEF);
        Found first = first(inquiry);
        int drawers = 1;
        for (Station station : first.build().choices().keySet()) {
            drawers += (int) Drawer.of(inquiry, first, station).lines().stream()
                    .filter(line -> line.breach() == null && !line.here())
                    .count();
        }
        assertEquals(drawers, Neighbours.of(inquiry, first));
        assertTrue(drawers >= 5, "neighbours: " + drawers);
    }
}
