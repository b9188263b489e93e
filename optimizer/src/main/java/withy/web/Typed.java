package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withy.units.Money;
import withy.web.Field.Kind;

/** A field of a brief as it is typed: read from a brief's tree and written into one. What is left as it was stays as it was. */
final class Typed {
    static final String NONE = "none";

    private static final Pattern WHOLE = Pattern.compile("\\d{1,6}");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,6}(\\.\\d{1,6})?");
    private static final Pattern LEAST = Pattern.compile("(?:from|at least|over) (.+)");
    private static final Pattern MOST = Pattern.compile("(?:up to|at most|under) (.+)");
    private static final Pattern BOTH = Pattern.compile("(.+?)(?: to | or |\\s*–\\s*| - |(?<=[\\d\"'])-(?=\\d))(.+)");
    private static final Pattern BARE = Pattern.compile("[\\d.,/ ]+");
    private static final Pattern UNIT = Pattern.compile("[^\\d]+$");
    private static final Pattern STRENGTH = Pattern.compile(".*\\d\\s*(lb|lbs|kg|N)\\.?");

    private Typed() {}

    static String plain(double value) {
        BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
        return number.scale() < 0 ? number.setScale(0).toPlainString() : number.toPlainString();
    }

    /** What stands there as a builder would type it; empty where nothing does. */
    static String read(ObjectNode brief, Field field, Currency currency) {
        JsonNode in = field.parent().isEmpty() ? brief : brief.path(field.parent());
        return switch (field.kind()) {
            case TEXT, WHOLE, CHOICE, WEIGHT -> shown(in.path(field.key()), "");
            case AMOUNT -> first(in, field.key(), field.unit());
            case SPAN -> span(in, field);
            case WISH -> shown(wished(in.path(field.key())), "");
            case SOME -> some(in.path(field.key()));
            case LINE -> line(in);
            case LEADER -> in.isNull() ? NONE : line(in);
            case BUDGET ->
                in.path("budgetMinor").isNumber()
                        ? Money.print(in.path("budgetMinor").longValue(), currency)
                        : shown(in.path("budget"), currency.getCurrencyCode());
        };
    }

    private static String shown(JsonNode node, String unit) {
        if (node.isNumber()) {
            return plain(node.doubleValue()) + (unit.isEmpty() ? "" : " " + unit);
        }
        return node.isValueNode() && !node.isNull() ? node.asText() : "";
    }

    /** Under its own key as typed, else the bare number. */
    private static String first(JsonNode in, String key, String unit) {
        String typed = shown(in.path(key), "");
        String twin = new Field(key, Kind.AMOUNT, unit, List.of()).twin();
        return typed.isEmpty() ? shown(in.path(twin), unit) : typed;
    }

    private static String line(JsonNode in) {
        for (String[] way : new String[][] {{"gauge", ""}, {"strength", "kg"}, {"diameter", "mm"}}) {
            String typed = first(in, way[0], way[1]);
            if (!typed.isEmpty()) {
                return typed;
            }
        }
        return "";
    }

    private static String span(JsonNode in, Field field) {
        JsonNode typed = in.path(field.key());
        String unit = typed.isMissingNode() ? field.unit() : "";
        JsonNode node = typed.isMissingNode() ? in.path(field.twin()) : typed;
        if (!node.isObject()) {
            return shown(node, unit);
        }
        String min = shown(node.path("min"), unit);
        String max = shown(node.path("max"), unit);
        if (min.isEmpty() || max.isEmpty() || min.equals(max)) {
            return min.equals(max) ? min : max.isEmpty() ? "from " + min : "up to " + max;
        }
        return min + " to " + max;
    }

    private static JsonNode wished(JsonNode wish) {
        return wish.isObject() ? wish.path("value") : wish;
    }

    private static String some(JsonNode list) {
        List<String> words = new ArrayList<>();
        list.forEach(one -> words.add(one.asText()));
        return String.join(" ", words);
    }

    /** True where a wish is wanted by all means. */
    static boolean hard(ObjectNode brief, Field field) {
        JsonNode wish = brief.path(field.parent()).path(field.key());
        String need = wish.path("need").asText();
        boolean nice = field.key().equals("keeper") || field.key().equals("action");
        return need.isEmpty() ? !wish.has("steps") && !nice : need.equals("hard");
    }

    /** Writes what was typed where it is not what stood there. */
    static void write(ObjectNode brief, Field field, String typed, boolean hard, Currency currency) {
        String told = typed.strip().replaceAll("\\s+", " ");
        boolean needOnly = field.kind() == Kind.WISH && !told.isEmpty() && hard != hard(brief, field);
        if (told.equals(read(brief, field, currency)) && !needOnly) {
            return;
        }
        JsonNode value = value(field, AsTyped.of(field, told, currency), hard);
        if (field.kind() == Kind.LEADER && AsTyped.none(told)) {
            brief.putNull(field.parent());
            return;
        }
        ObjectNode in = brief;
        if (!field.parent().isEmpty()) {
            in = brief.path(field.parent()) instanceof ObjectNode there ? there : brief.putObject(field.parent());
        }
        in.remove(List.of(field.key(), field.twin()));
        if (field.kind() == Kind.LINE || field.kind() == Kind.LEADER) {
            in.remove(List.of("gauge", "strength", "strengthKg", "diameter", "diameterMm"));
        } else if (field.kind() == Kind.BUDGET) {
            in.remove("budgetMinor");
        } else if (field.key().equals("wantedBy")) {
            in.remove("wantedInDays");
        } else if (field.key().equals("water")) {
            in.remove("corrosionClass");
        }
        if (!value.isMissingNode()) {
            in.set(field.kind() == Kind.LINE || field.kind() == Kind.LEADER ? lineKey(told) : field.key(), value);
        }
        if (!field.parent().isEmpty() && in.isEmpty()) {
            brief.remove(field.parent());
        }
    }

    private static String lineKey(String told) {
        return STRENGTH.matcher(told).matches() ? "strength" : "gauge";
    }

    private static JsonNode value(Field field, String told, boolean hard) {
        if (told.isEmpty()) {
            return MissingNode.getInstance();
        }
        return switch (field.kind()) {
            case TEXT, AMOUNT, LINE, LEADER, BUDGET -> TextNode.valueOf(told);
            case WHOLE, CHOICE -> choice(told);
            case WEIGHT -> NUMBER.matcher(told).matches() ? number(told) : TextNode.valueOf(told);
            case SPAN -> spanned(field, told);
            case SOME -> {
                ArrayNode list = new ArrayNode(JsonNodeFactory.instance);
                for (String one : told.split(" ", -1)) {
                    list.add(one);
                }
                yield list;
            }
            case WISH -> {
                ObjectNode wish = new ObjectNode(JsonNodeFactory.instance);
                wish.set("value", choice(told));
                wish.put("need", hard ? "hard" : "nice");
                yield wish;
            }
        };
    }

    private static JsonNode choice(String told) {
        if (told.equals("true") || told.equals("false")) {
            return BooleanNode.valueOf(told.equals("true"));
        }
        return WHOLE.matcher(told).matches() ? IntNode.valueOf(Integer.parseInt(told)) : TextNode.valueOf(told);
    }

    private static JsonNode number(String told) {
        double value = Double.parseDouble(told);
        return value == Math.rint(value) ? IntNode.valueOf((int) value) : DoubleNode.valueOf(value);
    }

    private static JsonNode spanned(Field field, String told) {
        Matcher both = BOTH.matcher(told);
        Matcher least = LEAST.matcher(told);
        Matcher most = MOST.matcher(told);
        if (most.matches()) {
            return ends(field, "", most.group(1));
        }
        if (least.matches()) {
            return ends(field, least.group(1), "");
        }
        if (both.matches()) {
            String min = both.group(1).strip();
            String max = both.group(2).strip();
            Matcher unit = UNIT.matcher(max);
            boolean shared = BARE.matcher(min).matches() && unit.find();
            return ends(field, shared ? min + " " + unit.group().strip() : min, max);
        }
        return end(field, told);
    }

    private static ObjectNode ends(Field field, String min, String max) {
        ObjectNode ends = new ObjectNode(JsonNodeFactory.instance);
        if (!min.isEmpty()) {
            ends.set("min", end(field, min));
        }
        if (!max.isEmpty()) {
            ends.set("max", end(field, max));
        }
        return ends;
    }

    private static JsonNode end(Field field, String told) {
        return field.unit().isEmpty() ? choice(told) : TextNode.valueOf(AsTyped.length(field, told));
    }
}
