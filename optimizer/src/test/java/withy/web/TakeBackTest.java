package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.web.Caller.Reply;

/** A wrong tap at shelf or scale: what was booked last stands on the page beside the button that takes it back. */
class TakeBackTest extends ByRequest {
    private static String booking(String body) {
        return Caller.found("name=\"booking\" value=\"(\\d+)\"", body);
    }

    /** Free and on the shelf, as the page of a part says. */
    private static String counts(String part) throws Exception {
        return Caller.found(
                "(<dl class=\"counts\">[\\s\\S]*?</dl>)",
                page.get("/stock/" + part).body());
    }

    @Test
    void aWrongTapIsTakenBackAndTheHistorySaysSo() throws Exception {
        String part = "/stock/marrick-tideway-r-16";
        assertFalse(page.get(part).body().contains("Take it back"), "nothing was booked yet");
        String before = counts("marrick-tideway-r-16");
        Reply out = page.form(part, "once", "a", "do", "out");
        assertEquals("/out/marrick-tideway-r-16", out.location());
        String there = page.get(out.location()).body();
        assertTrue(there.contains("counted, −3 on the shelf."), there);
        String none = page.get(part).body();
        assertFalse(none.contains("It ran out"), "there is none that could run out");
        assertTrue(none.contains("What its jobs can do"), none);
        Reply back = page.form(part, "once", "b", "do", "back", "booking", booking(there));
        assertEquals(part, back.location());
        assertEquals(before, counts("marrick-tideway-r-16"));
        String after = page.get(part).body();
        assertTrue(after.contains("ran out, taken back later"), after);
        assertTrue(after.contains("on the shelf, taken back<"), after);
        assertFalse(after.contains("Take it back"), "there is nothing before it");
        Reply again = page.form(part, "once", "c", "do", "back", "booking", booking(there));
        assertEquals(409, again.status(), "a button of an old window");
        assertTrue(again.body().contains("taken back already"), again.body());
        assertFalse(again.body().contains("withy stock"), "no word of a command line");
        assertEquals(before, counts("marrick-tideway-r-16"));
    }

    @Test
    void aReadingIsTakenBackWhereItWasBooked() throws Exception {
        String seat = "marrick-tideway-r-17";
        String weighed = page.form("/weigh", "once", "d", "piece", seat, "weight", "21.4 g", "next", "any")
                .location();
        String there = page.get(weighed).body();
        assertTrue(there.contains("weighed, piece 1, 21.40 g"), there);
        Reply back = page.form("/stock/" + seat, "once", "e", "do", "back", "booking", booking(there), "next", "any");
        assertEquals("/weigh?piece=" + seat, back.location());
        assertFalse(page.get(weighed).body().contains("is booked"), "it does not count any more");
        String part = page.get("/stock/" + seat).body();
        assertTrue(part.contains("piece 1: 21.40 g, taken back later"), part);
    }

    @Test
    void aReadingForAJobIsTakenBackThere() throws Exception {
        String step = page.begun("brook");
        page.whole("/builds/" + step);
        String job = page.form("/jobs", "once", "f", "step", step, "rank", "1").location();
        String scale = page.get(job + "/scale").body();
        String piece = Caller.found("name=\"piece\" value=\"([^\"]+)\"", scale);
        String grams = Caller.found("placeholder=\"([^\"]+)\"", scale);
        String number = job.substring("/jobs/".length());
        String sum = Caller.found("class=\"answer\"[^>]*>([^<]+)<", scale);
        String weighed = page.form("/weigh", "once", "g", "piece", piece, "weight", grams, "job", number)
                .location();
        assertEquals(job + "/scale?weighed=" + piece.replace("#", "%23"), weighed);
        String there = page.get(weighed).body();
        assertFalse(there.contains(sum), "one more is weighed");
        Reply back = page.form(
                "/stock/" + piece.replaceAll("#.*", ""),
                "once",
                "h",
                "do",
                "back",
                "booking",
                booking(there),
                "job",
                number);
        assertEquals(job + "/scale", back.location());
        assertTrue(page.get(job + "/scale").body().contains(sum));
    }

    @Test
    void aJobThatWaitsForAnOrderSaysSoAtItsLineUntilThePieceIsHere() throws Exception {
        String step = page.begun("pier");
        page.whole("/builds/" + step);
        String job = page.form("/jobs", "once", "m", "step", step, "rank", "1").location();
        String seat = Caller.found("href=\"/stock/([^\"]+)\"", page.get(job).body());
        page.form("/stock/" + seat, "once", "n", "do", "order", "pieces", "3", "due", "2026-06-09");
        assertFalse(page.whole("/plan").contains("Waits for"), "what it needs is here");
        page.form("/stock/" + seat, "once", "o", "do", "out");
        String waits = " on order, due";
        assertTrue(page.get(job).body().contains(waits), page.get(job).body());
        String plan = page.whole("/plan");
        assertTrue(plan.contains(waits), plan);
        page.form("/stock/" + seat, "once", "p", "do", "count", "pieces", "1");
        assertFalse(page.get(job).body().contains(waits), "the piece on the shelf is promised again");
        assertFalse(page.whole("/plan").contains(waits));
    }

    @Test
    void whatElseWasBookedMeanwhileStays() throws Exception {
        String part = "/stock/marrick-tideway-f-17";
        page.form(part, "once", "i", "do", "receive", "pieces", "2");
        String seen = booking(page.get(part).body());
        page.form(part, "once", "j", "do", "receive", "pieces", "3");
        String before = counts("marrick-tideway-f-17");
        assertEquals(
                409, page.form(part, "once", "k", "do", "back", "booking", seen).status());
        assertEquals(
                422, page.form(part, "once", "l", "do", "back", "booking", "x").status());
        assertEquals(before, counts("marrick-tideway-f-17"));
    }

    /** Where a job chose again the pieces it lost have no place to go back to: nothing is offered that can only be refused. */
    @Test
    void whatAJobChoseAgainForIsNotOfferedBack() throws Exception {
        String step = page.begun("rocks");
        page.whole("/builds/" + step);
        String job = page.form("/jobs", "once", "q", "step", step, "rank", "1").location();
        String out = "";
        String ladder = "";
        Matcher parts = Pattern.compile("href=\"/stock/([^\"]+)\"")
                .matcher(page.get(job).body());
        while (!ladder.contains("name=\"rung\"") && parts.find()) {
            out = parts.group(1);
            ladder = page.whole("/out/" + out);
        }
        page.form("/stock/" + out, "once", "r", "do", "out");
        assertTrue(page.get("/stock/" + out).body().contains("Take it back"), out);
        ladder = page.whole("/out/" + out);
        Reply taken = page.form(
                "/out/" + out,
                "once",
                "s",
                "job",
                hidden(ladder, "job"),
                "revision",
                hidden(ladder, "revision"),
                "rung",
                hidden(ladder, "rung"),
                "mark",
                hidden(ladder, "mark"));
        assertEquals(job, taken.location());
        String after = page.get("/stock/" + out).body();
        assertFalse(after.contains("Take it back"), after);
        assertTrue(after.contains("Are on the shelf"), "counted up by hand it is there again");
        page.form("/stock/" + out, "once", "t", "do", "count", "pieces", "1");
        assertTrue(page.get("/stock/" + out).body().contains("Take it back"), "and that can be taken back");
    }

    /** The job is as agreed again, promise by promise; where its piece went elsewhere meanwhile it says so and changes nothing. */
    @Test
    void aJobThatChoseAgainGoesBackToWhatWasAgreed() throws Exception {
        String step = page.begun("child");
        page.whole("/builds/" + step);
        String job = page.form("/jobs", "once", "u", "step", step, "rank", "1").location();
        String agreed = agreed(job);
        String out = "";
        String ladder = "";
        Matcher parts = Pattern.compile("href=\"/stock/([^\"]+)\"").matcher(agreed);
        while (!ladder.contains("name=\"rung\"") && parts.find()) {
            out = parts.group(1);
            ladder = page.whole("/out/" + out);
        }
        String name = Caller.found("<title>If (.+) ran out", ladder);
        String shelf = counts(out);
        take(out, ladder, "v");
        String again = page.get(job).body().replaceAll("<span class=\"whole\">|</span>", "");
        assertTrue(again.contains(" instead of " + name), again);
        assertFalse(again.contains("without " + name), "said once");
        assertFalse(agreed(job).equals(agreed));
        assertFalse(counts(out).equals(shelf));
        assertEquals(job, back(job, again, "w").location());
        assertEquals(agreed, agreed(job));
        assertEquals(shelf, counts(out));
        assertTrue(page.get(job).body().contains("taken back: chosen again"));
        ladder = page.whole("/out/" + out);
        take(out, ladder, "x");
        again = page.get(job).body();
        page.form("/stock/" + out, "once", "y", "do", "out");
        Reply stuck = back(job, again, "z");
        assertEquals(422, stuck.status());
        String why = stuck.body().replaceAll("<span class=\"whole\">|</span>", "");
        assertTrue(why.contains("can't be taken back any more. " + name + ": piece "), why);
        assertFalse(why.contains("withy out"), "no word of a command line");
        assertFalse(why.contains("id=\"back-"), "it is not offered any more");
    }

    /** What stands on a job's page between its state and its history: its figures, and the parts. */
    private static String agreed(String job) throws Exception {
        String body = page.get(job).body();
        return Caller.found("class=\"answer\"[^>]*>([^<]+)<", body)
                + Caller.found("(<section aria-labelledby=\"parts\">[\\s\\S]*?</section>)", body)
                        .replaceAll("name=\"(once|revision)\" value=\"[^\"]*\"", "");
    }

    private static void take(String out, String ladder, String once) throws Exception {
        page.form(
                "/out/" + out,
                "once",
                once,
                "job",
                hidden(ladder, "job"),
                "revision",
                hidden(ladder, "revision"),
                "rung",
                hidden(ladder, "rung"),
                "mark",
                hidden(ladder, "mark"));
    }

    private static Reply back(String job, String body, String once) throws Exception {
        String revision = Caller.found("name=\"revision\" value=\"(\\d+)\"", body);
        return page.form(job, "once", once, "revision", revision, "do", "back");
    }

    private static String hidden(String body, String name) {
        return Caller.found(
                "name=\"" + name + "\" value=\"([^\"]+)\"", body.substring(body.indexOf("class=\"ladder\"")));
    }
}
