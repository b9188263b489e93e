package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.catalog.Material;
import withy.fixture.Changed;
import withy.fixture.Fixtures;

/** What a brief is without one of its wishes. */
class DemandsTest {
    /** The brief without one wish: told here by its fields, whatever else is asked stays. */
    @ParameterizedTest
    @CsvSource({
        "lengthMm, lengthMinMm=900 lengthMaxMm=6000",
        "pieces, piecesMin=1 piecesMax=9",
        "packedMaxMm, packedMaxMm=",
        "lure.usual, lure.usualG=500",
        "lure.heaviest, lure.heaviestG=0.1",
        "durabilityClass, durabilityClass=1",
        "water, corrosionClass=1",
        "reachMm, reachMinMm=150 reachMaxMm=450",
        "handle.form, handle.form=",
        "handle.foreGrip, handle.foreGrip=",
        "handle.trigger, handle.trigger=",
        "handle.movingHood, handle.movingHood=",
        "handle.keeper, handle.keeper=",
        "handle.action, handle.action=",
        "handle.mixedGrips, handle.mixedGrips=true",
        "budgetMinor, budgetMinor=",
        "wantedBy, wantedBy="
    })
    void theBriefWithoutOneWish(String key, String changes) {
        Brief brief = askingForEverything();
        Brief expected = brief;
        for (String change : changes.split(" ")) {
            String path = change.substring(0, change.indexOf('='));
            String value = change.substring(change.indexOf('=') + 1);
            Object said = value.isEmpty() ? null : value.equals("true") ? (Object) true : Double.valueOf(value);
            expected = Changed.with(expected, path, said);
        }
        List<Demand> demands = Demands.of(FewBuilds.shop().inquiry(brief));
        Demand demand = demands.stream()
                .filter(one -> one.key().equals(key))
                .findFirst()
                .orElseThrow();
        assertEquals(new LinkedHashSet<>(List.of(expected)), Demands.without(brief, List.of(demand)));
        assertEquals(Evidence.wish(key), demand.ground());
    }

    private static Brief askingForEverything() {
        Brief brief = Fixtures.legal().theBrief();
        brief = Changed.with(
                brief,
                "handle",
                new Brief.Handle(
                        new Wish<>(HandleForm.SPLIT, true, 0),
                        new Wish<>(false, true, 0),
                        new Wish<>(false, true, 0),
                        new Wish<>(withy.catalog.SeatEnd.REAR, true, 0),
                        new Wish<>(true, true, 0),
                        new Wish<>(withy.catalog.Action.FAST, true, 0),
                        false));
        brief = Changed.with(brief, "insisted", List.of(new PartWish("cap", true, 0), new PartWish("seat", false, 2)));
        brief = Changed.with(
                brief, "refused", List.of(new PartWish("keeper", true, 0), new PartWish("hood", false, 2)));
        return Changed.with(
                brief, "look", new Brief.Look("", Set.of(), Set.of(Material.FOAM, Material.CORK), List.of(), ""));
    }

    /** Parts and materials are given up one by one; a palm or a reel of any size is several briefs. */
    @Test
    void theBriefWithoutAPartOrAMaterial() {
        Brief brief = askingForEverything();
        List<Demand> demands = Demands.of(FewBuilds.shop().inquiry(brief));
        List<String> keys = new ArrayList<>();
        demands.forEach(one -> keys.add(one.about().isEmpty() ? one.key() : one.key() + " " + one.about()));
        assertTrue(
                keys.containsAll(List.of(
                        "insisted cap", "refused keeper", "look.refusedMaterials foam", "look.refusedMaterials cork")),
                "" + keys);
        assertFalse(keys.contains("insisted seat") || keys.contains("refused hood"), "nice wishes forbid nothing");
        for (String key : List.of("insisted cap", "refused keeper", "look.refusedMaterials foam")) {
            Set<Brief> without = Demands.without(brief, List.of(demands.get(keys.indexOf(key))));
            assertEquals(1, without.size());
            Brief one = without.iterator().next();
            assertEquals(key.startsWith("insisted") ? 1 : 2, one.insisted().size(), key);
            assertEquals(key.startsWith("refused") ? 1 : 2, one.refused().size(), key);
            assertEquals(
                    key.startsWith("look") ? Set.of(Material.CORK) : Set.of(Material.FOAM, Material.CORK),
                    one.look().refusedMaterials());
        }
        assertEquals(
                5,
                Demands.without(brief, List.of(demands.get(keys.indexOf("hand"))))
                        .size(),
                "this palm and four more");
        int reels = withy.brief.UsualReels.of(brief.rodType()).size();
        assertTrue(Demands.without(brief, List.of(demands.get(keys.indexOf("reel"))))
                        .size()
                >= reels);
    }

    /** Said as on the phone, in the order of the brief. */
    @Test
    void wordsOfWhatIsAsked() {
        List<String> words = Demands.of(FewBuilds.shop().inquiry(askingForEverything())).stream()
                .map(Demand::words)
                .toList();
        assertEquals(
                List.of(
                        "a rod of 2.05 m to 2.15 m",
                        "2 pieces",
                        "1200 mm at most when packed",
                        "a usual lure of 8 g",
                        "lures up to 14 g",
                        "a main line of 6.8 kg",
                        "braid",
                        "a leader of 5.4 kg",
                        "a leader knot cast through the rings",
                        "a reel of size 2500",
                        "durability class 3",
                        "corrosion class 2 for the water",
                        "a palm of 80 mm",
                        "220 mm to 255 mm from reel foot to butt",
                        "a split handle",
                        "no fore grip",
                        "no trigger",
                        "a moving hood at the rear",
                        "a hook keeper",
                        "a fast blank",
                        "grips of one material",
                        "no cork anywhere",
                        "no foam anywhere",
                        "at most 600.00 EUR to pay",
                        "the rod ready by 2026-04-01",
                        "the Tarn cap",
                        "no Tarn keeper"),
                words);
        assertEquals("2 to 4 pieces", second(Changed.with(askingForEverything(), "piecesMax", 4)));
        assertEquals(
                "one piece", second(Changed.with(Changed.with(askingForEverything(), "piecesMin", 1), "piecesMax", 1)));
        Brief foot = Changed.with(askingForEverything(), "reel.sizeClass", 0);
        assertTrue(Demands.of(FewBuilds.shop().inquiry(foot)).stream()
                .anyMatch(one -> one.words().equals("a reel with a foot of 55 mm")));
    }

    private static String second(Brief brief) {
        return Demands.of(FewBuilds.shop().inquiry(brief)).get(1).words();
    }

    /** One question for each value that would do, and one for all hands: then the rules ask for nobody's. */
    @Test
    void theQuestionWithoutAHand() {
        Inquiry inquiry = FewBuilds.shop().inquiry(askingForEverything());
        List<Demand> demands = Demands.of(inquiry);
        Demand hand = demands.stream()
                .filter(one -> one.key().equals("hand"))
                .findFirst()
                .orElseThrow();
        Demand keeper = demands.stream()
                .filter(one -> one.key().equals("handle.keeper"))
                .findFirst()
                .orElseThrow();
        var plain = Demands.without(inquiry, inquiry.query(), List.of(keeper));
        assertEquals(1, plain.size());
        assertEquals(inquiry.query().rulebook(), plain.iterator().next().rulebook());
        var anyHand = Demands.without(inquiry, inquiry.query(), List.of(keeper, hand));
        assertEquals(1, anyHand.size());
        assertEquals(
                inquiry.rulebooks().anyHand(inquiry.query().rulebook()),
                anyHand.iterator().next().rulebook());
        assertFalse(inquiry.query().rulebook().equals(anyHand.iterator().next().rulebook()));
        assertEquals(plain.iterator().next().brief(), anyHand.iterator().next().brief());
    }

    /** What a lifted fish asks: its own weight and landing; a main line without a leader must hold it. */
    @Test
    void whatTackleAsks() {
        Brief lifted = Changed.with(Fixtures.legal().theBrief(), "landing", Brief.Landing.LIFTED);
        List<Demand> demands = Demands.of(FewBuilds.shop().inquiry(lifted));
        assertTrue(demands.stream().anyMatch(one -> one.key().equals("landing")));
        Demand fish = demands.stream()
                .filter(one -> one.key().equals("largestFish"))
                .findFirst()
                .orElseThrow();
        assertEquals(
                0.1, Demands.without(lifted, List.of(fish)).iterator().next().largestFishKg());
        Demand leader = demands.stream()
                .filter(one -> one.key().equals("leader.strength"))
                .findFirst()
                .orElseThrow();
        Brief.Leader weak =
                Demands.without(lifted, List.of(leader)).iterator().next().leader();
        assertEquals(Math.max(0.05, withy.rules.DeadLoad.leaderNeedsKg(lifted)), weak.strengthKg(), 1e-9);
        assertEquals(
                0.30 * Math.sqrt(weak.strengthKg() / 5.4),
                weak.diameterMm(),
                1e-9,
                "strength goes with the square of the diameter");
        Demand line = demands.stream()
                .filter(one -> one.key().equals("line.strength"))
                .findFirst()
                .orElseThrow();
        Brief.MainLine fine =
                Demands.without(lifted, List.of(line)).iterator().next().line();
        assertEquals(0.03, fine.diameterMm());
        assertEquals(0.05, fine.strengthKg());
        Brief bare = Changed.with(Fixtures.legal().theBrief(), "leader", null);
        Brief swung = Changed.with(Changed.with(bare, "landing", Brief.Landing.LIFTED), "largestFishKg", 2.0);
        double needed = withy.rules.DeadLoad.leaderNeedsKg(swung);
        assertTrue(needed > 1, "needs " + needed);
        Demand alone = Demands.of(FewBuilds.shop().inquiry(swung)).stream()
                .filter(one -> one.key().equals("line.strength"))
                .findFirst()
                .orElseThrow();
        assertEquals(
                Math.min(6.8, needed),
                Demands.without(swung, List.of(alone)).iterator().next().line().strengthKg(),
                1e-9);
        assertTrue(Demands.of(FewBuilds.shop().inquiry(bare)).stream()
                .noneMatch(one -> one.key().startsWith("leader")));
        Brief easy = Changed.with(Changed.with(bare, "durabilityClass", 1), "corrosionClass", 1);
        assertTrue(Demands.of(FewBuilds.shop().inquiry(easy)).stream()
                .noneMatch(one -> one.key().equals("water") || one.key().equals("durabilityClass")));
    }
}
