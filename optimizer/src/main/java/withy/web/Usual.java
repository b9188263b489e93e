package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Currency;
import withy.units.Money;
import withy.units.QuantityText;

/** What is taken where a field is left empty, in words: from the brief with nothing left open. */
final class Usual {
    private final ObjectNode resolved;
    private final QuantityText units;
    private final Currency currency;

    Usual(ObjectNode resolved, QuantityText units, Currency currency) {
        this.resolved = resolved;
        this.units = units;
        this.currency = currency;
    }

    String of(Field field) {
        JsonNode in = field.parent().isEmpty() ? resolved : resolved.path(field.parent());
        return switch (field.kind()) {
            case TEXT -> field.key().equals("wantedBy") ? open(in.path("wantedBy")) : "";
            case AMOUNT -> amount(field, in.path(field.twin()));
            case SPAN -> span(field, in.path(field.twin()));
            case WHOLE, WEIGHT -> number(in.path(field.key()));
            case CHOICE -> choice(field, in);
            case WISH -> Words.say("brief.open");
            case SOME -> "";
            case LINE -> line(in);
            case LEADER -> in.isObject() ? strength(in) : Words.say("brief.none");
            case BUDGET ->
                in.path("budgetMinor").isNumber()
                        ? Money.print(in.path("budgetMinor").longValue(), currency)
                        : Words.say("brief.noCeiling");
        };
    }

    private static String open(JsonNode day) {
        return day.isTextual() ? day.asText() : Words.say("brief.noHurry");
    }

    private static String number(JsonNode node) {
        return node.isNumber() ? Typed.plain(node.doubleValue()) : "";
    }

    private String choice(Field field, JsonNode in) {
        JsonNode node = in.path(field.key());
        if (field.key().equals("water")) {
            return Words.say(
                    "choice.corrosion." + resolved.path("corrosionClass").asInt());
        }
        if (node.isValueNode() && !node.isNull()) {
            String key = "choice." + field.path() + "." + node.asText();
            return Words.has(key) ? Words.say(key) : node.asText();
        }
        return field.path().equals("hand.size")
                ? Words.say("brief.palm", amountOf("mm", resolved.path("hand").path("palmMm")))
                : Words.say("brief.open");
    }

    private String amount(Field field, JsonNode node) {
        if (!node.isNumber()) {
            return Words.say("brief.any");
        }
        return amountOf(field.unit(), node);
    }

    private String amountOf(String unit, JsonNode node) {
        double value = node.doubleValue();
        return switch (unit) {
            case "g" -> units.lureMass(value);
            case "mm" -> units.partLength(value);
            default -> number(node) + " kg";
        };
    }

    private String span(Field field, JsonNode node) {
        JsonNode min = node.path("min");
        JsonNode max = node.path("max");
        if (!min.isNumber() || !max.isNumber()) {
            return Words.say("brief.any");
        }
        String least = end(field, min);
        String most = end(field, max);
        return least.equals(most) ? least : Words.say("brief.span", least, most);
    }

    private String end(Field field, JsonNode node) {
        return switch (field.path()) {
            case "length" -> units.rodLength(node.doubleValue());
            case "reach" -> units.partLength(node.doubleValue());
            default -> number(node);
        };
    }

    private static String line(JsonNode in) {
        return in.path("gauge").isNumber() ? "PE " + number(in.path("gauge")) : strength(in);
    }

    private static String strength(JsonNode in) {
        return Words.say("brief.strength", number(in.path("strengthKg")), number(in.path("diameterMm")));
    }
}
