package withy.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import withy.catalog.Catalog;
import withy.fixture.Fixtures;

/** Promises, offers and the steps of a job, in a real file. */
class JobsTest extends ShopOnDisk {
    @BeforeEach
    void stocked() {
        shop.stock().count("seat", 1, "");
        shop.stock().count("cap", 3, "");
    }

    private Job job() {
        return shop.jobs().add("a rod", "{}", null);
    }

    private Job accepted(Need... needs) {
        return shop.jobs().accept(job(), "{}", "{}", List.of(needs), "");
    }

    private static Need none(String part, int pieces) {
        return new Need(part, pieces, null, 1);
    }

    private static String names(List<Piece> pieces) {
        return pieces.stream().map(Piece::name).collect(Collectors.joining(" "));
    }

    @Test
    void acceptancePromisesVeryPiecesAndOffersPromiseNothing() {
        Job job = shop.jobs().offer(job(), "hash", "{\"builds\":[]}", "as shown", "{}");
        assertEquals(1, shop.stock().level("seat").free());
        shop.jobs().accept(job, "{}", "{}", List.of(none("seat", 1), none("cap", 2)), "");
        Job.File file = shop.jobs().file(job.id());
        assertEquals(
                2, file.pieces().stream().filter(p -> p.part().equals("cap")).count());
        assertTrue(names(file.pieces()).endsWith("seat#1"), names(file.pieces()));
        Level level = shop.stock().level("seat");
        assertEquals(1, level.shelf());
        assertEquals(1, level.promised());
        assertEquals(0, level.free());
        assertEquals("as shown", file.offers().get(0).shown());
        assertEquals(
                List.of("new", "offered", "accepted"),
                file.history().stream().map(Job.Event::what).toList());
        assertEquals(0, shop.snapshot(lists).catalog().find("seat").facts().stock());
    }

    @Test
    void aPromiseNeverCreatesAShortageAndAllOfItIsRefused() {
        accepted(none("seat", 1));
        ShopFault fault = assertThrows(ShopFault.class, () -> accepted(none("cap", 2), none("seat", 1)));
        assertTrue(fault.getMessage().contains("seat: 1 needed, 0 free, and none can be ordered"), fault.getMessage());
        assertEquals(3, shop.stock().level("cap").free());
        Job hurry = shop.jobs().add("in a hurry", "{}", DAY.plusDays(6));
        ShopFault late = assertThrows(
                ShopFault.class, () -> shop.jobs().accept(hurry, "{}", "{}", List.of(new Need("seat", 1, 7, 1)), ""));
        assertTrue(late.getMessage().contains("an order would come on 2026-03-09"), late.getMessage());
    }

    /** What comes on the very day is in time; a day later it is not, whether it is on its way or still to be ordered. */
    @Test
    void theDayTheRodIsWantedIsTheLastOneInTime() {
        Job wanted = shop.jobs().add("in time", "{}", DAY.plusDays(7));
        assertEquals("2026-03-09", shop.jobs().get(wanted.id()).wanted());
        Job ordered = shop.jobs().accept(wanted, "{}", "{}", List.of(new Need("check", 30, 7, 1)), "");
        assertTrue(shop.stock().level("check").toOrder() > 0);
        assertEquals("2026-03-09", ordered.wanted());
        Need late = new Need("check", 40, 8, 1);
        assertThrows(ShopFault.class, () -> shop.jobs().accept(ordered, "{}", "{}", List.of(late), ""));
        assertEquals(
                "2026-03-10",
                shop.jobs()
                        .accept(ordered, "{}", "2026-03-10", "{}", "{}", List.of(late), "")
                        .wanted());
        shop.stock().count("seat", 0, "");
        shop.stock().order("seat", 1, DAY.plusDays(5), "");
        Job early = shop.jobs().add("too early", "{}", DAY.plusDays(4));
        assertThrows(ShopFault.class, () -> shop.jobs().accept(early, "{}", "{}", List.of(none("seat", 1)), ""));
        Job onTheDay = shop.jobs().add("on the day", "{}", DAY.plusDays(5));
        shop.jobs().accept(onTheDay, "{}", "{}", List.of(none("seat", 1)), "");
        assertEquals(1, shop.stock().level("seat").promised());
        assertEquals(0, shop.stock().level("seat").toOrder());
    }

    /** Who names no day takes what comes, whenever; one that is missing is ordered as one. */
    @Test
    void withoutADayWhatIsOnItsWayIsTakenAndNoMoreIsOrderedThanIsMissing() {
        shop.stock().count("seat", 0, "");
        shop.stock().order("seat", 1, DAY.plusYears(1), "");
        accepted(new Need("seat", 1, 7, 1));
        assertEquals(0, shop.stock().level("seat").toOrder());
        accepted(new Need("seat", 1, 7, 1));
        assertEquals(1, shop.stock().level("seat").toOrder());
    }

    @Test
    void whatComesFirstIsPromisedFirst() {
        shop.stock().count("seat", 0, "");
        shop.stock().order("seat", 1, DAY.plusDays(9), "");
        shop.stock().order("seat", 1, DAY.plusDays(5), "");
        accepted(none("seat", 1));
        assertEquals(Map.of("2026-03-11", 1), shop.stock().level("seat").freeDue());
    }

    /** Let go first is what nobody has bought yet, then what is on its way; what lies in the bag stays there. */
    @Test
    void aJobThatNeedsLessKeepsWhatIsInItsBag() {
        shop.stock().order("cap", 1, DAY.plusDays(3), "");
        Job job = accepted(new Need("cap", 5, 7, 1));
        assertEquals(1, shop.stock().level("cap").toOrder());
        Job less = shop.jobs().accept(job, "{}", "{}", List.of(new Need("cap", 4, 7, 1)), "");
        assertEquals(0, shop.stock().level("cap").toOrder());
        assertEquals(4, shop.stock().level("cap").promised());
        shop.jobs().accept(less, "{}", "{}", List.of(new Need("cap", 3, 7, 1)), "");
        assertEquals(Map.of("2026-03-05", 1), shop.stock().level("cap").freeDue());
        assertTrue(shop.jobs().file(job.id()).pieces().stream().noneMatch(Piece::ordered));
    }

    /** The same where the bag was filled last. */
    @Test
    void whatIsOnItsWayIsLetGoWhicheverWasPromisedFirst() {
        shop.stock().count("seat", 0, "");
        shop.stock().order("seat", 1, DAY.plusDays(9), "");
        Job job = accepted(none("seat", 1));
        shop.stock().order("seat", 1, DAY.plusDays(3), "");
        Job two = shop.jobs().accept(job, "{}", "{}", List.of(none("seat", 2)), "");
        shop.stock().receive("seat", 1, "");
        Job one = shop.jobs().accept(two, "{}", "{}", List.of(none("seat", 1)), "");
        assertEquals("seat#12", names(shop.jobs().file(one.id()).pieces()));
        assertEquals(1, shop.stock().level("seat").ordered());
    }

    /** A count that was a slip sends the promise to what is on its way; counted again, what lies here is promised again. */
    @Test
    void whatLiesOnTheShelfIsPromisedRatherThanWhatIsOnItsWay() {
        shop.stock().order("seat", 1, DAY.plusDays(9), "");
        Job job = accepted(none("seat", 1));
        assertEquals("seat#1", names(shop.jobs().file(job.id()).pieces()));
        shop.stock().count("seat", 0, "");
        assertEquals("seat#11", names(shop.jobs().file(job.id()).pieces()));
        shop.stock().count("seat", 1, "");
        assertEquals("seat#12", names(shop.jobs().file(job.id()).pieces()));
        assertEquals(Map.of("2026-03-11", 1), shop.stock().level("seat").freeDue());
        shop.jobs().built(job);
    }

    /** What was only noted to be ordered needs no order any more, nor does the rest of its pack; an order that was sent stays. */
    @Test
    void whatWasFoundOnTheShelfIsNotOrdered() {
        Job job = accepted(new Need("seat", 3, 7, 5));
        assertEquals(5, shop.stock().level("seat").toOrder());
        assertEquals(
                List.of(new Jobs.Waiting("seat", 2, "2026-03-09", 2)),
                shop.jobs().waiting(job.id()));
        Change found = shop.stock().count("seat", 2, "");
        assertEquals(4, found.levels().get(0).toOrder());
        shop.stock().count("seat", 3, "");
        Level level = shop.stock().level("seat");
        assertEquals(0, level.toOrder());
        assertEquals(0, level.ordered());
        assertEquals(3, level.promised());
        assertEquals(List.of(), shop.jobs().waiting(job.id()));
        assertTrue(shop.jobs().file(job.id()).pieces().stream().noneMatch(Piece::ordered));
    }

    @Test
    void whatALossTookIsLetGoBeforeWhatIsThere() {
        Job job = accepted(none("cap", 3));
        shop.stock().count("cap", 2, "");
        assertEquals(1, shop.jobs().file(job.id()).missing().size());
        shop.jobs().accept(job, "{}", "{}", List.of(none("cap", 2)), "");
        assertEquals(List.of(), shop.jobs().file(job.id()).missing());
        assertEquals(2, shop.jobs().file(job.id()).pieces().size());
    }

    @Test
    void whatOneJobLetsGoMakesGoodTheLossOfAnother() {
        Job first = accepted(none("cap", 2));
        Job second = accepted(none("cap", 1));
        shop.stock().count("cap", 2, "");
        assertEquals(1, shop.jobs().file(second.id()).missing().size());
        shop.jobs().cancel(shop.jobs().get(first.id()), "");
        assertEquals(List.of(), shop.jobs().file(second.id()).missing());
    }

    @Test
    void acceptingTheSameBuildAgainIsNoChange() {
        Job job = accepted(none("seat", 1));
        Job again = shop.jobs().accept(job, "{}", "{}", List.of(none("seat", 1)), "");
        Job other = shop.jobs().accept(again, "{\"layout\":1}", "{}", List.of(none("seat", 1)), "");
        shop.jobs().accept(other, "{\"name\":1}", null, "{\"layout\":1}", "{}", List.of(none("seat", 1)), "");
        assertEquals(
                List.of("new", "accepted", "confirmed", "changed", "changed"),
                shop.jobs().file(job.id()).history().stream()
                        .map(Job.Event::what)
                        .toList());
    }

    @Test
    void whatIsMissingIsNotedToBeOrderedInWholePacks() {
        Job job = accepted(new Need("seat", 3, 7, 5));
        Level level = shop.stock().level("seat");
        assertEquals(5, level.ordered());
        assertEquals(5, level.toOrder());
        assertEquals(3, level.promised());
        assertEquals(Map.of("2026-03-09", 3), level.freeDue());
        shop.stock().order("seat", 5, DAY.plusDays(9), "");
        assertEquals(0, shop.stock().level("seat").toOrder());
        assertEquals(5, shop.stock().level("seat").ordered());
        assertThrows(ShopFault.class, () -> shop.jobs().built(job));
        shop.stock().receive("seat", 5, "");
        shop.jobs().built(job);
        assertEquals(3, shop.stock().level("seat").shelf());
        assertEquals(3, shop.stock().level("seat").free());
    }

    @Test
    void anotherBuildLetsGoWhatItDoesNotNeedAndKeepsTheRest() {
        Job job = accepted(none("seat", 1), none("cap", 1), new Need("check", 30, 7, 1));
        int ordered = shop.stock().level("check").toOrder();
        assertTrue(ordered > 0);
        Job changed = shop.jobs().accept(job, "{}", "{}", List.of(none("seat", 1), none("cap", 2)), "");
        assertEquals(0, shop.stock().level("check").ordered());
        assertEquals(0, shop.stock().level("check").promised());
        assertEquals(2, shop.stock().level("cap").promised());
        shop.jobs().cancel(changed, "");
        assertEquals(1, shop.stock().level("seat").free());
        assertEquals(3, shop.stock().level("cap").free());
    }

    @Test
    void whatIsGluedLeavesTheShelfAndStaysInTheRod() {
        Job job = accepted(none("seat", 1), none("cap", 1));
        Job glued = shop.jobs().glue(job, Set.of("seat"), Map.of("seat", 1));
        assertEquals(0, shop.stock().level("seat").shelf());
        assertEquals(Set.of("seat"), glued.glued());
        Job cancelled = shop.jobs().cancel(glued, "");
        assertEquals(0, shop.stock().level("seat").shelf());
        assertEquals(3, shop.stock().level("cap").free());
        assertEquals("seat#1", names(shop.jobs().file(cancelled.id()).pieces()));
    }

    @Test
    void aLossNamesTheJobsItHitsAndIsMadeGood() {
        Job first = accepted(none("cap", 2));
        Job second = accepted(none("cap", 1));
        Change loss = shop.stock().count("cap", 1, "");
        // the younger job loses first
        assertEquals(
                List.of(first.id(), second.id()),
                loss.hits().stream().map(Change.Hit::job).toList());
        assertTrue(loss.movements().stream().anyMatch(m -> m.job() != null && m.job() == second.id()));
        Level level = shop.stock().level("cap");
        assertEquals(1, level.promised());
        assertEquals(2, level.missing());
        assertThrows(ShopFault.class, () -> shop.jobs().built(second));
        shop.stock().receive("cap", 1, "");
        assertEquals(
                List.of(second.id()),
                shop.stock().hits().stream().map(Change.Hit::job).toList());
        shop.stock().receive("cap", 1, "");
        assertEquals(List.of(), shop.stock().hits());
        shop.jobs().built(first);
    }

    @Test
    void aBrokenPieceIsReplacedByAFreeOne() {
        Job job = accepted(none("cap", 1));
        assertEquals("cap#1", names(shop.jobs().file(job.id()).pieces()));
        Change broken = shop.stock().brokenPiece("cap", 1, "");
        assertEquals(List.of(), broken.hits());
        assertEquals("cap#2", names(shop.jobs().file(job.id()).pieces()));
    }

    @Test
    void anOlderRevisionIsRefusedAndNothingIsLost() {
        Job job = job();
        shop.jobs().accept(job, "{}", "{}", List.of(none("cap", 1)), "");
        ShopFault stale =
                assertThrows(ShopFault.class, () -> shop.jobs().accept(job, "{}", "{}", List.of(none("cap", 3)), ""));
        assertEquals(ShopFault.Kind.STALE, stale.kind());
        assertEquals(1, shop.stock().level("cap").promised());
    }

    @Test
    void stepsComeInTheirOrder() {
        Job job = job();
        assertThrows(ShopFault.class, () -> shop.jobs().built(job));
        assertThrows(ShopFault.class, () -> shop.jobs().weighed(job, 80_000, null, 83_000, 2_000));
        assertThrows(ShopFault.class, () -> shop.jobs().close(job));
        Job built = shop.jobs().built(shop.jobs().accept(job, "{}", "{}", List.of(none("cap", 1)), ""));
        assertThrows(ShopFault.class, () -> shop.jobs().accept(built, "{}", "{}", List.of(), ""));
        assertThrows(ShopFault.class, () -> shop.jobs().cancel(built, ""));
        Job weighed = shop.jobs().weighed(built, 84_600, 97.0, 83_000, 2_000);
        assertEquals(84.6, shop.jobs().file(job.id()).asBuilt().weightG());
        shop.jobs().close(weighed);
        assertEquals(Job.State.CLOSED, shop.jobs().get(job.id()).state());
        assertThrows(ShopFault.class, () -> shop.jobs().get(99));
    }

    /** By hand: t = 4; rods 1.5 g off a ± of 2 g: (2·1.5/2)² = 2.25, √((4 + 2.25)/5) = 1.118. */
    @Test
    void theStatedToleranceFollowsWhatWasSeen() {
        double work = lists.rates().workmanshipToleranceG();
        Job built = shop.jobs().built(accepted(none("cap", 1)));
        shop.jobs().weighed(built, 84_500, null, 83_000, 2_000);
        Snapshot snapshot = shop.snapshot(lists);
        assertEquals(new Experience.Seen(1, 1.5, 1.118), snapshot.experience().rods());
        assertEquals(work * 1.118, snapshot.catalog().rates().workmanshipToleranceG(), 1e-9);
        double listed = lists.find("seat").facts().weightG();
        double tolerance = lists.find("seat").facts().weightTolG();
        // one seat three tolerances off: √((4 + 36)/5) = 2.828 for every seat that was not weighed
        shop.scale().weigh("seat", null, Math.round((listed + 3 * tolerance) * 1000));
        Experience.Seen seats = shop.snapshot(lists).experience().kinds().get(withy.catalog.PartKind.REEL_SEAT);
        assertEquals(2.828, seats.factor(), 0.01);
        Catalog two = Fixtures.legal().copy("seat", "seat-b").catalog();
        assertEquals(
                tolerance * seats.factor(),
                shop.snapshot(two).catalog().find("seat-b").facts().weightTolG(),
                0.001);
    }

    @Test
    void offersAndHistoryCannotBeRewritten() {
        shop.jobs().offer(job(), "hash", "{\"builds\":[]}", "as shown", "{}");
        try (Database database = Database.open(Shop.file(folder))) {
            for (String sql : List.of(
                    "UPDATE offer SET shown = ''",
                    "DELETE FROM offer",
                    "UPDATE event SET note = ''",
                    "DELETE FROM event")) {
                assertThrows(ShopFault.class, () -> database.write(s -> s.run(sql)), sql);
            }
        }
    }

    @Test
    void twoWhoWriteAtOnceLoseNothingAndPromiseNoPieceTwice() throws InterruptedException {
        shop.stock().count("cap", 20, "");
        Thread[] hands = new Thread[2];
        java.util.concurrent.atomic.AtomicInteger got = new java.util.concurrent.atomic.AtomicInteger();
        for (int h = 0; h < hands.length; h++) {
            hands[h] = new Thread(() -> {
                try (Shop own = Shop.writing(folder, DAY)) {
                    for (int i = 0; i < 15; i++) {
                        own.stock().receive("seat", 1, "");
                        try {
                            Job job = own.jobs().add("rod", "{}", null);
                            own.jobs().accept(job, "{}", "{}", List.of(none("cap", 1)), "");
                            got.incrementAndGet();
                        } catch (ShopFault none) {
                            assertEquals(ShopFault.Kind.REFUSED, none.kind());
                        }
                    }
                }
            });
            hands[h].start();
        }
        for (Thread hand : hands) {
            hand.join();
        }
        assertEquals(31, shop.stock().level("seat").shelf());
        assertEquals(20, got.get());
        assertEquals(20, shop.stock().level("cap").promised());
    }
}
