package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;

/** What comes by and by comes in its place, in a real browser: what was above it stays where it was, and so does the focus. */
class InPlaceTest {
    @TempDir
    Path scratch;

    @Test
    void whatComesTakesNeitherFocusNorPlace() throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        CountDownLatch held = new CountDownLatch(1);
        Browser browser = Browser.shared();
        try (ShopFolder shop = new ShopFolder(scratch, "bench", catalog -> new ComingTest.Slow(catalog, free, free) {
            @Override
            public Solution solve(Query query, Watch watch) {
                await(query.ceilings().isEmpty() ? free : held);
                return super.solve(query, watch);
            }
        })) {
            browser.open(shop.address().toString());
            browser.open(shop.at("/brief?start=estuary"));
            browser.click("button.main").arrive("/builds/", "");
            browser.open(shop.at(browser.path().replace("/builds/", "/lighter/")));
            assertTrue(browser.text().contains("The lightest is being looked for"), browser.text());
            assertEquals(1, browser.all("[data-rest]").size());
            browser.driver.executeScript("document.querySelector('.ways a').focus()");
            long place = top(browser);
            held.countDown();
            browser.settled();
            assertTrue(browser.text().contains("The lightest rod that keeps every rule"), browser.text());
            assertEquals("Back to the builds", browser.text(":focus"));
            assertEquals(place, top(browser));
            assertFalse(browser.text().contains("looked for"));
        }
    }

    @Test
    void whatIsTickedOutlivesAReloadUntilItIsSent() throws Exception {
        Browser browser = Browser.shared();
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            browser.open(shop.address().toString());
            browser.open(shop.at("/brief?start=brook"));
            browser.click("button.main").arrive("/builds/", "");
            browser.click("form.takeform button[value='1']").arrive("/jobs/1", "");
            browser.click(".checklist li:nth-child(1) input").click(".checklist li:nth-child(3) input");
            browser.driver.navigate().refresh();
            browser.arrive("/jobs/1", "");
            assertEquals(2, browser.all(".checklist input:checked").size());
            browser.click("button[value=glue]");
            browser.until(() -> browser.all(".checklist .done").size() == 2);
            browser.settled();
            assertEquals(0, browser.all(".checklist input:checked").size());
        }
    }

    /** Where the best build is told, px from the top. */
    private static long top(Browser browser) {
        return ((Number) browser.driver.executeScript(
                        "return Math.round(document.querySelector('main p:not(.ways)').getBoundingClientRect().top)"))
                .longValue();
    }
}
