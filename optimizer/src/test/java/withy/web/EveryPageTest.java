package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.logging.LogEntry;

/** The whole job from talk to finished rod, then every page looked at: by axe, on a phone, with the keyboard alone, and for requests that leave. */
class EveryPageTest extends InBrowser {
    @BeforeAll
    static void open() {
        browser.open("about:blank");
        browser.driver.manage().logs().get("performance");
        browser.driver.manage().logs().get("browser");
    }

    @Test
    void theWholeJobThenEveryPage() throws Exception {
        browser.open(shop.at("/brief?start=estuary"));
        browser.click("button.main").arrive("/builds/", "");
        String step = browser.path().substring("/builds/".length());
        String seat = browser.one("#parts-1 .part:nth-child(5) a.button").getAttribute("href");
        browser.click("form.takeform button[value='1']").arrive("/jobs/1", "");
        assertTrue(browser.text().contains("It should weigh"), browser.text());
        backAndTakenAgain("/builds/" + step);

        List<String> faults = new ArrayList<>();
        weighIn(faults);
        stockOut(seat);
        Map<String, String> pages = pages(step);
        for (Map.Entry<String, String> page : pages.entrySet()) {
            browser.open(shop.at(page.getValue())).settled();
            browser.violations().forEach(fault -> faults.add(page.getKey() + " " + fault));
            faults.addAll(browser.shoot(page.getKey()));
            assertEquals(1, browser.all("h1").size(), page.getKey());
            assertFalse(browser.text().contains("our fault"), page.getKey());
        }
        assertEquals(List.of(), faults);
        finish();
        nothingLeftTheMachine();
    }

    /** Going back after a build was taken, or another tab, makes no second job by itself. */
    private static void backAndTakenAgain(String builds) {
        browser.driver.navigate().back();
        browser.arrive(builds, "");
        browser.click("form.takeform button[value='1']").arrive("/jobs", builds);
        browser.open(shop.at(builds)).settled();
        browser.click("form.takeform button[value='1']").arrive("/jobs", builds);
        assertTrue(browser.text().contains("Is it another rod?"), browser.text());
        browser.clickWords("a", "No, show that job").arrive("/jobs/1", "");
        browser.open(shop.at("/jobs"));
        assertEquals(1, browser.all("main a[href^='/jobs/']").size());
    }

    private static void weighIn(List<String> asked) {
        browser.open(shop.at("/jobs/1"));
        browser.clickWords("a", "Weigh its parts").arrive("/jobs/1/scale", "");
        String before = browser.text(".total .answer");
        assertTrue(before.startsWith("None of its "), before);
        browser.fill("#weight", "602.5 g");
        browser.one("#weight").sendKeys(Keys.ENTER);
        browser.until(() -> browser.text().contains("is listed at"));
        asked.addAll(browser.violations());
        asked.addAll(browser.shoot("sure"));
        browser.clickWords("a", "Weigh again").arrive("/jobs/1/scale", "/jobs/1/scale");
        assertEquals(before, browser.text(".total .answer"));
        String heavier = "56.20 g";
        browser.fill("#weight", heavier);
        browser.one("#weight").sendKeys(Keys.ENTER);
        browser.until(() -> browser.text().contains("With 1 of "));
        assertTrue(browser.text().contains(heavier), browser.text());
        assertFalse(browser.text(".total .answer").equals(before));
    }

    private static void stockOut(String drawer) {
        browser.open(shop.at("/jobs/1"));
        String part = browser.all("main a[href^='/stock/']").stream()
                .filter(link -> link.getAttribute("aria-label").contains("Featherlode"))
                .findFirst()
                .orElseThrow()
                .getAttribute("href");
        browser.open(part);
        browser.click("button[value=out]").arrive("/out/", "");
        assertTrue(drawer.endsWith("/seat"));
        assertTrue(browser.all(".rung").size() >= 2, browser.text());
        browser.click(".rung form button").arrive("/jobs/1", "");
        assertFalse(browser.text(".checklist").contains("Featherlode"), browser.text());
    }

    private static Map<String, String> pages(String step) {
        Map<String, String> pages = new LinkedHashMap<>();
        pages.put("start", "/");
        pages.put("brief", "/brief/" + step);
        pages.put("brief-empty", "/brief");
        pages.put("builds", "/builds/" + step);
        pages.put("drawer", "/drawer/" + step + "/1/seat");
        pages.put("why", "/why/" + step + "/marrick-tideway-r-16");
        pages.put("lighter", "/lighter/" + step);
        pages.put("around", "/around/" + step);
        pages.put("jobs", "/jobs");
        pages.put("job", "/jobs/1");
        pages.put("scale-job", "/jobs/1/scale");
        pages.put("scale", "/weigh");
        pages.put("stock", "/stock?q=&kind=reel+seat");
        pages.put("part", "/stock/marrick-tideway-r-16");
        pages.put("out", "/out/marrick-tideway-r-16");
        pages.put("plan", "/plan");
        pages.put("nowhere", "/nowhere");
        return pages;
    }

    private static void finish() {
        browser.open(shop.at("/jobs/1"));
        browser.follow("button[value=built]");
        assertTrue(browser.text().contains("parts are not ticked"), browser.text());
        browser.clickWords("a", "No, not yet")
                .until(() -> !browser.all("button[value=built]").isEmpty());
        browser.follow("button[value=built]").clickWords("button", "Yes, it is built");
        browser.until(() -> !browser.all("#balance").isEmpty());
        browser.fill("#weight", "101.3 g").fill("#balance", "93 mm");
        browser.click("button[value=weighed]").arrive("/jobs/1", "");
        assertTrue(browser.text().contains("It weighs 101.3 g and balances 93 mm"), browser.text());
        browser.click("button[value=close]").arrive("/jobs/1", "");
        assertTrue(browser.text(".bead[aria-current]").contains("closed"));
    }

    /** Every request the browser made is in its own log. */
    private static void nothingLeftTheMachine() throws Exception {
        int seen = 0;
        for (LogEntry entry : browser.driver.manage().logs().get("performance")) {
            JsonNode message = new ObjectMapper().readTree(entry.getMessage()).path("message");
            if (message.path("method").asText().equals("Network.requestWillBeSent")) {
                String url = message.path("params").path("request").path("url").asText();
                assertTrue(url.startsWith(shop.at("/")) || url.startsWith("data:"), url);
                seen++;
            }
        }
        assertTrue(seen > 40, "requests seen: " + seen);
        for (LogEntry entry : browser.driver.manage().logs().get("browser")) {
            assertFalse(entry.getMessage().contains("Content Security Policy"), entry.getMessage());
        }
    }

    @Test
    void keyboardAloneIsEnough() {
        browser.open(shop.at("/"));
        Runnable tab = () -> browser.driver.switchTo().activeElement().sendKeys(Keys.TAB);
        tabTo(tab, "Trout in a brook");
        browser.driver.switchTo().activeElement().sendKeys(Keys.ENTER);
        browser.arrive("/brief", "");
        tabTo(tab, "Show three builds");
        browser.driver.switchTo().activeElement().sendKeys(Keys.ENTER);
        browser.arrive("/builds/", "");
        String first = browser.path();
        tabTo(tab, "Never");
        browser.driver.switchTo().activeElement().sendKeys(Keys.ENTER);
        browser.arrive("/builds/", first);
        assertTrue(browser.text().contains("Never: "));
    }

    private static void tabTo(Runnable tab, String words) {
        for (int i = 0; i < 80; i++) {
            tab.run();
            if (browser.driver.switchTo().activeElement().getText().contains(words)) {
                return;
            }
        }
        throw new AssertionError("no way by tab to " + words);
    }

    @Test
    void withoutScriptEverythingStillWorks() {
        try (Browser plain = new Browser(false)) {
            plain.open(shop.address().toString());
            plain.clickWords("a", "Bass and sea trout");
            plain.follow("#count + noscript button");
            assertTrue(plain.one("#count").getText().contains("At least"), plain.text());
            plain.follow("button.main");
            assertEquals(3, plain.all("article.build").size());
            plain.follow("form.sliders-form button");
            assertEquals(3, plain.all("article.build").size());
            plain.follow("#parts-1 .part button[value=never]");
            assertTrue(plain.text().contains("Never: "), plain.text());
        }
    }
}
