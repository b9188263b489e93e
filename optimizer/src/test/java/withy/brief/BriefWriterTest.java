package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is written reads back to an equal brief, and one wish in two systems of units is one brief. */
class BriefWriterTest {
    private static final long SEED = 4711;

    @Test
    void scenariosComeBackEqual() throws IOException {
        for (Path folder : ScenariosTest.scenarios()) {
            assertComesBack(
                    BriefReader.read(folder.resolve("brief.json"), ShopRates.CONTEXT)
                            .orThrow(),
                    folder.toString());
        }
    }

    @Test
    void fullAndEmptyBriefsComeBackEqual() {
        for (String json : List.of(
                FullBrief.JSON,
                "{}",
                "{\"rodType\": \"casting\"}",
                "{\"fishedFrom\": \"beach\"}",
                "{\"leader\": null}")) {
            assertComesBack(ShopRates.brief(json), json);
        }
    }

    @Test
    void extremesComeBackEqual() {
        for (String json : List.of(
                "{\"line\": {\"kind\": \"nylon\", \"diameterMm\": 1.6}, \"leader\": {\"diameterMm\": 1.6}}",
                "{\"line\": {\"diameterMm\": 0.03}, \"leader\": {\"strengthKg\": 0.05}}",
                "{\"line\": {\"strengthKg\": 800}}",
                "{\"lure\": {\"usualG\": 500}}",
                "{\"lure\": {\"lightestG\": 400}}",
                "{\"lure\": {\"heaviestG\": 0.1}}",
                "{\"lengthMm\": 900, \"reachMm\": 80}",
                "{\"lengthMm\": {\"max\": 1000}, \"reachMm\": {\"max\": 90}}",
                "{\"lengthMm\": {\"min\": 5990}, \"reachMm\": {\"min\": 990}}",
                "{\"balanceZone\": {\"farMm\": -190}}",
                "{\"balanceZone\": {\"nearMm\": 590}}")) {
            assertComesBack(ShopRates.brief(json), json);
        }
    }

    @Test
    void metricAndImperialBriefsAreEqual() {
        for (int i = 0; i < 500; i++) {
            RandomBrief random = new RandomBrief(new Random(SEED + i));
            Brief imperial = ShopRates.brief(random.imperial());
            Brief metric = ShopRates.brief(random.metric());
            assertEquals(metric, imperial, "seed " + (SEED + i) + "\n" + random.imperial() + "\n" + random.metric());
            assertComesBack(metric, "seed " + (SEED + i));
        }
    }

    @Test
    void knownQuantitiesReadAsTheStandardsSay() {
        // 7'3" = 87 in of 25.4 mm; 1/4 oz of 28.349523125 g; 20 lb of 0.45359237 kg: exact units, checks 9.
        Brief brief = ShopRates.brief(
                "{\"length\": {\"min\": \"7'3\\\"\", \"max\": \"2.3 m\"}, \"lure\": {\"usual\": \"1/4 oz\"},"
                        + " \"line\": {\"kind\": \"braid\", \"gauge\": \"PE 0.8\"}, \"leader\": {\"strength\": \"20 lb\", \"diameter\": \"0.37 mm\"}}");
        assertEquals(2209.8, brief.lengthMinMm());
        assertEquals(7.087, brief.lure().usualG());
        assertEquals(0.8, brief.line().gauge());
        // Braid number 0.8: 0.153 mm, JAFTMA table as quoted, checks 5b.
        assertEquals(0.153, brief.line().diameterMm());
        assertEquals(9.0718, brief.leader() == null ? 0 : brief.leader().strengthKg());
    }

    @Test
    void strengthModelFollowsTheNumberScale() {
        // 4 lb a number for nylon, 20 lb a number for braid: ASSUMED; diameters from the standards' tables, checks 5a,
        // 5b.
        assertEquals(0.37, LineStrength.diameterMm(Brief.LineKind.NYLON, 20 * 0.45359237, LineStrength.SOLID_KG), 1e-9);
        assertEquals(
                0.171, LineStrength.diameterMm(Brief.LineKind.BRAID, 20 * 0.45359237, LineStrength.BRAID_KG), 1e-9);
        assertEquals(1.8144, LineStrength.ofDiameterKg(Brief.LineKind.FLUOROCARBON, 0.165), 1e-9);
        assertEquals(7.2575, LineStrength.ofNumberKg(Brief.LineKind.BRAID, 0.8), 1e-9);
    }

    @Test
    void screenColoursAreTheirLab() {
        // sRGB primaries in CIE L*a*b*, D65, as printed in colour tables [from memory], to 0.1.
        assertLab("#ffffff", 100, 0, 0);
        assertLab("#000000", 0, 0, 0);
        assertLab("#ff0000", 53.2, 80.1, 67.2);
        assertLab("#00ff00", 87.7, -86.2, 83.2);
        assertLab("#0000ff", 32.3, 79.2, -107.9);
    }

    private static void assertLab(String text, double l, double a, double b) {
        withy.catalog.Lab lab = ScreenColour.lab(text);
        assertTrue(lab != null);
        assertEquals(l, lab.l(), 0.1, text);
        assertEquals(a, lab.a(), 0.1, text);
        assertEquals(b, lab.b(), 0.1, text);
    }

    @Test
    void everyComponentIsWritten() {
        // Each pair differs in one wish only, so a component left out by the writer would make the two come back equal.
        List<String> wishes = List.of(
                "\"name\": \"x\"",
                "\"customer\": \"x\"",
                "\"rodType\": \"casting\"",
                "\"hands\": 2",
                "\"fishedFrom\": \"pier\"",
                "\"lengthMm\": 2000",
                "\"pieces\": 3",
                "\"packedMaxMm\": 800",
                "\"lure\": {\"usualG\": 3}",
                "\"line\": {\"kind\": \"nylon\"}",
                "\"leader\": {}",
                "\"dragKg\": 3",
                "\"reel\": {\"size\": 4000}",
                "\"largestFishKg\": 9",
                "\"landing\": \"lifted\"",
                "\"durabilityClass\": 5",
                "\"water\": \"salt\"",
                "\"hand\": {\"palmMm\": 95}",
                "\"reachMm\": 300",
                "\"handle\": {\"form\": \"full\"}",
                "\"look\": {\"theme\": \"bright\"}",
                "\"budget\": 500",
                "\"wantedBy\": \"2026-05-31\"",
                "\"priorities\": {\"style\": 9}",
                "\"balanceZone\": {\"nearMm\": 10}",
                "\"steps\": {\"weightG\": 9}",
                "\"insisted\": [\"a\"]",
                "\"owned\": [\"a\"]",
                "\"refused\": [\"a\"]",
                "\"counterweightAsked\": true",
                "\"guidesByClearance\": true");
        Brief plain = ShopRates.brief("{}");
        for (String wish : wishes) {
            Brief changed = ShopRates.brief("{" + wish + "}");
            assertNotEquals(BriefWriter.write(plain), BriefWriter.write(changed), wish);
            assertComesBack(changed, wish);
        }
    }

    private static void assertComesBack(Brief brief, String where) {
        String written = BriefWriter.write(brief).toString();
        assertEquals(brief, BriefReader.read(written, ShopRates.CONTEXT).orThrow(), where);
        assertEquals(
                brief,
                BriefReader.read(BriefWriter.write(brief), ShopRates.CONTEXT).orThrow(),
                where);
    }
}
