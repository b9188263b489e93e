package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import withy.report.Unbroken;

/** From the first page to three builds and on, in a real browser. */
class TalkTest extends InBrowser {
    /** Clicks and filled fields a first-time user may need; the bar. */
    private static final int MOST_ACTIONS = 12;

    private static Browser builds(String start) {
        browser.open(shop.at("/brief?start=" + start));
        browser.click("button.main").arrive("/builds/", "");
        assertEquals(3, browser.all("article.build").size());
        return browser;
    }

    @Test
    void aFirstTimeUserReachesThreeBuildsInTwoActions() {
        browser.open(shop.at("/"));
        int before = browser.actions();
        browser.clickWords("a", "Bass and sea trout");
        browser.click("button.main").arrive("/builds/", "");
        assertEquals(3, browser.all("article.build").size());
        assertEquals(3, browser.all(".rack svg.rod").size());
        int actions = browser.actions() - before;
        assertEquals(2, actions);
        assertTrue(actions <= MOST_ACTIONS);
    }

    @Test
    void fromAnEmptySheetDefaultsLeadToThreeBuilds() {
        browser.open(shop.at("/"));
        int before = browser.actions();
        browser.clickWords("a", "Something else");
        browser.click("button.main").arrive("/builds/", "");
        assertEquals(3, browser.all("article.build").size());
        assertTrue(browser.actions() - before <= 3);
    }

    @Test
    void aRefusedPartIsGoneAndUndoBringsItBack() {
        builds("estuary");
        String first = browser.path();
        String part = browser.text("#parts-1 .part .name");
        browser.click("#parts-1 .part button[value=never]").arrive("/builds/", first);
        assertFalse(browser.text("#parts-1").contains(part));
        assertTrue(browser.text().contains("Never: " + part));
        browser.clickWords("a", "Undo").arrive(first, "");
        assertEquals(part, browser.text("#parts-1 .part .name"));
    }

    @Test
    void whatTheShopPaysIsSeenOnlyWhereItIsAskedFor() {
        browser.open(shop.at("/brief?start=estuary"));
        browser.click("button.main").arrive("/builds/", "");
        String bought = browser.one("#shop-only table tbody td")
                .getAttribute("textContent")
                .strip();
        assertTrue(bought.endsWith("\u00a0EUR"), bought);
        assertEquals("", browser.one("#shop-only table").getText());
        assertEquals(3, browser.all(".build svg.handle[aria-label]").size());
        browser.click("#shop-only > summary");
        browser.until(() -> browser.text("#shop-only table").contains(bought.replace('\u00a0', ' ')));
    }

    /** A page holds numbers and units together with spaces that no line breaks at; they come along when words are copied. */
    @Test
    void whatWasCopiedFromAPageIsRead() {
        browser.open(shop.at("/brief?start=estuary")).settled();
        for (String[] copied : new String[][] {{"length", "2.00 m to 2.20 m"}, {"line.gauge", "PE 1.2"}}) {
            String held = Unbroken.of(copied[1]);
            assertNotEquals(copied[1], held);
            browser.driver.executeScript(
                    "arguments[0].value = arguments[1]", browser.one("[name='" + copied[0] + "']"), held);
        }
        browser.click("button.main").arrive("/builds/", "");
        browser.clickWords("a", "Change the brief").arrive("/brief/", "");
        assertEquals("2.00 m to 2.20 m", browser.attribute("[name=length]", "value"));
        assertEquals("PE 1.2", browser.attribute("[name='line.gauge']", "value"));
    }

    @Test
    void everyFigureIsToldInPlainWords() {
        for (String start : List.of("estuary", "rocks")) {
            browser.open(shop.at("/brief?start=" + start));
            browser.click("button.main").arrive("/builds/", "");
            assertEquals(
                    browser.all("#figures tbody tr").size(),
                    browser.all(".meanings dt").size());
        }
    }

    @Test
    void aKeptPartStaysInEveryBuild() {
        builds("estuary");
        String first = browser.path();
        String seat = browser.one("#parts-3 .part:nth-child(5) .name")
                .getAttribute("textContent")
                .strip();
        browser.click("#parts-3 summary");
        browser.click("#parts-3 .part:nth-child(5) button[value=keep]").arrive("/builds/", first);
        for (int rank = 1; rank <= browser.all("article.build").size(); rank++) {
            assertTrue(browser.attribute("#parts-" + rank, "textContent").contains(seat), "build " + rank);
        }
    }

    @Test
    void reloadBackAndTwoTabsLoseNothing() {
        builds("estuary");
        String first = browser.path();
        String before = browser.text("main");
        browser.driver.navigate().refresh();
        assertEquals(before, browser.text("main"));
        browser.click("#parts-1 .part button[value=never]").arrive("/builds/", first);
        String second = browser.path();
        String other = browser.text("main");
        browser.driver.navigate().back();
        browser.arrive(first, "");
        assertEquals(before, browser.text("main"));
        String tab = browser.driver.getWindowHandle();
        browser.driver.switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        browser.open(shop.at(second));
        assertEquals(other, browser.text("main"));
        browser.click("#parts-1 .part button[value=never]").arrive("/builds/", second);
        assertNotEquals(other, browser.text("main"));
        browser.driver.close();
        browser.driver.switchTo().window(tab);
        browser.driver.navigate().refresh();
        assertEquals(before, browser.text("main"));
    }

    @Test
    void theFirstWishThatLeavesNoneIsToldWhileItIsTyped() {
        browser.open(shop.at("/brief?start=estuary")).settled();
        String count = browser.text("#count");
        assertTrue(count.matches("(?s)\\d+ of \\d+ blanks fit\\..*At least \\d+ builds.*"), count);
        browser.fill("#packedMax", "30 cm").one("#packedMax").sendKeys(Keys.TAB);
        browser.until(() -> browser.text("#count").contains("nothing can be built"));
        count = browser.text("#count");
        assertTrue(count.contains("300 mm at most when packed: from this wish on"), count);
        browser.fill("#packedMax", "2.2 m").one("#packedMax").sendKeys(Keys.TAB);
        browser.until(() -> browser.text("#count").contains("At least"));
    }

    @Test
    void aWayOutIsDoneWithOneClickAndUndone() {
        browser.open(shop.at("/brief?start=estuary"));
        browser.fill("#packedMax", "30 cm");
        browser.click("button.main").arrive("/builds/", "");
        assertEquals(0, browser.all("article.build").size());
        String none = browser.path();
        String told = browser.text(".tag span");
        browser.click(".tag button[value=repair]").arrive("/builds/", none);
        String price = browser.text("article.build .sums strong");
        assertTrue(told.endsWith(price), told + " against " + price);
        browser.clickWords("a", "Undo").arrive(none, "");
        assertEquals(0, browser.all("article.build").size());
        browser.clickWords("a", "Change the brief").arrive("/brief/", "");
        assertEquals("30 cm", browser.attribute("#packedMax", "value"));
    }

    @Test
    void faultsAreShownAtTheirFieldAndNothingIsLost() {
        browser.open(shop.at("/brief?start=estuary"));
        browser.fill("#lure-usual", "lots").fill("#length", "2 m to 40 m");
        browser.click("button.main").arrive("/brief", "/brief?start=estuary");
        assertTrue(browser.text("#lure-usual-fault").contains("lots"));
        assertTrue(browser.text("#length-fault").contains("900 to 6000 mm"));
        assertEquals(2, browser.all(".tofault").size());
        browser.settled();
        assertFalse(browser.text("#count").contains("allowed is"), "told once, at its field");
        browser.click(".tofault");
        browser.until(() -> "lure-usual".equals(browser.focused("id")));
        assertEquals("lots", browser.attribute("#lure-usual", "value"));
        assertEquals("7 g", browser.attribute("#lure-lightest", "value"));
        browser.fill("#lure-usual", "1/2 oz").fill("#length", "6'8\" to 7'3\"");
        browser.click("button.main").arrive("/builds/", "");
        browser.clickWords("a", "Change the brief").arrive("/brief/", "");
        assertEquals("1/2 oz", browser.attribute("#lure-usual", "value"));
        assertEquals("6'8\" to 7'3\"", browser.attribute("#length", "value"));
    }

    /** On an empty sheet the grey figures count as long as nothing is typed, and it says so; a talk that is changed needs no such word. */
    @Test
    void anEmptySheetSaysWhatItsGreyFiguresAre() {
        browser.open(shop.at("/brief"));
        assertTrue(browser.text("p.lead").contains("What stays empty is taken as shown in grey."), browser.text());
        assertEquals("10 g", browser.attribute("#lure-usual", "placeholder"));
        builds("brook");
        browser.clickWords("a", "Change the brief").arrive("/brief/", "");
        assertEquals(0, browser.all("p.lead").size());
    }
}
