package withy.brief;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What keeps a text from being JSON, in words for somebody who typed it by hand. */
final class JsonFault {
    private static final Pattern CHARACTER = Pattern.compile("Unexpected character \\('(.+?)' \\(code .*?\\)\\): (.*)");
    private static final Pattern TOKEN = Pattern.compile("Unrecognized token '(.*)': .*");
    private static final Pattern TWICE = Pattern.compile("Duplicate field '(.*)'");
    private static final Pattern CLOSED = Pattern.compile("Unexpected close marker '(.)': .*");
    private static final Pattern END = Pattern.compile("Unexpected end-of-input.*");

    private static final String VALUE = "text in quotation marks, a number, true, false, a list or an object";

    private final JsonProcessingException failure;
    private final String json;

    private JsonFault(JsonProcessingException failure, String json) {
        this.failure = failure;
        this.json = json;
    }

    /**
     * The fault with its line and column.
     *
     * @param limits what any text of the kind must keep to
     */
    static BriefFault of(JsonProcessingException failure, String json, String limits) {
        return new JsonFault(failure, json).told(limits);
    }

    private BriefFault told(String limits) {
        String message = failure.getOriginalMessage().lines().findFirst().orElse("no JSON");
        Matcher twice = TWICE.matcher(message);
        if (twice.matches()) {
            return fault("\"" + twice.group(1) + "\" a second time", "each key once", "Maybe drop one of the two.");
        }
        Matcher closed = CLOSED.matcher(message);
        if (closed.matches()) {
            return fault(closed.group(1), "a bracket that closes an open one", "Maybe it is one too many.");
        }
        if (END.matcher(message).matches()) {
            return fault(
                    "the end", "a closing bracket or quotation mark for each open one", "Maybe the end is cut off.");
        }
        Matcher token = TOKEN.matcher(message);
        if (token.matches()) {
            return fault(token.group(1), VALUE, "Maybe the quotation marks are missing.");
        }
        Matcher character = CHARACTER.matcher(message);
        if (character.matches()) {
            return character(character.group(1), character.group(2));
        }
        return fault(message, limits, "Maybe a comma, a quote or a bracket is missing just before this place.");
    }

    private BriefFault character(String found, String expected) {
        if (decimalComma()) {
            return fault(found, "a number with a decimal point", "Maybe write " + number() + ".");
        }
        if (expected.contains("comma")) {
            return fault(found, "a comma before the next entry", "Maybe the comma is missing.");
        }
        if (expected.contains("colon")) {
            return fault(found, "a colon between key and value", "Maybe the colon is missing.");
        }
        if (expected.contains("field name")) {
            return fault(
                    found,
                    "a key in quotation marks",
                    found.equals("}")
                            ? "Maybe the comma before it is one too many."
                            : "Maybe the quotation marks are missing.");
        }
        return fault(found, VALUE, "Maybe the comma before it is one too many, or the quotation marks are missing.");
    }

    /** Whether a comma with digits on both sides stands where the text ends to be JSON. */
    private boolean decimalComma() {
        int at = offset();
        return at >= 2 && at < json.length() && json.substring(at - 2, at + 1).matches("\\d,\\d");
    }

    private String number() {
        Matcher whole = Pattern.compile("\\d+,\\d+").matcher(json);
        int from = json.lastIndexOf(',', offset());
        while (from > 0 && Character.isDigit(json.charAt(from - 1))) {
            from--;
        }
        return whole.find(from) ? whole.group().replace(',', '.') : "";
    }

    private int offset() {
        JsonLocation at = failure.getLocation();
        return at == null ? -1 : (int) at.getCharOffset();
    }

    private BriefFault fault(String found, String allowed, String maybe) {
        JsonLocation at = failure.getLocation() == null ? JsonLocation.NA : failure.getLocation();
        return new BriefFault("", Math.max(1, at.getLineNr()), Math.max(1, at.getColumnNr()), found, allowed, maybe);
    }
}
