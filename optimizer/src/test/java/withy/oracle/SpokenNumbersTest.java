package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.app.AnswerJson;
import withy.app.BuildReader;
import withy.app.Explain;
import withy.app.LighterAnswer;
import withy.app.Progress;
import withy.app.WhyNotAnswer;
import withy.brief.Brief;
import withy.catalog.Part;
import withy.explain.Inquiry;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Style;
import withy.report.LighterText;
import withy.report.WhyNotText;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Protocol;
import withy.rules.Rulebook;
import withy.rules.Unit;
import withy.rules.Verdict;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * Every number of every rendered explanation is one that follows from the builds it names, measured and judged here again, from the brief, or from
 * the values it says were tried.
 */
class SpokenNumbersTest {
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])-?\\d+(\\.\\d+)?");
    private static final QuantityText METRIC = new QuantityText(UnitSystem.METRIC);
    private static final int SEEDS = 8;
    private static int numbers;

    @AfterAll
    static void numbersWereThere() {
        assertTrue(numbers == 0 || numbers > 20 * SEEDS, "numbers compared: " + numbers);
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
            new Page(shop, AnswerJson.write(answer)).holds(WhyNotText.of(answer, METRIC, currency));
        }
        LighterAnswer lighter = Explain.lighter(inquiry, Progress.NONE);
        new Page(shop, AnswerJson.write(lighter)).holds(LighterText.of(lighter, METRIC, currency));
    }

    /** What may be said on one page. */
    private static final class Page {
        private final SmallShop.Case shop;
        private final Brief brief;
        private final List<Rod> rods = new ArrayList<>();
        private final Set<String> may = new HashSet<>();
        private final int digits;

        Page(SmallShop.Case shop, String json) throws Exception {
            this.shop = shop;
            this.brief = shop.query().brief();
            this.digits =
                    Currency.getInstance(shop.catalog().rates().currency()).getDefaultFractionDigits();
            JsonNode answer = new ObjectMapper().readTree(json);
            builds(answer);
            rods.forEach(this::rod);
            rods.forEach(one -> rods.forEach(other -> pair(one, other)));
            shop.catalog().byId().values().forEach(this::part);
            answer.path("flips").forEach(this::flip);
            brief();
            ledger(answer.path("ledger"));
        }

        void holds(String text) {
            String bare = text.replaceAll("\\s+", " ");
            List<String> names = new ArrayList<>();
            shop.catalog()
                    .byId()
                    .values()
                    .forEach(part -> names.add(part.facts().name()));
            names.add(brief.name());
            names.sort(Comparator.comparingInt(String::length).reversed());
            for (String name : names) {
                bare = bare.replace(name, "#");
            }
            bare = bare.replaceAll("Guide \\d+(–\\d+)?", "")
                    .replaceAll("from class \\d|class \\d asks|of size \\d+", "");
            Matcher matcher = NUMBER.matcher(bare);
            while (matcher.find()) {
                numbers++;
                String said =
                        bare.substring(Math.max(0, matcher.start() - 60), Math.min(bare.length(), matcher.end() + 30));
                assertTrue(may.contains(plain(matcher.group())), () -> matcher.group() + " in: " + said);
            }
        }

        /** Every build file anywhere in the answer. */
        private void builds(JsonNode node) throws Exception {
            if (node.has("layout") && node.has("parts")) {
                BuildReader.Reading reading = BuildReader.read(node.toString(), shop.catalog());
                assertEquals(List.of(), reading.faults());
                Build build = Objects.requireNonNull(reading.build());
                rods.add(Rod.measure(shop.catalog(), brief, build));
            }
            for (JsonNode child : node) {
                builds(child);
            }
        }

        private void rod(Rod rod) {
            say(1, rod.figures().weightG());
            money(rod.figures().priceMinor());
            Judge.judge(rod, Rulebook.standard()).forEach(this::verdict);
        }

        private void pair(Rod one, Rod other) {
            say(1, Math.abs(one.figures().weightG() - other.figures().weightG()));
            say(1, Math.hypot(one.figures().weightToleranceG(), other.figures().weightToleranceG()));
            say(
                    0,
                    Math.abs(one.figures().balanceOutsideZoneNmm()
                            - other.figures().balanceOutsideZoneNmm()));
            say(4, Math.abs(one.figures().swingWeightKgM2() - other.figures().swingWeightKgM2()));
            money(Math.abs(one.figures().priceMinor() - other.figures().priceMinor()));
            ObjectiveVector a = vector(one);
            ObjectiveVector b = vector(other);
            say(0, Math.abs(a.styleCenti() - b.styleCenti()) / 100.0);
            say(0, Math.abs(a.durabilityClasses() - b.durabilityClasses()));
        }

        private ObjectiveVector vector(Rod rod) {
            return ObjectiveVector.of(rod, new Style(shop.catalog(), brief), new NiceWishes(brief));
        }

        private void part(Part part) {
            Protocol protocol = new Protocol();
            Rulebook.standard().onCandidate(brief, shop.catalog(), part, protocol);
            protocol.verdicts(Rulebook.standard()).forEach(this::verdict);
        }

        private void verdict(Verdict verdict) {
            for (double value : new double[] {verdict.measured(), verdict.limit()}) {
                if (verdict.unit() == Unit.MINOR) {
                    money(Math.round(value));
                } else if (!Double.isNaN(value)) {
                    for (int decimals = 0; decimals <= 3; decimals++) {
                        say(decimals, value);
                    }
                }
            }
        }

        /** Values that were tried: priorities and weights as they are, prices in the currency, changes as differences. */
        private void flip(JsonNode flip) {
            for (String which : List.of("now", "wins")) {
                if (flip.path(which).isNumber()) {
                    double value = flip.path(which).asDouble();
                    double difference = Math.abs(
                            flip.path("wins").asDouble() - flip.path("now").asDouble());
                    for (double one : new double[] {value, difference, value / 1000, difference / 1000}) {
                        for (int decimals = 0; decimals <= 2; decimals++) {
                            say(decimals, one);
                        }
                    }
                    money(Math.round(value));
                    money(Math.round(difference));
                }
            }
            JsonNode sentence = flip.path("sentence");
            assertNotNull(sentence);
        }

        /** What the customer told. */
        private void brief() {
            for (double mm : new double[] {
                brief.lengthMinMm(), brief.lengthMaxMm(), brief.reachMinMm(), brief.reachMaxMm(), brief.palmMm()
            }) {
                say(1, mm);
                say(2, mm / 1000);
            }
            if (brief.packedMaxMm() != null) {
                say(1, brief.packedMaxMm());
            }
            for (int count :
                    new int[] {brief.piecesMin(), brief.piecesMax(), brief.durabilityClass(), brief.corrosionClass()}) {
                say(0, count);
            }
            say(1, brief.lure().usualG());
            say(1, brief.lure().heaviestG());
            say(1, brief.line().strengthKg());
            say(1, brief.reel().footLengthMm());
            if (brief.leader() != null) {
                say(1, brief.leader().strengthKg());
            }
        }

        /** What a part weighs less, and how many more there are by rule. */
        private void ledger(JsonNode lines) {
            for (JsonNode line : lines) {
                Part now = Objects.requireNonNull(
                        shop.catalog().find(line.path("now").asText()));
                Part part = Objects.requireNonNull(
                        shop.catalog().find(line.path("part").asText()));
                say(2, (now.massMg() - part.massMg()) / 1000.0);
            }
            for (int i = 1; i <= lines.size(); i++) {
                say(0, i);
            }
        }

        private void money(long minor) {
            say(digits, minor / Math.pow(10, digits));
        }

        private void say(int decimals, double value) {
            may.add(plain(String.format(Locale.ROOT, "%." + decimals + "f", value)));
        }

        /** Without needless noughts. */
        private static String plain(String number) {
            return new java.math.BigDecimal(number).stripTrailingZeros().toPlainString();
        }
    }
}
