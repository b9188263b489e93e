package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Terminal.Shown;
import withy.rod.Station;
import withy.search.Proposal;

/** Every command and every exit code, through the command line as typed. */
class CommandsTest {
    @TempDir
    private Path folder;

    private final Terminal terminal = new Terminal().choosing(Demo::replay);

    private static void told(Shown shown, int code, String... words) {
        assertEquals(code, shown.code(), shown.err() + shown.out());
        for (String word : words) {
            assertTrue(shown.err().contains(word), () -> "'" + word + "' is missing in: " + shown.err());
        }
        assertFalse(shown.err().contains("\tat "), shown.err());
        boolean maybe = shown.err().lines().anyMatch(line -> line.startsWith("Maybe "));
        assertTrue(maybe || code == 130 || code == 4, shown.err());
    }

    @Test
    void theDemoShowsBuildsAndTalksToNobody() {
        Shown shown = terminal.run("demo");
        assertEquals(0, shown.code(), shown.err());
        assertEquals("", shown.err());
        assertTrue(shown.out().contains("\n1  "), shown.out());
        assertTrue(shown.out().contains("Carbon conducts electricity"), shown.out());
    }

    @Test
    void theExampleOfTheReadmeIsWhatTheDemoPrints() throws IOException {
        String readme = Files.readString(Terminal.HOME.resolve("README.md"));
        String example = readme.substring(readme.indexOf("    Kayak estuary, "), readme.indexOf("`withy bend` tells"));
        assertTrue(example.lines().allMatch(line -> line.isEmpty() || line.startsWith("    ")), example);
        String printed =
                example.lines().map(line -> line.replaceFirst("^ {4}", "")).collect(Collectors.joining("\n"));
        Shown shown = new Terminal().choosing(Demo::replay).run("demo");
        assertTrue(
                shown.out().startsWith(printed.strip()),
                () -> "the README says\n" + printed + "\nbut it is\n" + shown.out());
    }

    @Test
    void aBriefMayComeFromStandardInputAndTheCatalogueFromTheEnvironment() throws IOException {
        String brief = Files.readString(Path.of(Terminal.brief("kayak-estuary")));
        Shown shown =
                terminal.with("WITHY_CATALOG", Terminal.BENCH).typing(brief).run("propose", "-", "--json");
        assertEquals(0, shown.code(), shown.err());
        assertEquals(Demo.JSON.out(), shown.out());
    }

    @Test
    void overridesReachTheBrief() {
        Shown shown = terminal.run("demo", "--priority", "price=9", "--without", "no-such-part-at-all");
        told(shown, 2, "--without: no-such-part-at-all", "an id of the catalogue");
        told(terminal.run("demo", "--priority", "price=9", "--priority", "price=8"), 2, "price=8", "price once");
        Shown json = terminal.run("demo", "--priority", "price=9", "--budget", "750", "--json");
        // the recorded builds were scored by other priorities: what counts here is the brief in the answer
        assertEquals(
                9, json.json().path("brief").path("priorities").path("price").asDouble());
        assertEquals(75000, json.json().path("brief").path("budgetMinor").asLong());
    }

    @Test
    void aBuildThatTheJudgeRefusesIsOurFaultAndNeverShown() {
        Shown shown = terminal.choosing(catalog -> Demo.replay(catalog, CommandsTest::withoutTip))
                .run("demo");
        told(shown, 1, "tip-top");
        assertEquals("", shown.out());
    }

    private static List<Proposal> withoutTip(List<Proposal> offered) {
        Proposal p = offered.get(0);
        return List.of(new Proposal(
                1,
                p.build().without(Station.TIP_TOP),
                p.objectives(),
                p.score(),
                p.bound(),
                p.gap(),
                p.proven(),
                p.strength()));
    }

    @Test
    void aBuildThatMeasuresOtherwiseThanSaidIsOurFault() {
        Shown shown = terminal.choosing(catalog -> Demo.replay(catalog, CommandsTest::lighterThanItIs))
                .run("demo");
        told(shown, 1, "the search said");
        assertEquals("", shown.out());
    }

    private static List<Proposal> lighterThanItIs(List<Proposal> offered) {
        Proposal p = offered.get(0);
        var o = p.objectives();
        var lighter = new withy.objectives.ObjectiveVector(
                o.weightMg() - 1,
                o.outsideMgMm(),
                o.inertiaMgMm2(),
                o.costMilli(),
                o.styleCenti(),
                o.durabilityClasses(),
                o.missedMilliSteps());
        return List.of(new Proposal(1, p.build(), lighter, p.score(), p.bound(), p.gap(), p.proven(), p.strength()));
    }

    @Test
    void usageFaultsEndWithTwo() {
        told(terminal.run("propose"), 2, "BRIEF");
        told(terminal.run("propose", "x.json"), 2, "No catalogue is named");
        told(terminal.run("demo", "--units", "furlongs"), 2, "--units furlongs: allowed is metric, imperial or both.");
        told(terminal.run("demo", "--budget", "5", "--budget", "6"), 2, "--budget is given twice.");
        told(terminal.run("demo", "--budgt", "5"), 2, "There is no option --budgt.", "Maybe --budget was meant.");
        told(terminal.run("demo", "now"), 2, "\"now\" is a word too many.");
        told(terminal.run("measure", "x.json"), 2, "--brief BRIEF is missing: The brief it is judged by.");
        told(terminal.run("proposse"), 2, "There is no withy proposse.", "Maybe propose or");
        told(terminal.run("stock", "x", "--count", "4", "--receive", "2"), 2, "--count and --receive.");
        told(terminal.run("stock", "x", "--count", "four"), 2, "--count four: allowed is a whole number.");
        told(terminal.run("job", "1", "--weighed"), 2, "--weighed WEIGHT is missing: The finished rod weighs so much.");
        told(terminal.run("weigh", "x", "-3g"), 2, "Maybe the minus sign is a slip");
        told(terminal.run("demo", "--date", "31.5.2026"), 2, "31.5.2026");
        told(terminal.run("demo", "--priority", "wieght=5"), 2, "wieght", "weight");
        told(terminal.run("demo", "--budget", "-1"), 2, "--budget");
        told(terminal.run("parts", Terminal.BENCH, "--kind", "gide"), 2, "guide");
        told(terminal.run("parts", Terminal.BENCH, "--max-weight", "20 mm"), 2, "--max-weight 20 mm");
        told(terminal.run("parts", Terminal.BENCH, "--fits-blank", "nothing"), 2, "--fits-blank nothing");
        told(terminal.run("schema", "answers"), 2, "answer");
        told(terminal.run("man", "propos"), 2, "propose");
    }

    @Test
    void badDataEndsWithThreeAndTellsEveryFault() throws IOException {
        Path brief = folder.resolve("brief.json");
        Files.writeString(brief, "{\"rodTyp\": \"spinning\", \"budgetMinor\": -5}");
        told(terminal.run("propose", brief.toString(), "--catalog", Terminal.BENCH), 3, "rodTyp", "budgetMinor");
        told(
                terminal.run(
                        "propose",
                        brief.toString(),
                        "--catalog",
                        folder.resolve("none").toString()),
                3,
                "not a folder");
        Shown check = terminal.run("check", Terminal.BROKEN);
        assertEquals(3, check.code());
        assertTrue(check.out().contains("Maybe "), check.out());
        assertEquals("", check.err());
    }

    @Test
    void anImpossibleBriefEndsWithFourAndSaysWhy() {
        Shown shown = terminal.choosing(catalog -> Demo.replay(catalog, offered -> List.of()))
                .run("demo");
        told(shown, 4);
        assertTrue(shown.out().contains("No build of this catalogue keeps every rule"), shown.out());
        assertTrue(shown.out().replaceAll("\\s+", " ").contains("At most 720.00 EUR."), shown.out());
    }

    @Test
    void whatCannotBeReadEndsWithFive() {
        told(
                terminal.run("propose", folder.resolve("no.json").toString(), "--catalog", Terminal.BENCH),
                5,
                "no such file");
        told(terminal.run("propose", folder.toString(), "--catalog", Terminal.BENCH), 5, "it is a folder");
    }

    @Test
    void anInterruptShowsTheBestSoFarAndEndsWith130() {
        AtomicBoolean pressed = new AtomicBoolean();
        Shown shown = new Terminal()
                .interruptedWhen(pressed::get)
                .choosing(catalog -> Demo.replay(catalog, offered -> {
                    pressed.set(true);
                    return offered.subList(0, 1);
                }))
                .run("demo");
        told(shown, 130, "Interrupted");
        assertTrue(shown.out().contains("Stopped before the end"), shown.out());
        assertTrue(shown.out().contains("\n1  "), shown.out());
    }

    @Test
    void longWorkTellsTheBestSoFar() {
        AtomicLong seconds = new AtomicLong();
        Shown shown =
                terminal.clock(() -> seconds.getAndAdd(1) * 1_000_000_000L).run("demo");
        assertEquals(0, shown.code());
        String weight =
                shown.out().lines().filter(l -> l.startsWith("   ")).findFirst().orElse("");
        String grams = weight.split(" · ")[1];
        assertTrue(shown.err().contains("best so far " + grams), shown.err());
    }

    @Test
    void ownBuildsAreMeasuredBesideTheBest() throws IOException {
        Path build = folder.resolve("build.json");
        Files.writeString(build, cut(0).toString());
        Shown shown = measure(build, "--json");
        assertEquals(0, shown.code(), shown.err());
        assertEquals(Demo.build(0).path("figures"), shown.json().path("build").path("figures"));
        assertEquals(Demo.build(0).path("parts"), shown.json().path("build").path("parts"));
        assertEquals(Demo.build(0).path("price"), shown.json().path("best").path("price"));
        String text = measure(build).out();
        assertTrue(text.contains("It keeps every rule.\nIt is the best build for this brief."), text);
        assertFalse(text.contains("They differ in"), text);
    }

    @Test
    void anIllegalBuildIsMeasuredAndEndsWithFour() throws IOException {
        ObjectNode node = cut(0);
        ArrayNode parts = (ArrayNode) node.path("parts");
        for (int i = 0; i < parts.size(); i++) {
            if (parts.path(i).path("station").asText().equals("tipTop")) {
                parts.remove(i);
            }
        }
        Path build = folder.resolve("build.json");
        Files.writeString(build, node.toString());
        Shown shown = measure(build);
        assertEquals(4, shown.code(), shown.err());
        assertTrue(shown.out().contains("It breaks these rules:"), shown.out());
        assertTrue(shown.out().contains("tip-top on the tip"), shown.out());
    }

    @Test
    void everyFaultOfABuildIsToldWithItsPlace() throws IOException {
        String seat = Demo.build(0).path("parts").findValuesAsText("part").stream()
                .filter(id -> id.length() > 6)
                .findFirst()
                .orElseThrow();
        Path build = folder.resolve("build.json");
        Files.writeString(build, """
            {"layout": {"reelFootMm": 0, "handle": "halved", "guideCount": 2, "guides": 3},
             "parts": [
              {"station": "tipTpo", "part": "%s"},
              {"station": "guide-3", "part": "%sx"}
             ]}
            """.formatted(seat, seat));
        Shown shown = measure(build);
        told(
                shown,
                3,
                "layout.reelFootMm (line 1",
                "layout.handle",
                "layout.guides",
                "parts[0].station (line 3",
                "\"tipTop\" was meant",
                "parts[1].station (line 4",
                "\"" + seat + "\" was meant");
        assertEquals("", shown.out());
        Files.writeString(build, Demo.JSON.out());
        told(measure(build), 3, "several builds; allowed is one build");
    }

    private Shown measure(Path build, String... more) {
        List<String> args = new ArrayList<>(List.of(
                "measure", build.toString(), "--brief", Terminal.brief("kayak-estuary"), "--catalog", Terminal.BENCH));
        args.addAll(List.of(more));
        return terminal.run(args.toArray(new String[0]));
    }

    /** An entry of the demo's builds, cut down to layout and parts. */
    private static ObjectNode cut(int index) {
        ObjectNode entry = (ObjectNode) Demo.build(index).deepCopy();
        entry.retain("layout", "parts");
        return entry;
    }

    @Test
    void partsAreFilteredInTheUsersUnits() {
        Shown seats = terminal.run("parts", Terminal.BENCH, "--kind", "seat", "--max-weight", "0.6 oz", "--json");
        assertEquals(0, seats.code(), seats.err());
        assertFalse(seats.json().path("parts").isEmpty());
        seats.json().path("parts").forEach(part -> {
            assertEquals("reel seat", part.path("kind").asText());
            assertTrue(part.path("weightG").asDouble() <= 17.0098, part.toString());
        });
        Shown all = terminal.run("parts", Terminal.BENCH, "--kind", "tip-tops", "--json");
        String blank = Demo.build(0).path("parts").findParents("station").stream()
                .filter(p -> p.path("station").asText().equals("blank"))
                .map(p -> p.path("part").asText())
                .findFirst()
                .orElseThrow();
        Shown fitting = terminal.run("parts", Terminal.BENCH, "--kind", "tip-tops", "--fits-blank", blank, "--json");
        List<String> ids = fitting.json().path("parts").findValuesAsText("part");
        assertTrue(ids.size() < all.json().path("parts").size(), "every tip-top fits " + blank);
        String used = Demo.build(0).path("parts").findParents("station").stream()
                .filter(p -> p.path("station").asText().equals("tipTop"))
                .map(p -> p.path("part").asText())
                .findFirst()
                .orElseThrow();
        assertTrue(ids.contains(used), ids + " lacks " + used);
    }

    @Test
    void likedWordsAndPricesFilterToo() {
        Shown cork = terminal.run(
                "parts", Terminal.BENCH, "--kind", "grip", "--liked", "CORK", "--max-price", "20", "--json");
        assertFalse(cork.json().path("parts").isEmpty());
        cork.json().path("parts").forEach(part -> {
            assertTrue(part.path("priceMinor").asLong() <= 2000, part.toString());
            String words = (part.path("part").asText()
                            + part.path("name").asText()
                            + part.path("material").asText())
                    .toLowerCase(Locale.ROOT);
            assertTrue(words.contains("cork"), words);
        });
    }

    @Test
    void theBenchCatalogueIsSound() {
        Shown shown = terminal.run("check", Terminal.BENCH);
        assertEquals(0, shown.code(), shown.out());
        assertTrue(shown.out().startsWith("The catalogue is sound."), shown.out());
    }

    @Test
    void completionAndManualCoverEveryCommand() {
        String completion = terminal.run("completion").out();
        String manual = terminal.run("man").out();
        for (String command : List.of(
                "demo",
                "propose",
                "measure",
                "bend",
                "bendtest",
                "whynot",
                "lighter",
                "check",
                "parts",
                "paper",
                "stock",
                "weigh",
                "backup",
                "restore",
                "doctor",
                "schema",
                "completion",
                "man")) {
            assertTrue(completion.contains(command), command);
            assertTrue(manual.contains(".B " + command), command);
            Shown help = terminal.run(command, "--help");
            assertEquals(0, help.code());
            assertTrue(help.out().startsWith("Examples:"), help.out());
            assertTrue(terminal.run("man", command).out().contains(".SH EXAMPLES"), command);
        }
        assertTrue(completion.contains("--priority"), "options are missing");
        assertTrue(manual.contains(".B 130"), "exit codes are missing");
    }
}
