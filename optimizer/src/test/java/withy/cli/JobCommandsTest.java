package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Terminal.Shown;

/** A job from wish to finished rod, as typed, on a copy of the sample shop. */
class JobCommandsTest {
    @TempDir
    private Path folder;

    private final Terminal terminal = new Terminal().choosing(Demo::replay);

    @BeforeEach
    void aShopWithAJob() throws IOException {
        ShopCommandsTest.copySample(folder);
        terminal.with("WITHY_CATALOG", folder.toString());
        answer(0, "job", "job", "--new", Terminal.brief("kayak-estuary"), "--json");
    }

    private JsonNode answer(int code, String schema, String... args) {
        Shown shown = terminal.run(args);
        assertEquals(code, shown.code(), shown.err() + shown.out());
        assertEquals(List.of(), Terminal.faults(schema, shown.out()), shown.out());
        return shown.json();
    }

    private void told(int code, String word, String... args) {
        Shown shown = terminal.run(args);
        assertEquals(code, shown.code(), shown.err() + shown.out());
        assertTrue(shown.err().contains(word), shown.err());
    }

    private void narrow(String... args) {
        Shown shown = terminal.run(args);
        assertTrue(shown.out().lines().allMatch(line -> line.codePointCount(0, line.length()) <= 80), shown.out());
        assertFalse(shown.out().isEmpty(), shown.err());
    }

    private static String partAt(JsonNode job, String station) {
        return StreamSupport.stream(job.path("build").path("parts").spliterator(), false)
                .filter(at -> at.path("station").asText().equals(station))
                .map(at -> at.path("part").asText())
                .findFirst()
                .orElse("");
    }

    private static String lastDone(JsonNode job) {
        JsonNode history = job.path("history");
        return history.path(history.size() - 1).path("what").asText();
    }

    @Test
    void fromWishToFinishedRod() {
        told(3, "no offer", "job", "1", "--accept", "1");
        JsonNode offered = answer(0, "job", "job", "1", "--offer", "--json");
        assertEquals("offered", offered.path("state").asText());
        assertEquals(3, offered.path("offers").get(0).path("builds").size());
        JsonNode given = answer(0, "answer", "job", "1", "--read-offer", "--json");
        assertEquals(offered.path("offers").get(0).path("catalogHash"), given.path("catalogHash"));
        assertTrue(terminal.run("job", "1", "--read-offer").out().contains("split EVA"));
        told(3, "has no build 9", "job", "1", "--accept", "9");
        JsonNode accepted = answer(0, "job", "job", "1", "--accept", "1", "--json");
        assertEquals("accepted", lastDone(accepted));
        JsonNode twice = answer(0, "job", "job", "1", "--accept", "1", "--json");
        assertEquals("confirmed", lastDone(twice));
        assertEquals(accepted.path("pieces"), twice.path("pieces"));
        terminal.typing("no build");
        told(3, "the build can't be read", "job", "1", "--take", "-");
        String tip = partAt(accepted, "tipTop");
        JsonNode level =
                answer(0, "stock", "stock", tip, "--json").path("parts").get(0);
        assertEquals(1, level.path("promised").asInt());
        answer(0, "job", "job", "1", "--glue", "seat,guides", "--json");
        JsonNode reckoned =
                answer(0, "parts", "parts", "--liked", tip, "--json").path("parts");
        double heavier = 0.25 - reckoned.get(0).path("weightG").asDouble();
        answer(0, "weigh", "weigh", tip + "#1", "0.25 g", "--json");
        told(3, "1 needed, 0 here", "job", "1", "--built");
        answer(0, "stock", "stock", partAt(accepted, "blank"), "--receive", "1", "--json");
        JsonNode built = answer(0, "job", "job", "1", "--built", "--json");
        JsonNode foretold = built.path("predicted");
        assertEquals(
                heavier,
                foretold.path("weightOfPiecesG").asDouble()
                        - foretold.path("weightG").asDouble(),
                1e-6);
        // weight at the tip moves the balance point the way it changes
        double moved = foretold.path("balanceOfPiecesMm").asDouble()
                - foretold.path("balanceMm").asDouble();
        assertTrue(moved * heavier > 0 && Math.abs(moved) < 20, foretold.toString());
        String history = terminal.run("stock", "--history").out();
        assertTrue(history.contains(", job 1") && !history.contains(" ,"), history);
        told(2, "or the decimal point or the unit slipped", "job", "1", "--weighed", "8.51g", "--balance", "97mm");
        JsonNode weighed = answer(0, "job", "job", "1", "--weighed", "98.1g", "--balance", "97mm", "--json");
        assertEquals(98.1, weighed.path("asBuilt").path("weightG").asDouble());
        assertEquals(97, weighed.path("asBuilt").path("balanceMm").asDouble());
        told(2, "The rod was weighed already: 98.10 g. Now it would be 98.40 g.", "job", "1", "--weighed", "98.4g");
        answer(0, "job", "job", "1", "--close", "--json");
        told(3, "is closed", "job", "1", "--cancel");
        JsonNode back = answer(0, "job", "job", "1", "--undo", "--json");
        assertEquals("taken back", lastDone(back));
        assertEquals(weighed.path("pieces"), back.path("pieces"));
        assertEquals("weighed", back.path("state").asText());
        told(3, "nothing that can be taken back", "job", "1", "--undo");
        answer(0, "job", "job", "1", "--close", "--json");
        assertEquals(
                "closed",
                answer(0, "jobs", "job", "--json")
                        .path("jobs")
                        .get(0)
                        .path("state")
                        .asText());
        assertTrue(answer(0, "folder", "doctor", "--json").path("sound").asBoolean());
        narrow("job", "1");
        narrow("job");
    }

    @Test
    void aSecondCustomerIsWarnedAndThePromisedPieceIsNotHis() {
        answer(0, "job", "job", "1", "--offer", "--json");
        answer(0, "job", "job", "--new", Terminal.brief("kayak-estuary"), "--json");
        String blank = "ostermoor-saltlane-206-2";
        answer(0, "stock", "stock", blank, "--count", "1", "--json");
        JsonNode second = answer(0, "job", "job", "2", "--offer", "--json");
        assertTrue(
                second.path("warnings").toString().contains(blank),
                second.path("warnings").toString());
        answer(0, "job", "job", "1", "--accept", "1", "--json");
        JsonNode late = answer(0, "job", "job", "2", "--accept", "1", "--json");
        // the second blank has to be ordered
        JsonNode level =
                answer(0, "stock", "stock", blank, "--json").path("parts").get(0);
        assertEquals(1, level.path("toOrder").asInt());
        assertEquals("accepted", late.path("state").asText());
        JsonNode plan = answer(0, "plan", "plan", "--json");
        assertTrue(plan.path("shopping").toString().contains(blank), plan.toString());
        assertTrue(plan.path("proven").asBoolean());
        narrow("plan");
    }

    @Test
    void anOfferThatIsWithdrawnWarnsNobodyAndIsNotTakenUntilThatIsTakenBack() {
        told(3, "there is no open offer", "job", "1", "--withdraw");
        answer(0, "job", "job", "1", "--offer", "--json");
        JsonNode ended = answer(0, "job", "job", "1", "--withdraw", "--note", "the price was wrong", "--json");
        assertEquals("withdrawn", lastDone(ended));
        assertEquals("new", ended.path("state").asText());
        JsonNode offer = ended.path("offers").get(0);
        assertEquals(offer.path("day"), offer.path("ended"));
        String text = terminal.run("job", "1").out();
        assertTrue(text.contains(", withdrawn on " + offer.path("ended").asText()), text);
        assertTrue(text.contains("offer withdrawn: the price was wrong"), text);
        told(3, "withy job 1 --undo", "job", "1", "--accept", "1");
        answer(0, "stock", "stock", "ostermoor-saltlane-206-2", "--count", "1", "--json");
        answer(0, "job", "job", "--new", Terminal.brief("kayak-estuary"), "--json");
        assertEquals(
                0,
                answer(0, "job", "job", "2", "--offer", "--json")
                        .path("warnings")
                        .size());
        assertEquals(
                "offered",
                answer(0, "job", "job", "1", "--undo", "--json").path("state").asText());
        assertEquals("accepted", lastDone(answer(0, "job", "job", "1", "--accept", "1", "--json")));
        told(3, "is accepted: there is no open offer", "job", "1", "--withdraw");
    }

    @Test
    void pastItsDayAnOfferIsAskedBackAndLapses() {
        JsonNode offer =
                answer(0, "job", "job", "1", "--offer", "--json").path("offers").get(0);
        LocalDate until = LocalDate.parse(offer.path("validUntil").asText());
        assertEquals(LocalDate.parse(offer.path("day").asText()).plusDays(14), until);
        answer(0, "stock", "stock", "ostermoor-saltlane-206-2", "--count", "1", "--json");
        answer(0, "job", "job", "--new", Terminal.brief("kayak-estuary"), "--json");
        String on = until.toString();
        String after = until.plusDays(1).toString();
        assertEquals(
                1,
                answer(0, "job", "job", "2", "--offer", "--date", on, "--json")
                        .path("warnings")
                        .size(),
                "it holds on its last day");
        assertEquals(
                0,
                answer(0, "job", "job", "2", "--offer", "--date", after, "--json")
                        .path("warnings")
                        .size());
        String late = "holds until " + on + " by its paper, and that day is over";
        told(2, late, "job", "1", "--accept", "1", "--date", after);
        assertEquals("lapsed", lastDone(answer(0, "job", "job", "1", "--withdraw", "--date", after, "--json")));
        answer(0, "job", "job", "1", "--undo", "--date", after, "--json");
        JsonNode taken = answer(0, "job", "job", "1", "--accept", "1", "--sure", "--date", after, "--json");
        assertEquals("accepted", taken.path("state").asText());
        narrow("job", "1");
    }

    @Test
    void aPartThatRanOutIsChosenAgainAndNothingChangesUntilAccepted() throws IOException {
        answer(0, "job", "job", "1", "--offer", "--json");
        JsonNode accepted = answer(0, "job", "job", "1", "--accept", "1", "--json");
        String tip = partAt(accepted, "tipTop");
        JsonNode ladder = answer(0, "out", "out", tip, "--json");
        JsonNode rung = ladder.path("jobs").get(0).path("rungs").get(0);
        assertEquals(1, rung.path("changes").asInt());
        assertTrue(rung.path("proven").asBoolean());
        assertEquals(tip, rung.path("swaps").get(0).path("from").asText());
        assertEquals(
                accepted.path("revision"),
                answer(0, "job", "job", "1", "--json").path("revision"));
        JsonNode applied = answer(0, "out", "out", tip, "--job", "1", "--accept", "1", "--json");
        assertEquals(1, applied.path("applied").path("rung").asInt());
        JsonNode changed = answer(0, "job", "job", "1", "--json");
        assertEquals(rung.path("swaps").get(0).path("to").asText(), partAt(changed, "tipTop"));
        assertEquals(
                0,
                answer(0, "stock", "stock", tip, "--json")
                        .path("parts")
                        .get(0)
                        .path("promised")
                        .asInt());
        JsonNode none = answer(0, "out", "out", tip, "--json");
        assertEquals(0, none.path("jobs").size());
        narrow("out", partAt(changed, "tipTop"));
        told(2, "Neither a part nor a brief", "out");
        told(2, "No job is named", "out", tip, "--accept", "1");
        told(4, "no build with 3 parts", "out", tip, "--job", "1", "--accept", "3");
        Path brief = folder.resolve("other.json");
        Files.writeString(
                brief,
                Files.readString(Path.of(Terminal.brief("kayak-estuary"))).replace("\"min\": 220", "\"min\": 225"));
        JsonNode other = answer(0, "out", "out", "--job", "1", "--brief", brief.toString(), "--json");
        assertEquals(
                0,
                other.path("jobs").get(0).path("rungs").get(0).path("changes").asInt());
        JsonNode dearer = answer(0, "out", "out", partAt(changed, "seat"), "--price", "80", "--json");
        assertTrue(
                dearer.path("jobs")
                                .get(0)
                                .path("rungs")
                                .get(0)
                                .path("priceMinor")
                                .asLong()
                        > 0,
                dearer.toString());
    }

    @Test
    void aGluedButtGripStaysWhateverElseIsChosenAgain() {
        answer(0, "job", "job", "1", "--offer", "--json");
        JsonNode accepted = answer(0, "job", "job", "1", "--accept", "1", "--json");
        JsonNode grip = at(accepted.path("build"), "buttGrip");
        answer(0, "job", "job", "1", "--glue", "buttGrip", "--json");
        String seat = partAt(accepted, "seat");
        JsonNode ladder = answer(0, "out", "out", seat, "--json").path("jobs").get(0);
        assertTrue(ladder.path("rungs").size() > 0, ladder.toString());
        for (JsonNode rung : ladder.path("rungs")) {
            JsonNode fitted = at(rung.path("build"), "buttGrip");
            assertEquals(grip.path("part"), fitted.path("part"));
            // 70 mm as sold, which a build file tells by naming no length
            assertTrue(grip.path("lengthMm").isNull() && fitted.path("lengthMm").asDouble() == 70, fitted.toString());
            assertEquals(accepted.path("build").path("layout").path("reelFootMm"), footOf(rung));
        }
        assertEquals(
                0,
                answer(0, "out", "out", grip.path("part").asText(), "--json")
                        .path("jobs")
                        .size());
        answer(0, "stock", "stock", seat, "--count", "0", "--json");
        JsonNode planned = answer(0, "plan", "plan", "--json").path("jobs").get(0);
        assertFalse(planned.path("kept").asBoolean(), planned.toString());
        assertEquals("[\"buttGrip\"]", planned.path("glued").toString());
        assertTrue(planned.path("served").asBoolean(), planned.toString());
        assertEquals(grip.path("part"), at(planned.path("build"), "buttGrip").path("part"));
        assertEquals(70, at(planned.path("build"), "buttGrip").path("lengthMm").asDouble());
        assertEquals(accepted.path("build").path("layout").path("reelFootMm"), footOf(planned));
        assertTrue(
                terminal.run("plan").out().contains("Glued and kept: butt grip"),
                terminal.run("plan").out());
        narrow("plan");
    }

    @Test
    void aSlipOfAGluedStationIsToldWithWhatWasMeant() {
        answer(0, "job", "job", "1", "--offer", "--json");
        answer(0, "job", "job", "1", "--accept", "1", "--json");
        told(3, "\nMaybe buttCap.", "job", "1", "--glue", "cap");
        told(3, "\nMaybe guides.", "job", "1", "--glue", "guide");
        told(3, "\nMaybe seat.", "job", "1", "--glue", "saet");
        told(3, "\nMaybe buttGrip or rearGrip", "job", "1", "--glue", "grip");
    }

    private static JsonNode footOf(JsonNode line) {
        return line.path("build").path("layout").path("reelFootMm");
    }

    private static JsonNode at(JsonNode build, String station) {
        return StreamSupport.stream(build.path("parts").spliterator(), false)
                .filter(at -> at.path("station").asText().equals(station))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void slipsAreTold() {
        told(3, "There is no job 9", "job", "9");
        told(2, "No job is named", "job", "--built");
        told(3, "is new", "job", "1", "--built");
        told(3, "no build was accepted", "job", "1", "--glue", "seat");
        told(2, "--balance", "job", "1", "--weighed", "80g", "--balance", "80 g");
        told(2, "Maybe one of these: ", "stock", "featherlode");
        told(2, "--accept x: allowed is a whole number", "job", "1", "--accept", "x");
        for (String command : List.of("job", "out", "plan")) {
            String help = terminal.run(command, "--help").out();
            assertTrue(help.startsWith("Examples:"), help);
            assertTrue(help.lines().allMatch(line -> line.length() <= 80), help);
        }
    }
}
