package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import withy.catalog.CatalogReader;
import withy.shop.Shop;
import withy.web.Caller.Reply;

/** What changes the shop: once for a form however often it is sent, not from a window that is behind, and not before something odd was asked back. */
class OnceTest extends ByRequest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final String SEAT = "quernstone-featherlode-x-16";

    private static String step;

    @BeforeAll
    static void open() throws Exception {
        step = page.begun("estuary");
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
        Reply asked = page.form("/jobs", "once", other, "step", step, "rank", "0");
        assertEquals(422, asked.status());
        assertTrue(asked.body().contains("begun from this very brief and is still open"), asked.body());
        assertTrue(asked.body().contains("href=\"" + first + "\""), asked.body());
        assertEquals(before + 1, jobs());
        String[] sure = {
            "once", hidden("once", asked.body()), "step", step, "rank", hidden("rank", asked.body()), "sure", "yes"
        };
        assertFalse(first.equals(page.form("/jobs", sure).location()));
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

    /** A double click sends the same form twice; two tabs, or going back, each have a form of their own. */
    @Test
    void aBuildTakenTwiceIsOneJob() throws Exception {
        String own = page.form("/change", "step", step, "do", "never", "part", SEAT)
                .location()
                .substring("/builds/".length());
        page.get("/builds/" + own + "?show=rest");
        int before = jobs();
        String[] marks = {"tab", "tab", "other tab"};
        List<Reply> replies = Collections.synchronizedList(new ArrayList<>());
        List<Thread> clicks = new ArrayList<>();
        for (String mark : marks) {
            Thread click = new Thread(() -> {
                try {
                    replies.add(page.form("/jobs", "once", mark, "step", own, "rank", "1"));
                } catch (java.io.IOException e) {
                    throw new java.io.UncheckedIOException(e);
                }
            });
            click.start();
            clicks.add(click);
        }
        for (Thread click : clicks) {
            click.join();
        }
        assertEquals(before + 1, jobs());
        assertEquals(marks.length, replies.size());
        for (Reply reply : replies) {
            assertTrue(reply.status() == 303 || reply.body().contains("from this very brief"), reply.body());
        }
    }

    /** The same build of an offer taken in two tabs: the second is told, and nothing is done twice. */
    @Test
    void anOfferTakenInTwoTabsIsTakenOnce() throws Exception {
        String job = page.form("/jobs", "once", "k", "step", step, "rank", "0", "sure", "yes")
                .location();
        String revision = hidden("revision", page.get(job).body());
        String[] take = {"once", "l", "revision", revision, "rank", "1", "do", "accept"};
        assertEquals(303, page.form(job, take).status());
        assertEquals(303, page.form(job, take).status(), "a double click");
        String taken = page.get(job).body();
        take[1] = "m";
        assertEquals(409, page.form(job, take).status());
        assertEquals(hidden("revision", taken), hidden("revision", page.get(job).body()));
    }

    @Test
    void aJobIsGivenUpOnlyWhenAskedBack() throws Exception {
        String job = page.form("/jobs", "once", "n", "step", step, "rank", "1", "sure", "yes")
                .location();
        String revision = hidden("revision", page.get(job).body());
        Reply asked = page.form(job, "once", "o", "revision", revision, "do", "cancel");
        assertEquals(422, asked.status());
        assertTrue(asked.body().contains("goes back to the shelf"), asked.body());
        assertEquals(revision, hidden("revision", page.get(job).body()), "nothing was done");
        assertEquals(
                303,
                page.form(job, "once", "p", "revision", hidden("revision", asked.body()), "do", "cancel", "sure", "yes")
                        .status());
        assertTrue(page.get(job).body().contains("given up"));
    }

    /** The samples hold three of each part. */
    private static int free(String body) {
        return Integer.parseInt(Caller.found("<dt>Free</dt><dd>(\\d+)</dd>", body.replaceAll("\\s*\n\\s*", "")));
    }

    @Test
    void aChangeFromAnOldWindowIsRefused() throws Exception {
        String job = page.form("/jobs", "once", "a", "step", step, "rank", "1", "sure", "yes")
                .location();
        String old = page.get(job).body();
        String revision = hidden("revision", old);
        Reply glued = page.form(job, "once", "b", "revision", revision, "do", "glue", "station", "seat");
        assertEquals(303, glued.status());
        Reply late = page.form(job, "once", "c", "revision", revision, "do", "cancel");
        assertEquals(409, late.status());
        assertTrue(late.body().contains("Another window changed job"), late.body());
        String now = page.get(job).body();
        assertFalse(now.contains("given up"));
        assertTrue(now.contains(">glued<"));
        Reply fresh = page.form(job, "once", "d", "revision", hidden("revision", now), "do", "cancel", "sure", "yes");
        assertEquals(303, fresh.status());
    }

    /** Builds are worked out from lists and stock as they are now, whoever booked. */
    @Test
    void whatIsBookedHereOrElsewhereIsSeenAtOnce() throws Exception {
        String other = "marrick-tideway-r-16";
        String path = "/stock/" + other;
        page.form(path, "once", "q", "do", "receive", "pieces", "1");
        String before = worked();
        assertEquals(before, worked());
        page.form(path, "once", "r", "do", "receive", "pieces", "1");
        String booked = worked();
        assertFalse(before.equals(booked));
        var lists = CatalogReader.read(shop.folder, DAY).catalog();
        try (Shop elsewhere = Shop.beginning(shop.folder, lists, DAY)) {
            elsewhere.stock().receive(other, 1, "");
        }
        assertFalse(booked.equals(worked()));
    }

    /** What the builds are worked out from, in short. */
    private static String worked() throws Exception {
        return Caller.found("Worked out from lists ([0-9a-f]+)", page.whole("/builds/" + step));
    }

    @Test
    void anAbsurdReadingIsAskedBackFirst() throws Exception {
        String part = "marrick-tideway-r-17";
        Reply asked = page.form("/weigh", "once", "e", "piece", part, "weight", "2.21 kg", "job", "");
        assertEquals(422, asked.status());
        assertTrue(
                asked.body()
                        .contains(
                                "listed at 24.50 g, give or take 0.98 g. The scale says 2210.00 g: that is 2185.50 g more."),
                asked.body());
        assertEquals(part, hidden("piece", asked.body()));
        assertEquals("2.21 kg", hidden("weight", asked.body()));
        assertFalse(page.get("/stock/" + part).body().contains("2210"), "booked before it was asked");
        Reply light = page.form("/weigh", "once", "f", "piece", part, "weight", "0.2 g", "job", "");
        assertTrue(light.body().contains("The scale says 0.20 g: that is 24.30 g less."), light.body());
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
        Reply plain = page.form("/weigh", "once", "g", "piece", "marrick-tideway-r-18", "weight", "30 g", "job", "");
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

    @Test
    void aRodIsNotBuiltByASlipOfTheThumb() throws Exception {
        String other = page.form("/brief", "from", "", "start", "child").location();
        page.whole(other);
        String job = page.form("/jobs", "once", "j", "step", other.substring("/builds/".length()), "rank", "1")
                .location();
        String body = page.get(job).body();
        String revision = hidden("revision", body);
        Reply asked = page.form(job, "once", "k", "revision", revision, "do", "built");
        assertEquals(422, asked.status());
        assertTrue(asked.body().contains("are not ticked"), asked.body());
        assertEquals(revision, hidden("revision", page.get(job).body()), "nothing was booked");
        List<String> all = new ArrayList<>(List.of("once", "l", "revision", revision, "do", "built"));
        Matcher station = Pattern.compile("name=\"station\" value=\"([^\"]+)\"").matcher(body);
        while (station.find()) {
            all.addAll(List.of("station", station.group(1)));
        }
        assertEquals(303, page.form(job, all.toArray(String[]::new)).status(), "all are ticked: it need not be asked");
        assertTrue(page.get(job).body().contains("id=\"balance\""));
    }
}
