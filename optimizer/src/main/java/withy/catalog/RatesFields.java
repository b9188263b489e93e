package withy.catalog;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Takes the fields of {@code rates.json} one by one, telling every fault and going on with a harmless value. */
final class RatesFields {
    /**
     * One objective's step in the file.
     *
     * @param key field name, ending in its unit
     * @param value the value of a {@link Rates.Steps}
     */
    record Step(String key, ToDoubleFunction<Rates.Steps> value) {}

    static final List<Step> STEPS = List.of(
            new Step("weightG", Rates.Steps::weightG),
            new Step("balanceNmm", Rates.Steps::balanceNmm),
            new Step("swingWeightKgM2", Rates.Steps::swingWeightKgM2),
            new Step("pricePercent", Rates.Steps::pricePercent),
            new Step("stylePoints", Rates.Steps::stylePoints),
            new Step("durabilityClasses", Rates.Steps::durabilityClasses));

    /** What helps where a field is missing: nought would be a wrong rate. */
    static final String COPY = "copy it from the " + RatesFile.NAME + " of a sample catalogue and change its figures";

    /** What helps where there is no file at all. */
    static final String COPY_FILE = "begin with that of a sample catalogue and change its figures";

    private final ObjectNode root;
    private final FaultList faults;
    private final Set<String> asked = new TreeSet<>();

    RatesFields(ObjectNode root, FaultList faults) {
        this.root = root;
        this.faults = faults;
    }

    double number(String name, double min, double max) {
        return number(name, field(name), min, max);
    }

    long whole(String name, long min, long max) {
        return Math.round(whole(name, field(name), min, max));
    }

    String text(String name) {
        JsonNode node = field(name);
        if (node.isTextual() && !node.asText().isBlank() && node.asText().length() <= Limits.TEXT) {
            return node.asText();
        }
        fault(name, node, "is not a name", "text of 1 to " + Limits.TEXT + " characters", "put it in quotation marks");
        return "";
    }

    String currency(String name) {
        JsonNode node = field(name);
        if (node.isTextual() && MoneyDigits.known(node.asText())) {
            return node.asText();
        }
        fault(name, node, "is not a currency", "an ISO 4217 code", "write EUR");
        return "EUR";
    }

    <E extends Enum<E>> Map<E, Double> numbers(
            String name, Map<String, E> keys, Class<E> type, double min, double max) {
        Map<E, Double> values = new EnumMap<>(type);
        ObjectNode node = object(name, keys.keySet());
        if (node == null) {
            return values;
        }
        keys.forEach((key, constant) -> values.put(constant, number(name + "." + key, node.path(key), min, max)));
        return values;
    }

    Map<RodType, List<String>> letters(String name) {
        Map<RodType, List<String>> letters = new EnumMap<>(RodType.class);
        Map<String, RodType> keys = RatesFile.keys(RodType.class);
        ObjectNode node = object(name, keys.keySet());
        if (node == null) {
            return letters;
        }
        keys.forEach((key, type) -> {
            List<String> list = new ArrayList<>();
            for (JsonNode letter : node.path(key)) {
                if (letter.isTextual() && letter.asText().matches("[A-Za-z0-9/]{1,8}")) {
                    list.add(letter.asText());
                }
            }
            if (list.isEmpty() || list.size() != node.path(key).size()) {
                fault(
                        name + "." + key,
                        node.path(key),
                        "is not a list of letters",
                        "a list such as [\"A\", \"B\"]",
                        "write [\"A\"]");
            }
            letters.put(type, list);
        });
        return letters;
    }

    Rates.Steps steps(String name) {
        if (!root.has(name)) {
            asked.add(name);
            return Rates.Steps.ASSUMED;
        }
        ObjectNode node = object(name, STEPS.stream().map(Step::key).toList());
        if (node == null) {
            return Rates.Steps.ASSUMED;
        }
        double[] values = new double[STEPS.size()];
        for (int i = 0; i < values.length; i++) {
            Step step = STEPS.get(i);
            values[i] = node.has(step.key())
                    ? number(name + "." + step.key(), node.path(step.key()), 1e-6, 10_000)
                    : step.value().applyAsDouble(Rates.Steps.ASSUMED);
        }
        return new Rates.Steps(values[0], values[1], values[2], values[3], values[4], values[5]);
    }

    Map<RodType, Long> prices(String name) {
        Map<RodType, Long> prices = new EnumMap<>(RodType.class);
        Map<String, RodType> keys = RatesFile.keys(RodType.class);
        ObjectNode node = object(name, keys.keySet());
        if (node == null) {
            return prices;
        }
        keys.forEach(
                (key, type) -> prices.put(type, Math.round(whole(name + "." + key, node.path(key), 1, 1_000_000_000))));
        return prices;
    }

    /** Tells fields that were never asked for. */
    void tellUnknown() {
        tellUnknown("", root, asked);
    }

    private double whole(String path, JsonNode node, double min, double max) {
        double value = number(path, node, min, max);
        if (value != Math.rint(value)) {
            fault(path, node, "is not a whole number", "a whole number of minor units", "write " + Math.round(value));
        }
        return value;
    }

    private double number(String path, JsonNode node, double min, double max) {
        if (node.isNumber() && node.doubleValue() >= min && node.doubleValue() <= max) {
            return node.doubleValue();
        }
        String problem = node.isMissingNode() ? "is missing" : node.isNumber() ? "is out of range" : "is not a number";
        double nearest = node.isNumber() && node.doubleValue() > max ? max : min;
        String maybe = node.isTextual()
                ? "take the quotation marks away"
                : node.isMissingNode() && min < max ? COPY : "write " + Numbers.plain(nearest);
        fault(path, node, problem, Numbers.plain(min) + " to " + Numbers.plain(max), maybe);
        return min;
    }

    private JsonNode field(String name) {
        asked.add(name);
        return root.path(name);
    }

    /** The object, or null after telling a fault; what would stand in it is not told missing one by one. */
    private @Nullable ObjectNode object(String name, Iterable<String> keys) {
        JsonNode node = field(name);
        Set<String> known = new TreeSet<>();
        keys.forEach(known::add);
        if (node instanceof ObjectNode object) {
            tellUnknown(name + ".", object, known);
            return object;
        }
        fault(
                name,
                node,
                node.isMissingNode() ? "is missing" : "is not an object",
                "{ " + String.join(", ", known) + " }",
                node.isMissingNode() ? COPY : "the braces are missing");
        return null;
    }

    private void tellUnknown(String prefix, ObjectNode node, Set<String> known) {
        node.fieldNames().forEachRemaining(name -> {
            if (!known.contains(name)) {
                String near = NearWord.to(name, known);
                faults.add(
                        0,
                        prefix + name,
                        "",
                        "is not a known field",
                        String.join(", ", known),
                        near.isEmpty() ? "take it out" : "\"" + near + "\" was meant");
            }
        });
    }

    private void fault(String path, JsonNode node, String problem, String allowed, String maybe) {
        String value = node.isMissingNode() ? "" : node.isValueNode() ? node.asText() : node.toString();
        faults.add(0, path, value, problem, allowed, maybe);
    }
}
