package withy.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What was done with a job last is taken back to the very piece and promise, or refused with what stands against it. */
class WayBackTest extends ShopOnDisk {
    @BeforeEach
    void stocked() {
        shop.stock().count("seat", 2, "");
        shop.stock().count("cap", 2, "");
    }

    private static Need need(String part, int pieces) {
        return new Need(part, pieces, 7, 3);
    }

    private Job accepted(Need... needs) {
        return shop.jobs().accept(shop.jobs().add("a rod", "{}", null), "{}", "{}", List.of(needs), "build 1");
    }

    private Job again(Job job, Need... needs) {
        return shop.jobs().accept(job, "{\"n\":1}", "2026-05-01", "{\"b\":1}", "{\"p\":1}", List.of(needs), "other");
    }

    /** All there is but histories and revisions: jobs as they are, pieces with the job each is promised to, what was lost. */
    private String state() {
        StringBuilder all = new StringBuilder();
        for (Job job : shop.jobs().all()) {
            Job.File file = shop.jobs().file(job.id());
            all.append(List.of(job.state(), job.brief(), String.valueOf(job.wanted()), String.valueOf(job.build())))
                    .append(job.glued().stream().sorted().toList())
                    .append(job.predicted())
                    .append(file.pieces())
                    .append(file.missing())
                    .append('\n');
        }
        for (String part : List.of("seat", "cap", "check")) {
            Level level = shop.stock().level(part);
            all.append(shop.stock().pieces(part)).append(level.free()).append(level.toOrder());
        }
        return all.toString();
    }

    private List<String> obstacles(Job job) {
        return Objects.requireNonNull(shop.jobs().wayBack(job.id())).obstacles();
    }

    private void refused(Job job, String why) {
        String before = state();
        ShopFault fault = assertThrows(
                ShopFault.class, () -> shop.jobs().takeBack(shop.jobs().get(job.id())));
        assertTrue(fault.getMessage().contains(why), fault.getMessage());
        assertEquals(before, state());
        assertTrue(
                String.join(" ", obstacles(job)).contains(why), obstacles(job).toString());
    }

    /** What was offered ends and is offered again by the way back; the offer itself is as it was given. */
    @Test
    void anOfferIsWithdrawnAndThatIsTakenBack() {
        Job job = shop.jobs().offer(shop.jobs().add("a rod", "{}", null), "hash", "{}", "shown", "{}");
        Job.Offer given = shop.jobs().file(job.id()).offers().get(0);
        assertNull(given.ended());
        Job ended = shop.jobs().withdraw(job, false, "the price was wrong");
        assertEquals(Job.State.NEW, ended.state());
        Job.Offer after = shop.jobs().file(job.id()).offers().get(0);
        assertEquals(DAY.toString(), after.ended());
        assertEquals(given.answer() + given.shown() + given.paper(), after.answer() + after.shown() + after.paper());
        assertThrows(ShopFault.class, () -> shop.jobs().withdraw(ended, false, ""), "there is none any more");
        Job back = shop.jobs().takeBack(ended);
        assertEquals(Job.State.OFFERED, back.state());
        assertNull(shop.jobs().file(job.id()).offers().get(0).ended());
        Job again = shop.jobs().offer(shop.jobs().withdraw(back, true, ""), "hash", "{}", "shown", "{}");
        List<Job.Offer> both = shop.jobs().file(again.id()).offers();
        assertEquals(DAY.toString(), both.get(0).ended(), "only what was given before it");
        assertNull(both.get(1).ended());
        assertEquals(Job.State.OFFERED, again.state());
    }

    private record Act(String name, Runnable act) {}

    @TestFactory
    Stream<DynamicTest> everyActIsTakenBackToTheVeryPiece() {
        Job first = accepted(need("seat", 1), need("cap", 1));
        Job waits = accepted(need("seat", 2), need("cap", 3));
        Job offered = shop.jobs().offer(shop.jobs().add("new", "{}", null), "hash", "{}", "shown", "{}");
        Job lost = accepted(need("cap", 1), need("check", 1));
        shop.stock().receive("seat", 3, "");
        shop.stock().count("check", 0, "");
        return Stream.of(
                        new Act(
                                "accepted",
                                () -> shop.jobs().accept(now(offered), "{}", "{}", List.of(need("seat", 2)), "")),
                        new Act("frees what another waits for", () -> again(now(first), need("check", 2))),
                        new Act("orders more", () -> again(now(first), need("seat", 7), need("check", 1))),
                        new Act("gives orders up", () -> again(now(waits), need("seat", 1))),
                        new Act("forgets what was lost", () -> again(now(lost), need("seat", 1))),
                        new Act("glued", () -> shop.jobs().glue(now(first), Set.of("seat"), Map.of("seat", 1))),
                        new Act("given up", () -> shop.jobs().cancel(now(waits), "")))
                .map(one -> DynamicTest.dynamicTest(one.name(), () -> {
                    String before = state();
                    one.act().run();
                    assertNotEquals(before, state());
                    Job done = shop.jobs().all().stream()
                            .filter(job -> shop.jobs().wayBack(job.id()) != null)
                            .max((a, b) -> Long.compare(act(a), act(b)))
                            .orElseThrow();
                    int revision = done.revision();
                    assertTrue(shop.jobs().takeBack(done).revision() > revision);
                    assertEquals(before, state());
                    List<Job.Event> history = shop.jobs().file(done.id()).history();
                    assertEquals("taken back", history.get(history.size() - 1).what());
                    assertEquals(
                            history.get(history.size() - 2).what(),
                            history.get(history.size() - 1).note());
                    sound();
                }));
    }

    private Job now(Job job) {
        return shop.jobs().get(job.id());
    }

    private long act(Job job) {
        return Objects.requireNonNull(shop.jobs().wayBack(job.id())).act();
    }

    @Test
    void aBuiltRodAndOneHandedOverGoBackStepByStep() {
        Job job = accepted(need("seat", 1));
        String agreed = state();
        shop.jobs().built(job);
        String built = state();
        shop.jobs().close(now(job));
        shop.jobs().takeBack(now(job));
        assertEquals(built, state());
        shop.jobs().takeBack(now(job));
        assertEquals(agreed, state());
        shop.jobs().takeBack(now(job));
        assertEquals(Job.State.NEW, now(job).state());
        assertEquals(2, shop.stock().level("seat").free());
        assertNull(shop.jobs().wayBack(job.id()), "there is nothing before it");
        assertThrows(ShopFault.class, () -> shop.jobs().takeBack(now(job)));
    }

    @Test
    void neitherOfferNorFinishedRodIsTakenBack() {
        Job job = shop.jobs().offer(accepted(need("seat", 1)), "hash", "{}", "shown", "{}");
        assertNull(shop.jobs().wayBack(job.id()));
        shop.jobs().built(job);
        shop.jobs().weighed(now(job), 80_000, null, 80_000, 2_000);
        assertNull(shop.jobs().wayBack(job.id()));
        shop.jobs().close(now(job));
        assertNotNull(shop.jobs().wayBack(job.id()));
    }

    @Test
    void aPieceThatIsPromisedElsewhereStandsAgainstIt() {
        Job job = again(accepted(need("seat", 2)), need("cap", 1));
        assertEquals(List.of(), obstacles(job));
        Job other = accepted(need("seat", 1));
        refused(job, "seat: piece 1 is promised to job " + other.id() + " by now.");
        shop.jobs().cancel(other, "");
        shop.jobs().takeBack(now(job));
        assertEquals(2, shop.stock().level("seat").promised());
    }

    @Test
    void aPieceThatBrokeOrWasUsedStandsAgainstIt() {
        Job job = again(accepted(need("seat", 2)), need("cap", 2));
        shop.stock().brokenPiece("seat", 2, "");
        refused(job, "seat: piece 2 broke since.");
        shop.stock().used("seat", 1, "");
        refused(job, "seat: piece 1 is built in by now.");
        shop.stock().count("cap", 1, "");
        refused(job, "cap: a piece promised to job " + job.id() + " got lost since.");
    }

    @Test
    void anOrderThatWasSentOrPromisedOnStandsAgainstIt() {
        Job job = accepted(need("seat", 3));
        Job other = accepted(need("seat", 1));
        refused(job, "seat: piece 12 is promised to job " + other.id() + " by now.");
        shop.jobs().cancel(other, "");
        shop.stock().order("seat", 3, DAY.plusDays(3), "");
        refused(job, "was ordered since.");
    }

    @Test
    void anotherPieceThatWasPromisedSinceStandsAgainstIt() {
        Job job = accepted(need("seat", 3));
        shop.stock().count("seat", 3, "one lay behind the others");
        refused(job, "seat: job " + job.id() + " is promised another piece by now.");
    }

    /** What ran out is found again before the job goes back: it is promised what is there, and waits for nothing. */
    @Test
    void whatWasLostAndIsThereAgainIsMadeGood() {
        Job job = accepted(need("seat", 2));
        shop.stock().count("seat", 0, "");
        again(job, need("cap", 1));
        shop.stock().receive("seat", 2, "");
        shop.jobs().takeBack(now(job));
        assertEquals(List.of(), shop.jobs().file(job.id()).missing());
        assertEquals(2, shop.jobs().held(job.id()).get("seat"));
        assertNull(shop.bookings().last("seat"), "those pieces have a job now");
    }

    @Test
    void aJobThatChoseAgainAndWentBackLetsItsPartsBookingBeTakenBack() {
        Job job = accepted(need("seat", 2));
        shop.stock().count("seat", 0, "");
        assertNotNull(shop.bookings().last("seat"));
        again(job, need("cap", 1));
        assertNull(shop.bookings().last("seat"));
        shop.jobs().takeBack(now(job));
        shop.bookings().takeBack("seat");
        assertEquals(2, shop.stock().level("seat").promised());
    }

    @Test
    void aStaleJobIsRefused() {
        Job job = accepted(need("seat", 1));
        again(job, need("cap", 1));
        ShopFault stale = assertThrows(ShopFault.class, () -> shop.jobs().takeBack(job));
        assertEquals(ShopFault.Kind.STALE, stale.kind());
    }

    @Test
    void whatAnOlderProgramDidIsLeftAlone() {
        shop.close();
        Path old = folder.resolve("old");
        assertTrue(old.toFile().mkdir());
        try (Database database = Database.open(Shop.file(old))) {
            Migrations.upTo(database, 5);
            database.write(sql -> {
                sql.run("INSERT INTO batch (on_day, what) VALUES ('2026-01-01', 'accept')");
                sql.run("INSERT INTO job (name, state, brief, build) VALUES ('a rod', 'accepted', '{}', '{}')");
                return sql.run("INSERT INTO event (job, batch, what, note) VALUES (1, 1, 'accepted', '')");
            });
        }
        try (Shop there = Shop.writing(old, DAY)) {
            assertNull(there.jobs().wayBack(1));
            there.jobs().built(there.jobs().get(1));
            there.jobs().takeBack(there.jobs().get(1));
            assertEquals(Job.State.ACCEPTED, there.jobs().get(1).state());
        }
    }

    @Test
    void howAJobWasCannotBeRewritten() {
        accepted(need("seat", 1));
        try (Database database = Database.open(Shop.file(folder))) {
            assertThrows(ShopFault.class, () -> database.write(sql -> sql.run("DELETE FROM job_trace")));
            assertThrows(
                    ShopFault.class, () -> database.write(sql -> sql.run("UPDATE job_trace SET state_before = 'new'")));
        }
    }

    /** Whatever was done in whatever order: what offers a way back goes back to what was, and the memory stays sound. */
    @TestFactory
    Stream<DynamicTest> anyOrder() {
        return Stream.of(1, 2, 3, 4)
                .map(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    Random random = new Random(seed);
                    int taken = 0;
                    for (int i = 0; i < 80; i++) {
                        if (shop.jobs().all().stream().filter(Job::open).count() < 4) {
                            shop.jobs().add("rod", "{}", null);
                        }
                        String before = state();
                        Long job = step(random);
                        WayBack back = job == null ? null : shop.jobs().wayBack(job);
                        if (back != null && back.obstacles().isEmpty() && random.nextBoolean()) {
                            shop.jobs().takeBack(shop.jobs().get(job));
                            assertEquals(before, state(), "step " + i);
                            taken++;
                        }
                        sound();
                    }
                    assertTrue(taken > 5, "taken back " + taken);
                }));
    }

    /** One thing done; the job it was done with, or null. */
    private Long step(Random random) {
        String part = List.of("seat", "cap", "check").get(random.nextInt(3));
        List<Job> open = shop.jobs().all().stream().filter(Job::open).toList();
        Job job = open.get(random.nextInt(open.size()));
        try {
            switch (random.nextInt(9)) {
                case 0 -> shop.stock().count(part, random.nextInt(6), "");
                case 1 -> shop.stock().receive(part, 1 + random.nextInt(3), "");
                case 2 -> shop.stock().order(part, 1 + random.nextInt(3), DAY.plusDays(3), "");
                case 3 -> shop.stock().broken(part, 1, "");
                case 4 -> {
                    shop.jobs().cancel(job, "");
                    return job.id();
                }
                case 5 -> {
                    shop.jobs().glue(job, Set.of("seat"), Map.of("seat", 1));
                    return job.id();
                }
                default -> {
                    again(job, need(part, 1 + random.nextInt(3)), need("check", 1));
                    return job.id();
                }
            }
        } catch (ShopFault refused) {
            assertEquals(ShopFault.Kind.REFUSED, refused.kind());
        }
        return null;
    }
}
