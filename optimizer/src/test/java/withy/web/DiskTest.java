package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import withy.shop.Shop;
import withy.web.Caller.Reply;

/** A shop folder that can't be written to: told in plain words, nothing lost, and once it can be, all goes on as if nothing had been. */
class DiskTest {
    private static final String PART = "quernstone-featherlode-x-16";

    @TempDir
    Path scratch;

    private static String begun(Caller page) throws Exception {
        return page.form("/brief", "from", "", "start", "estuary").location();
    }

    private static long files(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.count();
        }
    }

    @Test
    void aTalkThatCantBeKeptGoesOnAndIsKeptLater() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Path drafts = shop.folder.resolve(Steps.FOLDER);
            Files.writeString(drafts, "in the way");
            Caller page = new Caller(shop);
            String first = begun(page);
            String body = page.get(first + "?show=rest").body();
            assertTrue(body.contains("can't be kept in " + drafts), body);
            assertTrue(body.contains("a file lies where that folder should be"), body);
            assertTrue(body.contains("\nMaybe free some space"), body);
            assertTrue(body.contains("<article class=\"build\""), "it goes on");
            assertTrue(page.get("/").body().contains(first), "still among the talks");
            Files.delete(drafts);
            String second = page.form(
                            "/change", "step", first.substring("/builds/".length()), "do", "never", "part", PART)
                    .location();
            assertFalse(page.get(second).body().contains("can't be kept"));
            assertEquals(2, files(drafts));
            try (ShopFolder again = new ShopFolder(shop.folder)) {
                Caller later = new Caller(again);
                assertEquals(200, later.get(first).status());
                assertEquals(200, later.get(second).status());
            }
        }
    }

    @Test
    void aJobThatCantBeWrittenIsToldAndTheSameFormDoesItLater() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Path memory = Files.createDirectory(Shop.file(shop.folder));
            Caller page = new Caller(shop);
            String builds = begun(page);
            String[] form = {"once", "one", "step", builds.substring("/builds/".length()), "rank", "1"};
            Reply refused = page.form("/jobs", form);
            assertEquals(503, refused.status());
            told(refused);
            Files.delete(memory);
            assertEquals("/jobs/1", page.form("/jobs", form).location());
            assertEquals("/jobs/1", page.form("/jobs", form).location());
            assertTrue(page.get("/jobs/1").body().contains("It should weigh"));
        }
    }

    /** What a builder needs to know: what could not be done, that nothing was changed, what helps; and the ways on. */
    private static void told(Reply refused) {
        String body = refused.body();
        assertTrue(body.contains("shop.db"), body);
        assertTrue(body.contains("Nothing was changed"), body);
        assertTrue(body.contains("Maybe "), body);
        assertFalse(body.contains("our fault"), body);
        assertFalse(body.contains("ls -"), "no command of a terminal: " + body);
        assertTrue(body.contains("href=\"/stock\""), body);
    }

    /** Files of this process may not grow past so many bytes, or as they like: what a disk without room does to a write. */
    private static void room(String bytes) throws Exception {
        String own = Long.toString(ProcessHandle.current().pid());
        Process limit = new ProcessBuilder("prlimit", "--pid", own, "--fsize=" + bytes + ":")
                .inheritIO()
                .start();
        assertEquals(0, limit.waitFor());
    }

    private static Reply without(Callable<Reply> asked) throws Exception {
        room("100");
        try {
            return asked.call();
        } finally {
            room("unlimited");
        }
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void withoutRoomNothingIsLostAndWithRoomItGoesOn() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String builds = begun(page);
            String step = builds.substring("/builds/".length());
            String[] never = {"step", step, "do", "never", "part", PART};
            String later = without(() -> page.form("/change", never)).location();
            assertTrue(page.get(later).body().contains("can't be kept"));
            assertEquals(1, files(shop.folder.resolve(Steps.FOLDER)), "the first alone, and nothing half written");
            page.form("/change", "step", later.substring("/builds/".length()), "do", "free", "part", PART);
            assertFalse(page.get(later).body().contains("can't be kept"));
            assertEquals(3, files(shop.folder.resolve(Steps.FOLDER)));
            String job =
                    page.form("/jobs", "once", "one", "step", step, "rank", "1").location();
            String revision = Caller.found(
                    "name=\"revision\" value=\"(\\d+)\"", page.get(job).body());
            String[] glue = {"once", "two", "revision", revision, "do", "glue", "station", "seat"};
            Reply refused = without(() -> page.form(job, glue));
            assertEquals(503, refused.status());
            told(refused);
            assertFalse(page.get(job).body().contains(">glued<"));
            assertEquals(303, page.form(job, glue).status());
            assertTrue(page.get(job).body().contains(">glued<"));
        }
    }
}
