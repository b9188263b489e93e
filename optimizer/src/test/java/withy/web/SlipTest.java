package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import withy.web.Caller.Reply;

/** A slip in a form of the shop: the same page again, everything typed still there, and at the field what is wrong and what would be right. */
class SlipTest extends ByRequest {
    private static final String SEAT = "marrick-tideway-r-16";

    private static String job;

    @BeforeAll
    static void open() throws Exception {
        String step = page.begun("estuary");
        page.whole("/builds/" + step);
        job = page.form("/jobs", "once", "begin", "step", step, "rank", "1").location();
    }

    /** The fault at a field that still holds what was typed into it. */
    private static String fault(Reply reply, String field, String typed) {
        assertEquals(422, reply.status(), reply.body());
        String input = Caller.found("(<input[^>]* id=\"" + field + "\"[^>]*>)", reply.body());
        assertTrue(input.contains("value=\"" + typed + "\""), input);
        assertTrue(input.contains("aria-invalid=\"true\""), input);
        assertTrue(input.contains("aria-describedby=\"" + field + "-fault\""), input);
        return Caller.found("id=\"" + field + "-fault\"[^>]*>(.+?)</p>", reply.body())
                .replaceAll("<[^>]+>", "");
    }

    private static String revision() throws Exception {
        return Caller.found("name=\"revision\" value=\"(\\d+)\"", page.get(job).body());
    }

    @Test
    void aReadingThatIsNoWeightStaysOnTheScale() throws Exception {
        Reply reply = page.form("/weigh", "once", "1", "piece", SEAT, "weight", "12 mm", "next", "any");
        assertEquals(
                "\"12 mm\": allowed is mg, g, kg, gr, oz or lb. Maybe the unit is one of another quantity, or misspelt.",
                fault(reply, "weight", "12 mm"));
        assertTrue(reply.body().contains("name=\"piece\" value=\"" + SEAT + "\""), "still the same part");
        assertEquals(
                "Nothing is typed here yet. Right would be 19.70 g.",
                fault(page.form("/weigh", "once", "2", "piece", SEAT, "weight", " ", "next", "any"), "weight", " "));
        Reply none = page.form("/weigh", "once", "3", "piece", SEAT + "#999", "weight", "19 g", "next", "any");
        assertEquals("Marrick Tideway R 16 #999 is neither on the shelf nor in a rod.", fault(none, "weight", "19 g"));
    }

    @Test
    void itIsToldWhereItWasTyped() throws Exception {
        String piece = Caller.found(
                "name=\"piece\" value=\"([^\"]+)\"", page.get(job + "/scale").body());
        Reply ofJob = page.form("/weigh", "once", "4", "piece", piece, "job", job.substring(6), "weight", "abc");
        assertTrue(fault(ofJob, "weight", "abc").contains("allowed is a number"), ofJob.body());
        assertTrue(ofJob.body().contains("Weigh in: "), "the pieces of the job");
        assertTrue(ofJob.body().contains("name=\"piece\" value=\"" + piece + "\""), "still the same piece");
        Reply ofPart = page.form("/weigh", "once", "5", "piece", SEAT, "weight", "abc");
        assertTrue(fault(ofPart, "weight", "abc").contains("allowed is a number"), ofPart.body());
        assertTrue(ofPart.body().contains("value=\"receive\""), "the page of the part");
    }

    @Test
    void piecesThatAreNoneAreNotBooked() throws Exception {
        String path = "/stock/" + SEAT;
        String before = page.get(path).body();
        for (String what : List.of("receive", "broken", "order")) {
            Reply none = page.form(path, "once", "6" + what, "do", what, "pieces", "0", "due", "2026-06-08");
            assertEquals("0 pieces change nothing: 1 or more are needed.", fault(none, "pieces", "0"));
        }
        Reply words = page.form(path, "once", "7", "do", "count", "pieces", "a few", "due", "2026-07-09");
        assertEquals("\"a few\": allowed is a whole number of pieces, such as 3.", fault(words, "pieces", "a few"));
        assertTrue(words.body().contains("value=\"2026-07-09\""), "the day is kept as well");
        Reply many = page.form(path, "once", "8", "do", "broken", "pieces", "40", "due", "");
        assertEquals("Marrick Tideway R 16: 40 pieces asked, 3 are on the shelf.", fault(many, "pieces", "40"));
        assertEquals(counts(before), counts(page.get(path).body()), "nothing was booked");
    }

    private static String counts(String body) {
        return body.substring(body.indexOf("<dl class=\"counts\">"), body.indexOf("</dl>"));
    }

    @Test
    void whatIsOrderedIsNotDueBeforeToday() throws Exception {
        String path = "/stock/" + SEAT;
        Reply past = page.form(path, "once", "9", "do", "order", "pieces", "2", "due", "2026-05-10");
        assertEquals("2026-05-10 is past: today, 2026-06-01, or later is right.", fault(past, "due", "2026-05-10"));
        Reply words = page.form(path, "once", "10", "do", "order", "pieces", "2", "due", "soon");
        assertEquals(
                "\"soon\": allowed is a date as year-month-day. Maybe write it as 2026-05-31.",
                fault(words, "due", "soon"));
        assertTrue(words.body().contains("value=\"2\""), "the pieces are kept as well");
    }

    @Test
    void nothingTickedIsToldAtTheTicks() throws Exception {
        Reply reply = page.form(job, "once", "11", "revision", revision(), "do", "glue");
        assertEquals(422, reply.status());
        assertEquals("Nothing is ticked yet.", Caller.found("id=\"station-fault\"[^>]*>([^<]+)<", reply.body()));
        assertTrue(reply.body().contains("class=\"checklist\""), "the job's own page");
    }

    @Test
    void ticksOutliveTheQuestionWhetherTheRodIsBuilt() throws Exception {
        Reply asked = page.form(
                job, "once", "12", "revision", revision(), "do", "built", "station", "seat", "station", "tipTop");
        assertEquals(422, asked.status());
        String back = Caller.found("class=\"button\" href=\"(" + job + "[^\"]*)\"", asked.body())
                .replace("&amp;", "&");
        String body = page.get(back).body();
        assertTrue(body.matches("(?s).*value=\"seat\" checked.*"), body);
        assertTrue(body.matches("(?s).*value=\"tipTop\" checked.*"), body);
        assertFalse(body.matches("(?s).*value=\"blank\" checked.*"), body);
    }

    @Test
    void theFinishedRodIsReadAtItsFields() throws Exception {
        String step = page.begun("brook");
        page.whole("/builds/" + step);
        String other =
                page.form("/jobs", "once", "13", "step", step, "rank", "1").location();
        String revision = Caller.found(
                "name=\"revision\" value=\"(\\d+)\"", page.get(other).body());
        page.form(other, "once", "14", "revision", revision, "do", "built", "sure", "yes");
        String built = page.get(other).body().replaceAll("<span class=\"whole\">|</span>", "");
        revision = Caller.found("name=\"revision\" value=\"(\\d+)\"", built);
        String weight = Caller.found("id=\"weight\"[^>]* placeholder=\"([^\"]+)\"", built);
        String balance = Caller.found("id=\"balance\"[^>]* placeholder=\"([^\"]+)\"", built);
        assertTrue(built.contains("It should weigh " + weight + ", give or take"), weight + " in " + built);
        assertTrue(built.contains("balance " + balance + " ahead"), balance + " in " + built);
        Reply reply = page.form(
                other, "once", "15", "revision", revision, "do", "weighed", "weight", "80 g", "balance", "far");
        assertTrue(fault(reply, "balance", "far").contains("allowed is a number"), reply.body());
        assertTrue(reply.body().contains("value=\"80 g\""), "the weight is kept as well");
        Reply empty =
                page.form(other, "once", "16", "revision", revision, "do", "weighed", "weight", "", "balance", "");
        assertTrue(fault(empty, "weight", "").contains("Nothing is typed here yet."), empty.body());
    }

    @Test
    void aPartThatIsNoneIsToldWithWhatMayBeMeant() throws Exception {
        Reply none = page.get("/stock/marrick-tideway-r-61");
        assertEquals(404, none.status());
        assertTrue(
                none.body().contains("Maybe &#34;marrick-tideway-r-16&#34; was meant.")
                        || none.body().contains("Maybe \"marrick-tideway-r-16\" was meant."),
                none.body());
    }

    @Test
    void theScaleTellsWhichWayListsAreOff() throws Exception {
        page.form("/weigh", "once", "17", "piece", "quernstone-plain-16", "weight", "24 g", "next", "any");
        String body = page.get("/weigh").body();
        assertTrue(body.matches("(?s).*Quernstone, reel seat: \\d+\\.\\d % (lighter|heavier) than listed.*"), body);
    }
}
