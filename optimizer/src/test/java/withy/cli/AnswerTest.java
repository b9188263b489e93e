package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.cli.Terminal.Shown;

/** The demo's answer: its sums, its sentences, its schema, its width. */
class AnswerTest {
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");

    private static BigDecimal sum(JsonNode lines, String field) {
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode line : lines) {
            sum = sum.add(new BigDecimal(line.path(field).asText()));
        }
        return sum;
    }

    private static void equal(BigDecimal expected, BigDecimal actual, String what) {
        assertEquals(0, expected.compareTo(actual), what + ": " + expected + " against " + actual);
    }

    private static BigDecimal decimal(JsonNode node) {
        return new BigDecimal(node.asText());
    }

    @Test
    void thereAreBuilds() {
        assertEquals(0, Demo.JSON.code(), Demo.JSON.err());
        assertFalse(Demo.answer().path("builds").isEmpty());
    }

    @Test
    void weightsAddUpExactly() {
        for (JsonNode build : Demo.answer().path("builds")) {
            BigDecimal parts = sum(build.path("parts"), "weightG");
            BigDecimal materials = sum(build.path("materials"), "weightG");
            equal(decimal(build.path("figures").path("weightG")), parts.add(materials), "weight");
            equal(decimal(build.path("weight").path("partsG")), parts, "parts");
            equal(decimal(build.path("weight").path("materialsG")), materials, "materials");
            for (JsonNode part : build.path("parts")) {
                equal(
                        decimal(part.path("weightG")),
                        decimal(part.path("unitWeightG")).multiply(decimal(part.path("count"))),
                        part.path("part").asText());
            }
            for (JsonNode material : build.path("materials")) {
                equal(decimal(material.path("weightG")), sum(material.path("ofWhich"), "weightG"), material.toString());
            }
        }
    }

    @Test
    void priceLinesAddUpExactly() {
        for (JsonNode build : Demo.answer().path("builds")) {
            JsonNode price = build.path("price");
            equal(decimal(price.path("partsMinor")), sum(build.path("parts"), "priceMinor"), "parts");
            equal(decimal(price.path("materialsMinor")), sum(build.path("materials"), "priceMinor"), "materials");
            equal(decimal(price.path("labourMinor")), sum(build.path("labour"), "priceMinor"), "labour");
            equal(decimal(price.path("labourMinutes")), sum(build.path("labour"), "minutes"), "minutes");
            BigDecimal all = BigDecimal.ZERO;
            for (String line : List.of("parts", "materials", "sundries", "labour", "margin", "tax")) {
                all = all.add(decimal(price.path(line + "Minor")));
            }
            equal(decimal(price.path("totalMinor")), all, "total");
            equal(decimal(build.path("figures").path("priceMinor")), all, "figures");
        }
    }

    @Test
    void taxAndMarginFollowTheRates() {
        JsonNode rates = Terminal.tree(read(Terminal.HOME.resolve("catalog-samples/bench/rates.json")));
        for (JsonNode build : Demo.answer().path("builds")) {
            JsonNode price = build.path("price");
            double cost = price.path("partsMinor").asDouble()
                    + price.path("materialsMinor").asDouble()
                    + price.path("sundriesMinor").asDouble()
                    + price.path("labourMinor").asDouble();
            double margin = cost * rates.path("marginPercent").asDouble() / 100;
            assertEquals(margin, price.path("marginMinor").asDouble(), 1.5);
            double tax = (cost + margin) * rates.path("taxPercent").asDouble() / 100;
            assertEquals(tax, price.path("taxMinor").asDouble(), 1.5);
        }
    }

    private static String read(java.nio.file.Path file) {
        try {
            return java.nio.file.Files.readString(file);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void everyVerdictIsLegalAndHasItsSentence() {
        for (JsonNode build : Demo.answer().path("builds")) {
            assertFalse(build.path("verdicts").isEmpty());
            for (JsonNode verdict : build.path("verdicts")) {
                assertTrue(
                        List.of("pass", "notApplicable", "warning")
                                .contains(verdict.path("outcome").asText()),
                        verdict.toString());
                assertFalse(verdict.path("sentence").asText().contains("{"), verdict.toString());
            }
        }
    }

    @Test
    void theLightestLegalBuildIsNoHeavierThanAnyShown() {
        JsonNode lightest = Demo.answer().path("lightestLegal");
        assertTrue(lightest.path("proven").asBoolean());
        for (JsonNode build : Demo.answer().path("builds")) {
            assertTrue(lightest.path("weightG").asDouble()
                    <= build.path("figures").path("weightG").asDouble());
        }
        assertEquals(List.of(), Terminal.faults("build", lightest.path("build").toString()));
    }

    @Test
    void whatIsPartOfAWeightAddsUpToIt() {
        List<String> lines = new Terminal()
                .choosing(c -> Demo.replay(c, offered -> offered))
                .run("demo")
                .out()
                .lines()
                .dropWhile(line -> !line.startsWith("What it weighs"))
                .skip(2)
                .takeWhile(line -> !line.isBlank())
                .toList();
        int split = 0;
        for (int i = 0; i < lines.size(); i++) {
            double sum = 0;
            int parts = 0;
            while (i + parts + 1 < lines.size() && lines.get(i + parts + 1).startsWith("  ")) {
                parts++;
                sum += grams(lines.get(i + parts));
            }
            if (parts > 0 && !lines.get(i).startsWith("  ")) {
                split++;
                assertEquals(grams(lines.get(i)), sum, 0.005 * (parts + 2), lines.get(i));
            }
        }
        assertEquals(3, split);
    }

    /** Of the first build. */
    private static double grams(String line) {
        return Double.parseDouble(
                line.replaceFirst("^ *[a-z ,-]+ {2,}", "").strip().split(" ")[0]);
    }

    @Test
    void numbersInSentencesAreThoseOfTheFigures() {
        int compared = 0;
        for (JsonNode build : Demo.answer().path("builds")) {
            for (JsonNode tradeOff : build.path("tradeOffs")) {
                JsonNode other = Demo.build(tradeOff.path("against").asInt() - 1);
                compared += sentence(build.path("figures"), other.path("figures"), tradeOff);
            }
        }
        int builds = Demo.answer().path("builds").size();
        assertEquals(builds * (builds - 1) * 6, compared);
    }

    /** The demo's best build on every other blank of the bench catalogue: large and small differences of either sign. */
    @Test
    void numbersInSentencesAreThoseOfTheFiguresOnAnyBlank() {
        JsonNode blanks = new Terminal()
                .run("parts", Terminal.BENCH, "--kind", "blank", "--json")
                .json()
                .path("parts");
        int noticeable = 0;
        for (JsonNode blank : blanks) {
            ObjectNode build = (ObjectNode) Demo.build(0).deepCopy();
            for (JsonNode part : build.path("parts")) {
                if (part.path("station").asText().equals("blank")) {
                    ((ObjectNode) part).put("part", blank.path("part").asText());
                }
            }
            JsonNode measured = new Terminal()
                    .choosing(Demo::replay)
                    .typing(build.toString())
                    .run(
                            "measure",
                            "-",
                            "--brief",
                            Terminal.brief("kayak-estuary"),
                            "--catalog",
                            Terminal.BENCH,
                            "--json")
                    .json();
            JsonNode own = measured.path("build");
            JsonNode best = measured.path("best");
            assertEquals(6, own.path("tradeOffs").size());
            for (JsonNode tradeOff : own.path("tradeOffs")) {
                sentence(own.path("figures"), best.path("figures"), tradeOff);
                noticeable += tradeOff.path("noticeable").asBoolean() ? 1 : 0;
            }
            best.path("tradeOffs").forEach(t -> sentence(best.path("figures"), own.path("figures"), t));
        }
        assertTrue(noticeable > blanks.size(), "too few noticeable differences to mean anything: " + noticeable);
    }

    /** Recomputes one trade-off from two builds' figures alone. */
    private static int sentence(JsonNode mine, JsonNode other, JsonNode tradeOff) {
        String objective = tradeOff.path("objective").asText();
        String said = tradeOff.path("sentence").asText();
        double step = step(objective);
        double difference = Math.round((value(mine, objective) - value(other, objective)) * 1e8) / 1e8;
        assertEquals(difference, tradeOff.path("difference").asDouble(), Math.abs(step) * 1e-3, said);
        double tolerance = Math.hypot(
                mine.path("weightToleranceG").asDouble(),
                other.path("weightToleranceG").asDouble());
        boolean equal = objective.equals("weight") && difference != 0 && Math.abs(difference) <= tolerance;
        boolean noticeable = !equal && Math.abs(difference) >= step;
        assertEquals(noticeable, tradeOff.path("noticeable").asBoolean(), said);
        String shown = between(text(objective, value(mine, objective)), text(objective, value(other, objective)));
        boolean none = !shown.matches(".*[1-9].*");
        assertEquals(!noticeable && !equal && !none, said.contains("too little to notice"), said);
        List<String> numbers = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(said.replace("one class", "1 class"));
        while (matcher.find()) {
            numbers.add(matcher.group());
        }
        List<String> expected = equal ? List.of(text("weight", tolerance)) : none ? List.of() : List.of(shown);
        assertEquals(expected, numbers, said);
        return 1;
    }

    /** What a reader gets who subtracts one figure from the other as they are printed. */
    private static String between(String one, String other) {
        return new BigDecimal(one).subtract(new BigDecimal(other)).abs().toPlainString();
    }

    private static double value(JsonNode figures, String objective) {
        return switch (objective) {
            case "weight" -> figures.path("weightG").asDouble();
            case "balance" -> figures.path("balanceOutsideZoneNmm").asDouble();
            case "swingWeight" -> figures.path("swingWeightKgM2").asDouble();
            case "price" -> figures.path("priceMinor").asDouble();
            case "style" -> figures.path("style").asDouble();
            case "durability" -> figures.path("durabilityMargin").asDouble();
            default -> throw new AssertionError(objective);
        };
    }

    private static double step(String objective) {
        JsonNode steps = Demo.answer().path("brief").path("steps");
        return switch (objective) {
            case "weight" -> steps.path("weightG").asDouble();
            case "balance" -> steps.path("balanceNmm").asDouble();
            case "swingWeight" -> steps.path("swingWeightKgM2").asDouble();
            case "price" -> steps.path("priceMinor").asDouble();
            case "style" -> steps.path("stylePoints").asDouble();
            default -> steps.path("durabilityClasses").asDouble();
        };
    }

    private static String text(String objective, double size) {
        return switch (objective) {
            case "weight" -> String.format(Locale.ROOT, "%.1f", size);
            case "swingWeight" -> String.format(Locale.ROOT, "%.4f", size);
            case "price" -> String.format(Locale.ROOT, "%.2f", size / 100);
            default -> String.format(Locale.ROOT, "%.0f", size);
        };
    }

    @Test
    void everyAnswerKeepsItsPublishedSchema() {
        assertEquals(List.of(), Terminal.faults("answer", Demo.JSON.out()));
        assertEquals(
                List.of(), Terminal.faults("brief", Demo.answer().path("brief").toString()));
        assertEquals(List.of(), Terminal.faults("build", Demo.build(0).toString()));
        assertEquals(
                List.of(),
                Terminal.faults(
                        "parts",
                        new Terminal().run("parts", Terminal.BENCH, "--json").out()));
        for (String catalogue : List.of(Terminal.BENCH, Terminal.BROKEN)) {
            assertEquals(
                    List.of(),
                    Terminal.faults(
                            "check",
                            new Terminal().run("check", catalogue, "--json").out()));
        }
        Shown measured = new Terminal()
                .choosing(Demo::replay)
                .typing(Demo.build(0).toString())
                .run("measure", "-", "--brief", Terminal.brief("kayak-estuary"), "--catalog", Terminal.BENCH, "--json");
        assertEquals(List.of(), Terminal.faults("measure", measured.out()));
    }

    @Test
    void theSchemasRefuseWhatIsNotAnAnswer() {
        for (String name : SchemaCommand.NAMES) {
            assertFalse(Terminal.faults(name, "[]").isEmpty(), name);
            assertFalse(Terminal.faults(name, "{\"schema\": 2}").isEmpty(), name);
        }
        String unnamed = Demo.JSON.out().replaceFirst("\"rank\"", "\"place\"");
        assertFalse(Terminal.faults("answer", unnamed).isEmpty());
    }

    @Test
    void noLineIsWiderThanTheTerminal() {
        for (String units : List.of("metric", "imperial", "both")) {
            narrow(new Terminal().choosing(Demo::replay).run("demo", "--units", units));
            narrow(new Terminal().run("parts", Terminal.BENCH, "--units", units));
            narrow(new Terminal()
                    .choosing(Demo::replay)
                    .typing(Demo.build(0).toString())
                    .run(
                            "measure",
                            "-",
                            "--brief",
                            Terminal.brief("kayak-estuary"),
                            "--catalog",
                            Terminal.BENCH,
                            "--units",
                            units));
        }
        narrow(new Terminal().run("check", Terminal.BROKEN));
        narrow(new Terminal().run("--help"));
        for (String command : List.of(
                "demo", "propose", "measure", "bend", "bendtest", "check", "parts", "schema", "completion", "man")) {
            narrow(new Terminal().run(command, "--help"));
        }
    }

    private static void narrow(Shown shown) {
        assertFalse(shown.out().isEmpty(), shown.err());
        shown.out()
                .lines()
                .forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= 80, line.length() + ": " + line));
    }

    @Test
    void theSameInputGivesTheSameAnswer() {
        Shown again = new Terminal().choosing(Demo::replay).run("demo", "--json");
        assertEquals(Demo.JSON.out(), again.out());
    }
}
