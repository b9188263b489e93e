package withy.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.Catalog;
import withy.fixture.Fixtures;

/** Real processes that write to one shop and are killed, run side by side, or run out of disk or rights. */
class CrashTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    /** Longest the parent waits after the line it kills on, in turns of its loop, so that the kill falls anywhere within the next steps. */
    private static final int MOST_TURNS = 400_000;

    @TempDir
    private Path folder;

    private final Catalog lists = Fixtures.legal().catalog();

    @Test
    void fiftyKillsLoseNothingThatWasTold() throws IOException, InterruptedException {
        kills(50, 4711);
    }

    @Test
    @Tag("long")
    void fiveHundredKillsLoseNothingThatWasTold() throws IOException, InterruptedException {
        kills(500, 815);
    }

    private void kills(int kills, long seed) throws IOException, InterruptedException {
        Random random = new Random(seed);
        int midway = 0;
        for (int kill = 0; kill < kills; kill++) {
            long childSeed = random.nextLong();
            String what = "seed " + seed + ", kill " + kill;
            Process child = BusyShop.start(folder, childSeed, 1_000_000);
            int lines = 1 + random.nextInt(25);
            int turns = random.nextInt(MOST_TURNS);
            BusyShop.Told told = new BusyShop.Told();
            try (BufferedReader out = child.inputReader()) {
                for (int n = 0; n < lines; n++) {
                    String line = out.readLine();
                    assertNotEquals(null, line, () -> what + ": the child ended by itself: " + errors(child));
                    told.take(line);
                }
                long spun = 0;
                for (int turn = 0; turn < turns; turn++) {
                    spun += turn ^ spun;
                }
                assertNotEquals(-1, spun);
                child.toHandle().destroyForcibly();
                for (String line = out.readLine(); line != null; line = out.readLine()) {
                    told.take(line);
                }
            }
            assertNotEquals(0, child.waitFor(), what);
            midway += told.inside() ? 1 : 0;
            Doctor.Finding found = Doctor.look(folder, lists, DAY);
            assertEquals(List.of(), found.faults(), what);
            assertTrue(told.agrees(found.movements()), () -> what + ": told " + told + ", found " + found.movements());
            promisesAreCovered(what);
        }
        assertTrue(midway > kills / 4, "only " + midway + " kills fell inside a command");
    }

    private static String errors(Process child) {
        try (BufferedReader err = child.errorReader()) {
            return err.lines().reduce("", (a, b) -> a + "\n" + b);
        } catch (IOException e) {
            return e.toString();
        }
    }

    /** Promised at most what is on the shelf and on order; what a loss took names its job. */
    private void promisesAreCovered(String what) {
        try (Shop shop = Shop.reading(folder, DAY)) {
            for (Level level : shop.stock().levels()) {
                assertTrue(level.shelf() >= 0 && level.ordered() >= 0, what + level);
                assertTrue(level.promised() <= level.shelf() + level.ordered(), what + level);
                assertEquals(level, shop.stock().level(level.part()), what);
                List<Piece> pieces = shop.stock().pieces(level.part());
                assertEquals(count(pieces, p -> p.state().equals("shelf")), level.shelf(), what + level);
                assertEquals(count(pieces, p -> p.state().equals("ordered")), level.ordered(), what + level);
                assertEquals(
                        count(pieces, p -> p.state().equals("shelf") && p.job() == null), level.free(), what + level);
                assertEquals(
                        count(pieces, p -> p.state().equals("ordered") && p.job() == null),
                        level.freeDue().values().stream()
                                .mapToInt(Integer::intValue)
                                .sum(),
                        what + level);
                if (level.missing() > 0) {
                    assertTrue(
                            shop.stock().hits().stream().anyMatch(h -> h.part().equals(level.part())), what + level);
                }
            }
        }
    }

    private static int count(List<Piece> pieces, Predicate<Piece> which) {
        return (int) pieces.stream().filter(which).count();
    }

    @Test
    void twoProcessesAtOnceLoseNoUpdate() throws IOException, InterruptedException {
        try (Shop shop = Shop.beginning(folder, lists, DAY)) {
            shop.stock().count("seat", 0, "");
        }
        List<Process> children = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            children.add(BusyShop.receiving(folder, 60));
        }
        for (Process child : children) {
            try (BufferedReader out = child.inputReader()) {
                assertEquals("60", out.lines().reduce("", (a, b) -> b));
            }
            assertEquals(0, child.waitFor(), () -> errors(child));
        }
        try (Shop shop = Shop.reading(folder, DAY)) {
            assertEquals(120, shop.stock().level("seat").shelf());
        }
        assertEquals(List.of(), Doctor.look(folder, lists, DAY).faults());
    }

    @Test
    void aFullDiskIsToldAndLosesNothing() throws IOException, InterruptedException {
        try (Shop shop = Shop.beginning(folder, lists, DAY)) {
            shop.stock().count("seat", 5, "");
        }
        long kib = Files.size(Shop.file(folder)) / 1024 + 40;
        Process child = BusyShop.startLimited(folder, 7, kib);
        BusyShop.Told told = new BusyShop.Told();
        try (BufferedReader out = child.inputReader()) {
            out.lines().forEach(told::take);
        }
        String errors = errors(child);
        assertEquals(5, child.waitFor(), errors);
        assertTrue(errors.contains("Nothing was changed") && errors.contains("\nMaybe "), errors);
        Doctor.Finding found = Doctor.look(folder, lists, DAY);
        assertEquals(List.of(), found.faults());
        assertTrue(told.agrees(found.movements()), told + ", found " + found.movements());
        try (Shop shop = Shop.writing(folder, DAY)) {
            shop.stock().receive("cap", 1, "with space again");
        }
    }

    /** SQLite's own way to a full disk: no page more than there are. */
    @Test
    void aFullFileIsToldAsAFullDisk() {
        try (Shop shop = Shop.beginning(folder, lists, DAY);
                Database full = Database.open(Shop.file(folder))) {
            full.outside(sql -> sql.number("PRAGMA max_page_count = 1"));
            ShopFault fault = org.junit.jupiter.api.Assertions.assertThrows(
                    ShopFault.class,
                    () -> full.write(sql -> {
                        Ledger ledger = new Ledger(sql, DAY.toString(), "count");
                        ledger.add("seat", 5_000, "shelf", null, true);
                        return ledger.change();
                    }));
            assertEquals(ShopFault.Kind.DISK, fault.kind());
            assertTrue(fault.getMessage().contains("the disk is full"), fault.getMessage());
            assertEquals(
                    lists.find("seat").facts().stock(),
                    shop.stock().level("seat").shelf());
        }
    }

    @Test
    void aFolderThatOnlyReadsIsToldAndStillRead() throws IOException, InterruptedException {
        try (Shop shop = Shop.beginning(folder, lists, DAY)) {
            shop.stock().count("seat", 5, "");
        }
        Process child = BusyShop.startWithoutRights(folder);
        String errors;
        String seen;
        try (BufferedReader out = child.inputReader()) {
            seen = out.lines().reduce("", (a, b) -> a + b);
        }
        errors = errors(child);
        assertEquals(5, child.waitFor(), errors);
        assertTrue(seen.contains("seat 5"), seen + errors);
        assertTrue(errors.contains("no right to write in the folder"), errors);
        assertTrue(errors.contains("\nMaybe "), errors);
        try (Shop shop = Shop.writing(folder, DAY)) {
            assertEquals(5, shop.stock().level("seat").shelf());
        }
    }
}
