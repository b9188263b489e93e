package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.catalog.Material;

/** Every scenario reads without a fault, fits the schema, and states an expectation in full. */
class ScenariosTest {
    private static final Path FOLDER =
            Path.of(System.getProperty("withy.home", "..")).resolve("scenarios");
    private static final Set<String> RANGES = Set.of(
            "rodWeightG",
            "priceMinor",
            "guideCount",
            "stripperRingSize",
            "reelToButtMm",
            "finishedLengthMm",
            "packedLengthMm",
            "blankWeightG",
            "seatSize");
    private static final Set<String> KEYS = Set.of(
            "schema", "possible", "provenance", "says", "ranges", "gripMaterials", "conflict", "sensitiveToRules");

    private static final Set<String> RULES = Set.of(
            "lure-range",
            "line-class",
            "length",
            "durability",
            "lift",
            "knot-clearance",
            "ring-for-line",
            "reel-fit",
            "seat-on-blank",
            "grip-on-blank",
            "ring-fit",
            "tip-top",
            "handle",
            "guide-train",
            "salt",
            "budget",
            "stock",
            "must");

    static List<Path> scenarios() throws IOException {
        try (Stream<Path> folders = Files.list(FOLDER)) {
            return folders.filter(Files::isDirectory).sorted().toList();
        }
    }

    @TestFactory
    Stream<DynamicTest> eachScenario() throws IOException {
        return scenarios().stream()
                .map(folder -> DynamicTest.dynamicTest(folder.getFileName().toString(), () -> check(folder)));
    }

    @Test
    void thereAreEnoughAndTwoAreImpossible() throws IOException {
        int impossible = 0;
        Set<String> rules = new TreeSet<>();
        for (Path folder : scenarios()) {
            JsonNode expected = expected(folder);
            impossible += expected.get("possible").booleanValue() ? 0 : 1;
            expected.get("sensitiveToRules").forEach(rule -> rules.add(rule.textValue()));
        }
        assertTrue(
                scenarios().size() - impossible >= 14,
                "possible scenarios: " + (scenarios().size() - impossible));
        assertTrue(impossible >= 2, "impossible scenarios: " + impossible);
        assertEquals(new TreeSet<>(RULES), rules, "each rule has a scenario whose answer hangs on it");
    }

    private static JsonNode expected(Path folder) throws IOException {
        return new ObjectMapper().readTree(Files.readString(folder.resolve("expected.json")));
    }

    private static void check(Path folder) throws IOException {
        Path file = folder.resolve("brief.json");
        BriefReading reading = BriefReader.read(file, ShopRates.CONTEXT);
        assertEquals(
                List.of(), reading.faults().stream().map(BriefFault::message).toList());
        assertEquals(List.of(), BriefSchemas.faults(Files.readString(file)));
        Brief brief = reading.orThrow();
        JsonNode expected = expected(folder);
        for (Iterator<String> keys = expected.fieldNames(); keys.hasNext(); ) {
            String key = keys.next();
            assertTrue(KEYS.contains(key), key);
        }
        assertEquals(1, expected.get("schema").intValue());
        assertEquals("common practice, no source", expected.get("provenance").textValue());
        assertFalse(expected.get("says").textValue().isBlank());
        assertTrue(expected.get("sensitiveToRules").size() > 0);
        if (expected.get("possible").booleanValue()) {
            ranges(expected, brief);
        } else {
            conflict(expected.get("conflict"));
        }
    }

    private static void ranges(JsonNode expected, Brief brief) {
        JsonNode ranges = expected.get("ranges");
        for (Iterator<String> keys = ranges.fieldNames(); keys.hasNext(); ) {
            String key = keys.next();
            assertTrue(RANGES.contains(key), key);
            assertTrue(
                    ranges.get(key).get("min").doubleValue()
                            < ranges.get(key).get("max").doubleValue(),
                    key);
        }
        for (String needed : List.of("rodWeightG", "priceMinor", "guideCount", "stripperRingSize", "reelToButtMm")) {
            assertTrue(ranges.has(needed), needed + " is missing");
        }
        expected.get("gripMaterials")
                .forEach(word -> assertTrue(
                        Stream.of(Material.values())
                                .anyMatch(material -> material.word().equals(word.textValue())),
                        word.toString()));
        assertTrue(
                ranges.get("reelToButtMm").get("min").doubleValue() >= brief.reachMinMm(), "reach below the brief's");
        assertTrue(
                ranges.get("reelToButtMm").get("max").doubleValue() <= brief.reachMaxMm(), "reach above the brief's");
        if (brief.budgetMinor() != null) {
            assertTrue(
                    ranges.get("priceMinor").get("max").longValue() <= brief.budgetMinor(), "price above the budget");
        }
        if (ranges.has("packedLengthMm") && brief.packedMaxMm() != null) {
            assertTrue(ranges.get("packedLengthMm").get("max").doubleValue() <= brief.packedMaxMm(), "packed too long");
        }
    }

    private static void conflict(JsonNode conflict) {
        assertTrue(conflict.get("wishes").size() >= 2, "an impossible brief has several wishes acting together");
        assertTrue(conflict.get("rules").size() >= 1);
        conflict.get("rules").forEach(rule -> assertTrue(RULES.contains(rule.textValue()), rule.toString()));
    }
}
