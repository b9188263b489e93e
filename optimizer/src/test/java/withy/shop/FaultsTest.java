package withy.shop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.Catalog;
import withy.fixture.Fixtures;

/** The disk gives out at any write, the file is damaged anywhere, the clock goes back. */
class FaultsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    /** Pages more than there are that the file may still grow by: at each another write of a change is the first that fails. */
    private static final int MOST_PAGES = 40;

    private static final int DAMAGES = 300;

    /** Of so many damages that were told, one is mended. */
    private static final int RESTORED = 8;

    @TempDir
    private Path folder;

    private final Catalog lists = Fixtures.legal().catalog();

    @TestFactory
    Stream<DynamicTest> whereverAWriteFailsNothingIsChanged() {
        Map<String, Consumer<Database>> changes = new LinkedHashMap<>();
        changes.put("receive", db -> new Stock(db, DAY).receive("seat", 3_000, "n".repeat(100)));
        changes.put("count", db -> new Stock(db, DAY).count("cap", 2_500, ""));
        changes.put(
                "import",
                db -> new Imports(db, DAY)
                        .apply(new TreeMap<>(Map.of("check", 2_000)), new TreeMap<>(Map.of("seat", 900L))));
        changes.put("job", db -> new Jobs(db, DAY).add("rod", "{\"x\": \"" + "y".repeat(100_000) + "\"}", null));
        return changes.entrySet().stream()
                .map(change ->
                        DynamicTest.dynamicTest(change.getKey(), () -> failing(change.getKey(), change.getValue())));
    }

    private void failing(String name, Consumer<Database> change) throws IOException {
        Path shop = Files.createDirectory(folder.resolve(name));
        Shop.beginning(shop, lists, DAY).close();
        int failed = 0;
        boolean done = false;
        for (int more = 0; more <= MOST_PAGES && !done; more++) {
            String before = seen(shop);
            int pages = more;
            try (Database database = Database.open(Shop.file(shop))) {
                database.outside(
                        sql -> sql.number("PRAGMA max_page_count = " + (sql.number("PRAGMA page_count") + pages)));
                change.accept(database);
                done = true;
            } catch (ShopFault fault) {
                failed++;
                assertEquals(ShopFault.Kind.DISK, fault.kind(), fault.getMessage());
                assertTrue(fault.getMessage().contains("Nothing was changed"), fault.getMessage());
                assertEquals(before, seen(shop), "after " + more + " pages");
                assertEquals(List.of(), Doctor.look(shop, lists, DAY).faults());
            }
        }
        assertTrue(failed >= 10, name + " failed at " + failed + " places only");
        try (Database database = Database.open(Shop.file(shop))) {
            change.accept(database);
        }
        assertEquals(List.of(), Doctor.look(shop, lists, DAY).faults());
    }

    /** Everything a brief sees of it, and every line of the ledger. */
    private String seen(Path shop) {
        try (Shop read = Shop.reading(shop, DAY)) {
            return read.snapshot(lists).hash() + " " + read.stock().levels() + " "
                    + Doctor.look(shop, lists, DAY).movements();
        }
    }

    @Test
    void aDamagedFileIsToldAndNeverAnythingElse() throws IOException {
        assertTrue(damages(DAMAGES, 3) > DAMAGES / 4, "damage that was told");
    }

    @Test
    @Tag("long")
    void aFileDamagedInTwentyThousandWaysIsTold() throws IOException {
        assertTrue(damages(20_000, 5) > 5_000, "damage that was told");
    }

    private int damages(int times, long seed) throws IOException {
        Random random = new Random(seed);
        Path good = Files.createDirectory(folder.resolve("good"));
        try (Shop shop = Shop.beginning(good, lists, DAY)) {
            shop.stock().receive("seat", 40, "n".repeat(200));
            shop.jobs().add("rod", "{}", null);
        }
        try (Database database = Database.open(Shop.file(good))) {
            database.outside(sql -> sql.text("PRAGMA wal_checkpoint(TRUNCATE)"));
        }
        byte[] sound = Files.readAllBytes(Shop.file(good));
        Path bad = Files.createDirectory(folder.resolve("bad"));
        int told = 0;
        for (int i = 0; i < times; i++) {
            byte[] bytes = damaged(sound, random);
            for (String beside : List.of("", "-wal", "-shm", "-journal")) {
                Files.deleteIfExists(bad.resolve(Shop.FILE + beside));
            }
            Files.write(Shop.file(bad), bytes);
            String what = "seed " + seed + ", damage " + i;
            if (told(bad, what)) {
                told++;
                restored(bad, Shop.file(good), bytes, what, told);
            }
        }
        return told;
    }

    /** True where the damage is told; whatever is damaged, nothing but a fault with a way out may come of it. */
    private boolean told(Path bad, String what) {
        try {
            boolean told = !Doctor.look(bad, lists, DAY).faults().isEmpty();
            try (Shop shop = Shop.writing(bad, DAY)) {
                shop.snapshot(lists);
                shop.stock().levels();
                shop.jobs().all();
                shop.stock().receive("seat", 1, "");
            }
            return told;
        } catch (ShopFault fault) {
            assertTrue(fault.getMessage().contains("\nMaybe "), () -> what + ": " + fault.getMessage());
            return true;
        } catch (RuntimeException | Error e) {
            throw new AssertionError(what + " ends in " + e, e);
        }
    }

    /** The way out that is told leads out, and what was there is kept as it was; now and then, since it takes long. */
    private void restored(Path bad, Path good, byte[] damaged, String what, int told) throws IOException {
        if (told % RESTORED != 1) {
            return;
        }
        for (String beside : List.of("-wal", "-shm")) {
            Files.deleteIfExists(bad.resolve(Shop.FILE + beside));
        }
        Files.write(Shop.file(bad), damaged);
        try {
            String before = Backups.restore(bad, good).before();
            assertNotNull(before, what);
            assertTrue(Doctor.look(bad, lists, DAY).faults().isEmpty(), what);
            assertArrayEquals(damaged, Files.readAllBytes(Path.of(before)), what);
        } catch (ShopFault fault) {
            // a mark of another program's, or of a newer one, is never written over
            assertEquals(ShopFault.Kind.REFUSED, fault.kind(), () -> what + ": " + fault.getMessage());
        }
    }

    private static byte[] damaged(byte[] sound, Random random) {
        byte[] bytes = sound.clone();
        switch (random.nextInt(4)) {
            case 0 -> {
                return Arrays.copyOf(bytes, random.nextInt(bytes.length));
            }
            case 1 -> {
                int page = 4096 * random.nextInt(bytes.length / 4096);
                Arrays.fill(bytes, page, page + 4096, (byte) 0);
            }
            case 2 -> {
                int from = random.nextInt(bytes.length - 64);
                for (int i = from; i < from + 64; i++) {
                    bytes[i] = (byte) random.nextInt();
                }
            }
            default -> bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return bytes;
    }

    @Test
    void aClockThatGoesBackLosesNothing() {
        try (Shop shop = Shop.beginning(folder, lists, DAY)) {
            shop.stock().order("seat", 4, DAY.plusDays(10), "");
        }
        LocalDate back = DAY.minusYears(3);
        try (Shop shop = Shop.writing(folder, back)) {
            int before = shop.stock().level("seat").shelf();
            shop.stock().receive("seat", 2, "");
            shop.stock().broken("cap", 1, "");
            assertThrows(ShopFault.class, () -> shop.stock().used("seat", 100_000, ""));
            assertEquals(before + 2, shop.stock().level("seat").shelf());
        }
        assertEquals(List.of(), Doctor.look(folder, lists, DAY).faults());
        assertEquals(List.of(), Doctor.look(folder, lists, back).faults());
    }
}
