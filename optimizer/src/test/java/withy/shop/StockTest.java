package withy.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.fixture.Changed;
import withy.fixture.Fixtures;

/** Stock, ledger, scale and prices in a real file. */
class StockTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    @TempDir
    private Path folder;

    private final Catalog lists = Fixtures.legal().catalog();

    private Shop shop() {
        return Shop.beginning(folder, lists, DAY);
    }

    private Part part(Catalog catalog, String id) {
        return Objects.requireNonNull(catalog.find(id));
    }

    @Test
    void beginsWithTheCountsOfTheListsAndNeverCountsThemAgain() {
        int listed = part(lists, "seat").facts().stock();
        try (Shop shop = shop()) {
            assertEquals(listed, shop.stock().level("seat").shelf());
            shop.stock().count("seat", listed + 2, "");
        }
        try (Shop shop = shop()) {
            assertEquals(listed + 2, shop.stock().level("seat").shelf());
            Catalog seen = shop.snapshot(lists).catalog();
            assertEquals(listed + 2, part(seen, "seat").facts().stock());
            assertEquals(lists.size(), seen.size());
        }
    }

    @Test
    void everyMovementIsALineAndTheLinesAddUpToTheShelf() {
        try (Shop shop = shop()) {
            Stock stock = shop.stock();
            stock.count("seat", 4, "shelf");
            stock.order("seat", 3, DAY.plusDays(9), "");
            stock.receive("seat", 2, "");
            stock.used("seat", 1, "a repair");
            stock.broken("seat", 1, "dropped");
            stock.returned("seat", 1, "");
            stock.cancel("seat", 1, "");
            Level level = stock.level("seat");
            assertEquals(3, level.shelf());
            assertEquals(0, level.ordered());
            List<Movement> lines = stock.ledger("seat", 100);
            assertEquals(3, lines.stream().mapToInt(Movement::shelf).sum());
            assertEquals(0, lines.stream().mapToInt(Movement::ordered).sum());
            assertEquals("cancelled", lines.get(0).reason());
        }
        assertEquals(List.of(), Doctor.look(folder, lists, DAY).faults());
    }

    @Test
    void takesNothingThatIsNotThere() {
        try (Shop shop = shop()) {
            shop.stock().count("seat", 1, "");
            ShopFault fault = assertThrows(ShopFault.class, () -> shop.stock().used("seat", 2, ""));
            assertTrue(fault.getMessage().contains("seat: 2 pieces asked, 1 on the shelf"), fault.getMessage());
            assertTrue(fault.getMessage().lines().anyMatch(line -> line.startsWith("Maybe ")), fault.getMessage());
            assertThrows(ShopFault.class, () -> shop.stock().broken("seat", 2, ""));
            assertThrows(ShopFault.class, () -> shop.stock().brokenPiece("seat", 99, ""));
            assertThrows(ShopFault.class, () -> shop.stock().count("seat", -1, ""));
            assertThrows(ShopFault.class, () -> shop.stock().count("seat", Stock.MOST_PIECES + 1, ""));
            assertEquals(1, shop.stock().level("seat").shelf());
        }
    }

    @Test
    void whatIsOnOrderIsFreeFromTheDayItIsDue() {
        Brief soon = Changed.with(Fixtures.legal().theBrief(), "wantedBy", DAY.plusDays(5));
        Brief late = Changed.with(soon, "wantedBy", DAY.plusDays(6));
        try (Shop shop = shop()) {
            shop.stock().count("seat", 1, "");
            shop.stock().order("seat", 2, DAY.plusDays(6), "");
            Snapshot snapshot = shop.snapshot(lists);
            assertEquals(1, part(snapshot.forBrief(soon), "seat").facts().stock());
            assertEquals(3, part(snapshot.forBrief(late), "seat").facts().stock());
            assertEquals(1, part(snapshot.catalog(), "seat").facts().stock());
            Brief any = Changed.with(soon, "wantedBy", null);
            assertEquals(3, part(snapshot.forBrief(any), "seat").facts().stock());
            assertEquals(
                    4,
                    part(snapshot.forJob(late, Map.of("seat", 1)), "seat")
                            .facts()
                            .stock());
        }
    }

    @Test
    void aReadingReplacesTheListedWeightAndSeveralGiveMeanAndSpread() {
        double listed = part(lists, "seat").facts().weightTolG();
        try (Shop shop = shop()) {
            shop.stock().count("seat", 3, "");
            assertEquals(1, shop.scale().weigh("seat", null, 18_500).piece().number());
            Part once = part(shop.snapshot(lists).catalog(), "seat");
            assertEquals(18_500, once.massMg());
            assertTrue(once.facts().weighed());
            Experience.Seen seats = shop.snapshot(lists).experience().kinds().get(PartKind.REEL_SEAT);
            assertEquals(1, seats.count());
            // one reading tells no spread: the listed one stays, times what lists of this kind are worth
            assertEquals(listed * seats.factor(), once.facts().weightTolG(), 0.001);
            assertEquals(2, shop.scale().weigh("seat", null, 18_900).piece().number());
            assertEquals(3, shop.scale().weigh("seat", null, 18_700).piece().number());
            Part thrice = part(shop.snapshot(lists).catalog(), "seat");
            assertEquals(18_700, thrice.massMg());
            // s = 0.2 g, n = 3: 2 * 0.2 * sqrt(4/3) = 0.462 g by hand
            assertEquals(0.462, thrice.facts().weightTolG());
            // piece 2 once more: only its last reading counts
            shop.scale().weigh("seat", 2, 18_600);
            assertEquals(18_600, part(shop.snapshot(lists).catalog(), "seat").massMg());
            assertThrows(ShopFault.class, () -> shop.scale().weigh("seat", 77, 18_600));
        }
    }

    @Test
    void whatIsOnTheScaleIsInTheShop() {
        try (Shop shop = shop()) {
            shop.stock().count("seat", 0, "");
            shop.scale().weigh("seat", null, 18_500);
            assertEquals(1, shop.stock().level("seat").shelf());
        }
    }

    @Test
    void theHashFollowsWhatIsSeenAndNothingElse() {
        try (Shop shop = shop()) {
            String before = shop.snapshot(lists).hash();
            assertEquals(before, shop.snapshot(lists).hash());
            assertNotEquals(lists.hash(), before);
            shop.stock().count("seat", part(lists, "seat").facts().stock() + 1, "");
            String more = shop.snapshot(lists).hash();
            assertNotEquals(before, more);
            shop.stock().count("seat", part(lists, "seat").facts().stock(), "");
            assertEquals(before, shop.snapshot(lists).hash());
            shop.scale().weigh("seat", null, 18_500);
            assertNotEquals(before, shop.snapshot(lists).hash());
        }
    }

    @Test
    void anImportIsAllOrNothingAndCanBeTakenBack() {
        try (Shop shop = shop()) {
            shop.stock().count("seat", 5, "");
            shop.stock().count("cap", 2, "");
            String before = shop.snapshot(lists).hash();
            Imports.Imported done = shop.imports()
                    .apply(new TreeMap<>(Map.of("seat", 3, "cap", 6)), new TreeMap<>(Map.of("seat", 990L)));
            assertTrue(Files.isRegularFile(folder.resolve("backups").resolve(done.backup())), done.backup());
            Catalog seen = shop.snapshot(lists).catalog();
            assertEquals(3, part(seen, "seat").facts().stock());
            assertEquals(6, part(seen, "cap").facts().stock());
            assertEquals(990, part(seen, "seat").facts().priceMinor());
            assertEquals(DAY, part(seen, "seat").facts().priceDate());
            shop.imports().undo();
            assertEquals(before, shop.snapshot(lists).hash());
            assertEquals(
                    part(lists, "seat").facts(),
                    part(shop.snapshot(lists).catalog(), "seat")
                            .facts()
                            .withStock(part(lists, "seat").facts().stock()));
            assertThrows(ShopFault.class, () -> shop.imports().undo());
            shop.imports().apply(new TreeMap<>(Map.of("cap", 9)), new TreeMap<>());
            shop.stock().used("cap", 8, "");
            ShopFault fault = assertThrows(ShopFault.class, () -> shop.imports().undo());
            assertTrue(fault.getMessage().contains("cap"), fault.getMessage());
            assertEquals(1, shop.stock().level("cap").shelf());
        }
    }

    @Test
    void theLedgerCannotBeRewritten() {
        try (Shop shop = shop()) {
            assertFalse(shop.stock().ledger(null, 5).isEmpty());
        }
        try (Database database = Database.open(Shop.file(folder))) {
            assertThrows(
                    ShopFault.class,
                    () -> database.write(sql -> sql.run("UPDATE movement SET shelf = 9 WHERE id = 1")));
            assertThrows(ShopFault.class, () -> database.write(sql -> sql.run("DELETE FROM movement")));
        }
    }

    @Test
    void anOlderFileIsBackedUpAndBroughtUpToDate() {
        try (Database old = Database.open(Shop.file(folder))) {
            Migrations.upTo(old, 1);
            old.write(sql -> {
                sql.run("INSERT INTO batch (on_day, what) VALUES ('2026-01-01', 'count')");
                sql.run("INSERT INTO part (part, last_number) VALUES ('seat', 2)");
                sql.run("INSERT INTO piece (part, number, state) VALUES ('seat', 1, 'shelf'), ('seat', 2, 'shelf')");
                return sql.run("INSERT INTO movement (batch, part, reason, shelf, promised, ordered, note)"
                        + " VALUES (1, 'seat', 'counted', 2, 0, 0, '')");
            });
        }
        try (Shop shop = Shop.reading(folder, DAY)) {
            assertEquals(2, shop.stock().level("seat").shelf());
        }
        assertTrue(Files.isRegularFile(folder.resolve("backups/shop-before-version-" + Migrations.NEWEST + "-001.db")));
        assertEquals(List.of(), Doctor.look(folder, lists, DAY).faults());
    }

    @Test
    void aNewerFileAndAForeignFileAreRefused() {
        try (Shop shop = shop()) {
            assertNull(shop.stock().level("seat").freeDue().get("never"));
        }
        try (Database database = Database.open(Shop.file(folder))) {
            database.write(sql -> {
                sql.script("PRAGMA user_version = 99");
                return sql;
            });
        }
        ShopFault newer = assertThrows(ShopFault.class, () -> Shop.reading(folder, DAY));
        assertTrue(newer.getMessage().contains("version 99"), newer.getMessage());
        Path other = folder.resolve("other");
        assertTrue(other.toFile().mkdir());
        try (Database database = Database.open(Shop.file(other))) {
            database.write(sql -> sql.run("CREATE TABLE mine (x)"));
        }
        ShopFault foreign = assertThrows(ShopFault.class, () -> Shop.writing(other, DAY));
        assertTrue(foreign.getMessage().contains("no shop of Withy"), foreign.getMessage());
    }
}
