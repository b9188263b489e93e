package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The published schema of briefs, and what it says about a text. */
final class BriefSchemas {
    private static final String TEXT = text();
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(TEXT, InputFormat.JSON);

    private BriefSchemas() {}

    static List<String> faults(String json) {
        return SCHEMA.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    static JsonNode tree() {
        try {
            return new ObjectMapper().readTree(TEXT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text() {
        try (InputStream in = BriefReader.class.getResourceAsStream("/withy/schema/brief.schema.json")) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
