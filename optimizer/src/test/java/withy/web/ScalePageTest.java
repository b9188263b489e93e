package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.web.Caller.Reply;

/** Weighing any part: found by a few letters, chosen, weighed, and on to the next. */
class ScalePageTest extends ByRequest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final String CORK = "fellcork-rear-75";
    private static final String SEAT = "marrick-tideway-r-17";

    private static boolean asksForItsWeight(String body, String piece) {
        return body.contains("name=\"piece\" value=\"" + piece + "\"") && body.contains("id=\"weight\"");
    }

    @Test
    void aFewLettersInAnyOrderFindParts() throws Exception {
        String body = page.get("/weigh?q=17+TIDE").body();
        assertTrue(body.contains("href=\"/weigh?piece=" + SEAT + "\""), body);
        assertFalse(body.contains("marrick-tideway-r-16"), "16 was not asked for");
        assertFalse(body.contains("id=\"weight\""), "none is chosen yet");
        String typed = page.get("/weigh?q=tideway+r+17").body();
        assertTrue(typed.indexOf(SEAT) < typed.indexOf("marrick-tideway-trigger-17"), typed);
        assertTrue(page.get("/weigh?q=no+such+thing").body().contains("Nothing by that name."));
    }

    @Test
    void theOnlyPartOfThatNameIsReadyToBeWeighed() throws Exception {
        assertTrue(asksForItsWeight(page.get("/weigh?q=marrick+tideway+R+17").body(), SEAT));
        assertTrue(asksForItsWeight(page.get("/weigh?q=tideway+f+17").body(), "marrick-tideway-f-17"));
        assertTrue(asksForItsWeight(page.get("/weigh?piece=" + SEAT).body(), SEAT));
        assertTrue(asksForItsWeight(page.get("/weigh?q=" + SEAT + "%237").body(), SEAT + "#7"));
    }

    @Test
    void whatIsBookedIsToldAndTheNextCanBeLookedFor() throws Exception {
        Reply booked = page.form("/weigh", "once", "a", "piece", SEAT, "weight", "24.1 g", "next", "any");
        assertEquals("/weigh?weighed=" + SEAT + "%231", booked.location());
        String after = page.get(booked.location()).body();
        assertTrue(after.contains("24.10 g is booked"), after);
        assertTrue(after.contains("id=\"q\""), "the next part can be looked for");
        String again = page.get("/weigh?q=" + SEAT + "%231").body();
        assertTrue(again.contains("Last weighed 24.10 g"), again);
    }

    @Test
    void nothingIsSaidToBeBookedThatWasNot() throws Exception {
        assertFalse(page.get("/weigh?weighed=" + SEAT + "%2399").body().contains("is booked"));
        assertFalse(page.get("/weigh?weighed=nothing%231").body().contains("is booked"));
        assertEquals(422, page.get("/weigh?piece=nothing").status());
    }

    @Test
    void whatWeighsAsListedIsSaidToAndNotANoughtHeavier() throws Exception {
        String before = page.get("/weigh").body();
        assertFalse(before.contains("Fellcork, grip"), before);
        page.form("/weigh", "once", "d", "piece", CORK, "weight", listed(CORK), "next", "any");
        String same = page.get("/weigh").body();
        assertTrue(same.contains("Fellcork, grip: as listed (1 weighed)"), same);
        assertFalse(same.contains(" 0.0 % "), same);
    }

    private static String listed(String part) throws Exception {
        return CatalogReader.read(shop.folder, DAY).catalog().find(part).facts().weightG() + " g";
    }

    @Test
    void theLeastCertainPieceComesFirstAndAnyCanBeChosen() throws Exception {
        String step = page.begun("brook");
        page.whole("/builds/" + step);
        String job = page.form("/jobs", "once", "b", "step", step, "rank", "1").location();
        String scale = page.get(job + "/scale").body();
        String first = Caller.found("name=\"piece\" value=\"([^\"]+)\"", scale);
        Catalog lists = CatalogReader.read(shop.folder, DAY).catalog();
        double certain = lists.find(first.replaceAll("#.*", "")).facts().weightTolG();
        Matcher other = Pattern.compile("scale\\?piece=([^\"]+)%23").matcher(scale);
        while (other.find()) {
            assertTrue(lists.find(other.group(1)).facts().weightTolG() <= certain, other.group(1));
        }
        String link =
                Caller.found("href=\"(" + job + "/scale\\?piece=(?!" + first.replace("#", "%23") + ")[^\"]+)\"", scale);
        String chosen = link.substring(link.indexOf('=') + 1).replace("%23", "#");
        assertTrue(asksForItsWeight(page.get(link).body(), chosen), chosen);
    }
}
