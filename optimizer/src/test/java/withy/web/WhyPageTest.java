package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.PartKind;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.search.Proposal;
import withy.units.QuantityText;
import withy.units.UnitSystem;

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

    /** While the best rod with a part is looked for the page tells what the drawer tells of it; of what is no use as it is, nothing. */
    @Test
    void whatThePartWouldDoAsItIsStandsThereMeanwhile(@TempDir Path scratch) throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        CountDownLatch held = new CountDownLatch(1);
        try (ShopFolder slow = new ShopFolder(scratch, "bench", catalog -> new ComingTest.Slow(catalog, free, free) {
            @Override
            public Solution solve(Query query, Watch watch) {
                await(query.forced().isEmpty() ? free : held);
                return super.solve(query, watch);
            }
        })) {
            Caller caller = new Caller(slow);
            String begun = caller.begun("estuary");
            String builds = caller.whole("/builds/" + begun);
            String now = Caller.found(
                    "id=\"others-1-seat\"[^>]*aria-label=\"What else could stand in place of ([^\"]+)\"", builds);
            String drawer = caller.whole("/drawer/" + begun + "/1/seat");
            int told = 0;
            int broken = 0;
            int kept = 0;
            for (String line : drawer.split("<li class=\"slot\">", -1)) {
                if (!line.contains("/why/")) {
                    continue;
                }
                String why =
                        caller.get(Caller.found("href=\"(/why/[^\"?]+)", line)).body();
                boolean legal = line.contains("value=\"instead\"");
                String words = plain(Caller.found("<p>(.*?)</p>", line));
                if (legal) {
                    assertTrue(why.contains("data-rest=\"1\""), why);
                    String said = "Put into build 1 instead of " + now + " (reel seat), all else as it is: ";
                    assertTrue(plain(why).contains(said), why);
                    assertTrue(
                            plain(why).toLowerCase(Locale.ROOT).contains(words.toLowerCase(Locale.ROOT)), words + why);
                    told++;
                } else if (why.contains("Put into build 1")) {
                    assertTrue(plain(why).contains(" (reel seat), all else as it is, it would break a rule. "), why);
                    assertTrue(plain(why).contains(words), words + why);
                    broken++;
                } else {
                    assertFalse(why.contains("data-rest=\"1\""), why);
                    kept++;
                }
            }
            assertTrue(told > 1 && broken > 1 && kept > 1, told + " told, " + broken + " broken, " + kept + " kept");
            var lists = slow.workshop().lists();
            String blankNow = Caller.found(
                    "id=\"others-1-blank\"[^>]*aria-label=\"What else could stand in place of ([^\"]+)\"", builds);
            int blanks = 0;
            for (var blank : lists.all(PartKind.BLANK)) {
                String why =
                        plain(caller.get("/why/" + begun + "/" + blank.id()).body());
                if (why.contains("The blank alone weighs")) {
                    String weight = new QuantityText(UnitSystem.METRIC)
                            .fineMass(blank.facts().weightG());
                    assertTrue(why.contains("weighs " + weight + "; that of build 1, " + blankNow + ", weighs "), why);
                    assertTrue(why.contains("The best rod with it is being looked for"), why);
                    blanks++;
                } else if (blank.facts().name().equals(blankNow)) {
                    assertTrue(why.contains("It is in build 1."), why);
                } else {
                    assertFalse(why.contains("Why not is being looked for"), why);
                }
            }
            assertTrue(blanks > 1, blanks + " blanks");
            held.countDown();
            String part = Caller.found("/why/" + begun + "/([^\"?]+)", drawer);
            assertFalse(caller.whole("/why/" + begun + "/" + part).contains("Put into build 1"));
        }
    }

    /** While the builds themselves are held up why not is told as much, as soon as it has proven the best build itself, or a longer look has. */
    @Test
    void thatTheBuildsAreStillLookedForHidesNothing(@TempDir Path scratch) throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        CountDownLatch best = new CountDownLatch(1);
        CountDownLatch held = new CountDownLatch(1);
        AtomicInteger offers = new AtomicInteger();
        try (ShopFolder slow = new ShopFolder(scratch, "bench", catalog -> new ComingTest.Slow(catalog, free, free) {
            @Override
            public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> told) {
                await(offers.incrementAndGet() < 3 ? held : free);
                return super.offer(query, watch, told);
            }

            @Override
            public Solution solve(Query query, Watch watch) {
                await(query.forced().isEmpty() ? best : held);
                return super.solve(query, watch);
            }
        })) {
            Caller caller = new Caller(slow);
            String why = "/why/" + caller.begun("estuary") + "/marrick-tideway-r-16";
            String nothing = caller.get(why).body();
            assertFalse(nothing.contains("Put into build 1"), nothing);
            assertTrue(nothing.contains("data-rest=\"0\""), nothing);
            best.countDown();
            String known = caller.get(why + "?show=0").body();
            assertTrue(known.contains("Put into build 1 instead of "), known);
            assertTrue(known.contains("The best rod with it is being looked for"), known);
            String longer = caller.begun("brook");
            while (offers.get() < 2) {
                Thread.onSpinWait();
            }
            caller.get("/builds/" + longer + "?look=long&show=rest");
            String looked =
                    caller.get("/why/" + longer + "/marrick-tideway-r-16").body();
            assertTrue(looked.contains("Put into build 1 instead of "), looked);
            held.countDown();
            assertFalse(caller.whole(why).contains("Put into build 1"));
        }
    }

    private static String plain(String body) {
        return body.replaceAll("<[^>]+>", "");
    }

    private static String way(String body, String words) {
        return Caller.found("<a class=\"button\" href=\"([^\"]+)\" data-return[^>]*>" + words + "</a>", body);
    }
}
