package withy.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What waiting means for a job whose part ran out: what its promise stands on, and when a new order could be here. */
class OutPageTest {
    private static final String SEAT = "quernstone-featherlode-x-16";

    /** Seven days on the sample's list from the first of June. */
    private static final String ANEW = "2026-06-08";

    @TempDir
    private Path scratch;

    @Test
    void anOrderThatComesLateIsToldWithItsDayAndANewOneBesideIt() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            page.whole("/builds/" + step);
            page.form("/jobs", "once", "a", "step", step, "rank", "1");
            page.form("/stock/" + SEAT, "once", "b", "do", "out");
            String out = looked(page);
            assertTrue(out.contains("Or wait: it can be here by " + ANEW + "."), out);
            page.form("/stock/" + SEAT, "once", "c", "do", "order", "pieces", "1", "due", "2026-07-20");
            String late = looked(page);
            assertTrue(late.contains("what is on order for it is due 2026-07-20."), late);
            assertTrue(late.contains("A new order could be here by " + ANEW + "."), late);
        }
    }

    @Test
    void anOrderThatComesFirstIsToldAlone() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            page.whole("/builds/" + step);
            page.form("/jobs", "once", "a", "step", step, "rank", "1");
            page.form("/stock/" + SEAT, "once", "b", "do", "out");
            page.form("/stock/" + SEAT, "once", "c", "do", "order", "pieces", "1", "due", "2026-06-03");
            String early = looked(page);
            assertTrue(early.contains("what is on order for it is due 2026-06-03."), early);
            assertFalse(early.contains("A new order could"), early);
        }
    }

    @Test
    void aPartTheCustomerAskedForByNameIsToldAsTheReason() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            String kept = page.form("/change", "step", step, "do", "keep", "part", SEAT)
                    .location()
                    .substring("/builds/".length());
            page.whole("/builds/" + kept);
            page.form("/jobs", "once", "a", "step", kept, "rank", "1");
            String out = looked(page);
            int why = out.indexOf("asked for Quernstone Featherlode X 16 by name");
            assertTrue(why > 0 && why < out.indexOf("Leave it as agreed"), out);
            assertFalse(out.contains("No build with three parts"), out);
        }
    }

    /** Its words, without what keeps a day in one line. */
    private static String looked(Caller page) throws Exception {
        return page.whole("/out/" + SEAT).replaceAll("<span class=\"whole\">|</span>", "");
    }
}
