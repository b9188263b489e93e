package withy.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.shop.Bookings.Booking;

/** Bookings taken back: all is as it was, and the ledger says so in lines of its own. */
class BookingsTest extends ShopOnDisk {
    @BeforeEach
    void stocked() {
        shop.stock().count("seat", 2, "");
    }

    private Job accepted(int seats) {
        Job job = shop.jobs().add("a rod", "{}", null);
        return shop.jobs().accept(job, "{}", "{}", List.of(new Need("seat", seats, 7, 1)), "");
    }

    /** All that is known of the part but its history: pieces, promises, levels and weights. */
    private String state() {
        Level level = shop.stock().level("seat");
        return shop.stock().pieces("seat") + " " + shop.stock().hits() + " " + level.free() + " " + level.toOrder()
                + " " + level.freeDue() + " " + shop.scale().weights();
    }

    private Booking last() {
        return Objects.requireNonNull(shop.bookings().last("seat"));
    }

    private record Case(String name, Runnable booking) {}

    @TestFactory
    Stream<DynamicTest> everyBookingOfOnePartIsTakenBackToTheVeryPiece() {
        Stock stock = shop.stock();
        stock.order("seat", 2, DAY.plusDays(9), "");
        accepted(2);
        accepted(1);
        shop.jobs().accept(shop.jobs().add("noted", "{}", null), "{}", "{}", List.of(new Need("seat", 2, 7, 3)), "");
        shop.scale().weigh("seat", 1, 18_400);
        return Stream.of(
                        new Case("counted up", () -> stock.count("seat", 5, "")),
                        new Case("counted down", () -> stock.count("seat", 1, "")),
                        new Case("ran out", () -> stock.count("seat", 0, "ran out")),
                        new Case("came in", () -> stock.receive("seat", 4, "")),
                        new Case("ordered", () -> stock.order("seat", 4, DAY.plusDays(3), "")),
                        new Case("broken", () -> stock.broken("seat", 2, "")),
                        new Case("this very one broken", () -> stock.brokenPiece("seat", 1, "")),
                        new Case("order given up", () -> stock.cancel("seat", 1, "")),
                        new Case("weighed", () -> shop.scale().weigh("seat", 2, 19_000)),
                        new Case("weighed again", () -> shop.scale().weigh("seat", 1, 19_000)))
                .map(one -> DynamicTest.dynamicTest(one.name(), () -> {
                    String before = state();
                    int lines = stock.ledger("seat", 500).size();
                    one.booking().run();
                    String booked = state();
                    assertFalse(before.equals(booked), booked);
                    Change back = shop.bookings().takeBack("seat", last().booking());
                    assertEquals(before, state());
                    assertEquals("seat", back.levels().get(0).part());
                    List<Movement> ledger = stock.ledger("seat", 500);
                    assertTrue(ledger.size() >= lines, "no line less");
                    taken(ledger.subList(0, ledger.size() - lines));
                    assertEquals(List.of(), Doctor.look(folder, lists, DAY).faults());
                }));
    }

    /** Half of the new lines say they were taken back, the other half say the opposite of them. */
    private static void taken(List<Movement> lines) {
        List<Movement> booked =
                new ArrayList<>(lines.stream().filter(Movement::takenBack).toList());
        List<Movement> back = lines.stream().filter(line -> !line.takenBack()).toList();
        assertEquals(booked.size(), back.size());
        Collections.reverse(booked);
        for (int i = 0; i < booked.size(); i++) {
            Movement there = booked.get(i);
            Movement here = back.get(back.size() - 1 - i);
            assertEquals("taken back", here.note());
            assertEquals(there.reason(), here.reason());
            assertEquals(
                    List.of(-there.shelf(), -there.promised(), -there.ordered()),
                    List.of(here.shelf(), here.promised(), here.ordered()));
        }
    }

    @Test
    void oneAfterAnotherUntilSomethingElseHappened() {
        accepted(1);
        assertNull(shop.bookings().last("seat"), "a job took a piece since");
        ShopFault none = assertThrows(ShopFault.class, () -> shop.bookings().takeBack("seat"));
        assertTrue(none.getMessage().contains("no booking that can be taken back"), none.getMessage());
        shop.stock().receive("seat", 2, "");
        shop.stock().count("seat", 4, "nothing moved");
        shop.stock().broken("seat", 1, "");
        assertEquals("broken", last().what());
        assertEquals(-1, last().shelf());
        shop.bookings().takeBack("seat");
        assertEquals("receive", last().what());
        shop.bookings().takeBack("seat");
        assertEquals(2, shop.stock().level("seat").shelf());
        assertNull(shop.bookings().last("seat"));
    }

    @Test
    void anotherPartIsNothingToIt() {
        shop.stock().count("seat", 7, "");
        shop.stock().count("cap", 7, "");
        shop.bookings().takeBack("seat");
        assertEquals(7, shop.stock().level("cap").shelf());
        assertEquals(2, shop.stock().level("seat").shelf());
    }

    @Test
    void onlyWhatWasLookedAtIsTakenBack() {
        shop.stock().count("seat", 7, "");
        long seen = last().booking();
        shop.stock().count("seat", 8, "");
        ShopFault stale = assertThrows(ShopFault.class, () -> shop.bookings().takeBack("seat", seen));
        assertEquals(ShopFault.Kind.STALE, stale.kind());
        assertEquals(8, shop.stock().level("seat").shelf());
    }

    @Test
    void aReadingThatWasTakenBackStaysInTheListAndDoesNotCount() {
        shop.scale().weigh("seat", 1, 18_500);
        shop.scale().weigh("seat", 1, 81_500);
        assertEquals(81.5, last().weightG());
        shop.bookings().takeBack("seat");
        assertEquals(18.5, shop.scale().weights().get("seat").meanG());
        assertEquals(2, shop.bookings().readings("seat", 9).size());
        assertTrue(shop.bookings().readings("seat", 9).get(0).takenBack());
        shop.bookings().takeBack("seat");
        assertNull(shop.scale().weights().get("seat"));
        assertEquals(1, shop.scale().weigh("seat", null, 18_600).piece().number(), "it counts as not weighed");
    }

    /** An import is taken back whole; a booking before it whose pieces it moved is refused rather than half undone. */
    @Test
    void whatAnImportMovedIsNotTornApart() {
        shop.stock().count("seat", 4, "");
        shop.imports().apply(new TreeMap<>(Map.of("seat", 5)), new TreeMap<>());
        assertNull(shop.bookings().last("seat"));
        shop.stock().broken("seat", 1, "");
        shop.imports().undo();
        assertEquals("broken", last().what());
        shop.bookings().takeBack("seat");
        assertEquals(4, shop.stock().level("seat").shelf());
        String before = state();
        ShopFault moved = assertThrows(ShopFault.class, () -> shop.bookings().takeBack("seat"));
        assertTrue(moved.getMessage().contains("its pieces were moved since"), moved.getMessage());
        assertEquals(before, state());
    }

    @Test
    void whatAnOlderProgramBookedIsLeftAlone() {
        Path old = folder.resolve("old");
        assertTrue(old.toFile().mkdir());
        try (Database database = Database.open(Shop.file(old))) {
            Migrations.upTo(database, 4);
            database.write(sql -> {
                sql.run("INSERT INTO batch (on_day, what) VALUES ('2026-01-01', 'count')");
                sql.run("INSERT INTO part (part, last_number) VALUES ('seat', 1)");
                sql.run("INSERT INTO piece (part, number, state) VALUES ('seat', 1, 'shelf')");
                return sql.run("INSERT INTO movement (batch, part, reason, shelf, promised, ordered, note)"
                        + " VALUES (1, 'seat', 'counted', 1, 0, 0, '')");
            });
            database.write(sql -> {
                // counted because it lay on the scale
                sql.run("INSERT INTO batch (on_day, what) VALUES ('2026-01-02', 'weigh')");
                sql.run("INSERT INTO part (part, last_number) VALUES ('cap', 1)");
                sql.run("INSERT INTO piece (part, number, state) VALUES ('cap', 1, 'shelf')");
                sql.run("INSERT INTO reading (batch, piece, weight_mg) VALUES (2, 2, 3000)");
                return sql.run("INSERT INTO movement (batch, part, reason, shelf, promised, ordered, note)"
                        + " VALUES (2, 'cap', 'counted', 1, 0, 0, 'on the scale')");
            });
        }
        try (Shop there = Shop.writing(old, DAY)) {
            assertNull(there.bookings().last("seat"));
            assertNull(there.bookings().last("cap"));
            there.stock().count("seat", 3, "");
            there.bookings().takeBack("seat");
            assertEquals(1, there.stock().level("seat").shelf());
            assertNull(there.bookings().last("seat"));
        }
    }

    @Test
    void whatABookingDidCannotBeRewritten() {
        shop.stock().count("seat", 7, "");
        try (Database database = Database.open(Shop.file(folder))) {
            for (String table : List.of("piece_trace", "promise_trace")) {
                accepted(1);
                shop.stock().count("seat", 0, "");
                assertThrows(ShopFault.class, () -> database.write(sql -> sql.run("DELETE FROM " + table)), table);
            }
            assertThrows(
                    ShopFault.class,
                    () -> database.write(sql -> sql.run("UPDATE piece_trace SET state_before = 'used'")));
        }
    }
}
