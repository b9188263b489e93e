package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.web.Caller.Reply;

/** Papers of a job and of the shop, asked for where the page offers them. */
class PapersPageTest {
    @TempDir
    private Path scratch;

    @Test
    void everyPaperThatAPageOffersIsOne() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            page.whole("/builds/" + step);
            String taken =
                    page.form("/jobs", "once", "a", "step", step, "rank", "1").location();
            String offered = page.form("/jobs", "once", "b", "step", step, "rank", "0", "sure", "yes")
                    .location();
            for (String paper : List.of("bench", "labels", "offer")) {
                isOffered(page, taken, taken + "/paper/" + paper);
            }
            for (String paper : List.of("picks", "cuts")) {
                isOffered(page, "/jobs", "/paper/" + paper);
            }
            isOffered(page, offered, offered + "/paper/offer");
            assertFalse(page.get(offered).body().contains(offered + "/paper/bench"));
            Reply none = page.get(offered + "/paper/bench");
            assertEquals(409, none.status());
            assertFalse(none.body().contains("withy "), "no command helps whom has the page: " + none.body());
            assertEquals(404, page.get(taken + "/paper/poem").status());
            assertEquals(404, page.get("/paper/bench").status());
        }
    }

    /** What was promised to it went back, so there is nothing to build or to label; what was offered stays what it was. */
    @Test
    void aJobThatWasGivenUpHasNothingForTheBench() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("brook");
            page.whole("/builds/" + step);
            String job =
                    page.form("/jobs", "once", "a", "step", step, "rank", "1").location();
            isOffered(page, job, job + "/paper/bench");
            isOffered(page, job, job + "/paper/labels");
            String revision = Caller.found(
                    "name=\"revision\" value=\"(\\d+)\"", page.get(job).body());
            page.form(job, "once", "b", "do", "cancel", "revision", revision, "sure", "yes");
            String given = page.get(job).body();
            assertTrue(given.contains(">given up<") && given.contains("id=\"parts\""), given);
            assertTrue(given.contains("no piece is promised to it") && !given.contains("It should weigh"), given);
            for (String paper : List.of("bench", "labels")) {
                assertFalse(given.contains("/paper/" + paper), given);
                Reply none = page.get(job + "/paper/" + paper);
                assertEquals(409, none.status(), paper);
                assertTrue(none.body().contains("Job 1 was given up: there is nothing to build"), none.body());
                assertTrue(
                        none.body().contains("<a class=\"button\" href=\"/jobs/1\" data-return>Back to the job</a>"),
                        none.body());
                assertFalse(none.body().contains("withy "), none.body());
            }
            isOffered(page, job, job + "/paper/offer");
            assertEquals(409, page.get("/jobs/9/paper/bench").status());
            assertFalse(
                    page.get("/jobs/9/paper/bench").body().contains("/jobs/9\""), "no way to a job that is not there");
        }
    }

    private static void isOffered(Caller page, String from, String paper) throws Exception {
        assertTrue(page.get(from).body().contains("href=\"" + paper + "\""), paper);
        Reply reply = page.get(paper);
        assertEquals(200, reply.status(), paper);
        assertTrue(reply.head().contains("application/pdf"), reply.head());
        assertTrue(reply.body().strip().startsWith("%PDF-"), paper);
    }
}
