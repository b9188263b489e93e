package withy.catalog;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads and writes {@code rates.json}. */
final class RatesFile {
    static final String NAME = "rates.json";

    /** Version of the file this program reads. */
    static final int SCHEMA = 1;

    /** Used only to go on looking for faults in the other files where rates.json can't be read. */
    static final Rates STAND_IN = new Rates(
            "EUR",
            0,
            0,
            0,
            0,
            new EnumMap<>(Operation.class),
            0,
            "",
            "",
            Map.of(),
            0,
            0,
            0,
            0,
            0,
            Map.of(),
            0,
            Rates.Steps.ASSUMED,
            Map.of());

    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private RatesFile() {}

    /** The rates, or null after telling faults. */
    static @Nullable Rates read(String text, FaultList faults) {
        JsonNode root;
        try {
            root = JSON.readTree(text);
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
            faults.add(
                    line,
                    "",
                    "",
                    "is not JSON: " + e.getOriginalMessage().lines().findFirst().orElse(""),
                    "one JSON object",
                    "a comma, quote or brace is missing on this line or the one above");
            return null;
        }
        if (!root.isObject()) {
            faults.add(0, "", "", "is not a JSON object", "{ \"schema\": 1, … }", "the braces are missing");
            return null;
        }
        if (newerSchema(root, faults)) {
            return null;
        }
        int before = faults.size();
        RatesFields fields = new RatesFields((ObjectNode) root, faults);
        Rates rates = rates(fields);
        fields.tellUnknown();
        return faults.size() == before ? rates : null;
    }

    private static boolean newerSchema(JsonNode root, FaultList faults) {
        JsonNode schema = root.path("schema");
        if (schema.isInt() && schema.intValue() > SCHEMA) {
            faults.add(
                    0,
                    "schema",
                    schema.asText(),
                    "is newer than this program, which reads schema " + SCHEMA,
                    String.valueOf(SCHEMA),
                    "install the version of Withy that reads schema " + schema.intValue());
            return true;
        }
        return false;
    }

    private static Rates rates(RatesFields in) {
        in.number("schema", 1, SCHEMA);
        return new Rates(
                in.currency("currency"),
                in.number("taxPercent", 0, 100),
                in.number("marginPercent", 0, 500),
                in.whole("hourlyRateMinor", 0, 100_000_000),
                in.number("labourDiscountPercent", 0, 100),
                in.numbers("labourMinutes", keys(Operation.class), Operation.class, 0, 600),
                in.whole("sundriesMinor", 0, 100_000_000),
                in.text("houseFinish"),
                in.text("houseAdhesive"),
                in.letters("threadLetters"),
                in.number("finishFilmMm", 0.05, 2),
                in.number("adhesiveFilmMm", 0.01, 1),
                in.number("finishMixMinMl", 0, 100),
                in.number("adhesiveMixMl", 0, 200),
                in.number("tapeDensityGMm3", 0.0001, 0.01),
                in.numbers("houseTolerancePercent", keys(PartKind.class), PartKind.class, 0, 50),
                in.number("workmanshipToleranceG", 0, 50),
                in.steps("steps"),
                in.prices("usualPriceMinor"));
    }

    static <E extends Enum<E>> Map<String, E> keys(Class<E> type) {
        Map<String, E> keys = new LinkedHashMap<>();
        for (E constant : type.getEnumConstants()) {
            keys.put(key(constant), constant);
        }
        return keys;
    }

    /** The constant's name in camelCase. */
    static String key(Enum<?> constant) {
        StringBuilder key = new StringBuilder();
        for (String word : constant.name().toLowerCase(Locale.ROOT).split("_", -1)) {
            key.append(key.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
        }
        return key.toString();
    }

    /** Canonical text: fields in one order, numbers in their shortest plain form, line feeds. */
    static String text(Rates rates) {
        ObjectNode root = JSON.createObjectNode();
        root.put("schema", SCHEMA);
        root.put("currency", rates.currency());
        number(root, "taxPercent", rates.taxPercent());
        number(root, "marginPercent", rates.marginPercent());
        root.put("hourlyRateMinor", rates.hourlyRateMinor());
        number(root, "labourDiscountPercent", rates.labourDiscountPercent());
        numbers(root.putObject("labourMinutes"), rates.labourMinutes());
        root.put("sundriesMinor", rates.sundriesMinor());
        root.put("houseFinish", rates.houseFinish());
        root.put("houseAdhesive", rates.houseAdhesive());
        ObjectNode letters = root.putObject("threadLetters");
        rates.threadLetters().forEach((type, list) -> {
            ArrayNode array = letters.putArray(key(type));
            list.forEach(array::add);
        });
        number(root, "finishFilmMm", rates.finishFilmMm());
        number(root, "adhesiveFilmMm", rates.adhesiveFilmMm());
        number(root, "finishMixMinMl", rates.finishMixMinMl());
        number(root, "adhesiveMixMl", rates.adhesiveMixMl());
        number(root, "tapeDensityGMm3", rates.tapeDensityGMm3());
        numbers(root.putObject("houseTolerancePercent"), rates.houseToleranceG());
        number(root, "workmanshipToleranceG", rates.workmanshipToleranceG());
        ObjectNode steps = root.putObject("steps");
        for (RatesFields.Step step : RatesFields.STEPS) {
            number(steps, step.key(), step.value().applyAsDouble(rates.steps()));
        }
        ObjectNode prices = root.putObject("usualPriceMinor");
        rates.usualPriceMinor().forEach((type, minor) -> prices.put(key(type), minor));
        return printed(root);
    }

    private static void numbers(ObjectNode node, Map<? extends Enum<?>, Double> values) {
        values.forEach((constant, value) -> number(node, key(constant), value));
    }

    private static void number(ObjectNode node, String name, double value) {
        node.put(name, new BigDecimal(Numbers.plain(value)));
    }

    private static String printed(ObjectNode root) {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter()
                .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                .withSeparators(
                        Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER));
        try {
            return JSON.writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("rates can't be written as JSON", e);
        }
    }
}
