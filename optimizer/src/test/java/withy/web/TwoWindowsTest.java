package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.catalog.CatalogReader;
import withy.shop.Shop;
import withy.web.Caller.Reply;

/** Two windows, or a window and a command line, at the same thing: the later one is told what the other did before anything counts over it. */
class TwoWindowsTest extends ByRequest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    /** Listed at 24.5 g. */
    private static final String SEAT = "marrick-tideway-r-17";

    private static int forms;

    /** The form of a page as it was loaded, sent with what is typed besides. */
    private static Reply sent(String path, String loaded, String... typed) throws Exception {
        List<String> fields = new ArrayList<>(List.of("once", "form " + forms++));
        for (String kept : List.of("piece", "seen", "job", "next", "weight", "revision", "rung", "mark", "sure")) {
            Matcher hidden = Pattern.compile("type=\"hidden\" name=\"" + kept + "\" value=\"([^\"]*)\"")
                    .matcher(loaded);
            if (hidden.find() && !List.of(typed).contains(kept)) {
                fields.addAll(List.of(kept, hidden.group(1).replace("&#39;", "'")));
            }
        }
        fields.addAll(List.of(typed));
        return page.form(path, fields.toArray(String[]::new));
    }

    private static String job(String start) throws Exception {
        String step = page.begun(start);
        page.whole("/builds/" + step);
        return page.form("/jobs", "once", "job " + forms++, "step", step, "rank", "1", "sure", "yes")
                .location();
    }

    @Test
    void thePieceAnotherWindowWeighedIsAskedBackWithBothFigures() throws Exception {
        String seat = "marrick-tideway-r-16";
        String one = page.get("/weigh?piece=" + seat + "%231").body();
        String other = page.get("/weigh?piece=" + seat + "%231").body();
        assertEquals(303, sent("/weigh", one, "weight", "19.5 g").status());
        Reply asked = sent("/weigh", other, "weight", "20.1 g");
        assertEquals(422, asked.status());
        assertTrue(
                asked.body()
                        .contains("piece 1 was weighed since this page was opened: 19.50 g. Here it reads 20.10 g."),
                asked.body());
        assertTrue(page.get("/stock/" + seat).body().contains("#1 · on the shelf · 19.50 g"), "nothing counts yet");
        Reply yes = sent("/weigh", asked.body());
        assertEquals(303, yes.status());
        assertTrue(page.get("/stock/" + seat).body().contains("#1 · on the shelf · 20.10 g"));
        Reply same = sent("/weigh", other, "weight", "20.1 g");
        assertEquals(303, same.status(), "the same figure need not be asked");
    }

    @Test
    void whatTheCommandLineWeighedIsToldToTheWindow() throws Exception {
        String seat = "marrick-tideway-r-18";
        String loaded = page.get("/weigh?piece=" + seat).body();
        var lists = CatalogReader.read(shop.folder, DAY).catalog();
        try (Shop elsewhere = Shop.beginning(shop.folder, lists, DAY)) {
            elsewhere.scale().weigh(seat, null, 30_500);
        }
        Reply asked = sent("/weigh", loaded, "weight", "30.9 g");
        assertEquals(422, asked.status());
        assertTrue(
                asked.body()
                        .contains(
                                "piece 1 was weighed since this page was opened: 30.50 g. Does 30.90 g belong to another piece?"),
                asked.body());
        String same = Caller.found("data-back=\"([^\"]+)\"", asked.body()).replace("&amp;", "&");
        String form = page.get(same).body();
        assertTrue(form.contains("value=\"30.9 g\""), "what was typed is still there: " + form);
        assertTrue(form.contains("Last weighed 30.50 g"), form);
        assertEquals(
                "/weigh?weighed=" + seat + "%232", sent("/weigh", asked.body()).location(), "it was another piece");
    }

    @Test
    void whereEveryPieceWasWeighedNoneIsWeighedAgainUnasked() throws Exception {
        for (int piece = 1; piece <= 3; piece++) {
            String loaded = page.get("/weigh?piece=" + SEAT).body();
            assertEquals(
                    303, sent("/weigh", loaded, "weight", "24." + piece + " g").status());
        }
        Reply asked = page.form("/weigh", "once", "fourth", "piece", SEAT, "weight", "24.9 g");
        assertEquals(422, asked.status());
        assertTrue(asked.body().contains("Piece 1 has 24.10 g; here it reads 24.90 g."), asked.body());
        String chosen = page.get("/weigh?piece=" + SEAT).body();
        assertTrue(chosen.contains("Last weighed 24.10 g"), "the page says beforehand which one it will be");
        assertEquals(303, sent("/weigh", chosen, "weight", "24.2 g").status(), "then it is meant so");
    }

    @Test
    void aFarReadingAskedBackKeepsWhatWasTyped() throws Exception {
        String loaded = page.get("/weigh?piece=marrick-tideway-r-16%232").body();
        Reply asked = sent("/weigh", loaded, "weight", "56.2 g");
        assertEquals(422, asked.status());
        assertTrue(
                asked.body().contains("is listed at 19.70 g, give or take 0.79 g. The scale says 56.20 g"),
                asked.body());
        String again = Caller.found("data-back=\"([^\"]+)\"", asked.body()).replace("&amp;", "&");
        assertTrue(page.get(again).body().contains("value=\"56.2 g\""), again);
        assertEquals(303, sent("/weigh", asked.body()).status());
    }

    @Test
    void theFinishedRodWeighedInAnotherWindowIsToldAndNothingTypedIsLost() throws Exception {
        String job = job("child");
        String revision =
                Caller.found("name=\"revision\" value=\"(\\d+)\"", page.get(job).body());
        page.form(job, "once", "built", "revision", revision, "do", "built", "sure", "yes");
        String one = page.get(job).body();
        String other = page.get(job).body();
        double foretold = Double.parseDouble(Caller.found("It should weigh ([0-9.]+) g", one));
        String first = String.format("%.1f g", foretold + 1);
        String late = String.format("%.1f g", foretold + 2);
        assertEquals(
                303,
                sent(job, one, "do", "weighed", "weight", first, "balance", "93 mm")
                        .status());
        Reply stale = sent(job, other, "do", "weighed", "weight", late, "balance", "95 mm");
        assertEquals(409, stale.status());
        String told = stale.body();
        assertTrue(
                told.contains("in the meantime: " + first.replace(" g", "0 g") + ", 93 mm. Here was typed: " + late
                        + ", 95 mm."),
                told);
        assertTrue(told.contains("value=\"" + late + "\"") && told.contains("value=\"95 mm\""), told);
        assertTrue(told.matches("(?s).*<details[^>]*id=\"weigh-again\" open.*"), "the form stands open");
        assertTrue(page.get(job).body().contains("It weighs " + first), "the earlier one counts");
        Reply over = sent(job, told, "do", "weighed", "weight", late, "balance", "95 mm");
        assertEquals(303, over.status());
        assertTrue(page.get(job).body().contains("It weighs " + late), "until it is said otherwise");
    }

    @Test
    void aLadderThatIsOutOfDateIsShownAnewAndTakesNothing() throws Exception {
        String job = job("estuary");
        String number = job.substring("/jobs/".length());
        String part = Caller.found(
                "href=\"/stock/([^\"]*(?:featherlode|tideway)[^\"]*)\"",
                page.get(job).body());
        String ladder = page.whole("/out/" + part);
        String forms = ladder.substring(ladder.indexOf("name=\"job\" value=\"" + number + "\""));
        assertEquals(
                303,
                page.form(
                                job,
                                "once",
                                "glue",
                                "revision",
                                revision(page.get(job).body()),
                                "do",
                                "glue",
                                "station",
                                "blank")
                        .status());
        Reply late = sent("/out/" + part, forms, "job", number);
        assertEquals("/out/" + part + "?since=" + number, late.location());
        String now = whole(late.location());
        assertTrue(now.contains("Another window changed job " + number + " in the meantime: glued: blank."), now);
        assertTrue(now.contains("name=\"mark\""), "the ladder stands there anew");
        String fresh = now.substring(now.indexOf("name=\"job\" value=\"" + number + "\""));
        Reply other = sent("/out/" + part, fresh, "job", number, "mark", "seat some other");
        assertEquals("/out/" + part + "?since=" + number + "&moved=shelf", other.location());
        assertTrue(whole(other.location()).contains("What is on the shelf changed in the meantime"));
        assertEquals(job, sent("/out/" + part, fresh, "job", number).location(), "what is still so is taken");
        assertFalse(page.get(job).body().contains("/stock/" + part + "\""));
    }

    /** A page of an address with words in it, with all that comes by and by. */
    private static String whole(String path) throws Exception {
        String body = page.get(path).body();
        while (body.contains("data-rest")) {
            body = page.get(path + "&show=rest").body();
        }
        return body;
    }

    private static String revision(String body) {
        return Caller.found("name=\"revision\" value=\"(\\d+)\"", body);
    }
}
