package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import withy.app.JobDesk;
import withy.app.OfferDesk;
import withy.app.OfferSheet.Terms;
import withy.app.Progress;
import withy.app.Propose;
import withy.app.SearchChooser;
import withy.app.Workshop;
import withy.units.QuantityText;
import withy.units.UnitSystem;
import withy.web.Caller.Reply;

/** An offer is withdrawn, or lapses, on the page of its job; that is taken back there, and a new one made. */
class OfferEndTest extends ByRequest {
    private static Reply does(String job, String what, String... more) throws Exception {
        String revision = Caller.found("name=\"revision\" value=\"(\\d+)\"", body(job));
        String[] fields = new String[more.length + 4];
        System.arraycopy(new String[] {"do", what, "revision", revision}, 0, fields, 0, 4);
        System.arraycopy(more, 0, fields, 4, more.length);
        return page.form(job, fields);
    }

    private static String offered(String start) throws Exception {
        String step = page.begun(start);
        page.whole("/builds/" + step);
        return page.form("/jobs", "step", step, "rank", "0").location();
    }

    private static boolean taken(String body) {
        return body.contains("name=\"do\" value=\"accept\"");
    }

    private static String body(String job) throws Exception {
        return page.get(job).body().replaceAll("<span class=\"whole\">|</span>", "");
    }

    private static String plain(String body) {
        return body.replaceAll("name=\"once\" value=\"[^\"]*\"", "");
    }

    @Test
    void whatIsWithdrawnIsNotTakenUntilThatIsTakenBackOrOfferedAnew() throws Exception {
        String job = offered("estuary");
        String open = body(job);
        assertTrue(taken(open), open);
        assertTrue(open.contains("good until 2026-06-15"), open);
        assertEquals(303, does(job, "withdraw").status());
        String ended = body(job);
        assertFalse(taken(ended), ended);
        assertTrue(ended.contains(", withdrawn on 2026-06-01"), ended);
        assertTrue(ended.contains("data-told>Offer withdrawn."), ended);
        assertFalse(ended.contains("/paper/offer\""), "nothing that does not hold is handed out by mistake");
        try (PDDocument paper = Loader.loadPDF(page.file(job + "/paper/offer"))) {
            String printed = new PDFTextStripper().getText(paper).replace('\u00a0', ' ');
            assertTrue(printed.contains("This offer was withdrawn on 1 Jun 2026."), "who has its address: " + printed);
        }
        assertTrue(ended.contains("Make a new offer"), ended);
        assertTrue(ended.contains("Done last, 2026-06-01: offer withdrawn."), ended);
        assertTrue(does(job, "accept", "rank", "1").status() >= 400, "a form of before");
        assertEquals(plain(ended), plain(body(job)), "and changes nothing");
        does(job, "back");
        assertTrue(taken(body(job)), "as it was");
        does(job, "withdraw");
        assertEquals(303, does(job, "offer").status());
        String anew = body(job);
        assertTrue(taken(anew), anew);
        assertEquals(
                Caller.found("<strong>1  ([^<]+)</strong>", open), Caller.found("<strong>1  ([^<]+)</strong>", anew));
        assertEquals(303, does(job, "accept", "rank", "1").status());
        String accepted = body(job);
        assertFalse(accepted.contains("value=\"withdraw\""), "what was taken is given up, not withdrawn");
        assertTrue(accepted.contains("value=\"cancel\""), accepted);
        for (String name : Caller.all("href=\"/stock/([^\"]+)\"", accepted)) {
            page.form("/stock/" + name, "do", "receive", "pieces", "5");
        }
        assertEquals(303, does(job, "built", "sure", "yes").status());
        assertFalse(body(job).contains("value=\"cancel\""), "a built rod is not given up");
    }

    @Test
    void pastItsDayItIsAskedBackBeforeItIsTaken() throws Exception {
        String job = offered("brook");
        Workshop now = shop.workshop();
        Workshop before = new Workshop(now.folder(), now.lists(), now.day().minusDays(15));
        long number = Long.parseLong(job.substring("/jobs/".length()));
        does(job, "withdraw");
        QuantityText units = new QuantityText(UnitSystem.METRIC);
        Terms terms = new Terms("", before.day(), Terms.VALID_DAYS, Terms.DEPOSIT_PERCENT, Terms.BENCH_DAYS);
        new JobDesk(before)
                .offer(
                        number,
                        (catalog, brief) ->
                                Propose.run(catalog, brief, new SearchChooser(catalog), units, Progress.NONE),
                        answer -> "",
                        new OfferDesk.Order(terms, units));
        String late = body(job);
        assertTrue(late.contains("good until 2026-05-31"), late);
        assertTrue(late.contains("Let the offer lapse"), late);
        Reply asked = does(job, "accept", "rank", "1");
        assertEquals(422, asked.status());
        assertTrue(
                asked.body()
                        .replaceAll("<span class=\"whole\">|</span>", "")
                        .contains("that day is over: parts and prices may have changed since."),
                asked.body());
        assertTrue(asked.body().contains("name=\"rank\" value=\"1\""), asked.body());
        assertTrue(taken(body(job)), "nothing was taken yet");
        does(job, "withdraw");
        String over = body(job);
        assertTrue(over.contains("data-told>Offer lapsed."), over);
        assertTrue(over.contains(", let lapse on " + now.day()), over);
        does(job, "back");
        assertEquals(303, does(job, "accept", "rank", "1", "sure", "yes").status());
        assertEquals("accepted", new JobDesk(now).show(number).state());
    }
}
