package withy.brief;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.TreeMap;

/**
 * The text of a brief as a tree, and where in the text each value stands. Size, nesting and the length of numbers and words are limited, so
 * that no text takes long or much memory.
 *
 * @param tree the whole text
 * @param places line and column by path
 */
public record BriefText(JsonNode tree, Map<String, Place> places) {
    /** Longest text read, characters: a hundred times the longest brief of ours. */
    static final int LONGEST = 262_144;

    private static final int DEEPEST = 16;
    private static final int LONGEST_NUMBER = 40;
    private static final int LONGEST_WORD = 4_000;

    private static final String LIMITS = "JSON (RFC 8259) nested at most " + DEEPEST + " deep, each key once";

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST)
                    .maxNumberLength(LONGEST_NUMBER)
                    .maxStringLength(LONGEST_WORD)
                    .maxNameLength(LONGEST_WORD)
                    .build())
            .build();
    private static final ObjectMapper MAPPER =
            new ObjectMapper(FACTORY).enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    /** Line and column from 1. */
    public record Place(int line, int column) {
        public static final Place NONE = new Place(0, 0);
    }

    /** Thrown with the one fault of a text that is no JSON. */
    public static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;
        private final transient BriefFault fault;

        Unreadable(BriefFault fault) {
            super(fault.message());
            this.fault = fault;
        }

        /** What is wrong. */
        public BriefFault fault() {
            return fault;
        }
    }

    /** Reads a text. */
    public static BriefText read(String text) throws Unreadable {
        String json = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (json.length() > LONGEST) {
            throw new Unreadable(new BriefFault(
                    "",
                    1,
                    1,
                    json.length() + " characters",
                    "at most " + LONGEST + " characters",
                    "Maybe another file was given: a brief has a page or two."));
        }
        if (json.isBlank()) {
            throw new Unreadable(new BriefFault(
                    "", 1, 1, "nothing", "a JSON object", "Maybe the file was saved empty; {} is the shortest brief."));
        }
        try {
            return new BriefText(MAPPER.readTree(json), places(json));
        } catch (JsonProcessingException e) {
            throw new Unreadable(JsonFault.of(e, json, LIMITS));
        }
    }

    private static Map<String, Place> places(String json) throws JsonProcessingException {
        Map<String, Place> places = new TreeMap<>();
        try (JsonParser parser = FACTORY.createParser(json)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token != JsonToken.END_OBJECT && token != JsonToken.END_ARRAY) {
                    JsonLocation at = parser.currentTokenLocation();
                    String path =
                            path(parser.getParsingContext().pathAsPointer(false).toString());
                    places.putIfAbsent(path, new Place(at.getLineNr(), at.getColumnNr()));
                }
            }
            return places;
        } catch (JsonProcessingException e) {
            throw e;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@code /lure/usualG} as {@code lure.usualG}, {@code /must/0/part} as {@code must[0].part}. */
    private static String path(String pointer) {
        StringBuilder path = new StringBuilder();
        for (String step : pointer.split("/")) {
            if (step.isEmpty()) {
                continue;
            }
            if (step.chars().allMatch(c -> c >= '0' && c <= '9')) {
                path.append('[').append(step).append(']');
            } else {
                path.append(path.isEmpty() ? "" : ".")
                        .append(step.replace("~1", "/").replace("~0", "~"));
            }
        }
        return path.toString();
    }
}
