package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.web.Caller.Reply;

/** What changes the shop: once for a form however often it is sent, not from a window that is behind, and not before something odd was asked back. */
class OnceTest {
    private static final String SEAT = "quernstone-featherlode-x-16";

    @TempDir
    static Path scratch;

    private static ShopFolder shop;
    private static Caller page;
    private static String step;

    @BeforeAll
    static void open() throws Exception {
        shop = new ShopFolder(scratch, "bench");
        page = new Caller(shop);
        step = page.form("/brief", "from", "", "start", "estuary").location().substring("/builds/".length());
    }

    @AfterAll
    static void close() {
        shop.close();
    }

    private static String hidden(String name, String body) {
        return Caller.found("name=\"" + name + "\" value=\"([^\"]*)\"", body);
    }

    private static int jobs() throws Exception {
        return page.get("/jobs").body().split("href=\"/jobs/\\d", -1).length - 1;
    }

    @Test
    void aFormSentTwiceIsDoneOnceAndAFreshOneAgain() throws Exception {
        String once = hidden("once", page.get("/builds/" + step + "?show=rest").body());
        int before = jobs();
        String first =
                page.form("/jobs", "once", once, "step", step, "rank", "0").location();
        assertEquals(before + 1, jobs());
        assertEquals(
                first,
                page.form("/jobs", "once", once, "step", step, "rank", "0").location());
        assertEquals(before + 1, jobs());
        String other = hidden("once", page.get("/builds/" + step).body());
        assertFalse(once.equals(other));
        assertFalse(first.equals(
                page.form("/jobs", "once", other, "step", step, "rank", "0").location()));
        assertEquals(before + 2, jobs());
    }

    @Test
    void twoAtTheSameMomentAreDoneOnce() throws Exception {
        String path = "/stock/" + SEAT;
        String once = hidden("once", page.get(path).body());
        Runnable send = () -> {
            try {
                assertEquals(
                        303,
                        page.form(path, "once", once, "do", "receive", "pieces", "4")
                                .status());
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        };
        Thread other = new Thread(send);
        other.start();
        send.run();
        other.join();
        assertEquals(7, free(page.get(path).body()));
    }

    /** The samples hold three of each part. */
    private static int free(String body) {
        return Integer.parseInt(Caller.found("<dt>free</dt><dd>(\\d+)</dd>", body.replaceAll("\\s*\n\\s*", "")));
    }

    @Test
    void aChangeFromAnOldWindowIsRefused() throws Exception {
        String job = page.form("/jobs", "once", "a", "step", step, "rank", "1").location();
        String old = page.get(job).body();
        String revision = hidden("revision", old);
        Reply glued = page.form(job, "once", "b", "revision", revision, "do", "glue", "station", "seat");
        assertEquals(303, glued.status());
        Reply late = page.form(job, "once", "c", "revision", revision, "do", "cancel");
        assertEquals(409, late.status());
        assertTrue(late.body().contains("Another window changed job"), late.body());
        String now = page.get(job).body();
        assertFalse(now.contains("cancelled"));
        assertTrue(now.contains(">glued<"));
        Reply fresh = page.form(job, "once", "d", "revision", hidden("revision", now), "do", "cancel");
        assertEquals(303, fresh.status());
    }

    @Test
    void anAbsurdReadingIsAskedBackFirst() throws Exception {
        String part = "marrick-tideway-r-17";
        Reply asked = page.form("/weigh", "once", "e", "piece", part, "weight", "2.21 kg", "job", "");
        assertEquals(422, asked.status());
        assertTrue(asked.body().contains("times what the list says"), asked.body());
        assertEquals(part, hidden("piece", asked.body()));
        assertEquals("2.21 kg", hidden("weight", asked.body()));
        assertFalse(page.get("/stock/" + part).body().contains("2210"), "booked before it was asked");
        Reply light = page.form("/weigh", "once", "f", "piece", part, "weight", "0.2 g", "job", "");
        assertTrue(light.body().contains("times less than the list says"), light.body());
        Reply sure = page.form(
                "/weigh",
                "once",
                hidden("once", asked.body()),
                "piece",
                part,
                "weight",
                "2.21 kg",
                "job",
                "",
                "sure",
                hidden("sure", asked.body()));
        assertEquals(303, sure.status());
        assertTrue(page.get("/stock/" + part).body().contains("2210"));
        Reply plain = page.form("/weigh", "once", "g", "piece", "marrick-tideway-r-18", "weight", "22 g", "job", "");
        assertEquals(303, plain.status());
    }

    @Test
    void aPartMayBeNamedAsInTheLists() throws Exception {
        assertEquals(
                "/stock/marrick-tideway-r-16",
                page.form("/weigh", "once", "h", "piece", "Marrick Tideway R 16", "weight", "19 g", "job", "")
                        .location());
        assertEquals(
                422,
                page.form("/weigh", "once", "i", "piece", "Marrick", "weight", "19 g", "job", "")
                        .status());
    }
}
