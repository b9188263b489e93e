package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.app.Explain;
import withy.app.Reasons.ConflictLine;
import withy.app.WhyNotAnswer;
import withy.brief.Brief;
import withy.catalog.Part;
import withy.fixture.Changed;
import withy.report.WhyNotText;
import withy.units.Money;

/** Where nothing can be built, what comes nearest is told below the wishes, with the figures of the very rod that does. */
class ConflictToldTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Currency EUR = Currency.getInstance("EUR");

    /** Below the wishes that don't go together, indented as they are. */
    private static final Pattern TOLD = Pattern.compile("· (These [^·]*?)\\.\n {2}As near as it comes: ([^·]*?)\\.\n");

    private static WhyNotAnswer answer(Brief brief) {
        return Explain.whyNot(SHOP.inquiry(brief), Set.of("cap-light"));
    }

    /** The one conflict as told and what comes nearest, each on one line. */
    private static List<String> told(WhyNotAnswer answer) {
        String text = WhyNotText.of(answer, FewBuilds.METRIC, EUR);
        Matcher told = TOLD.matcher(text);
        assertTrue(told.find(), text);
        List<String> found =
                List.of(told.group(1).replace("\n  ", " "), told.group(2).replace("\n  ", " "));
        assertFalse(told.find(), text);
        return found;
    }

    /** The price of the cheapest rod there is, against the purse. */
    @Test
    void thePurse() {
        Brief free = Changed.with(SHOP.brief(), "budgetMinor", null);
        long cheapest = SHOP.legal(SHOP.catalog(), free).stream()
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
        long purse = cheapest - 4_321;
        List<String> told = told(answer(Changed.with(SHOP.brief(), "budgetMinor", purse)));
        assertTrue(told.get(0).contains("at most " + Money.print(purse, EUR)), told.get(0));
        assertEquals(
                "the price of " + Money.print(cheapest, EUR) + " is above the budget of " + Money.print(purse, EUR),
                told.get(1));
    }

    /** A part that salt would eat, by its class in the list; its name keeps its first letter. */
    @Test
    void thePart() {
        Brief brief = Changed.with(SHOP.brief(), "corrosionClass", 4);
        WhyNotAnswer answer = answer(brief);
        assertNotNull(answer.impossible());
        ConflictLine conflict = answer.impossible().conflicts().get(0);
        assertNotNull(conflict.breaks());
        assertNotNull(conflict.nearest());
        Part part = SHOP.catalog().find(conflict.breaks().parts().get(0));
        assertNotNull(part);
        assertTrue(conflict.nearest().build().parts().stream()
                .anyMatch(line -> line.part().equals(part.id())));
        List<String> told = told(answer);
        assertTrue(told.get(0).contains("corrosion class 4"), told.get(0));
        Matcher words = Pattern.compile(Pattern.quote(part.facts().name())
                        + " is of corrosion class ([0-9]); the water asks for ([0-9])")
                .matcher(told.get(1));
        assertTrue(words.matches(), told.get(1));
        assertEquals(part.facts().corrosionClass(), Integer.valueOf(words.group(1)));
        assertEquals(4, Integer.parseInt(words.group(2)));
    }

    /** What the whole rod measures begins in the middle of a sentence, too. */
    @Test
    void theRod() {
        Brief brief = Changed.with(Changed.with(SHOP.brief(), "reachMinMm", 400.0), "reachMaxMm", 420.0);
        double reach =
                SHOP.legal(SHOP.catalog(), SHOP.brief()).get(0).rod().figures().reelToButtMm();
        String millimetres = new BigDecimal(reach).stripTrailingZeros().toPlainString();
        assertEquals(
                "from the reel foot to the butt end it is " + millimetres + " mm; at least 400 mm are wished",
                told(answer(brief)).get(1));
    }
}
