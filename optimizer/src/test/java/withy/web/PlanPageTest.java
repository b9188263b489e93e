package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.shop.Shop;

/** The plan: in a browser without script it says that it is being worked out, looks again by itself, has a link to do so, and comes; what was lost is told. */
class PlanPageTest {
    private static final String SEAT = "quernstone-featherlode-x-16";

    @TempDir
    Path scratch;

    /** A job whose part ran out: what it waits for, and the way to the part that is to be ordered. */
    @Test
    void whatAJobLostAndWhenItCouldComeIsToldAtItsLine() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            page.whole("/builds/" + step);
            page.form("/jobs", "once", "a", "step", step, "rank", "1");
            page.form("/stock/" + SEAT, "once", "b", "do", "out");
            String plan = planned(page);
            assertTrue(
                    plan.contains(
                            "Waits for 1 of Quernstone Featherlode X 16: still to be ordered, would come 2026-06-08."),
                    plan);
            assertTrue(plan.contains("<a class=\"toit\" href=\"/stock/" + SEAT + "\">"), plan);
            page.form("/stock/" + SEAT, "once", "c", "do", "order", "pieces", "1", "due", "2026-06-05");
            assertFalse(planned(page).contains("still to be ordered"), "it is on its way");
        }
    }

    @Test
    void aRodThatIsNotAsAgreedIsToldWithWhatIsOther() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            page.whole("/builds/" + step);
            page.form("/jobs", "once", "a", "step", step, "rank", "3");
            page.form("/stock/marrick-tideway-r-16", "once", "b", "do", "out");
            String plan = planned(page);
            assertTrue(
                    plan.matches(
                            "(?s).*Not as agreed: [^<]*Quernstone Featherlode X 16[^<]* instead of [^<]*Marrick Tideway R 16.*"),
                    plan);
        }
    }

    /** Its words, without what keeps a day in one line. */
    private static String planned(Caller page) throws Exception {
        String plan = page.get("/plan").body();
        for (int i = 0; i < 600 && plan.contains("A moment"); i++) {
            Thread.sleep(100);
            plan = page.get("/plan").body();
        }
        return plan.replaceAll("<span class=\"whole\">|</span>", "");
    }

    @Test
    void withoutScriptThePlanComesAllTheSame() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("brook");
            page.whole("/builds/" + step);
            assertEquals(
                    "/jobs/1",
                    page.form("/jobs", "once", "a", "step", step, "rank", "0").location());
            String waiting = whileNobodyReads(shop, () -> page.get("/plan").body());
            assertTrue(waiting.contains("<h1>A moment</h1>"), waiting);
            assertTrue(
                    waiting.contains("<noscript><meta http-equiv=\"refresh\" content=\"2\"></noscript>"),
                    "it looks again by itself: " + waiting);
            assertTrue(
                    waiting.matches(
                            "(?s).*<noscript><p class=\"ways\"><a class=\"button\" href=\"/plan\">Look again</a>.*"),
                    "or where it is told to: " + waiting);
            String plan = planned(page);
            assertTrue(plan.contains("<h1>All open jobs from one stock</h1>"), plan);
        }
    }

    /** Asks while another program has the shop's memory to itself, so that no plan can be there. */
    private static String whileNobodyReads(ShopFolder shop, Callable<String> asked) throws Exception {
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + Shop.file(shop.folder));
                Statement held = other.createStatement()) {
            held.execute("PRAGMA locking_mode = EXCLUSIVE");
            held.execute("BEGIN EXCLUSIVE");
            String answer = asked.call();
            held.execute("COMMIT");
            return answer;
        }
    }
}
