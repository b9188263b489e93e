package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** By keys alone: what was left is where a way back leads, and what was done is undone without going through the page. */
class KeysTest extends InBrowser {
    private static String builds(String start) {
        browser.open(shop.at("/brief?start=" + start));
        browser.click("button.main").arrive("/builds/", "");
        return browser.path();
    }

    private static void press(CharSequence... keys) {
        new Actions(browser.driver).sendKeys(keys).perform();
    }

    private static void undo() {
        new Actions(browser.driver)
                .keyDown(Keys.CONTROL)
                .sendKeys("z")
                .keyUp(Keys.CONTROL)
                .perform();
    }

    /** Goes to an element and presses enter on it. */
    private static void enter(String css) {
        browser.driver.executeScript("document.querySelector(arguments[0]).focus()", css);
        press(Keys.ENTER);
    }

    /** What is heard of what has the focus. */
    private static String focused() {
        return String.valueOf(browser.driver.executeScript(
                        "const e = document.activeElement; return e.getAttribute('aria-label') || e.innerText"))
                .replace('\u00a0', ' ')
                .strip();
    }

    @Test
    void whatWasChangedIsUndoneByKeyAndTheFocusIsWhereItWasChanged() {
        String before = builds("brook");
        enter("#never-1-seat");
        browser.arrive("/builds/", before);
        String refused = browser.path();
        enter("#keep-1-seat");
        browser.arrive("/builds/", refused);
        String kept = browser.path();
        undo();
        browser.arrive(refused, kept);
        assertTrue(focused().startsWith("Keep "), "the seat is not kept any more, and has the focus: " + focused());
        assertEquals("Undone: " + focused() + ".", browser.text("#told"));
        browser.until(() -> browser.focused("id").equals("keep-1-seat"));
        undo();
        browser.arrive(before, refused);
        assertTrue(browser.text("#told").startsWith("Undone: Never "), browser.text("#told"));
        undo();
        assertEquals(before, browser.path(), "there is nothing before it");
        browser.driver.navigate().back();
        browser.arrive(refused, "");
        assertTrue(browser.text(".did").startsWith("Never "), "going back shows what was undone");
    }

    @Test
    void aWayBackLeadsToWhereThePageWasLeft() {
        String builds = builds("estuary");
        enter("#others-1-seat");
        browser.arrive("/drawer/", "");
        String drawer = browser.path();
        enter(".slot:nth-child(4) a");
        String why = focused();
        browser.arrive("/why/", "");
        enter("a[data-return]");
        browser.arrive(drawer, "");
        assertEquals(browser.attribute(".slot:nth-child(4) a", "aria-label"), focused(), why);
        enter("a[data-return]");
        browser.arrive(builds, "");
        assertEquals("others-1-seat", browser.focused("id"));
        browser.open(shop.at(drawer)).settled();
        browser.driver.executeScript("document.querySelector('.slot:nth-child(3) a').focus()");
        press(Keys.ESCAPE);
        browser.arrive(builds, "");
        browser.open(shop.at("/jobs")).open(shop.at(drawer));
        assertFalse(focused().startsWith("Why not"), "who comes another way begins at the top");
    }

    /** However much lies in a drawer, the way out of it is the first thing by Tab and the last: nobody goes through what is in it. */
    @Test
    void theWayOutOfALongDrawerIsOneTabAway() {
        String builds = builds("estuary");
        enter("#others-1-guide-1");
        browser.arrive("/drawer/", "");
        assertTrue(
                browser.all(".slot").size() > 60,
                "a long one: " + browser.all(".slot").size());
        assertEquals(0L, browser.driver.executeScript("return window.scrollY"), "nothing moves for the eye");
        press(Keys.TAB);
        assertEquals("Back to the builds", focused());
        browser.click("details.drawer summary");
        browser.driver.executeScript("Array.from(document.querySelectorAll('.slot a, .slot button')).pop().focus()");
        press(Keys.TAB);
        assertEquals("Back to the builds", focused());
        press(Keys.ENTER);
        browser.arrive(builds, "");
        assertEquals("others-1-guide-1", browser.focused("id"));
    }

    /** The ways to all other pages stand before each page; by Tab they are passed only by whom they led there. */
    @Test
    void whoGoesOnFromWithinAPageBeginsAtWhatIsOnTheNext() {
        builds("rocks");
        assertEquals("main", browser.driver.switchTo().activeElement().getTagName());
        press(Keys.TAB);
        assertEquals("Change the brief", focused(), "also once what was looked for has come in its place");
        enter("form.takeform button[value='1']");
        browser.arrive("/jobs/", "");
        String job = browser.path();
        press(Keys.TAB);
        assertEquals("Take it back", focused());
        enter("nav a[href='/stock']");
        browser.arrive("/stock", "");
        press(Keys.TAB);
        assertEquals("To the page", focused());
        browser.open(shop.at(job + "/scale")).settled();
        press("5", Keys.ESCAPE);
        assertEquals("5", browser.attribute("#weight", "value"), "what was typed is not left by a slip");
        press(Keys.BACK_SPACE, Keys.ESCAPE);
        browser.arrive(job, job + "/scale");
    }

    @Test
    void whatIsLookedForHasTheFocusWhenItIsFound() {
        browser.open(shop.at("/stock"));
        browser.one("#q").sendKeys("tideway 17" + Keys.ENTER);
        browser.arrive("/stock?", "");
        assertEquals(browser.text("tbody .toit"), focused());
        assertTrue(focused().startsWith("Marrick Tideway "), focused());
        browser.open(shop.at("/stock"));
        browser.one("#q").sendKeys("zzz" + Keys.ENTER);
        browser.arrive("/stock?", "");
        assertEquals("Nothing by that name.", focused());
        browser.open(shop.at("/weigh"));
        browser.one("#q").sendKeys("tideway 17" + Keys.ENTER);
        browser.arrive("/weigh?", "");
        assertTrue(focused().startsWith("Weigh Marrick Tideway "), focused());
    }

    @Test
    void whatIsTakenIsHeardAndPiecesGoByTheirNames() {
        builds("pier");
        browser.click("form.takeform button[value='0']").arrive("/jobs/", "");
        enter("button[value=accept]");
        browser.until(() -> browser.text("#told").contains("Accepted: build 1"));
        assertTrue(browser.text().contains("It should weigh"), browser.text());
        browser.open(shop.at(browser.path() + "/scale")).settled();
        String label = browser.attribute(".slot a", "aria-label");
        assertTrue(label.matches("Weigh [A-Z].* #?\\d+"), label);
    }

    /** The page of a part is the same page after a booking; a ladder leads to another one, which tells what was taken. */
    @Test
    void whatIsBookedTakenAndTakenBackIsHeard() {
        String part = "/stock/marrick-tideway-f-16";
        browser.open(shop.at(part));
        enter("button[value=receive]");
        browser.until(() -> browser.text("#told").contains("came in, +1 on the shelf"));
        assertEquals("Came in", focused());
        enter(".undoing button");
        browser.until(() -> browser.text("#told").startsWith("Taken back: came in, +1 on the shelf"));
        assertEquals(part, browser.path());
        builds("estuary");
        browser.click("form.takeform button[value='1']").arrive("/jobs/", "");
        browser.until(() -> browser.text("#told").contains("Accepted: build 1"));
        String job = browser.path();
        browser.open(shop.at("/out/quernstone-featherlode-x-16")).settled();
        enter(".rung form button");
        browser.arrive("/jobs/", "");
        browser.until(() -> browser.text("#told").contains(" instead of Quernstone Featherlode X 16"));
        enter("button[value=back]");
        browser.until(() -> browser.text("#told").contains("Taken back: chosen again"));
        assertEquals(job, browser.path());
        assertTrue(browser.text("#parts + form").contains("Quernstone Featherlode X 16"), browser.text());
        assertFalse(focused().startsWith("Take it back"), "what comes before it is not taken back by a second press");
        browser.driver.navigate().refresh();
        browser.arrive(job, "");
        assertEquals("", browser.text("#told"), "loading again does nothing");
    }

    @Test
    void whatIsAskedBackIsHeard() {
        browser.open(shop.at("/weigh?piece=marrick-tideway-r-17"));
        browser.one("#weight").sendKeys("2 g" + Keys.ENTER);
        browser.until(() -> browser.text("#told").contains("slipped"));
        browser.one("main a.button").sendKeys(Keys.ENTER);
        browser.until(() -> browser.path().startsWith("/weigh?piece"));
        browser.one("#weight").clear();
        browser.one("#weight").sendKeys("24.4 g" + Keys.ENTER);
        browser.until(() -> browser.text("#told").contains("24.40 g is booked"));
    }
}
