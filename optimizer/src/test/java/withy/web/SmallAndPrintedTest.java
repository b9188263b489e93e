package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The smallest phone, its letters twice as large, and paper. */
class SmallAndPrintedTest extends InBrowser {
    private static final int PHONE = 320;
    private static final int LARGE = 32;
    private static final int USUAL = 16;

    /** Words of figures and heads of columns that stand in more than one line. */
    private static final String BROKEN = """
            return [...document.querySelectorAll('table.numbers td, table.numbers th')]
              .filter(e => e.checkVisibility() && getComputedStyle(e.closest('thead, tbody')).clipPath === 'none')
              .flatMap(e => [...e.childNodes]).filter(n => n.nodeType === 3 && n.textContent.trim())
              .filter(n => !/ /.test(n.textContent.trim()))
              .filter(n => { const r = document.createRange(); r.selectNodeContents(n);
                return new Set([...r.getClientRects()].map(box => Math.round(box.top))).size > 1; })
              .map(n => n.textContent.trim());
            """;

    private static String builds;

    @BeforeAll
    static void open() {
        browser.open(shop.at("/brief?start=estuary"));
        browser.click("button.main").arrive("/builds/", "");
        builds = browser.path();
        browser.click("form.takeform button[value='1']").arrive("/jobs/", "");
    }

    @AfterEach
    void asUsual() {
        letters(USUAL);
        browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
        browser.width(1280);
    }

    private static void letters(int pixels) {
        browser.driver.executeCdpCommand(
                "Page.setFontSizes", Map.of("fontSizes", Map.of("standard", pixels, "fixed", pixels - 3)));
        browser.until(() -> (pixels + "px")
                .equals(browser.driver.executeScript("return getComputedStyle(document.documentElement).fontSize")));
    }

    @Test
    @SuppressWarnings("unchecked")
    void nothingIsCutOrBrokenOnTheSmallestPhone() {
        List<String> faults = new ArrayList<>();
        for (String path : List.of(builds, "/jobs/1", "/jobs/1/scale", "/plan", "/stock?q=tideway&kind=", "/")) {
            browser.width(PHONE).open(shop.at(path)).settled();
            for (int letters : new int[] {USUAL, LARGE}) {
                letters(letters);
                String where = path + " in letters of " + letters + ": ";
                browser.faults().forEach(fault -> faults.add(where + fault));
                ((List<String>) browser.driver.executeScript(BROKEN)).forEach(word -> faults.add(where + word));
            }
            letters(USUAL);
        }
        assertEquals(List.of(), faults);
    }

    /** Height of the smallest letters of the curve that is seen, CSS px. */
    private static double curveLetters() {
        return ((Number) browser.driver.executeScript("""
                const curves = [...document.querySelectorAll('.curve')].filter(e => e.checkVisibility());
                if (curves.length !== 1) return 0;
                return Math.min(...[...curves[0].querySelectorAll('text')].map(
                  e => parseFloat(getComputedStyle(e).fontSize) * e.getScreenCTM().a));
                """)).doubleValue();
    }

    @Test
    void theCurveOfGramsIsReadOnEveryScreenAndOnPaper() {
        String lighter = builds.replace("/builds/", "/lighter/");
        for (int width : new int[] {PHONE, 390, 760, 1280}) {
            browser.width(width).open(shop.at(lighter)).settled();
            assertTrue(curveLetters() >= 12, width + ": " + curveLetters());
            assertEquals(List.of(), browser.faults(), width + "");
            assertEquals(List.of(), outside(), width + "");
        }
        browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        assertTrue(curveLetters() >= 10, "on paper " + curveLetters());
    }

    /** Words of the curve that stand outside its sheet. */
    private static Object outside() {
        return browser.driver.executeScript("""
                const curve = [...document.querySelectorAll('.curve')].find(e => e.checkVisibility());
                const sheet = curve.getBoundingClientRect();
                return [...curve.querySelectorAll('text')].filter(e => { const box = e.getBoundingClientRect();
                  return box.left < sheet.left || box.right > sheet.right || box.bottom > sheet.bottom; }).map(e => e.textContent);
                """);
    }

    /** A glued thumb that misses one answer must not press the other. */
    @Test
    void yesAndNoStandApart() throws Exception {
        for (int width : new int[] {PHONE, 390}) {
            browser.width(width);
            for (String act : List.of("cancel", "built")) {
                browser.open(shop.at("/jobs/1")).follow("button[value=" + act + "]");
                answers(width + " " + act);
            }
            browser.open(shop.at("/jobs/1/scale")).fill("#weight", "602.5 g").follow(".weighing button");
            answers(width + " far off");
        }
    }

    private static void answers(String where) {
        assertEquals(1, browser.all("main form .button[autofocus]").size(), where + ": " + browser.text());
        double apart = ((Number) browser.driver.executeScript("""
                const no = document.querySelector('.button[autofocus]').getBoundingClientRect();
                const yes = document.querySelector('.button[autofocus] + button').getBoundingClientRect();
                return Math.max(yes.left - no.right, no.left - yes.right, yes.top - no.bottom, no.top - yes.bottom);
                """)).doubleValue();
        assertTrue(apart >= 10, where + ": " + apart + " px");
        assertEquals(List.of(), browser.faults(), where);
    }

    @Test
    void aPrintedBriefHasNoControls() {
        browser.open(shop.at("/brief?start=estuary")).settled();
        browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        assertEquals("none", style("select", "appearance"));
        assertEquals("0px", style("input[type=text]", "borderTopWidth"));
        assertEquals("none", style("input[type=range]", "display"));
        assertEquals("none", style(".go", "display"));
        assertTrue(browser.text("main").contains("What counts most?"));
        browser.open(shop.at("/weigh"));
        assertEquals("none", style("section:has(> .finding)", "display"), "nothing to look for on paper");
        browser.open(shop.at(builds)).settled();
        assertEquals("avoid", style(".scroll:has(.words)", "breakInside"));
    }

    private static String style(String css, String property) {
        return (String) browser.driver.executeScript(
                "return getComputedStyle(document.querySelector(arguments[0]))[arguments[1]]", css, property);
    }
}
