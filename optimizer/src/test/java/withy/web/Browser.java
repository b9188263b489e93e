package withy.web;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.FluentWait;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real browser without a window. Every click and every filled field is counted. */
final class Browser implements AutoCloseable {
    private static final Path SHOTS = Path.of("target", "screenshots");
    private static final int HEIGHT = 900;
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final Duration LOOK = Duration.ofMillis(40);

    /** Least side of what is pressed with a finger that may have glue on it, CSS px. */
    private static final int LEAST_TARGET = 44;

    /** Links in a running sentence are as high as its line; all else has to be big enough, or its label has. */
    private static final String SMALL = """
            return [...document.querySelectorAll('a, button, input, select, textarea, summary')].filter(e => {
              if (e.type === 'hidden' || !e.checkVisibility() || e.matches('.skip')) return false;
              if (e.tagName === 'A' && !e.matches('.button, .tag, .brand, nav a')
                && e.closest('p, li, td, th')?.textContent.trim() !== e.textContent.trim()) return false;
              const box = (e.closest('label') || e).getBoundingClientRect();
              return box.height < arguments[0] - 0.5 || box.width < arguments[0] - 0.5;
            }).map(e => e.outerHTML.slice(0, 90) + ' ' + Math.round(e.getBoundingClientRect().width) + 'x'
              + Math.round(e.getBoundingClientRect().height));
            """;

    /** Words that stand over the edge of what holds them, where nothing can be scrolled. */
    private static final String CUT = """
            return [...document.querySelectorAll('main *, header *')].filter(e => e.checkVisibility()
                && !e.closest('svg, .scroll, .rack, .sheet.wide, thead') && !e.matches('select, input, textarea')
                && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && getComputedStyle(e).display !== 'inline')
              .map(e => e.outerHTML.slice(0, 90) + ' ' + e.scrollWidth + ' in ' + e.clientWidth);
            """;

    private static @Nullable Browser shared;

    final ChromeDriver driver;
    private int actions;

    Browser(boolean script) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary("/usr/bin/chromium");
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--no-first-run");
        options.addArguments("--disable-background-networking", "--disable-component-update", "--disable-sync");
        options.setCapability("goog:loggingPrefs", Map.of("performance", "ALL", "browser", "ALL"));
        if (!script) {
            options.setExperimentalOption("prefs", Map.of("profile.managed_default_content_settings.javascript", 2));
        }
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new java.io.File("/usr/bin/chromedriver"))
                .build();
        driver = new ChromeDriver(service, options);
        width(1280);
    }

    /** The one with script that the tests of a run share; it ends with them. */
    static synchronized Browser shared() {
        Browser there = shared;
        if (there == null) {
            there = new Browser(true);
            Runtime.getRuntime().addShutdownHook(new Thread(there::close));
            shared = there;
        }
        return there;
    }

    Browser open(String address) {
        driver.get(address);
        return this;
    }

    /** Page width in CSS pixels; below 500 as a phone. */
    Browser width(int pixels) {
        return sized(pixels, HEIGHT);
    }

    /** The same with a height. */
    Browser sized(int pixels, int tall) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", tall, "deviceScaleFactor", 1, "mobile", pixels < 500));
        return this;
    }

    WebElement one(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** Clicks; a page that may come is not waited for. */
    Browser click(String css) {
        actions++;
        WebElement element = one(css);
        driver.executeScript("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", element);
        element.click();
        return this;
    }

    /** Clicks what leads to another page and waits until that is there and whole. */
    Browser follow(String css) {
        driver.executeScript("document.documentElement.dataset.left = 'yes'");
        click(css);
        waiting()
                .ignoring(WebDriverException.class)
                .until(any -> Boolean.TRUE.equals(driver.executeScript(
                        "return !document.documentElement.dataset.left && document.readyState === 'complete'")));
        return settled();
    }

    /** Clicks what carries these words. */
    Browser clickWords(String tag, String words) {
        actions++;
        WebElement element = driver.findElement(
                By.xpath("//" + tag + "[contains(normalize-space(translate(., '\u00a0', ' ')), \"" + words + "\")]"));
        driver.executeScript("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", element);
        element.click();
        return this;
    }

    Browser fill(String css, String words) {
        actions++;
        WebElement element = one(css);
        element.clear();
        element.sendKeys(words);
        return this;
    }

    int actions() {
        return actions;
    }

    /** What is seen of the page in words. */
    String text() {
        return text("body");
    }

    /** What is seen of the first element of a kind, with plain spaces; asked of the page in one go, where the driver walks every element. */
    String text(String css) {
        return String.valueOf(driver.executeScript("return document.querySelector(arguments[0]).innerText", css))
                .replace('\u00a0', ' ')
                .strip();
    }

    /** An attribute of the first element of a kind as it stands now, asked in one go: between two questions the page may be drawn anew. Empty where there is none. */
    String attribute(String css, String name) {
        Object is = driver.executeScript(
                "const it = document.querySelector(arguments[0]), name = arguments[1];"
                        + "return it === null ? '' : name in it ? it[name] : it.getAttribute(name)",
                css,
                name);
        return is == null ? "" : is.toString();
    }

    /** The same of what has the focus. */
    String focused(String name) {
        return attribute(":focus", name);
    }

    /** Path of the page's address. */
    String path() {
        String address = driver.getCurrentUrl();
        return address.substring(address.indexOf('/', "http://".length()));
    }

    /** Waits until the page's address has a path that starts so, and is not another one, and nothing more is on its way. */
    Browser arrive(String start, String not) {
        waiting()
                .until(any -> path().startsWith(start)
                        && !path().equals(not)
                        && "complete".equals(driver.executeScript("return document.readyState")));
        return settled();
    }

    /** Waits until the page is whole: nothing is looked for or counted any more. */
    Browser settled() {
        waiting().until(any -> all("[data-rest], [aria-busy=true]").isEmpty());
        return this;
    }

    /** Waits until something is so. */
    void until(java.util.function.BooleanSupplier so) {
        waiting().until(any -> so.getAsBoolean());
    }

    private FluentWait<WebDriver> waiting() {
        return new WebDriverWait(driver, PATIENCE).pollingEvery(LOOK);
    }

    /** Violations that axe finds on the page as it stands, each with where. */
    List<String> violations() {
        // the page has no frames, so that axe need not open a window of its own each time
        return new AxeBuilder()
                .setLegacyMode(true).analyze(driver).getViolations().stream()
                        .map(Browser::told)
                        .toList();
    }

    private static String told(Rule rule) {
        return rule.getId() + ": "
                + rule.getNodes().stream().map(node -> node.getHtml()).limit(3).toList();
    }

    /** What is measurably wrong with the page at its width: wider than the screen, too small to press, cut off. */
    @SuppressWarnings("unchecked")
    List<String> faults() {
        List<String> faults = new ArrayList<>();
        long wider = ((Number) driver.executeScript(
                        "return document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .longValue();
        if (wider > 0) {
            faults.add(wider + " px wider than the screen");
        }
        ((List<String>) driver.executeScript(SMALL, LEAST_TARGET)).forEach(at -> faults.add("small: " + at));
        ((List<String>) driver.executeScript(CUT)).forEach(at -> faults.add("cut: " + at));
        return faults;
    }

    /** Keeps what the page looks like, whole, for a desktop and a phone; tells what is measurably wrong with it there. */
    List<String> shoot(String name) {
        List<String> faults = new ArrayList<>();
        for (int pixels : new int[] {1280, 390}) {
            width(pixels);
            faults().forEach(fault -> faults.add(name + " at " + pixels + " " + fault));
            Map<String, Object> shot = driver.executeCdpCommand(
                    "Page.captureScreenshot", Map.of("captureBeyondViewport", true, "format", "png"));
            try {
                Files.createDirectories(SHOTS);
                Files.write(
                        SHOTS.resolve(name + "-" + pixels + ".png"),
                        Base64.getDecoder().decode((String) shot.get("data")));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        width(1280);
        return faults;
    }

    @Override
    public void close() {
        driver.quit();
    }
}
