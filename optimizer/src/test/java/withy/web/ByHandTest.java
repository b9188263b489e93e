package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.interactions.Actions;

/** The page under one hand or by keys alone: what is pressed stays where it was, and nothing that was done is lost. */
class ByHandTest extends InBrowser {
    /** True where what has the focus is seen whole and nothing lies over it. */
    private static final String SEEN = """
            const e = document.activeElement, box = e.getBoundingClientRect();
            const over = document.elementFromPoint(box.left + box.width / 2, box.bottom - 3);
            return box.top >= 0 && box.bottom <= innerHeight && (e === over || e.contains(over));
            """;

    private static void builds(String start) {
        browser.open(shop.at("/brief?start=" + start));
        browser.click("button.main").arrive("/builds/", "");
    }

    private static void press(Keys... keys) {
        new Actions(browser.driver).sendKeys(keys).perform();
    }

    private static void focus(String css) {
        browser.driver.executeScript("document.querySelector(arguments[0]).focus()", css);
    }

    private static String focused() {
        return browser.focused("id");
    }

    private static double value(String css) {
        return Double.parseDouble(browser.attribute(css, "value"));
    }

    @Test
    void whatIsKeptByKeyStaysUnderTheHandAndIsUndoneNearby() {
        builds("brook");
        String before = browser.path();
        focus("#keep-1-seat");
        String part = browser.focused("aria-label");
        assertTrue(part.startsWith("Keep "), part);
        press(Keys.ENTER);
        browser.arrive("/builds/", before);
        assertEquals("keep-1-seat", focused(), "the focus is where it was");
        assertEquals("Let go", browser.text("#keep-1-seat"));
        assertEquals(true, browser.driver.executeScript(SEEN), "and is seen");
        browser.until(() -> browser.text("#told").contains("Build 1 now"));
        assertTrue(browser.text("#told").startsWith(part + ". "), browser.text("#told"));
        String kept = browser.path();
        browser.click(".did a").arrive("/builds/", kept);
        assertEquals(before, browser.path());
        assertEquals("Keep", browser.text("#keep-1-seat"));
        assertTrue(browser.all(".did").isEmpty(), "nothing is left to undo");
    }

    @Test
    void whatIsNeverUsedGivesWayInItsPlaceAndBackBringsItBack() {
        builds("brook");
        String before = browser.path();
        String seat = browser.attribute("#never-1-seat", "aria-label");
        focus("#never-1-seat");
        press(Keys.SPACE);
        browser.arrive("/builds/", before);
        assertEquals("never-1-seat", focused());
        assertFalse(browser.attribute("#never-1-seat", "aria-label").equals(seat));
        browser.driver.navigate().back();
        browser.arrive(before, "");
        browser.until(() -> !browser.all("#never-1-seat").isEmpty()
                && seat.equals(browser.attribute("#never-1-seat", "aria-label")));
    }

    @Test
    void anArrowMovesASliderByHalves() {
        builds("brook");
        String before = browser.path();
        double weight = value("#priorities-weight");
        assertEquals(Math.rint(weight), weight, "whole as the start says");
        focus("#priorities-weight");
        press(Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_RIGHT);
        assertEquals(weight - 1, value("#priorities-weight"));
        browser.arrive("/builds/", before);
        assertEquals(weight - 1, value("#priorities-weight"), "as it was chosen again");
        assertEquals("priorities-weight", focused());
        browser.driver.executeScript("document.querySelector('#priorities-weight').value = 1.3");
        press(Keys.ARROW_RIGHT);
        assertEquals(1.5, value("#priorities-weight"), "from what was typed to the next half");
        press(Keys.HOME);
        assertEquals(0, value("#priorities-weight"));
        browser.settled();
    }

    @Test
    void whatIsTickedOutlivesWhatAnotherWindowDid() {
        builds("brook");
        browser.click("form.takeform button[value='1']").arrive("/jobs/", "");
        String job = browser.path();
        browser.click(".checklist li:nth-child(3) input");
        String here = browser.driver.getWindowHandle();
        browser.driver.switchTo().newWindow(WindowType.TAB);
        browser.open(shop.at(job)).click(".checklist li:nth-child(1) input");
        glue(1);
        browser.driver.close();
        browser.driver.switchTo().window(here);
        browser.follow("button[value=glue]");
        assertTrue(browser.text().contains("Another window changed"), browser.text());
        assertTrue(browser.path().startsWith(job + "?"), "it is the job as it is now: " + browser.path());
        assertEquals(1, browser.all(".checklist .done").size());
        assertEquals(
                1, browser.all(".checklist li:nth-child(3) input:checked").size(), "nothing is ticked twice by hand");
        glue(2);
    }

    private static void glue(int glued) {
        browser.click("button[value=glue]");
        browser.until(() -> browser.all(".checklist .done").size() == glued);
        browser.settled();
    }

    @Test
    void aRodIsFinishedByKeysAlone() {
        builds("child");
        browser.click("form.takeform button[value='1']").arrive("/jobs/", "");
        String job = browser.path();
        focus(".checklist li:nth-child(1) input");
        press(Keys.SPACE);
        focus("button[value=glue]");
        press(Keys.ENTER);
        browser.until(() -> browser.all(".checklist .done").size() == 1);
        assertEquals("The ticked ones are glued", words(), "what was pressed has the focus still");
        assertEquals(true, browser.driver.executeScript(SEEN), "and stands under the hand");
        browser.until(() -> browser.text("#told").equals("Glued: blank."));
        assertEquals(job, browser.path());
        press(Keys.TAB, Keys.SPACE);
        browser.until(() -> browser.text().contains("Is it built?"));
        assertEquals("No, not yet", words(), "what changes nothing is nearest");
        press(Keys.TAB, Keys.ENTER);
        browser.until(() -> !browser.all("#balance").isEmpty());
        assertEquals("weight", focused(), "the scale is next");
        String foretold = browser.text(".answer").replaceAll(".*weigh ([0-9.]+) g.*", "$1");
        press(Keys.ENTER);
        browser.until(() -> browser.text().contains("Nothing is typed here yet"));
        assertEquals("weight", focused(), "nothing to go on from");
        new Actions(browser.driver).sendKeys(foretold, Keys.ENTER).perform();
        assertEquals("balance", focused(), "the balance is not passed over by oversight");
        assertFalse(browser.text().contains("It weighs"), browser.text());
        press(Keys.ENTER);
        browser.until(() -> browser.text().contains("It weighs " + foretold));
    }

    private static String words() {
        return browser.driver.switchTo().activeElement().getText();
    }

    @Test
    void whatWasTypedAndAskedBackIsTypedOver() {
        browser.open(shop.at("/weigh?piece=marrick-tideway-r-17&weight=7.3+g"));
        assertEquals("weight", focused());
        new Actions(browser.driver).sendKeys("24.3").perform();
        assertEquals("24.3", browser.attribute("#weight", "value"));
    }

    @Test
    void thePlanIsGoneThroughByKeysInOrder() {
        builds("rocks");
        browser.click("form.takeform button[value='1']").arrive("/jobs/", "");
        browser.open(shop.at("/plan")).settled();
        List<String> order = new java.util.ArrayList<>();
        for (int i = 0; i < 40 && !order.contains("The end"); i++) {
            press(Keys.TAB);
            boolean inside = (Boolean) browser.driver.executeScript("return document.activeElement !== document.body");
            if (inside) {
                assertEquals(true, browser.driver.executeScript(SEEN), "what has the focus is seen");
                assertEquals(
                        "solid",
                        browser.driver.executeScript("return getComputedStyle(document.activeElement).outlineStyle"));
            }
            order.add(
                    inside
                            ? String.valueOf(
                                    browser.driver.executeScript(
                                            "return document.activeElement.getAttribute('aria-label') || document.activeElement.innerText"))
                            : "The end");
        }
        assertEquals(List.of("To the page", "Withy", "Talk", "Jobs", "Scale", "Stock", "Plan"), order.subList(0, 7));
        long jobs =
                order.stream().filter(label -> label.startsWith("Open Job ")).count();
        assertEquals(browser.all("main .slot").size(), jobs, order.toString());
        assertEquals("The end", order.get(order.size() - 1), "the keys are caught nowhere");
    }

    @Test
    void goingBackPastAQuestionShowsThePageNotTheBrowsersOwnWarning() {
        builds("pier");
        browser.click("form.takeform button[value='1']").arrive("/jobs/", "");
        String job = browser.path();
        browser.follow("button[value=built]");
        assertTrue(browser.text().contains("Is it built?"), browser.text());
        browser.driver.navigate().refresh();
        browser.arrive(job, "");
        assertTrue(browser.text().contains("It should weigh"), "loaded again it is the job");
        browser.follow("button[value=built]").clickWords("button", "Yes, it is built");
        browser.until(() -> !browser.all("#balance").isEmpty());
        browser.driver.navigate().back();
        browser.arrive(job, "");
        assertTrue(browser.text().contains("The finished rod"), browser.text());
    }

    /** W3C, Web Content Accessibility Guidelines 2.2, 1.4.11: three to one beside what is next to it. */
    @Test
    void whereTheFocusIsCanBeSeenByDayAndByNight() {
        for (String scheme : List.of("light", "dark")) {
            browser.driver.executeCdpCommand(
                    "Emulation.setEmulatedMedia",
                    Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
            browser.open(shop.at("/"));
            press(Keys.TAB, Keys.TAB, Keys.TAB);
            double ring = light("getComputedStyle(document.activeElement).outlineColor");
            double paper = light("getComputedStyle(document.body).backgroundColor");
            double contrast = (Math.max(ring, paper) + 0.05) / (Math.min(ring, paper) + 0.05);
            assertTrue(contrast >= 3, scheme + " " + contrast);
        }
        browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of()));
    }

    /** Relative luminance of a colour, as these guidelines define it. */
    private static double light(String colour) {
        String[] parts = String.valueOf(browser.driver.executeScript("return " + colour))
                .replaceAll("[^0-9,]", "")
                .split(",");
        double[] share = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < share.length; i++) {
            double c = Integer.parseInt(parts[i]) / 255.0;
            sum += share[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    @Test
    void whereNothingElseFitsThePageSaysSo() {
        builds("estuary");
        String step = browser.path().substring("/builds/".length());
        browser.open(shop.at("/drawer/" + step + "/1/seat")).settled();
        assertFalse(browser.text().contains("Nothing else that keeps"), browser.text());
        browser.open(shop.at("/drawer/" + step + "/1/guide-1")).settled();
        assertTrue(browser.text().contains("Nothing else that keeps"), browser.text());
    }
}
