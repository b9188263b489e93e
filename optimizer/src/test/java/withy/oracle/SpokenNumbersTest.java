package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.app.AnswerJson;
import withy.app.Explain;
import withy.app.LighterAnswer;
import withy.app.Progress;
import withy.app.WhyNotAnswer;
import withy.catalog.Part;
import withy.explain.Inquiry;
import withy.report.LighterText;
import withy.report.WhyNotText;
import withy.rod.Rod;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * Every number of every rendered explanation is one that follows from the builds it names, measured and judged here again, from the brief, or from
 * the values it says were tried; and every number of a sentence from the builds that this sentence speaks of ({@link Sentences}).
 */
class SpokenNumbersTest {
    private static final QuantityText METRIC = new QuantityText(UnitSystem.METRIC);
    private static final int SEEDS = 8;
    private static final ObjectMapper JSON = new ObjectMapper();
    private static int numbers;
    private static int sentences;

    @AfterAll
    static void numbersWereThere() {
        assertTrue(numbers == 0 || numbers > 20 * SEEDS, "numbers compared: " + numbers);
        assertTrue(numbers == 0 || sentences > 20 * SEEDS, "numbers in sentences: " + sentences);
    }

    @TestFactory
    Stream<DynamicTest> everyNumber() {
        return LongStream.range(0, SEEDS).mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> every(seed)));
    }

    private static void every(long seed) throws Exception {
        SmallShop.Case shop = SmallShop.of(seed, 1_000);
        Inquiry inquiry = ExplainedTest.inquiry(shop.catalog(), shop.query().brief());
        if (inquiry.first() == null) {
            return;
        }
        Currency currency = Currency.getInstance(shop.catalog().rates().currency());
        List<Part> parts = List.copyOf(shop.catalog().byId().values());
        for (int i = 0; i < parts.size(); i += 1 + parts.size() / 4) {
            WhyNotAnswer answer = Explain.whyNot(inquiry, Set.of(parts.get(i).id()));
            JsonNode written = published("whynot", AnswerJson.write(answer), shop);
            new Page(shop, written).holds(WhyNotText.of(answer, METRIC, currency));
            sentences += new Sentences(shop).whyNot(written);
        }
        LighterAnswer lighter = Explain.lighter(inquiry, Progress.NONE);
        JsonNode written = published("lighter", AnswerJson.write(lighter), shop);
        new Page(shop, written).holds(LighterText.of(lighter, METRIC, currency));
        sentences += new Sentences(shop).lighter(written);
    }

    /** What is written, held to the schema published for it; a small shop was read from no files, so it has no hash of its own. */
    private static JsonNode published(String schema, String written, SmallShop.Case shop) throws Exception {
        String json = written.replace('"' + shop.catalog().hash() + '"', "\"00000000\"");
        try (InputStream file = Objects.requireNonNull(
                AnswerJson.class.getResourceAsStream("/withy/schema/" + schema + ".schema.json"))) {
            List<String> faults = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(new String(file.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON)
                    .validate(json, InputFormat.JSON)
                    .stream()
                    .map(Object::toString)
                    .toList();
            assertEquals(List.of(), faults, json);
        }
        return JSON.readTree(json);
    }

    /** What may be said on one page. */
    private static final class Page {
        private final SmallShop.Case shop;
        private final List<Rod> rods = new ArrayList<>();
        private final MaySay may;

        Page(SmallShop.Case shop, JsonNode answer) throws Exception {
            this.shop = shop;
            this.may = new MaySay(shop);
            builds(answer);
            rods.forEach(may::rod);
            rods.forEach(one -> rods.forEach(other -> may.pair(one, other)));
            shop.catalog().byId().values().forEach(may::part);
            answer.path("flips").forEach(may::flip);
            may.brief();
            ledger(answer.path("ledger"));
        }

        void holds(String text) {
            may.holds(text);
            numbers += may.numbers();
        }

        /** Every build file anywhere in the answer. */
        private void builds(JsonNode node) throws Exception {
            if (node.has("layout") && node.has("parts")) {
                rods.add(may.read(node));
            }
            for (JsonNode child : node) {
                builds(child);
            }
        }

        /** What a part weighs less, and how many more there are by rule. */
        private void ledger(JsonNode lines) {
            for (JsonNode line : lines) {
                Part now = Objects.requireNonNull(
                        shop.catalog().find(line.path("now").asText()));
                Part part = Objects.requireNonNull(
                        shop.catalog().find(line.path("part").asText()));
                may.say(2, (now.massMg() - part.massMg()) / 1000.0);
            }
            for (int i = 1; i <= lines.size(); i++) {
                may.say(0, i);
            }
        }
    }
}
