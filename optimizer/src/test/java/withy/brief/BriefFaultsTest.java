package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every fault a brief can have: where, what stands there, what is allowed, and a guess. */
class BriefFaultsTest {
    /** @param schemaToo true where the schema refuses it as well; false for what only the reader can see */
    record Broken(String json, String path, String value, String allowed, String maybe, boolean schemaToo) {}

    static final List<Broken> BROKEN = List.of(
            new Broken(
                    "{\"rodtype\": \"spinning\"}",
                    "rodtype",
                    "unknown key \"rodtype\"",
                    "rodType",
                    "Maybe \"rodType\" was meant.",
                    true),
            new Broken(
                    "{\"lure\": {\"usual_g\": 4}}",
                    "lure.usual_g",
                    "unknown key",
                    "usualG",
                    "Maybe \"usualG\" was meant.",
                    true),
            new Broken(
                    "{\"quux\": 1}",
                    "quux",
                    "unknown key",
                    "budgetMinor",
                    "Maybe it is a slip, or belongs elsewhere",
                    true),
            new Broken(
                    "{\"schema\": 2}",
                    "schema",
                    "2",
                    "the number 1",
                    "Maybe a newer withy wrote it: a version that knows brief schema 2 reads it.",
                    true),
            new Broken("{\"schema\": \"one\"}", "schema", "\"one\"", "the number 1", "Maybe leave it out.", true),
            new Broken("{\"name\": 7}", "name", "7", "text of at most 120", "Maybe put it in quotes", true),
            new Broken(
                    "{\"rodType\": \"spining\"}",
                    "rodType",
                    "\"spining\"",
                    "casting, spinning, surfSpinning",
                    "Maybe \"spinning\" was meant.",
                    true),
            new Broken("{\"rodType\": null}", "rodType", "null", "casting", "Maybe ", true),
            new Broken("{\"hands\": 3}", "hands", "3", "1 to 2", "Maybe ", true),
            new Broken("{\"hands\": 1.5}", "hands", "1.5", "a whole number, 1 to 2", "Maybe round it.", true),
            new Broken(
                    "{\"hands\": \"two\"}",
                    "hands",
                    "\"two\"",
                    "a number",
                    "Maybe write the number without quotes.",
                    true),
            new Broken(
                    "{\"lengthMm\": 2.2}",
                    "lengthMm",
                    "2.2 mm",
                    "900 to 6000 mm",
                    "Maybe another unit was meant: 2200 mm would be allowed.",
                    true),
            new Broken(
                    "{\"length\": 2200}",
                    "length",
                    "2200",
                    "text with a unit",
                    "Maybe \"2200 mm\" was meant, or the key with Mm at its end.",
                    true),
            new Broken(
                    "{\"length\": \"7 stone\"}",
                    "length",
                    "\"7 stone\"",
                    "mm, cm, m, in",
                    "Maybe the unit is one of another quantity",
                    false),
            new Broken(
                    "{\"length\": \"2,200 mm\"}",
                    "length",
                    "\"2,200 mm\"",
                    "decimal comma",
                    "Maybe 2200 or 2.200 was meant.",
                    false),
            new Broken(
                    "{\"length\": \"2.2 cm\"}",
                    "length",
                    "\"2.2 cm\"",
                    "900 to 6000 mm",
                    "Maybe its number or its unit is a slip: that is 22 mm.",
                    false),
            new Broken(
                    "{\"length\": \"2 m\", \"lengthMm\": 2000}",
                    "length",
                    "\"2 m\"",
                    "either lengthMm or length",
                    "Maybe drop one",
                    true),
            new Broken(
                    "{\"lengthMm\": {\"min\": 2300, \"max\": 2100}}",
                    "lengthMm.min",
                    "2300",
                    "at most max, 2100 mm",
                    "Maybe min and max are swapped.",
                    false),
            new Broken(
                    "{\"lengthMm\": {\"least\": 2300}}", "lengthMm.least", "unknown key", "max, min", "Maybe ", true),
            new Broken(
                    "{\"lengthMm\": {\"min\": \"2 m\"}}",
                    "lengthMm.min",
                    "\"2 m\"",
                    "a number",
                    "Maybe write the number without quotes.",
                    true),
            new Broken(
                    "{\"pieces\": \"two\"}",
                    "pieces",
                    "\"two\"",
                    "a whole number, 1 to 8",
                    "Maybe write it without quotes.",
                    true),
            new Broken(
                    "{\"pieces\": {\"min\": 3, \"max\": 2}}",
                    "pieces.min",
                    "3",
                    "at most max, 2",
                    "Maybe min and max are swapped.",
                    false),
            new Broken(
                    "{\"length\": \"6'8\\\" to 7'2\\\"\"}",
                    "length",
                    "\"6'8",
                    "one figure, or an object of min and max",
                    "Maybe write \"length\": {\"min\": \"6'8\\\"\", \"max\": \"7'2\\\"\"}.",
                    false),
            new Broken(
                    "{\"lengthMm\": \"2000-2100\"}",
                    "lengthMm",
                    "\"2000-2100\"",
                    "one figure, or an object of min and max",
                    "Maybe write \"length\": {\"min\": \"2000\", \"max\": \"2100\"}.",
                    true),
            new Broken(
                    "{\"reach\": \"22 – 25 cm\"}",
                    "reach",
                    "\"22 ",
                    "one figure, or an object of min and max",
                    "Maybe write \"reach\": {\"min\": \"22 cm\", \"max\": \"25 cm\"}.",
                    false),
            new Broken("{\"packedMaxMm\": 50}", "packedMaxMm", "50 mm", "200 to 6000 mm", "Maybe another unit", true),
            new Broken(
                    "{\"lure\": 7}",
                    "lure",
                    "7",
                    "an object in braces",
                    "Maybe the value belongs to a key inside it.",
                    true),
            new Broken(
                    "{\"lure\": {\"usualG\": 0}}",
                    "lure.usualG",
                    "0 g",
                    "0.1 to 500 g",
                    "Maybe a digit is missing",
                    true),
            new Broken("{\"lure\": {\"usualG\": -5}}", "lure.usualG", "-5 g", "0.1 to 500 g", "Maybe ", true),
            new Broken(
                    "{\"lure\": {\"usual\": \"-5 g\"}}",
                    "lure.usual",
                    "\"-5 g\"",
                    "a number",
                    "Maybe the minus sign is a slip",
                    false),
            new Broken(
                    "{\"lure\": {\"lightestG\": 9, \"usualG\": 5, \"heaviestG\": 12}}",
                    "lure",
                    "9, 5, 12 g",
                    "lightest ≤ usual ≤ heaviest",
                    "Maybe two of the three are swapped",
                    false),
            new Broken(
                    "{\"line\": {\"kind\": \"wire\"}}",
                    "line.kind",
                    "\"wire\"",
                    "braid, fluorocarbon, nylon",
                    "Maybe ",
                    true),
            new Broken(
                    "{\"line\": {\"gauge\": true}}",
                    "line.gauge",
                    "true",
                    "a gauge such as",
                    "Maybe put it in quotes.",
                    true),
            new Broken(
                    "{\"line\": {\"gauge\": \"12 lb\"}}",
                    "line.gauge",
                    "\"12 lb\"",
                    "a gauge such as",
                    "Maybe the strength was given where the gauge belongs.",
                    false),
            new Broken(
                    "{\"line\": {\"kind\": \"nylon\", \"gauge\": \"PE 1\"}}",
                    "line.gauge",
                    "\"PE 1\"",
                    "a gauge of nylon",
                    "Maybe the line is a braid.",
                    false),
            new Broken(
                    "{\"line\": {\"gauge\": \"9 mm\"}}", "line.gauge", "\"9 mm\"", "0.03 to 1.6 mm", "Maybe ", false),
            new Broken(
                    "{\"line\": {\"diameterMm\": 13}}",
                    "line.diameterMm",
                    "13 mm",
                    "0.03 to 1.6 mm",
                    "Maybe another unit was meant: 1.3",
                    true),
            new Broken("{\"leader\": {\"knot\": \"granny\"}}", "leader.knot", "\"granny\"", "albright", "Maybe ", true),
            new Broken(
                    "{\"leader\": {\"castThroughRings\": \"yes\"}}",
                    "leader.castThroughRings",
                    "\"yes\"",
                    "true or false",
                    "Maybe write it without quotes.",
                    true),
            new Broken(
                    "{\"drag\": \"4 m\"}",
                    "drag",
                    "\"4 m\"",
                    "N, kg, g, lb or oz",
                    "Maybe the unit is one of another quantity",
                    false),
            new Broken(
                    "{\"reel\": {\"size\": 2500.5}}", "reel.size", "2500.5", "a whole number", "Maybe round it.", true),
            new Broken("{\"reel\": {\"massG\": 1e999}}", "reel.massG", "Infinity", "80 to 2000 g", "Maybe ", true),
            new Broken("{\"landing\": \"gaff\"}", "landing", "\"gaff\"", "hand, lifted, net", "Maybe ", true),
            new Broken("{\"durabilityClass\": 6}", "durabilityClass", "6", "1 to 5", "Maybe ", true),
            new Broken(
                    "{\"water\": \"salt\", \"corrosionClass\": 3}",
                    "corrosionClass",
                    "3",
                    "either water or corrosionClass",
                    "Maybe drop one of the two.",
                    true),
            new Broken(
                    "{\"packedMaxMm\": 45}",
                    "packedMaxMm",
                    "45 mm",
                    "200 to 6000 mm",
                    "Maybe another unit was meant: 450 or 1143 mm would be allowed.",
                    true),
            new Broken(
                    "{\"hand\": {\"palmMm\": 3.5}}",
                    "hand.palmMm",
                    "3.5 mm",
                    "45 to 130 mm",
                    "Maybe inches were meant: 88.9 mm would be allowed.",
                    true),
            new Broken(
                    "{\"hand\": {\"palmMm\": 8.8}}",
                    "hand.palmMm",
                    "8.8 mm",
                    "45 to 130 mm",
                    "Maybe another unit was meant: 88 mm would be allowed.",
                    true),
            new Broken(
                    "{\"handle\": {\"trigger\": true}}",
                    "handle.trigger",
                    "true",
                    "true on casting rods only",
                    "Maybe the rod type casting was meant.",
                    false),
            new Broken(
                    "{\"handle\": {\"form\": {\"need\": \"nice\"}}}",
                    "handle.form.value",
                    "nothing",
                    "the wish itself",
                    "Maybe value was left out.",
                    true),
            new Broken(
                    "{\"handle\": {\"form\": {\"value\": \"split\", \"need\": \"must\"}}}",
                    "handle.form.need",
                    "\"must\"",
                    "hard, nice",
                    "Maybe ",
                    true),
            new Broken(
                    "{\"handle\": {\"form\": {\"value\": \"split\", \"need\": \"hard\", \"steps\": 2}}}",
                    "handle.form.steps",
                    "2",
                    "left out of a hard wish",
                    "Maybe \"need\": \"nice\" was meant.",
                    false),
            new Broken(
                    "{\"handle\": {\"form\": {\"value\": \"split\", \"need\": \"nice\", \"steps\": 0}}}",
                    "handle.form.steps",
                    "0 steps",
                    "0.1 to 100 steps",
                    "Maybe ",
                    true),
            new Broken("{\"look\": {\"theme\": \"gothic\"}}", "look.theme", "\"gothic\"", "classic", "Maybe ", true),
            new Broken(
                    "{\"look\": {\"likedMaterials\": \"cork\"}}",
                    "look.likedMaterials",
                    "\"cork\"",
                    "a list in square brackets",
                    "Maybe put the one value in square brackets.",
                    true),
            new Broken(
                    "{\"look\": {\"likedMaterials\": [\"corc\"]}}",
                    "look.likedMaterials[0]",
                    "\"corc\"",
                    "cork",
                    "Maybe \"cork\" was meant.",
                    true),
            new Broken(
                    "{\"look\": {\"likedMaterials\": [\"eva\"], \"refusedMaterials\": [\"eva\"]}}",
                    "look.likedMaterials",
                    "[\"eva\"]",
                    "materials that are not refused as well",
                    "Maybe drop eva",
                    false),
            new Broken(
                    "{\"look\": {\"likedColours\": [\"green\"]}}",
                    "look.likedColours[0]",
                    "\"green\"",
                    "#rrggbb",
                    "Maybe \"#2f4f2f\" for a dark green.",
                    true),
            new Broken(
                    "{\"look\": {\"likedColours\": [[120, 0, 0]]}}",
                    "look.likedColours[0]",
                    "[120,0,0]",
                    "L 0 to 100",
                    "Maybe ",
                    true),
            new Broken(
                    "{\"budget\": \"650 USD\"}",
                    "budget",
                    "\"650 USD\"",
                    "such as \"650.00 EUR\"",
                    "Maybe the amount is in another currency",
                    false),
            new Broken(
                    "{\"budget\": true}",
                    "budget",
                    "true",
                    "an amount",
                    "Maybe leave it out where there is no ceiling.",
                    true),
            new Broken(
                    "{\"budget\": 0}",
                    "budget",
                    "0",
                    "1 to 100000000 minor units of EUR",
                    "Maybe a digit is missing",
                    true),
            new Broken("{\"budget\": 1e999}", "budget", "Infinity", "an amount", "Maybe ", false),
            new Broken(
                    "{\"budgetMinor\": 650.5}",
                    "budgetMinor",
                    "650.5",
                    "whole minor units of EUR",
                    "Maybe \"budget\" was meant, in EUR.",
                    true),
            new Broken(
                    "{\"budgetMinor\": 65000, \"budget\": 650}",
                    "budget",
                    "650",
                    "either budgetMinor or budget",
                    "Maybe drop one of the two.",
                    true),
            new Broken(
                    "{\"wantedBy\": \"31.5.2026\"}",
                    "wantedBy",
                    "\"31.5.2026\"",
                    "year-month-day",
                    "Maybe write it as 2026-05-31.",
                    true),
            new Broken(
                    "{\"wantedBy\": \"2026-02-30\"}",
                    "wantedBy",
                    "\"2026-02-30\"",
                    "a day of the calendar",
                    "Maybe ",
                    false),
            new Broken(
                    "{\"wantedBy\": \"2026-03-01\"}",
                    "wantedBy",
                    "\"2026-03-01\"",
                    "a day from 2026-03-02 on",
                    "Maybe the year is mistyped.",
                    false),
            new Broken(
                    "{\"wantedBy\": \"2026-05-31\", \"wantedInDays\": 3}",
                    "wantedInDays",
                    "3",
                    "either wantedBy or wantedInDays",
                    "Maybe drop one of the two.",
                    true),
            new Broken(
                    "{\"priorities\": {\"wieght\": 3}}",
                    "priorities.wieght",
                    "unknown key",
                    "weight",
                    "Maybe \"weight\" was meant.",
                    true),
            new Broken("{\"priorities\": {\"weight\": -1}}", "priorities.weight", "-1", "0 to 100", "Maybe ", true),
            new Broken(
                    "{\"priorities\": {\"weight\": 0, \"balance\": 0, \"swingWeight\": 0, \"price\": 0, \"style\": 0, \"durability\": 0}}",
                    "priorities",
                    "0 for all six",
                    "at least one above 0",
                    "Maybe give what matters most a 3.",
                    false),
            new Broken(
                    "{\"balanceZone\": {\"nearMm\": 120, \"farMm\": 60}}",
                    "balanceZone",
                    "120 to 60 mm",
                    "near at most far",
                    "Maybe the two are swapped.",
                    false),
            new Broken(
                    "{\"steps\": {\"weightG\": 0}}", "steps.weightG", "0 g", "0.000001 to 1000000 g", "Maybe ", true),
            new Broken(
                    "{\"insisted\": [\"Seat 17\"]}",
                    "insisted[0]",
                    "\"Seat 17\"",
                    "a catalogue id",
                    "Maybe copy the id",
                    true),
            new Broken(
                    "{\"insisted\": [{\"need\": \"nice\"}]}",
                    "insisted[0].part",
                    "nothing",
                    "a catalogue id",
                    "Maybe copy the id",
                    true),
            new Broken(
                    "{\"insisted\": [\"seat-1\"], \"refused\": [\"seat-1\"]}",
                    "refused",
                    "seat-1",
                    "neither insisted on nor owned",
                    "Maybe drop it",
                    false),
            new Broken(
                    "{\"owned\": [\"seat-1\"], \"refused\": [\"seat-1\"]}",
                    "refused",
                    "seat-1",
                    "neither insisted on nor owned",
                    "Maybe drop it",
                    false),
            new Broken("{\"owned\": {}}", "owned", "{}", "a list in square brackets", "Maybe ", true),
            new Broken("{\"guidesByClearance\": 2}", "guidesByClearance", "2", "true or false", "Maybe ", true),
            new Broken("{\"counterweightAsked\": 1}", "counterweightAsked", "1", "true or false", "Maybe ", true),
            new Broken(
                    "{\"defaultsUsed\": [1]}",
                    "defaultsUsed[0]",
                    "1",
                    "a sentence",
                    "Maybe leave defaultsUsed out",
                    true),
            new Broken("[]", "", "[]", "a JSON object", "Maybe the outer braces are missing.", true));

    @TestFactory
    Stream<DynamicTest> eachFaultIsToldInFull() {
        return BROKEN.stream()
                .map(broken -> DynamicTest.dynamicTest(broken.json(), () -> {
                    BriefReading reading = BriefReader.read(broken.json(), ShopRates.CONTEXT);
                    assertNull(reading.brief());
                    assertEquals(
                            1, reading.faults().size(), () -> reading.faults().toString());
                    BriefFault fault = reading.faults().get(0);
                    assertEquals(broken.path(), fault.path());
                    assertTrue(fault.value().contains(broken.value()), fault::message);
                    assertTrue(fault.allowed().contains(broken.allowed()), fault::message);
                    assertTrue(fault.maybe().startsWith(broken.maybe()), fault::message);
                    assertEquals(1, fault.line());
                    assertTrue(
                            fault.column() > 0
                                    && fault.column() <= broken.json().length(),
                            fault::message);
                }));
    }

    @Test
    void allFaultsComeInOneListInTheOrderOfTheText() {
        List<BriefFault> faults = ShopRates.faults("""
                {
                  "rodtype": "spinning",
                  "lengthMm": 3,
                  "lure": { "usualG": 9000, "colour": "red" },
                  "budget": "free"
                }
                """);
        assertEquals(
                List.of("rodtype", "lengthMm", "lure.usualG", "lure.colour", "budget"),
                faults.stream().map(BriefFault::path).toList());
        assertEquals(
                List.of(2, 3, 4, 4, 5), faults.stream().map(BriefFault::line).toList());
        assertEquals(
                "lure.usualG (line 4, column 13): 9000 g; allowed is 0.1 to 500 g.\n"
                        + "Maybe another unit was meant: 90 g would be allowed.",
                faults.get(2).message());
    }

    @Test
    void aValueInAMessageIsShortAndOnOneLine() {
        BriefFault fault = new BriefFault("name", 1, 1, "a\n" + "b".repeat(500), "text", "Maybe shorten it.");
        assertEquals(60, fault.value().length());
        assertEquals(2, fault.message().lines().count());
    }
}
