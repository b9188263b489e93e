package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The schema for editors says what the reader says. */
class BriefSchemaTest {

    @Test
    void readerAndSchemaKnowTheSameKeys() throws IOException {
        Map<String, SortedSet<String>> asked = new TreeMap<>();
        // Text ranges and part objects are only entered where they are told.
        for (String json : List.of(
                FullBrief.JSON,
                "{\"length\": {\"min\": \"2 m\"}, \"reach\": {\"min\": \"20 cm\"}}",
                "{\"insisted\": [{\"part\": \"a\"}], \"refused\": [{\"part\": \"b\"}]}")) {
            Notes notes = new Notes(Map.of());
            BriefReading reading = BriefReader.read(new ObjectMapper().readTree(json), notes, ShopRates.CONTEXT);
            assertNotNull(reading.brief(), () -> reading.faults().toString());
            notes.asked()
                    .forEach((path, keys) ->
                            asked.computeIfAbsent(path, p -> new TreeSet<>()).addAll(keys));
        }
        Map<String, SortedSet<String>> published = new TreeMap<>();
        collect(BriefSchemas.tree(), "", published);
        assertEquals(lines(published), lines(asked));
    }

    private static String lines(Map<String, SortedSet<String>> keys) {
        StringBuilder text = new StringBuilder();
        keys.forEach(
                (path, names) -> text.append(path).append(": ").append(names).append('\n'));
        return text.toString();
    }

    private static void collect(JsonNode schema, String path, Map<String, SortedSet<String>> keys) {
        JsonNode properties = schema.path("properties");
        for (Iterator<String> names = properties.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            keys.computeIfAbsent(path, p -> new TreeSet<>()).add(name);
            collect(properties.get(name), path.isEmpty() ? name : path + "." + name, keys);
        }
        schema.path("anyOf").forEach(branch -> collect(branch, path, keys));
        if (schema.has("items")) {
            collect(schema.get("items"), path + "[]", keys);
        }
    }

    @Test
    void theFullAndTheEmptyBriefFit() {
        assertEquals(List.of(), BriefSchemas.faults(FullBrief.JSON));
        assertEquals(List.of(), BriefSchemas.faults("{}"));
    }

    @Test
    void whatTheProgramWritesFits() {
        for (String json : List.of("{}", FullBrief.JSON, "{\"leader\": {}}")) {
            assertEquals(
                    List.of(),
                    BriefSchemas.faults(BriefWriter.write(ShopRates.brief(json)).toString()));
        }
    }

    @TestFactory
    Stream<DynamicTest> brokenBriefsDoNotFit() {
        return BriefFaultsTest.BROKEN.stream()
                .filter(BriefFaultsTest.Broken::schemaToo)
                .map(broken -> DynamicTest.dynamicTest(
                        broken.json(),
                        () -> assertFalse(BriefSchemas.faults(broken.json()).isEmpty())));
    }

    @TestFactory
    Stream<DynamicTest> theSchemaRefusesNothingTheReaderTakes() {
        return BriefFaultsTest.BROKEN.stream()
                .filter(broken -> !broken.schemaToo())
                .map(broken -> DynamicTest.dynamicTest(
                        broken.json(),
                        () -> assertEquals(
                                List.of(),
                                BriefSchemas.faults(broken.json()),
                                "the table calls this unseen by a schema")));
    }

    @Test
    void everyKeyIsExplainedToTheEditor() {
        explained(BriefSchemas.tree(), "");
    }

    private static void explained(JsonNode schema, String path) {
        JsonNode properties = schema.path("properties");
        for (Iterator<String> names = properties.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            boolean inner = List.of("value", "part").contains(name);
            assertFalse(
                    !inner && properties.get(name).path("description").asText().isBlank(), path + "." + name);
            explained(properties.get(name), path + "." + name);
        }
    }
}
