package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.app.BuildFile;
import withy.app.BuildSheet.LayoutLine;
import withy.app.BuildSheet.VerdictLine;
import withy.app.DrawerAnswer;
import withy.app.LighterAnswer;
import withy.app.LighterAnswer.PartLine;
import withy.app.Reasons.BuildLine;
import withy.app.WhyAnswer;
import withy.app.WhyAnswer.ShareLine;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** What is told of lighter parts and of how firm an offer is, also where the asker did not wait for the end. */
class ReasonsTextTest {
    private static final QuantityText METRIC = new QuantityText(UnitSystem.METRIC);
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final ObjectNode BRIEF =
            JsonNodeFactory.instance.objectNode().put("name", "A brief");
    private static final String CUT = "Stopped before the end: not everything was looked at.";

    private static BuildLine build(String name) {
        BuildFile file = new BuildFile(1, new LayoutLine(240, "split", 7), List.of());
        return new BuildLine(name, 100, 50_000, 100, true, 0, file);
    }

    private static PartLine refused(String part, double saves, String rule) {
        String sentence = part + " breaks " + rule + ".";
        VerdictLine breaks = new VerdictLine(rule, "check", "fail", null, null, "", List.of(part), sentence);
        return new PartLine("guide-1", "now", part, part, saves, null, breaks, null, List.of(), sentence);
    }

    private static String lighter(boolean interrupted, PartLine... ledger) {
        LighterAnswer answer = new LighterAnswer(
                1,
                "",
                BRIEF,
                build("One"),
                build("Two"),
                "So.",
                List.of(),
                List.of(),
                List.of(ledger),
                null,
                interrupted);
        return LighterText.of(answer, METRIC, EUR);
    }

    /** Three are told, one for each rule before a second for the same; how many more, by rule. */
    @Test
    void eachRuleIsToldBeforeASecondPartForTheSame() {
        String text = lighter(
                false,
                refused("A", 9, "guide-train"),
                refused("B", 8, "guide-train"),
                refused("C", 7, "guide-train"),
                refused("D", 6, "salt"));
        List<String> told = text.lines().filter(line -> line.startsWith("· ")).toList();
        assertEquals(
                List.of(
                        "· A: 9.00 g lighter, but it breaks guide-train.",
                        "· B: 8.00 g lighter, but it breaks guide-train.",
                        "· D: 6.00 g lighter, but it breaks salt.",
                        "· and one more that breaks a rule: guides"),
                told);
        assertFalse(text.contains(CUT));
    }

    @Test
    void fourRulesAreTooManyToTell() {
        List<PartLine> lines = new ArrayList<>();
        for (String rule : List.of("lure", "line", "salt", "stock", "stock")) {
            lines.add(refused("P" + lines.size(), 5 - lines.size(), rule));
        }
        List<String> told = lighter(false, lines.toArray(PartLine[]::new))
                .lines()
                .filter(line -> line.startsWith("· "))
                .toList();
        assertEquals(4, told.size());
        assertTrue(told.get(0).startsWith("· P0: ") && told.get(2).startsWith("· P2: "), told.toString());
        assertEquals("· and 2 more that break a rule: stock", told.get(3));
    }

    private static DrawerAnswer.DrawerLine out(String name, String sentence) {
        VerdictLine breaks = new VerdictLine("rule", "check", "fail", null, null, "", List.of(name), sentence);
        return new DrawerAnswer.DrawerLine(name, name, false, breaks, null, List.of(), sentence);
    }

    private static List<String> drawer(DrawerAnswer.DrawerLine... lines) {
        DrawerAnswer drawer = new DrawerAnswer(1, "", BRIEF, "seat", build("One"), List.of(lines), false);
        String text = DrawerText.of(drawer).replace("\n  ", " ");
        return text.lines().filter(line -> line.startsWith("· ")).toList();
    }

    /** What is said of several parts is said once, wherever their names stand in it. */
    @Test
    void partsRefusedAlikeAreToldTogether() {
        assertEquals(
                List.of(
                        "· Fen 7 and 70: each is of class 2; class 4 is asked for.",
                        "· Reed 1, 2 and 3: the foot of 56 mm is too short for each, which clamps from 60 or 66 mm."),
                drawer(
                        out("Fen 7", "Fen 7 is of class 2; class 4 is asked for."),
                        out("Reed 1", "The foot of 56 mm is too short for Reed 1, which clamps from 60 mm."),
                        out("Reed 3", "The foot of 56 mm is too short for Reed 3, which clamps from 66 mm."),
                        out("Fen 70", "Fen 70 is of class 2; class 4 is asked for."),
                        out("Reed 2", "The foot of 56 mm is too short for Reed 2, which clamps from 60 mm.")));
    }

    /** Where parts miss the same limit by more or less, from the least to the most. */
    @Test
    void whatPartsMeasureIsToldFromTheLeastToTheMost() {
        assertEquals(
                List.of(
                        "· Fen D8, D10 and D12: the ring of each is only 9.3 to 20.2 % of the spool; 30 % is the least.",
                        "· The ring of Fen D6 is only 5 % of the one before it; 40 % is the least."),
                drawer(
                        out("Fen D8", "The ring of Fen D8 is only 9.3 % of the spool; 30 % is the least."),
                        out("Fen D12", "The ring of Fen D12 is only 20.2 % of the spool; 30 % is the least."),
                        out("Fen D6", "The ring of Fen D6 is only 5 % of the one before it; 40 % is the least."),
                        out("Fen D10", "The ring of Fen D10 is only 16.7 % of the spool; 30 % is the least.")));
    }

    /** Every limit, every size and every miss of its own kind; what none of them does is said of none. */
    @Test
    void partsOfOneKindAreToldAsOne() {
        assertEquals(
                List.of(
                        "· Fen Check 9 and 10.5: each is loose on the blank with 0.9 to 2.4 mm to spare; 0.5 mm is the most.",
                        "· Fen Soft Check 14, 16 and 18, and Reed Ring: none grips the blank: the bore is 101 to 120 % of the"
                                + " width there; 100 % is the most.",
                        "· Fen H7, H10 and S8: each has a larger ring than Fen S6 before it: size 7 to 10 after 6.",
                        "· Fen Surf 20 and Fen Short 20: none will stretch over the butt.",
                        "· Fen Cap 20 and 30: none goes on the butt: Fen Full is closed by itself.",
                        "· Reed 1 and 2: none is to be had in time: 0 free.",
                        "· Mere 4, 6, 8, 10 and 12: the heaviest lure of 24 g is too heavy for each, rated up to 4 to 20 g."),
                drawer(
                        out(
                                "Fen Check 10.5",
                                "Fen Check 10.5 is loose on the blank with 2.4 mm to spare; 0.5 mm is the most."),
                        out(
                                "Fen Check 9",
                                "Fen Check 9 is loose on the blank with 0.9 mm to spare; 0.5 mm is the most."),
                        loose("Fen Soft Check 16", "110"),
                        loose("Reed Ring", "101"),
                        loose("Fen Soft Check 14", "104.5"),
                        loose("Fen Soft Check 18", "120"),
                        larger("S8", 8),
                        larger("H10", 10),
                        larger("H7", 7),
                        out("Fen Surf 20", "Fen Surf 20 will not stretch over the butt."),
                        out("Fen Short 20", "Fen Short 20 will not stretch over the butt."),
                        out("Fen Cap 20", "Fen Cap 20 does not go on the butt: Fen Full is closed by itself."),
                        out("Fen Cap 30", "Fen Cap 30 does not go on the butt: Fen Full is closed by itself."),
                        out("Reed 1", "Reed 1 is not to be had in time: 0 free."),
                        out("Reed 2", "Reed 2 is not to be had in time: 0 free."),
                        light("Mere 4", 4),
                        light("Mere 6", 8),
                        light("Mere 8", 12),
                        light("Mere 10", 16),
                        light("Mere 12", 20)));
    }

    private static DrawerAnswer.DrawerLine loose(String name, String percent) {
        return out(
                name,
                name + " does not grip the blank: its bore is " + percent
                        + " % of the width there; 100 % is the most.");
    }

    private static DrawerAnswer.DrawerLine larger(String ring, int size) {
        return out(
                "Fen " + ring, "Fen " + ring + " has a larger ring than Fen S6 before it: size " + size + " after 6.");
    }

    private static DrawerAnswer.DrawerLine light(String name, int most) {
        return out(name, "The heaviest lure of 24 g is too heavy for " + name + ", rated up to " + most + " g.");
    }

    /** Strengths are told like lure weights. */
    @Test
    void whatBlanksAreRatedForIsToldOneByOne() {
        assertEquals(
                List.of(
                        "· Mere 4, 6 and 8: each is rated for line of up to 2 or 3.5 kg; this tackle holds 5.1 kg, even at its knot."),
                drawer(rated("Mere 4", "2"), rated("Mere 8", "3.5"), rated("Mere 6", "2")));
    }

    private static DrawerAnswer.DrawerLine rated(String name, String most) {
        return out(
                name,
                name + " is rated for line of up to " + most + " kg; this tackle holds 5.1 kg, even at its knot.");
    }

    /** Only a seat and a blank bring more than themselves. */
    @Test
    void whatComesWithAPartIsToldWhereItDoes() {
        assertTrue(titled("seat").contains("Each with the hood and arbors that go with it, all else as it is."));
        assertTrue(titled("blank").contains("Each with the best rod on it."));
        assertTrue(titled("buttCap").contains("Each with all else as it is. Balance and swing are named "));
    }

    private static String titled(String station) {
        return DrawerText.of(new DrawerAnswer(1, "", BRIEF, station, build("One"), List.of(), false));
    }

    /** Where the rule says nothing of the part, the part is named before it; a name keeps its first letter. */
    @Test
    void whatIsRefusedIsNamed() {
        String price = "The price of 460.02 EUR is above the budget of 460.00 EUR.";
        assertEquals(
                List.of(
                        "· left empty: the price of 460.02 EUR is above the budget of 460.00 EUR.",
                        "· Fen 7 and 8: each differs from Reed 3 in frame finish.",
                        "· Reed 3 and Fen 9 have rings of different material."),
                drawer(
                        out("left empty", price),
                        out("Fen 7", "Reed 3 and Fen 7 differ in frame finish."),
                        out("Fen 8", "Reed 3 and Fen 8 differ in frame finish."),
                        out("Fen 9", "Reed 3 and Fen 9 have rings of different material.")));
    }

    /** A figure of another part is no figure of these. */
    @Test
    void whatAnotherPartMeasuresIsToldOneByOne() {
        assertEquals(
                List.of(
                        "· The ring of Reed 3 is only 20 % of that of Fen H25; 40 % is the least.",
                        "· The ring of Reed 3 is only 32 % of that of Fen H16; 40 % is the least."),
                drawer(
                        out("Fen H25", "The ring of Reed 3 is only 20 % of that of Fen H25; 40 % is the least."),
                        out("Fen H16", "The ring of Reed 3 is only 32 % of that of Fen H16; 40 % is the least.")));
    }

    /** Hundredths of a gram count of a guide, not of a grip. */
    @Test
    void aLargeWeightIsToldInTenths() {
        String text = lighter(false, refused("A", 20.9, "salt"), refused("B", 1.45, "salt"));
        assertTrue(text.contains("· A: 20.9 g lighter, but") && text.contains("· B: 1.45 g lighter, but"), text);
    }

    private static String why(boolean interrupted, String... names) {
        List<ShareLine> builds = new ArrayList<>();
        for (String name : names) {
            builds.add(new ShareLine(builds.size() + 1, 1.0 / names.length, build(name)));
        }
        return WhyText.of(new WhyAnswer(1, "", BRIEF, builds, null, List.of(), null, interrupted), METRIC, EUR);
    }

    /** Of one build nothing can be turned; of what was not looked at nothing is claimed. */
    @Test
    void howFirmAnOfferIs() {
        String two = why(false, "One", "Two");
        assertTrue(two.contains("· 50 % put build 2 first: 500.00 EUR · 100.0 g · Two\n"), two);
        assertTrue(two.contains("No single priority would.") && two.contains("No single wish stands"), two);
        String one = why(false, "One");
        assertTrue(one.contains("One build is offered: 500.00 EUR · 100.0 g · One.\n"), one);
        assertFalse(one.contains("priority") || one.contains("%"), one);
        String cut = why(true, "One", "Two");
        assertTrue(cut.endsWith(CUT + "\n") && !cut.contains("No single wish"), cut);
    }

    /** Of a build that hardly anything or nothing puts first no figure is rounded away. */
    @Test
    void whatHardlyAnythingPutsFirst() {
        List<ShareLine> shares = List.of(
                new ShareLine(1, 0.996, build("One")),
                new ShareLine(2, 0.004, build("Two")),
                new ShareLine(3, 0, build("Three")));
        String text = WhyText.of(new WhyAnswer(1, "", BRIEF, shares, null, List.of(), null, false), METRIC, EUR);
        assertTrue(text.contains("· less than 1 % put build 2 first: 500.00 EUR"), text);
        assertTrue(text.contains("· none puts build 3 first: 500.00 EUR"), text);
    }

    @Test
    void whatWasCutShortSaysSo() {
        assertTrue(lighter(true, refused("A", 9, "salt")).endsWith("\n" + CUT + "\n"));
        DrawerAnswer.DrawerLine here =
                new DrawerAnswer.DrawerLine("cap", "Cap", true, null, null, List.of(), "as it is");
        for (boolean interrupted : List.of(true, false)) {
            DrawerAnswer drawer = new DrawerAnswer(1, "", BRIEF, "buttCap", build("One"), List.of(here), interrupted);
            assertEquals(interrupted, DrawerText.of(drawer).endsWith(CUT + "\n"));
        }
    }
}
