package withy.web;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import withy.web.StartView.Start;

/** Briefs to begin with: what is usual for a water and its fish. */
final class Starts {
    private static final ObjectNode ALL = read();

    private Starts() {}

    static List<Start> all() {
        List<Start> starts = new ArrayList<>();
        ALL.fieldNames()
                .forEachRemaining(key ->
                        starts.add(new Start(key, Words.say("start." + key), Words.say("start." + key + ".words"))));
        return starts;
    }

    /** The brief of a beginning; an empty one for any other key. */
    static ObjectNode brief(String key) {
        return ALL.path(key) instanceof ObjectNode brief ? brief.deepCopy() : JsonNodeFactory.instance.objectNode();
    }

    private static ObjectNode read() {
        try (InputStream in = Starts.class.getResourceAsStream("/withy/web/starts.json")) {
            return (ObjectNode) new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
