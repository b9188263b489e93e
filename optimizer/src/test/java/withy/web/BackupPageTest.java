package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Main;
import withy.shop.Doctor;
import withy.shop.Shop;
import withy.web.Caller.Reply;

/** A copy of the shop's memory, asked for on the page. */
class BackupPageTest {
    private static final String PART = "/stock/marrick-tideway-r-16";

    @TempDir
    private Path scratch;

    @Test
    void aCopyIsHandedOutAndStaysInTheShop() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            String before = page.get("/stock").body();
            assertTrue(before.contains("nothing to copy"), before);
            assertFalse(before.contains("action=\"/backup\""), "a button that can only refuse");
            assertEquals(409, page.form("/backup", "once", "a").status());
            page.form(PART, "once", "b", "do", "receive", "pieces", "2");
            String after = page.get("/stock").body();
            assertTrue(after.contains("action=\"/backup\""));
            assertTrue(after.indexOf("action=\"/backup\"") < after.indexOf("<tbody>"), "found before the long list");
            String kept = page.form("/backup", "once", "c").location();
            assertEquals("/backup/shop-2026-06-01.db", kept);
            assertEquals(kept, page.form("/backup", "once", "c").location());
            assertEquals(List.of("shop-2026-06-01.db"), copies(shop), "sent twice by a double click");
            assertTrue(words(page.get("/stock")).contains("Last kept " + minute(shop, kept)));
            Reply copy = page.get(Caller.found(
                    "<a class=\"button\" href=\"([^\"]+)\" download",
                    page.get(kept).body()));
            assertEquals(200, copy.status());
            assertTrue(copy.head().contains("attachment; filename=\"shop-2026-06-01.db\""), copy.head());
            assertTrue(copy.body().strip().startsWith("SQLite format 3"), "a file of the memory");
            String second = page.form("/backup", "once", "d").location();
            assertEquals("/backup/shop-2026-06-01-002.db", second, "another copy has another name");
            assertEquals(2, copies(shop).size());
        }
    }

    private static String minute(ShopFolder shop, String kept) throws Exception {
        Path file = shop.folder.resolve("backups").resolve(kept.substring("/backup/".length()));
        String written = Files.getLastModifiedTime(file)
                .toInstant()
                .atZone(ZoneId.systemDefault())
                .toString();
        return written.substring(0, 16).replace("T", " at ");
    }

    /** What the page says to type is typed, on a disk where only the lists were put: all is back but what was booked after the copy. */
    @Test
    void aKeptCopyIsToldAndComesBackAsThePageSays() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            page.form(PART, "once", "a", "do", "receive", "pieces", "2");
            Reply shown = page.get(page.form("/backup", "once", "b").location());
            String told = words(shown);
            // as it is copied from the page: nothing in it is held together for the eye
            String typed = Caller.found("<code>withy (restore [^<]*)</code>", shown.body())
                    .replace("&#34;", "\"")
                    .replace("&quot;", "\"");
            assertTrue(typed.startsWith("restore shop-2026-06-01.db --catalog \""), typed);
            assertTrue(typed.endsWith(shop.folder.toAbsolutePath() + "\""), typed);
            Doctor.Finding there = look(shop);
            assertTrue(told.contains("Lines of what happened in it: " + there.movements() + "; jobs: 0."), told);
            assertTrue(told.contains("shop-2026-06-01.db, kept " + minute(shop, "/backup/shop-2026-06-01.db")), told);
            assertTrue(told.contains("does not ask first"), told);
            Path stick = Files.createDirectory(scratch.resolve("stick"));
            Path saved = stick.resolve("shop-2026-06-01.db");
            Files.copy(shop.folder.resolve("backups").resolve(saved.getFileName()), saved);
            page.form(PART, "once", "c", "do", "receive", "pieces", "1");
            assertEquals(there.movements() + 1, look(shop).movements());
            restored(typed, stick);
            assertEquals(there.movements(), look(shop).movements(), "as it was when the copy was kept");
            assertTrue(copies(shop).contains("shop-before-restore-001.db"), "what was there is kept: " + copies(shop));
            restored(typed.replace("shop-2026-06-01.db", "shop-before-restore-001.db"), shop.folder.resolve("backups"));
            assertEquals(there.movements() + 1, look(shop).movements(), "and comes back the same way");
            for (String gone : List.of("", "-wal", "-shm")) {
                Files.deleteIfExists(Path.of(Shop.file(shop.folder) + gone));
            }
            restored(typed, stick);
            assertEquals(there.movements(), look(shop).movements(), "where nothing but the lists is left");
        }
    }

    /** What is read on a page. */
    private static String words(Reply reply) {
        return reply.body().replaceAll("<[^>]*>", "").replace("&quot;", "\"").replace("&#34;", "\"");
    }

    private static Doctor.Finding look(ShopFolder shop) {
        return Doctor.look(shop.folder, shop.workshop().lists(), shop.workshop().day());
    }

    /** A command line as typed in a folder. */
    private static void restored(String line, Path in) {
        String[] words = line.split(" ", 4);
        StringWriter said = new StringWriter();
        PrintWriter to = new PrintWriter(said, true);
        int code = Main.commandLine(to, to)
                .execute(words[0], in.resolve(words[1]).toString(), words[2], words[3].replace("\"", ""));
        assertEquals(0, code, said.toString());
    }

    @Test
    void onlyCopiesThatWereAskedForAreHandedOut() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            page.form(PART, "once", "a", "do", "receive", "pieces", "2");
            String kept = page.form("/backup", "once", "b").location();
            Files.writeString(shop.folder.resolve("backups").resolve("letter.txt"), "dear customer");
            for (String other : List.of("letter.txt", "..%2Fshop.db", "shop-2026-06-02.db", "%2E%2E", "shop.db")) {
                assertEquals(404, page.get("/backup/" + other).status(), other);
                assertEquals(404, page.get("/backup/" + other + "/file").status(), other);
            }
            assertEquals(403, page.raw("GET " + kept + "/file", page.host()).status(), "without a ticket");
            Path file = shop.folder.resolve("backups").resolve("shop-2026-06-01.db");
            byte[] bytes = Files.readAllBytes(file);
            java.util.Arrays.fill(bytes, bytes.length / 2, bytes.length, (byte) 7);
            Files.write(file, bytes);
            Reply damaged = page.get(kept);
            assertTrue(damaged.status() >= 400, "a copy that is no good is not told as whole: " + damaged.body());
            Files.delete(file);
            assertTrue(page.get(kept).body().contains("no copy by that name"));
        }
    }

    @Test
    void anotherPageCannotAskForOne() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Caller page = new Caller(shop);
            page.form(PART, "once", "a", "do", "receive", "pieces", "2");
            String sealed = "seal=" + page.seal;
            String evil = "Origin: http://evil.example";
            assertEquals(
                    403,
                    page.post("/backup", sealed, page.host(), page.ticket(), Caller.FORM, evil)
                            .status());
            assertEquals(
                    403,
                    page.post("/backup", "seal=x", page.host(), page.ticket(), Caller.FORM, page.origin())
                            .status());
            assertEquals(
                    403,
                    page.post("/backup", sealed, page.host(), Caller.FORM, page.origin())
                            .status());
            assertEquals(404, page.get("/backup").status(), "a link makes no copy");
            assertFalse(Files.exists(shop.folder.resolve("backups")));
        }
    }

    private static List<String> copies(ShopFolder shop) throws Exception {
        try (Stream<Path> files = Files.list(shop.folder.resolve("backups"))) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
