package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.app.OutAnswer;
import withy.app.OutAnswer.RungLine;
import withy.app.OutDesk;
import withy.app.OutDesk.Event;
import withy.app.Progress;
import withy.web.ReasonsView.More;
import withy.web.ShopView.Ladder;
import withy.web.ShopView.OutView;

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
            assertTrue(out.contains("It can be here by " + ANEW + "."), out);
            page.form("/stock/" + SEAT, "once", "c", "do", "order", "pieces", "1", "due", "2026-07-20");
            String late = looked(page);
            assertTrue(late.contains("What is on order for it is due 2026-07-20."), late);
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
            assertTrue(early.contains("What is on order for it is due 2026-06-03."), early);
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
            assertTrue(out.contains("asked for Quernstone Featherlode X 16 by name"), out);
            assertFalse(out.contains("No build with three parts"), out);
        }
    }

    /** What comes by and by stands below what was told, and that nothing can be done is said only once all was looked at. */
    @Test
    void aLadderIsToldRungByRung() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            page.whole("/builds/" + step);
            page.form("/jobs", "once", "a", "step", step, "rank", "1");
            page.form("/stock/" + SEAT, "once", "b", "do", "out");
            String whole = page.whole("/out/" + SEAT);
            List<OutAnswer> told = new ArrayList<>();
            var workshop = shop.workshop();
            OutAnswer all = new OutDesk(workshop, Progress.NONE).look(new Event(SEAT, null, null, null), told::add);
            assertEquals(List.of(), told.get(0).jobs().get(0).rungs(), "as agreed, and what waiting means, first");
            assertEquals(ANEW, told.get(0).jobs().get(0).waiting().day());
            for (int i = 1; i < told.size(); i++) {
                List<RungLine> before = told.get(i - 1).jobs().get(0).rungs();
                List<RungLine> now = told.get(i).jobs().get(0).rungs();
                assertEquals(before, now.subList(0, before.size()), "what was told stays");
                assertEquals(before.size() + 1, now.size());
            }
            assertEquals(all.jobs(), told.get(told.size() - 1).jobs());
            assertTrue(all.jobs().get(0).rungs().size() > 0, "there is something to take");
            assertTrue(whole.indexOf("Leave it as agreed") < whole.indexOf("One part changed"), whole);
        }
    }

    @Test
    void whatIsLookedForStillIsSaidAndNothingRuledOut() {
        Ladder bare =
                new Ladder(3, 1, "Job 3: Mullet", "With the parts agreed", "It can be here soon.", false, List.of());
        Ladder other = new Ladder(4, 1, "Job 4: Garfish", "With the parts agreed", "No.", false, List.of());
        String begun = drawn(List.of(bare), More.of(false, "out.coming", 2));
        assertTrue(begun.contains("data-rest=\"2\"") && begun.contains("It can be here soon."), begun);
        assertFalse(begun.contains("No build with three"), begun);
        String further = drawn(List.of(bare, other), More.of(false, "out.coming", 3));
        assertEquals(2, further.split("No build with three", -1).length, "the first is looked through: " + further);
        assertEquals(3, drawn(List.of(bare, other), More.NONE).split("No build with three", -1).length);
        assertTrue(drawn(List.of(), More.NONE).contains("No accepted build needs"));
    }

    private static String drawn(List<Ladder> jobs, More coming) {
        Frame frame = new Frame("A part ran out", "stock", "seal", "once", "", "", false);
        StringOutput out = new StringOutput();
        TemplateEngine.createPrecompiled(ContentType.Html)
                .render(
                        "out.jte",
                        Map.of("view", new OutView(frame, SEAT, "A seat", jobs, "", coming, false, null)),
                        out);
        return out.toString();
    }

    /** Its words, without what keeps a day in one line. */
    private static String looked(Caller page) throws Exception {
        return page.whole("/out/" + SEAT).replaceAll("<span class=\"whole\">|</span>", "");
    }
}
