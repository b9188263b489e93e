package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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
            Reply copy = page.form("/backup", "once", "c");
            assertEquals(200, copy.status());
            assertTrue(copy.head().contains("attachment; filename=\"shop-2026-06-01.db\""), copy.head());
            assertTrue(copy.body().strip().startsWith("SQLite format 3"), "a file of the memory");
            page.form("/backup", "once", "c");
            assertEquals(List.of("shop-2026-06-01.db"), copies(shop), "sent twice by a double click");
            page.form("/backup", "once", "d");
            assertEquals(2, copies(shop).size(), "another copy has another name");
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
