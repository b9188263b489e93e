package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.catalog.Part;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Style;
import withy.rod.Figures;
import withy.rod.Rod;
import withy.rules.Unit;
import withy.rules.Verdict;

/** Numbers that stand in fields of an answer, and which way and in which order its sentences tell them, from builds measured here again. */
final class Written {
    private static final Pattern SLOT = Pattern.compile("\\{(measured|limit|miss|unit|part|other)}");

    /** Words for less and for more of an objective, as a reader takes them. */
    private static final Map<Objective, String[]> WAYS = Map.of(
            Objective.WEIGHT, new String[] {" lighter", " heavier"},
            Objective.BALANCE, new String[] {"nearer the|less (tip|butt)-heavy", "further from|more (tip|butt)-heavy"},
            Objective.SWING_WEIGHT, new String[] {"lighter to swing", "heavier to swing"},
            Objective.PRICE, new String[] {"cheaper", "dearer"},
            Objective.STYLE, new String[] {"lower in looks", "higher in looks"},
            Objective.DURABILITY, new String[] {"less sturdy", "sturdier"});

    private Written() {}

    /** Weight, price and balance point of a build. */
    static void build(SmallShop.Case shop, JsonNode line) {
        if (line.path("build").isObject()) {
            Rod rod = rod(shop, line.path("build"));
            Figures figures = rod.figures();
            assertEquals(figures.weightG(), line.path("weightG").asDouble(), 1e-3, line::toString);
            assertEquals(figures.priceMinor(), line.path("priceMinor").asLong(), line::toString);
            assertEquals(
                    figures.balanceFromReelFootMm(),
                    line.path("balanceFromReelFootMm").asDouble(),
                    1e-2,
                    line::toString);
        }
    }

    /** What a lighter part saves, by itself and in the rod. */
    static void saved(SmallShop.Case shop, JsonNode line, @Nullable Rod rod, Rod first) {
        Part now = Objects.requireNonNull(shop.catalog().find(line.path("now").asText()));
        Part part = Objects.requireNonNull(shop.catalog().find(line.path("part").asText()));
        double own = (now.massMg() - part.massMg()) / 1000.0;
        assertEquals(own, line.path("partSavesG").asDouble(), 1e-6, line::toString);
        if (rod != null) {
            double whole = first.figures().weightG() - rod.figures().weightG();
            assertEquals(whole, line.path("rodSavesG").asDouble(), 2e-3, line::toString);
        }
    }

    /** What one build has more than another, with its sign, and the word for it. */
    static void tradeOff(SmallShop.Case shop, JsonNode tradeOff, Objective objective, Rod one, Rod other) {
        double difference = difference(shop, objective, one, other);
        double said = tradeOff.path("difference").asDouble();
        double near = objective == Objective.SWING_WEIGHT ? 2e-6 : 2e-2;
        assertEquals(difference, said, near, tradeOff::toString);
        String sentence = tradeOff.path("sentence").asText();
        String wrong = WAYS.get(objective)[difference < 0 ? 1 : 0];
        assertFalse(Pattern.compile(wrong).matcher(sentence).find(), tradeOff::toString);
        boolean large = Math.abs(difference) >= shop.query().brief().step(objective);
        boolean weighed = objective != Objective.WEIGHT
                || Math.abs(difference)
                        > Math.hypot(
                                one.figures().weightToleranceG(),
                                other.figures().weightToleranceG());
        assertEquals(large && weighed, tradeOff.path("noticeable").asBoolean(), tradeOff::toString);
    }

    private static double difference(SmallShop.Case shop, Objective objective, Rod one, Rod other) {
        Figures a = one.figures();
        Figures b = other.figures();
        return switch (objective) {
            case WEIGHT -> a.weightG() - b.weightG();
            case BALANCE -> a.balanceOutsideZoneNmm() - b.balanceOutsideZoneNmm();
            case SWING_WEIGHT -> a.swingWeightKgM2() - b.swingWeightKgM2();
            case PRICE -> a.priceMinor() - b.priceMinor();
            case STYLE -> (vector(shop, one).styleCenti() - vector(shop, other).styleCenti()) / 100.0;
            case DURABILITY ->
                vector(shop, one).durabilityClasses() - vector(shop, other).durabilityClasses();
        };
    }

    private static ObjectiveVector vector(SmallShop.Case shop, Rod rod) {
        var brief = shop.query().brief();
        return ObjectiveVector.of(rod, new Style(shop.catalog(), brief), new NiceWishes(brief));
    }

    /** What was measured and what is allowed, in the fields and where the sentence has the one and the other. */
    static void verdict(JsonNode breach, List<Verdict> judged) {
        assertTrue(judged.stream().anyMatch(verdict -> same(breach, verdict)), () -> breach + " against " + judged);
        assertTrue(judged.stream().anyMatch(verdict -> told(breach, verdict)), () -> breach + " against " + judged);
    }

    private static boolean same(JsonNode breach, Verdict verdict) {
        return near(breach.path("measured"), verdict.measured()) && near(breach.path("limit"), verdict.limit());
    }

    private static boolean near(JsonNode said, double value) {
        return said.isNumber() ? Math.abs(said.asDouble() - value) <= 1e-3 : Double.isNaN(value);
    }

    private static boolean told(JsonNode breach, Verdict verdict) {
        String message = withy.rules.Sentences.messages().get(withy.rules.Sentences.key(verdict));
        List<String> slots = new ArrayList<>();
        StringBuilder pattern = new StringBuilder();
        Matcher slot = SLOT.matcher(message);
        int from = 0;
        boolean percent = message.contains(" %");
        while (slot.find()) {
            boolean number = List.of("measured", "limit", "miss").contains(slot.group(1));
            pattern.append(Pattern.quote(message.substring(from, slot.start())));
            pattern.append(number ? "(-?[\\d.]*)" : "(.*?)");
            slots.add(slot.group(1));
            from = slot.end();
        }
        pattern.append(Pattern.quote(message.substring(from)));
        Matcher said = Pattern.compile(pattern.toString())
                .matcher(breach.path("sentence").asText());
        boolean right = said.matches();
        for (int i = 0; right && i < slots.size(); i++) {
            String group = said.group(i + 1);
            String number = percent && slots.get(i).matches("measured|limit") ? hundredth(group) : group;
            right = switch (slots.get(i)) {
                case "measured" -> rounded(number, verdict, verdict.measured(), percent);
                case "limit" -> rounded(number, verdict, verdict.limit(), percent);
                case "miss" -> rounded(number, verdict, Math.abs(verdict.measured() - verdict.limit()), percent);
                default -> true;
            };
        }
        return right;
    }

    private static String hundredth(String percent) {
        return percent.isEmpty()
                ? percent
                : new BigDecimal(percent).movePointLeft(2).toPlainString();
    }

    /** True where a number is a value to as many places as its unit is told with; money is told in whole units of the currency with two places. */
    private static boolean rounded(String number, Verdict verdict, double value, boolean percent) {
        if (number.isEmpty() || Double.isNaN(value)) {
            return number.isEmpty() && Double.isNaN(value);
        }
        double whole = verdict.unit() == Unit.MINOR ? value / 100 : value;
        double half = switch (verdict.unit()) {
            case MM -> rodsApart(verdict, value) ? 0.5 : 0.005;
            case GAUGE, MINOR -> 0.005;
            case KG -> Math.abs(verdict.measured() - verdict.limit()) > 0.11 ? 0.05 : 0.0005;
            case RATIO -> apart(verdict, percent) ? 0.005 : 0.0005;
            case G -> 0.0005;
            case RING_SIZE -> 0.05;
            case COUNT, CLASS -> 0.5;
        };
        return Math.abs(Double.parseDouble(number) - whole) <= half + 1e-6;
    }

    /** Lengths of rods that differ in whole millimetres. */
    private static boolean rodsApart(Verdict verdict, double value) {
        return Math.min(value, Math.min(verdict.measured(), verdict.limit())) >= 600
                && Math.round(verdict.measured()) != Math.round(verdict.limit());
    }

    /** Percents that differ in whole ones; ratios by more than a hundredth. */
    private static boolean apart(Verdict verdict, boolean percent) {
        return percent
                ? Math.round(verdict.measured() * 100) != Math.round(verdict.limit() * 100)
                : Math.abs(verdict.measured() - verdict.limit()) > 0.011;
    }

    /** Before "instead of" stands what would win, after it what is. */
    static void flip(SmallShop.Case shop, JsonNode flip) {
        String sentence = flip.path("sentence").asText();
        int middle = sentence.indexOf(" instead of ");
        if (middle >= 0) {
            value(shop, flip, "wins", sentence.substring(0, middle));
            value(shop, flip, "now", sentence.substring(middle));
        }
    }

    private static void value(SmallShop.Case shop, JsonNode flip, String which, String words) {
        double value = flip.path(which).asDouble();
        boolean money = flip.path("unit").asText().equals("minor");
        MaySay may = new MaySay(shop);
        if (money) {
            may.money(Math.round(value));
        } else {
            for (int decimals = 0; decimals <= 2; decimals++) {
                may.say(decimals, value);
            }
        }
        may.holds(words);
    }

    private static Rod rod(SmallShop.Case shop, JsonNode file) {
        try {
            return new MaySay(shop).read(file);
        } catch (Exception e) {
            throw new AssertionError(file.toString(), e);
        }
    }
}
