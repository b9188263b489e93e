package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.PartFacts;
import withy.explain.FewBuilds.Weighed;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Scoring;
import withy.rod.Station;

/** What would have to change for a part to win: looked for here step by step on the whole grid, over every build there is. */
class FlipsTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));

    private static List<Flip> flips(FewBuilds shop, Brief brief, String part) {
        Finding finding = WhyNot.of(shop.inquiry(brief), Set.of(part));
        assertTrue(
                finding.outcome() == Finding.Outcome.LOSES || finding.outcome() == Finding.Outcome.DOMINATED,
                finding.sentence());
        return finding.flips();
    }

    private static Flip flip(List<Flip> flips, String subject) {
        List<Flip> found =
                flips.stream().filter(one -> one.subject().equals(subject)).toList();
        assertEquals(1, found.size(), subject + " in " + flips);
        return found.get(0);
    }

    /** The first value of a row at which something holds, and the one before. */
    private static List<Double> turn(List<Double> row, DoublePredicate holds) {
        for (int i = 1; i < row.size(); i++) {
            if (holds.test(row.get(i))) {
                return List.of(row.get(i - 1), row.get(i));
            }
        }
        return List.of();
    }

    private static boolean wins(FewBuilds shop, Catalog catalog, Brief brief, String part) {
        return shop.wins(catalog, brief, part);
    }

    /** All priorities of all objectives, up to 100 and down to 0 by tenths: the nearest is told, and another that turns, nearer ones first. */
    @Test
    void theNearestPriorities() {
        for (String part : List.of("seat-light", "blank-light", "cap-light")) {
            List<Weighed> all = SHOP.legal(SHOP.catalog(), BRIEF);
            Map<Objective, Double> far = new EnumMap<>(Objective.class);
            Map<Objective, List<Double>> found = new EnumMap<>(Objective.class);
            for (Objective objective : Objective.values()) {
                double now = BRIEF.priority(objective);
                List<Double> up = new ArrayList<>();
                List<Double> down = new ArrayList<>();
                for (int step = 0; now + step * 0.1 <= 100 + 1e-9; step++) {
                    up.add(Math.round((now + step * 0.1) * 10) / 10.0);
                }
                for (int step = 0; now - step * 0.1 >= -1e-9; step++) {
                    down.add(Math.round((now - step * 0.1) * 10) / 10.0);
                }
                for (List<Double> row : List.of(up, down)) {
                    List<Double> turned = turn(row, value -> best(all, objective, value, part));
                    if (!turned.isEmpty()) {
                        double distance = Math.abs(turned.get(1) - now) / (now + 1);
                        if (!far.containsKey(objective) || distance < far.get(objective)) {
                            far.put(objective, distance);
                            found.put(objective, turned);
                        }
                    }
                }
            }
            Objective nearest = far.keySet().stream()
                    .min(Comparator.comparingDouble(far::get))
                    .orElseThrow();
            List<Flip> told = flips(SHOP, BRIEF, part).stream()
                    .filter(one -> one.kind() == Flip.Kind.PRIORITY)
                    .toList();
            assertEquals(Math.min(2, far.size()), told.size(), part + " " + far);
            assertEquals(nearest.key(), told.get(0).subject(), part + " " + far);
            double before = 0;
            for (Flip flip : told) {
                Objective objective = far.keySet().stream()
                        .filter(one -> one.key().equals(flip.subject()))
                        .findFirst()
                        .orElseThrow();
                assertTrue(far.get(objective) >= before, "nearest first");
                before = far.get(objective);
                assertEquals(found.get(objective), List.of(flip.loses(), flip.wins()), part + " " + flip);
                assertEquals(BRIEF.priority(objective), flip.now());
                String words = "if " + Phrases.of("objective." + objective.key()) + " counted "
                        + Turning.number(flip.wins()) + " instead of " + Turning.number(flip.now());
                assertEquals(words, flip.sentence());
            }
        }
    }

    private static boolean best(List<Weighed> all, Objective objective, double value, String part) {
        Brief brief = FewBuilds.weighing(BRIEF, Map.of(objective, value));
        Scoring scoring = Scoring.of(brief, SHOP.catalog().rates());
        Weighed best = FewBuilds.best(all, scoring, one -> true);
        assertNotNull(best);
        return best.holds(part);
    }

    /** Every price from the part's own down, a cent at a time around the turn. */
    @Test
    void thePriceAtWhichItWins() {
        for (String part : List.of("seat-light", "blank-light", "cap-gilded")) {
            Flip flip = flip(
                    flips(SHOP, BRIEF, part).stream()
                            .filter(one -> one.kind() == Flip.Kind.PRICE)
                            .toList(),
                    part);
            long now = SHOP.catalog().find(part).facts().priceMinor();
            long high = now;
            long low = 0;
            assertTrue(wins(SHOP, priced(part, 0), BRIEF, part));
            while (high - low > 1) {
                long middle = (high + low) / 2;
                if (wins(SHOP, priced(part, middle), BRIEF, part)) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            assertEquals(now, flip.now());
            assertEquals(1.0, flip.loses() - flip.wins());
            assertEquals(low, flip.wins(), 1.0, part + ": a tie may go either way");
            assertEquals("minor", flip.unit());
            String money = SHOP.inquiry(BRIEF).money(Math.round(flip.wins()));
            assertEquals(
                    "if Tarn " + part + " cost the shop " + money + " instead of "
                            + SHOP.inquiry(BRIEF).money(now),
                    flip.sentence());
        }
    }

    private static Catalog priced(String part, long minor) {
        PartFacts facts = SHOP.catalog().find(part).facts();
        return SHOP.catalog().changed(Map.of(part, Changed.with(facts, "priceMinor", minor)), "other");
    }

    /** A seat too heavy to be taken though it costs less: each tenth of a gram down to half its weight. Light parts by hundredths. */
    @Test
    void theWeightAtWhichItWins() {
        weight("seat", Station.SEAT, 18, 27.0, 0.1, 2_300);
        weight("cap", Station.BUTT_CAP, 4, 2.6, 0.01, 1_600);
    }

    private static void weight(String like, Station station, double lightG, double grams, double grid, long price) {
        Fixtures fixture = Fixtures.legal()
                .copy(like, "other")
                .part("other", "facts.weightG", grams)
                .part("other", "facts.priceMinor", price);
        fixture.part("other", "facts.model", "other").brief("budgetMinor", 90_000L);
        FewBuilds two = FewBuilds.of(fixture).or(station, "other");
        Brief brief = FewBuilds.weighing(fixture.theBrief(), Map.of(Objective.WEIGHT, 1.0, Objective.PRICE, 3.0));
        Catalog catalog = fixture.catalog();
        List<Double> row = new ArrayList<>();
        for (int step = 0; grams - step * grid >= grams / 2 - 1e-9; step++) {
            row.add(Math.round((grams - step * grid) * 1000) / 1000.0);
        }
        List<Double> turned = turn(row, value -> wins(two, scaled(catalog, value), brief, "other"));
        Finding finding = WhyNot.of(two.inquiry(brief), Set.of("other"));
        List<Flip> told = finding.flips().stream()
                .filter(one -> one.kind() == Flip.Kind.WEIGHT)
                .toList();
        assertEquals(turned.isEmpty() ? 0 : 1, told.size(), like + " of " + lightG + ": " + finding);
        if (!turned.isEmpty()) {
            assertEquals(turned.get(0), told.get(0).loses(), 1e-9);
            assertEquals(turned.get(1), told.get(0).wins(), 1e-9);
            assertEquals(grams, told.get(0).now());
            assertEquals("g", told.get(0).unit());
            assertTrue(
                    told.get(0).sentence().startsWith("if Tarn other weighed "),
                    told.get(0).sentence());
        }
        if (like.equals("seat")) {
            assertEquals(1, told.size(), finding.sentence() + turned);
        }
    }

    private static Catalog scaled(Catalog catalog, double grams) {
        PartFacts facts = catalog.find("other").facts();
        return catalog.changed(Map.of("other", facts.withScale(grams, facts.weightTolG())), "other");
    }

    /** Where only one light part can be paid the blank is taken; with a purse for both the seat is, too. Told to the whole euro. */
    @Test
    void thePurseAtWhichItWins() {
        Brief light = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 0.0, Objective.WEIGHT, 20.0));
        Brief free = Changed.with(light, "budgetMinor", null);
        long both = SHOP.legal(SHOP.catalog(), free).stream()
                .filter(one -> one.holds("blank-light") && one.holds("seat-light"))
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
        Brief brief = Changed.with(light, "budgetMinor", both - 2_050);
        Flip flip = flip(flips(SHOP, brief, "seat-light"), "budgetMinor");
        assertTrue(
                wins(SHOP, SHOP.catalog(), Changed.with(brief, "budgetMinor", Math.round(flip.wins())), "seat-light"));
        assertTrue(!wins(
                SHOP, SHOP.catalog(), Changed.with(brief, "budgetMinor", Math.round(flip.loses())), "seat-light"));
        assertTrue(flip.wins() >= both && flip.wins() < both + 100, flip + " for " + both);
        assertEquals("minor", flip.unit());
        assertEquals(
                "if there were " + SHOP.inquiry(brief).money(Math.round(flip.wins())) + " to spend instead of "
                        + SHOP.inquiry(brief).money(both - 2_050),
                flip.sentence());
    }

    /** A seat of a class more, dearer and heavier, wins where the others are too weak. */
    @Test
    void theClassAtWhichItWins() {
        Fixtures fixture = Fixtures.legal().copy("seat", "strong").part("seat", "facts.durabilityClass", 2);
        fixture.part("strong", "facts.durabilityClass", 3).brief("durabilityClass", 2);
        fixture.part("strong", "facts.priceMinor", 6_000).part("strong", "facts.weightG", 25.0);
        FewBuilds two = FewBuilds.of(fixture).or(Station.SEAT, "strong");
        Brief brief = FewBuilds.weighing(fixture.theBrief(), Map.of(Objective.DURABILITY, 0.1));
        Flip flip = flip(flips(two, brief, "strong"), "durabilityClass");
        assertEquals(List.of(2.0, 2.0, 3.0), List.of(flip.now(), flip.loses(), flip.wins()));
        assertEquals("if durability class 3 were asked for instead of 2", flip.sentence());
        assertEquals("class", flip.unit());
    }

    /** A blank for heavier lures wins where the lighter blank's range ends; one for lighter lures likewise below its range. */
    @Test
    void theLureAtWhichABlankWins() {
        Fixtures fixture = Fixtures.legal()
                .copy("blank", "stout")
                .part("stout", "lureMaxG", 22.0)
                .part("stout", "facts.priceMinor", 14_000);
        fixture.copy("blank", "fine").part("fine", "lureMinG", 1.0).part("fine", "facts.priceMinor", 13_000);
        FewBuilds three = FewBuilds.of(fixture).onBlanks("stout", "fine");
        Brief brief = fixture.theBrief();
        Flip heavier = flip(flips(three, brief, "stout"), "lure.heaviest");
        List<Double> up = new ArrayList<>();
        for (double g = 14; g <= 22; g += 0.5) {
            up.add(g);
        }
        assertEquals(
                turn(up, g -> wins(three, fixture.catalog(), Changed.with(brief, "lure.heaviestG", g), "stout")),
                List.of(heavier.loses(), heavier.wins()));
        assertEquals("g", heavier.unit());
        assertTrue(heavier.sentence().startsWith("if the heaviest lure were ")
                && heavier.sentence().endsWith(" instead of 14 g"));
        Flip finer = flip(flips(three, brief, "fine"), "lure.usual");
        List<Double> down = new ArrayList<>();
        for (double g = 8; g >= 1; g -= 0.5) {
            down.add(g);
        }
        assertEquals(
                turn(down, g -> wins(three, fixture.catalog(), Changed.with(brief, "lure.usualG", g), "fine")),
                List.of(finer.loses(), finer.wins()));
        assertTrue(flips(three, brief, "fine").stream()
                .noneMatch(one -> one.subject().equals("lure.heaviest")));
    }
}
