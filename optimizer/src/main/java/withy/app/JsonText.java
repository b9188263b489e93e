package withy.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;

/** Reads JSON of our own that the memory kept. */
final class JsonText {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private JsonText() {}

    static JsonNode tree(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("kept JSON that can't be read: " + e.getOriginalMessage(), e);
        }
    }
}
