package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Pages in their states, by day and by night, for who sees little, hears them, or can't bear what moves. */
class EveryStateTest extends InBrowser {
    /** Elements that move for longer than a frame, by their class. */
    private static final String MOVING = """
            const long = times => times.split(',').some(t => parseFloat(t) * (t.includes('ms') ? 1 : 1000) > 16);
            return [...document.querySelectorAll('*')].filter(e => { const s = getComputedStyle(e);
              return long(s.transitionDuration) || s.animationName !== 'none' && long(s.animationDuration)
                || s.scrollBehavior === 'smooth'; }).map(e => e.tagName + '.' + e.className).slice(0, 5);
            """;

    /** Pictures that are neither named nor hidden from who hears the page. */
    private static final String UNNAMED = """
            return [...document.querySelectorAll('main svg')].filter(e => !e.closest('[aria-hidden=true]')
              && !(e.getAttribute('role') === 'img' && (e.getAttribute('aria-label') || e.querySelector('title'))))
              .map(e => e.outerHTML.slice(0, 80));
            """;

    @AfterEach
    void asUsual() {
        emulate(List.of());
    }

    private static void emulate(List<Map<String, String>> features) {
        browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", features));
    }

    private static Map<String, String> prefers(String what, String value) {
        return Map.of("name", "prefers-" + what, "value", value);
    }

    private static List<String> looked(String state) {
        browser.settled();
        List<String> faults = new ArrayList<>();
        for (String scheme : List.of("light", "dark")) {
            emulate(List.of(prefers("color-scheme", scheme), prefers("reduced-motion", "reduce")));
            browser.violations().forEach(fault -> faults.add(state + " " + scheme + " " + fault));
        }
        return faults;
    }

    private static String offered(String start) {
        browser.open(shop.at("/brief?start=" + start));
        browser.click("button.main").arrive("/builds/", "");
        String builds = browser.path();
        browser.settled().click("form.takeform button[value='0']").arrive("/jobs/", "");
        return builds;
    }

    @Test
    void noStateOfAPageHasAViolationByDayOrByNight() {
        List<String> faults = new ArrayList<>();
        browser.open(shop.at("/brief?start=estuary"))
                .fill("#lure-usual", "lots")
                .follow("button.main");
        assertTrue(browser.text().contains("Some of it can't be read"), browser.text());
        faults.addAll(looked("brief with a fault"));
        String builds = offered("child");
        String job = browser.path();
        faults.addAll(looked("job offered"));
        browser.click("button[value=withdraw]")
                .until(() -> !browser.all("button[value=offer]").isEmpty());
        faults.addAll(looked("job withdrawn"));
        browser.click("button[value=offer]")
                .until(() -> !browser.all("button[value=accept]").isEmpty());
        browser.click("button[value=accept]")
                .until(() -> !browser.all("input[name=station]").isEmpty());
        faults.addAll(looked("job accepted"));
        browser.follow("button[value=cancel]");
        faults.addAll(looked("asked back"));
        browser.clickWords("button", "Yes, give it up").arrive(job, "");
        faults.addAll(looked("job given up"));
        browser.open(shop.at("/stock/marrick-tideway-r-16")).click("button[value=receive]");
        browser.until(() -> !browser.all(".undoing").isEmpty());
        faults.addAll(looked("part booked"));
        for (String path : List.of(
                builds,
                builds.replace("/builds/", "/around/"),
                builds.replace("/builds/", "/lighter/"),
                builds.replace("/builds/", "/drawer/") + "/1/blank",
                "/jobs",
                "/plan",
                "/weigh",
                "/")) {
            browser.open(shop.at(path));
            faults.addAll(looked(path));
        }
        assertEquals(List.of(), faults);
    }

    @Test
    void nothingMovesForWhoCannotBearIt() {
        offered("pier");
        String job = browser.path();
        List<String> moving = new ArrayList<>();
        int usually = 0;
        for (String path : List.of("/", "/brief?start=pier", job, "/stock/marrick-tideway-r-16")) {
            browser.open(shop.at(path)).settled();
            emulate(List.of(prefers("reduced-motion", "no-preference")));
            usually += ((List<?>) browser.driver.executeScript(MOVING)).size();
            emulate(List.of(prefers("reduced-motion", "reduce")));
            ((List<?>) browser.driver.executeScript(MOVING)).forEach(one -> moving.add(path + " " + one));
        }
        assertEquals(List.of(), moving);
        assertTrue(usually > 0, "or this test could not fail");
    }

    @Test
    void everyPictureIsNamedAndHasItsTable() {
        String builds = offered("estuary");
        for (String way : List.of("/builds/", "/around/", "/lighter/")) {
            browser.open(shop.at(builds.replace("/builds/", way))).settled();
            assertTrue(browser.all("main svg").size() > 0, way);
            assertEquals(List.of(), browser.driver.executeScript(UNNAMED), way);
            assertTrue(browser.all("main table tbody tr").size() > 1, way);
        }
    }
}
