package withy.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;

/**
 * Pictures of a page as it stands: three widths, by day and by night, in letters twice as large, and on paper; with what is measurably wrong in them.
 */
final class Album {
    private static final Path FOLDER = Path.of("target", "screenshots", "album");
    private static final int[] WIDTHS = {1280, 820, 390};
    private static final double A4_WIDE_IN = 8.27;
    private static final double A4_TALL_IN = 11.69;

    /** Height that most pages have in large letters, pixels. */
    private static final int TALL = 6000;

    private final Browser browser;
    private final List<String> faults = new ArrayList<>();

    Album(Browser browser) {
        this.browser = browser;
    }

    /** What was measurably wrong so far. */
    List<String> faults() {
        return faults;
    }

    /** Takes all pictures of the page that is open. */
    void take(String name) {
        for (int width : WIDTHS) {
            browser.width(width);
            emulate("light");
            shot(name, width, "light");
            measured(name + " at " + width);
            emulate("dark");
            shot(name, width, "dark");
            emulate("light");
            browser.sized(width, TALL);
            letters(32);
            shot(name, width, "large", false);
            measured(name + " at " + width + " in large letters");
            letters(16);
        }
        browser.width(1280);
        printed(name);
    }

    private void emulate(String scheme) {
        browser.driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "features",
                        List.of(
                                Map.of("name", "prefers-color-scheme", "value", scheme),
                                Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    }

    private void letters(int pixels) {
        browser.driver.executeCdpCommand(
                "Page.setFontSizes", Map.of("fontSizes", Map.of("standard", pixels, "fixed", pixels - 3)));
        browser.until(() -> (pixels + "px")
                .equals(browser.driver.executeScript("return getComputedStyle(document.documentElement).fontSize")));
        painted();
    }

    /** Waits until what was laid out is on the screen too. */
    private void painted() {
        browser.driver.executeAsyncScript(
                "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done()));");
    }

    private void measured(String where) {
        browser.faults().forEach(fault -> faults.add(where + " " + fault));
    }

    private void shot(String name, int width, String look) {
        shot(name, width, look, true);
    }

    /** Only within the window do letters keep the size they were given. */
    private void shot(String name, int width, String look, boolean beyondTheWindow) {
        kept(
                name + "-" + width + "-" + look + ".png",
                browser.driver.executeCdpCommand(
                        "Page.captureScreenshot", Map.of("captureBeyondViewport", beyondTheWindow, "format", "png")));
    }

    private void printed(String name) {
        kept(
                name + ".pdf",
                browser.driver.executeCdpCommand(
                        "Page.printToPDF",
                        Map.of("paperWidth", A4_WIDE_IN, "paperHeight", A4_TALL_IN, "preferCSSPageSize", true)));
    }

    private static void kept(String file, Map<String, Object> answer) {
        try {
            Files.createDirectories(FOLDER);
            Files.write(FOLDER.resolve(file), Base64.getDecoder().decode((String) answer.get("data")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
