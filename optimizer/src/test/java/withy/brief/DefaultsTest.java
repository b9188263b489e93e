package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.catalog.RodType;

/** Each default is taken where its wish is left out, and tells so in its one sentence; a default without a case here fails. */
class DefaultsTest {
    private record Case(String json, String sentence) {}

    private static final Map<Default, Case> CASES = new EnumMap<>(Default.class);

    private static void add(Default which, String json, String sentence) {
        CASES.put(which, new Case(json, sentence));
    }

    static {
        add(Default.SCHEMA, "{}", "No schema number is told: 1 is taken.");
        add(Default.NAME, "{}", "The commission has no name: \"commission\" is taken.");
        add(
                Default.ROD_TYPE,
                "{\"fishedFrom\": \"beach\"}",
                "No rod type is told: surf spinning, since it is fished from beach.");
        add(Default.FISHED_FROM, "{}", "Where it is fished from is not told: bank.");
        add(
                Default.HANDS,
                "{\"lengthMm\": {\"min\": 2700}}",
                "One or two hands is not told: two, by rod type, lures and length (common practice).");
        add(
                Default.LENGTH,
                "{}",
                "No length is told: 2050 to 2300 mm, usual for this rod type and these lures (common practice).");
        add(
                Default.LENGTH_ABOUT,
                "{\"length\": \"7'3\\\"\"}",
                "The length is told as one figure: 2159.8 to 2259.8 mm is looked for (assumed).");
        add(
                Default.LENGTH_MIN,
                "{\"lengthMm\": {\"max\": 2250}}",
                "No least length is told: 2000 mm, 250 mm under the most (assumed).");
        add(
                Default.LENGTH_MAX,
                "{\"lengthMm\": {\"min\": 2000}}",
                "No greatest length is told: 2250 mm, 250 mm over the least (assumed).");
        add(Default.PIECES, "{\"packedMaxMm\": 700}", "The number of pieces is not told: 1 to 6.");
        add(Default.PACKED, "{}", "No packed length is told: any will do.");
        add(
                Default.LURE,
                "{\"rodType\": \"casting\"}",
                "No lure is told: 7 to 28, usually 14 g, usual for this rod type (assumed).");
        add(
                Default.LURE_LIGHTEST,
                "{\"lure\": {\"usualG\": 12}}",
                "No lightest lure is told: 6 g, half the usual (assumed).");
        add(
                Default.LURE_USUAL,
                "{\"lure\": {\"heaviestG\": 30}}",
                "No usual lure is told: 18 g, from the others at 60 % of the heaviest or twice the lightest (common practice).");
        add(
                Default.LURE_HEAVIEST,
                "{\"lure\": {\"usualG\": 12}}",
                "No heaviest lure is told: 18 g, 1.5 times the usual (common practice).");
        add(Default.LINE_KIND, "{}", "What the main line is made of is not told: braid.");
        add(
                Default.LINE_GAUGE,
                "{\"lure\": {\"usualG\": 16}}",
                "No thickness or strength of main line is told: PE 0.8, usual with these lures (assumed).");
        add(
                Default.LINE_NYLON,
                "{\"lure\": {\"usualG\": 16}, \"line\": {\"kind\": \"nylon\"}}",
                "No thickness or strength of main line is told: number 2, usual with these lures (assumed).");
        add(
                Default.LINE_DIAMETER,
                "{\"line\": {\"kind\": \"nylon\", \"strength\": \"20 lb\"}}",
                "The main line's diameter is not told: 0.37 mm, at 4 lb for each line number (assumed).");
        add(
                Default.LINE_STRENGTH,
                "{\"line\": {\"gauge\": \"PE 0.8\"}}",
                "The main line's strength is not told: about 7.3 kg (16 lb), at 20 lb for each line number (assumed).");
        add(Default.LEADER, "{}", "No leader is told: the main line goes straight to the lure.");
        add(
                Default.LEADER_STRENGTH,
                "{\"line\": {\"strengthKg\": 8}, \"leader\": {}}",
                "The leader's strength is not told: about 7.2 kg (15.9 lb), 0.9 of the main line, so that the leader breaks first (assumed).");
        add(
                Default.LEADER_DIAMETER,
                "{\"leader\": {\"strength\": \"20 lb\"}}",
                "The leader's diameter is not told: 0.37 mm, at 4 lb for each line number (assumed).");
        add(Default.KNOT, "{\"leader\": {}}", "The leader's knot is not told: FG.");
        add(
                Default.CAST_THROUGH,
                "{\"leader\": {}}",
                "Whether the leader's knot is cast through the rings is not told: it is taken to be, the safe side.");
        add(
                Default.CAST_BY_LENGTH,
                "{\"leader\": {\"length\": \"50 cm\"}}",
                "Whether the leader's knot is cast through the rings is not told: it is not, by a leader of 500 mm against 600 mm hung from the tip (assumed).");
        add(
                Default.DRAG,
                "{\"line\": {\"strengthKg\": 8}, \"leader\": {\"strengthKg\": 6}}",
                "The drag is not told: 1.5 kg, a quarter of the weaker of main line and leader (assumed).");
        add(
                Default.REEL_SIZE,
                "{\"lure\": {\"usualG\": 3}}",
                "No reel is told: size 1000, usual with these lures (common practice).");
        String reel = "{\"reel\": {\"size\": 4000}}";
        add(
                Default.REEL_FOOT,
                reel,
                "The reel foot's length is not told: 60.5 mm, the middle of its size class (from memory).");
        add(
                Default.REEL_THICKNESS,
                reel,
                "The reel foot's thickness is not told: 3 mm, usual for its size class (from memory).");
        add(
                Default.REEL_WIDTH,
                reel,
                "The reel foot's width is not told: 11 mm, usual for its size class (from memory).");
        add(
                Default.REEL_MASS,
                reel,
                "The reel's mass with line is not told: 275 g, the middle of its size class (from memory).");
        add(
                Default.REEL_OFFSET,
                reel,
                "The reel's centre of mass is not told: 15 mm ahead of the foot's centre (from memory).");
        add(
                Default.REEL_LIP,
                reel,
                "The spool's lip is not told: 49.5 mm, the middle of its size class (from memory).");
        add(Default.REEL_STEM, reel, "The reel's stem height is not told: 62 mm, usual for its size class (assumed).");
        add(Default.FISH, "{\"dragKg\": 1.5}", "The largest fish is not told: 3 kg, twice the drag (assumed).");
        add(
                Default.LANDING,
                "{\"fishedFrom\": \"wading\"}",
                "How fish are landed is not told: hand, usual where it is fished from.");
        add(
                Default.DURABILITY,
                "{\"fishedFrom\": \"kayak\", \"dragKg\": 2}",
                "No durability class is told: 4, by a drag of 2 kg and the place it is fished from (common practice).");
        add(
                Default.WATER,
                "{\"fishedFrom\": \"beach\"}",
                "Fresh or salt is not told: salt, class 3, by the place it is fished from.");
        add(
                Default.PALM_BY_SIZE,
                "{\"hand\": {\"size\": \"large\"}}",
                "The palm's breadth is not told: 88 mm, median of men, ANSUR II 2012.");
        add(
                Default.REACH_BY_BODY,
                "{\"hand\": {\"size\": \"small\"}}",
                "Reel foot to butt end is not told: 205 to 253 mm, 0.65 to 0.80 times a forearm-to-grip length of 316 mm (median of women, ANSUR II 2012).");
        add(
                Default.REACH_BY_TYPE,
                "{\"fishedFrom\": \"kayak\"}",
                "Reel foot to butt end is not told: 220 to 260 mm, usual for a kayak rod (common practice).");
        add(
                Default.REACH_MIN,
                "{\"reachMm\": {\"max\": 260}}",
                "The shortest reach is not told: 220 mm, 40 mm under the longest (assumed).");
        add(
                Default.REACH_MAX,
                "{\"reachMm\": {\"min\": 220}}",
                "The longest reach is not told: 260 mm, 40 mm over the shortest (assumed).");
        add(
                Default.REACH_ABOUT,
                "{\"reachMm\": 240}",
                "The reach is told as one figure: 220 to 260 mm is looked for (assumed).");
        add(
                Default.GUIDE_COUNT,
                "{}",
                "What decides the number of guides is not told: the usual count for the rod's length is the least (common practice).");
        add(
                Default.HANDLE,
                "{\"rodType\": \"casting\"}",
                "Handle and blank are open in: handle form, fore grip, trigger, moving hood, hook keeper, action.");
        add(
                Default.NICE,
                "{\"handle\": {\"action\": \"fast\"}}",
                "The action is wished for, not insisted on: nice to have, worth 2 steps.");
        add(
                Default.NICE_STEPS,
                "{\"handle\": {\"form\": {\"value\": \"full\", \"need\": \"nice\"}}}",
                "What the handle form is worth is not told: nice to have, worth 2 steps.");
        add(
                Default.LOOK,
                "{\"look\": {\"theme\": \"classic\"}}",
                "The look is open in: liked materials, refused materials, colours, inscription.");
        add(Default.BUDGET, "{}", "No budget is told: the price has no ceiling.");
        add(Default.WANTED_BY, "{}", "No date is told: parts may be ordered however long they take.");
        add(
                Default.WANTED_YEAR,
                "{\"wantedBy\": \"31 December\"}",
                "The date is told without a year: 31 December 2026 is taken, the next such day.");
        add(Default.PRIORITY, "{\"priorities\": {\"weight\": 5}}", "The priority of balance is not told: 2.");
        add(Default.PRIORITY, "{\"priorities\": {\"weight\": 5}}", "The priority of look is not told: 1.");
        add(
                Default.ZONE,
                "{}",
                "No balance is told: level between 40 and 110 mm ahead of the reel foot is wanted (common practice).");
        add(
                Default.STEP,
                "{}",
                "The least difference worth noticing in swing weight is not told: 0.0015 kg·m², from the shop's rates.");
        add(
                Default.STEP_PRICE,
                "{\"budget\": 650}",
                "The least difference worth noticing in price is not told: 32.50 EUR, 5 % of the budget, 650.00 EUR.");
        add(
                Default.STEP_PRICE_ASSUMED,
                "",
                "The least difference worth noticing in price is not told, and the shop's rates have no usual price for the rod type: 25.00 EUR (assumed).");
    }

    @TestFactory
    Stream<DynamicTest> eachDefaultTellsItself() {
        return Stream.of(Default.values())
                .filter(which -> which != Default.STEP_PRICE_ASSUMED)
                .map(which -> DynamicTest.dynamicTest(which.name(), () -> {
                    Case known = CASES.get(which);
                    assertTrue(known != null, which + " has no case");
                    List<String> told = ShopRates.brief(known.json()).defaultsUsed();
                    assertTrue(
                            told.contains(known.sentence()),
                            known.sentence() + "\nis missing in\n" + String.join("\n", told));
                }));
    }

    @Test
    void withoutAUsualPriceTheStepIsAssumed() {
        BriefContext poor = new BriefContext(ShopRates.rates("EUR", Map.of()), ShopRates.DAY);
        Brief brief = BriefReader.read("{}", poor).orThrow();
        assertEquals(2500, brief.step(Objective.PRICE));
        assertTrue(brief.defaultsUsed()
                .contains(CASES.get(Default.STEP_PRICE_ASSUMED).sentence()));
    }

    @Test
    void aBriefThatTellsEverythingUsesNoDefault() {
        Brief brief = ShopRates.brief(FullBrief.JSON);
        assertEquals(List.of(), brief.defaultsUsed());
    }

    @Test
    void anEmptyBriefIsAMiddleSpinningRod() {
        Brief brief = ShopRates.brief("{}");
        assertEquals(RodType.SPINNING, brief.rodType());
        assertEquals(2500, brief.reel().sizeClass());
        assertEquals(0.132, brief.line().diameterMm());
        assertEquals(40, brief.zoneNearMm());
        assertEquals(110, brief.zoneFarMm());
        assertEquals(2600, brief.step(Objective.PRICE), "5 % of the usual price, 520.00 EUR");
        assertEquals(
                List.of(3.0, 2.0, 1.0, 1.0, 1.0, 1.0),
                List.copyOf(brief.priorities().values()));
    }

    @Test
    void daysAreCountedFromTheDayOfReading() {
        Brief brief = ShopRates.brief("{\"wantedInDays\": 10}");
        assertEquals(ShopRates.DAY.plusDays(10), brief.wantedBy());
        assertEquals(ShopRates.DAY, ShopRates.brief("{\"wantedInDays\": 0}").wantedBy());
        assertTrue(brief.defaultsUsed().stream().noneMatch(sentence -> sentence.contains("No date")));
    }

    @Test
    void everySentenceIsOnePlainSentence() {
        List<String> all = new ArrayList<>();
        CASES.values().forEach(known -> all.add(known.sentence()));
        for (String sentence : all) {
            assertTrue(sentence.endsWith(".") && !sentence.contains("null") && !sentence.contains("%s"), sentence);
        }
    }

    @Test
    void durabilityFollowsDragPlaceAndLanding() {
        assertEquals(2, ShopRates.brief("{\"dragKg\": 0.5}").durabilityClass());
        assertEquals(2, ShopRates.brief("{\"dragKg\": 2}").durabilityClass());
        assertEquals(3, ShopRates.brief("{\"dragKg\": 2.1}").durabilityClass());
        assertEquals(4, ShopRates.brief("{\"dragKg\": 4.1}").durabilityClass());
        assertEquals(5, ShopRates.brief("{\"dragKg\": 8.1}").durabilityClass());
        assertEquals(
                4, ShopRates.brief("{\"dragKg\": 1, \"landing\": \"lifted\"}").durabilityClass());
    }

    @Test
    void waterAsksForACorrosionClass() {
        assertEquals(1, ShopRates.brief("{\"water\": \"fresh\"}").corrosionClass());
        assertEquals(2, ShopRates.brief("{\"water\": \"brackish\"}").corrosionClass());
        assertEquals(3, ShopRates.brief("{\"water\": \"salt\"}").corrosionClass());
        assertEquals(4, ShopRates.brief("{\"water\": \"saltEveryDay\"}").corrosionClass());
    }

    @Test
    void reelsFollowTheTradeTable() {
        // Trade table, from memory: foot length, mass with line, lip diameter by size class.
        assertReel("{\"reel\": {\"size\": 800}}", 46, 53, 150, 200, 38, 42);
        assertReel("{\"reel\": {\"size\": 2500}}", 52, 58, 190, 260, 43, 47);
        assertReel("{\"reel\": {\"size\": 3000}}", 57, 64, 230, 320, 47, 52);
        assertReel("{\"reel\": {\"size\": 6000}}", 63, 70, 350, 480, 54, 60);
        assertReel("{\"reel\": {\"size\": 8000}}", 68, 78, 500, 720, 62, 72);
        assertReel("{\"reel\": {\"size\": 20000}}", 74, 88, 650, 950, 72, 85);
        assertReel("{\"rodType\": \"casting\", \"reel\": {\"size\": 150}}", 52, 60, 150, 230, 20, 40);
        assertReel("{\"rodType\": \"casting\", \"reel\": {\"size\": 400}}", 55, 65, 230, 400, 20, 40);
        assertEquals(0, ShopRates.brief("{\"rodType\": \"casting\"}").reel().centreOffsetMm());
    }

    private static void assertReel(String json, double... ends) {
        Brief.Reel reel = ShopRates.brief(json).reel();
        double[] values = {reel.footLengthMm(), reel.massG(), reel.lipDiameterMm()};
        for (int i = 0; i < values.length; i++) {
            assertTrue(values[i] > ends[2 * i] && values[i] < ends[2 * i + 1], json + " " + values[i]);
        }
    }

    @Test
    void aMeasuredReelNeedsNoSizeAndAMixKeepsWhatIsMeasured() {
        Brief.Reel mixed = ShopRates.brief("{\"reel\": {\"size\": 2500, \"footLengthMm\": 56.4}}")
                .reel();
        assertEquals(new Brief.Reel(2500, 56.4, 2.8, 10.5, 225, 15, 45, 57), mixed);
        Brief.Reel measured = ShopRates.brief(
                        "{\"reel\": {\"footLengthMm\": 55, \"footThicknessMm\": 3, \"footWidthMm\": 10, \"mass\": \"8 oz\","
                                + " \"lipDiameterMm\": 45, \"stemHeightMm\": 57}}")
                .reel();
        assertEquals(new Brief.Reel(0, 55, 3, 10, 226.796, 15, 45, 57), measured);
    }
}
