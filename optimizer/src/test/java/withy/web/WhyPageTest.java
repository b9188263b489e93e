package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Why a part is not in the best rod, told while the customer looks on. */
class WhyPageTest extends ByRequest {
    private static String step;

    @BeforeAll
    static void open() throws Exception {
        step = page.begun("estuary");
    }

    @Test
    void whatItCostsTheShopStandsInADrawerOfItsOwn() throws Exception {
        String body = page.whole("/why/" + step + "/marrick-tideway-r-16");
        int drawer = body.indexOf("id=\"shop-only\"");
        int cost = Math.max(body.indexOf("cost the shop"), body.indexOf("the shop got"));
        assertTrue(drawer > 0 && cost > drawer, body);
        assertFalse(body.substring(0, drawer).contains("the shop "), body);
        assertTrue(body.contains("<details class=\"drawer\" id=\"shop-only\">"), "closed until it is opened");
    }

    @Test
    void whatCannotGoInNeedNotBeRefused() throws Exception {
        String refused = page.whole("/why/" + step + "/marrick-brookside-walnut-16");
        assertTrue(refused.contains("cannot go in"), refused);
        assertFalse(refused.contains("value=\"never\""), refused);
        assertTrue(page.whole("/why/" + step + "/marrick-tideway-r-16").contains("value=\"never\""));
    }

    @Test
    void whereItWasAskedItLeadsBackTo() throws Exception {
        String part = "marrick-tideway-r-17";
        String drawer = page.whole("/drawer/" + step + "/1/seat");
        String asked = Caller.found("href=\"(/why/" + step + "/" + part + "[^\"]*)\"", drawer);
        for (String body : new String[] {page.get(asked).body(), page.whole(asked)}) {
            assertEquals(
                    "/drawer/" + step + "/1/seat", way(body, "Back to the other parts"), "while it is looked for too");
            assertEquals("/builds/" + step, way(body, "Back to the builds"));
        }
        String refused = Caller.found("href=\"(/why/" + step + "/marrick-brookside-walnut-16[^\"]*)\"", drawer);
        assertEquals("/drawer/" + step + "/1/seat", way(page.whole(refused), "Back to the other parts"));
        String lighter = page.whole("/lighter/" + step);
        String lesser = Caller.found("href=\"(/why/" + step + "/[^\"]*)\"", lighter);
        assertEquals("/lighter/" + step, way(page.whole(lesser), "Back to what is lighter"));
    }

    @Test
    void whatIsNoPlaceToComeFromLeadsBackToTheBuilds() throws Exception {
        for (String from :
                new String[] {"", "9", "1/", "1/nowhere", "12/seat", "1/seat/..", "https:%2F%2Fa.b", "%22%3E"}) {
            String body = page.whole("/why/" + step + "/marrick-tideway-r-17?from=" + from);
            assertFalse(body.contains("Back to the other parts"), from);
            assertEquals("/builds/" + step, way(body, "Back to the builds"));
        }
    }

    private static String way(String body, String words) {
        return Caller.found("<a class=\"button\" href=\"([^\"]+)\" data-return>" + words + "</a>", body);
    }
}
