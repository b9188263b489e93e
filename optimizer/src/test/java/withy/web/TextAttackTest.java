package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.HttpURLConnection;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.web.Caller.Reply;

/** What is typed, listed or asked for by name never becomes markup, a header or a way out of the page. */
class TextAttackTest {
    @TempDir
    static Path scratch;

    private static Attacker attacker;

    @BeforeAll
    static void open() throws Exception {
        attacker = new Attacker(new ShopFolder(scratch, "bench"));
    }

    @AfterAll
    static void close() {
        attacker.close();
    }

    private static final String FORM = Caller.FORM;

    @Test
    void noLineBreakReachesAHeader() throws Exception {
        String split = "%0d%0aX-Evil:%201%0d%0a%0d%0a<script>alert(1)</script>";
        for (String path :
                new String[] {"/stock/", "/out/", "/why/", "/builds/", "/assets/", "/start?key=", "/stock?q="}) {
            Reply reply = attacker.get(path + split);
            assertFalse(reply.head().contains("X-Evil"), path);
            assertFalse(reply.body().contains("<script>alert"), path);
        }
        Reply booked = attacker.caller.form("/weigh", "piece", "a\r\nX-Evil: 1", "weight", "1 g\r\nX-Evil: 1");
        assertFalse(booked.head().contains("X-Evil"), booked.head());
        Reply named = attacker.caller.form("/brief", "from", "", "start", "brook", "name", "a\r\nX-Evil: 1\".exe");
        Reply file = attacker.get(named.location().replace("builds", "brief") + "/export");
        assertTrue(file.head().contains("attachment; filename=\"brief.json\""), file.head());
        assertFalse(file.head().contains("X-Evil"), file.head());
    }

    @Test
    void aWayBackLeadsToThisPageOnly() throws Exception {
        for (String page : new String[] {"//evil.example/", "@evil.example/", ".evil.example/"}) {
            Reply reply = attacker.raw(
                    "GET /nowhere",
                    attacker.host(),
                    "Cookie: " + attacker.cookie,
                    "Referer: http://127.0.0.1:" + attacker.port + page);
            assertFalse(reply.body().contains("evil.example"), page);
        }
        assertTrue(attacker.raw(
                        "GET /nowhere",
                        attacker.host(),
                        "Cookie: " + attacker.cookie,
                        "Referer: http://127.0.0.1:" + attacker.port + "/jobs")
                .body()
                .contains("href=\"/jobs\" data-return>Back"));
    }

    @Test
    void whatIsTypedIsNeverMarkup() throws Exception {
        String nasty = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";
        String body = "seal=" + attacker.seal + "&from=&start=estuary&name="
                + URLEncoder.encode(nasty, StandardCharsets.UTF_8);
        Reply said =
                attacker.post("/brief", body, attacker.host(), "Cookie: " + attacker.cookie, FORM, attacker.origin());
        String path = said.location();
        for (String page : new String[] {path, path.replace("builds", "brief"), "/"}) {
            String shown = attacker.get(page).body();
            assertTrue(shown.contains("alert(1)"), page);
            // inside a quoted attribute a bracket is harmless as long as the quote can't be closed
            String outside = shown.replaceAll("=\"[^\"]*\"", "");
            assertFalse(outside.contains("<script>alert"), page);
            assertFalse(outside.contains("<img src=x"), page);
        }
        Reply pasted = attacker.post(
                "/paste",
                "seal=" + attacker.seal + "&json=" + URLEncoder.encode("</textarea>" + nasty, StandardCharsets.UTF_8),
                attacker.host(),
                "Cookie: " + attacker.cookie,
                FORM,
                attacker.origin());
        assertFalse(pasted.body().contains("<script>alert"));
    }

    @Test
    void namesFromListsAndCustomersAreNeverMarkup() throws Exception {
        String nasty = "<svg/onload=alert(1)>\"'&lt;";
        Path lists = attacker.shop.folder.resolve("blanks.csv");
        try (ShopFolder nastily = new ShopFolder(Files.createDirectory(scratch.resolve("nasty")), "bench")) {
            Path blanks = nastily.folder.resolve("blanks.csv");
            Files.writeString(
                    blanks, Files.readString(lists).replace(",Tarnrigg,", ",\"" + nasty.replace("\"", "\"\"") + "\","));
        }
        try (ShopFolder nastily = new ShopFolder(scratch.resolve("nasty").resolve("bench"))) {
            Caller page = new Caller(nastily);
            String builds = page.form(
                            "/brief",
                            "from",
                            "",
                            "start",
                            "brook",
                            "name",
                            nasty,
                            "customer",
                            nasty,
                            "look.inscription",
                            nasty)
                    .location();
            String step = builds.substring("/builds/".length());
            String whole = page.whole(builds);
            String blank = Caller.found("name=\"part\" value=\"(tarnrigg-[^\"]+)\"", whole);
            page.form("/jobs", "once", "one", "step", step, "rank", "1");
            for (String path : new String[] {
                builds,
                "/brief/" + step,
                "/drawer/" + step + "/1/blank",
                "/jobs",
                "/jobs/1",
                "/jobs/1/scale",
                "/stock?q=svg",
                "/stock/" + blank
            }) {
                String shown = page.whole(path);
                assertTrue(shown.contains("alert(1)"), path);
                assertFalse(shown.replaceAll("=\"[^\"]*\"", "").contains("<svg/onload"), path);
            }
            assertTrue(whole.contains("&lt;svg/onload"), whole);
        }
    }

    @Test
    void everyAnswerHasAStrictPolicyAndNoScriptOfItsOwn() throws Exception {
        for (String path : new String[] {
            "/", "/brief?start=brook", "/jobs", "/weigh", "/stock", "/plan", "/nowhere", "/assets/withy.css"
        }) {
            Reply reply = attacker.get(path);
            String head = reply.head();
            assertTrue(head.contains("Content-Security-Policy: default-src 'none'; script-src 'self'"), path);
            assertFalse(head.contains("unsafe-inline") || head.contains("unsafe-eval"), path);
            assertTrue(head.contains("frame-ancestors 'none'") && head.contains("base-uri 'none'"), path);
            assertTrue(head.contains("X-Content-Type-Options: nosniff"), path);
            assertFalse(reply.body().matches("(?s).*<script(?! src=\"/assets/).*"), path);
            assertFalse(reply.body().matches("(?s).*<[^>]+ (style|on\\w+)=.*"), path);
            assertFalse(reply.body().contains("<style"), path);
        }
    }

    @Test
    void onlyNamedFilesAreHandedOut() throws Exception {
        for (String path : new String[] {
            "/assets/words_en.properties",
            "/assets/..%2f..%2fmessages_en.properties",
            "/assets/starts.json",
            "/brief/../../etc/passwd",
            "/builds/zzzz",
            "/drafts/"
        }) {
            int status = attacker.get(path).status();
            assertTrue(status == 404 || status == 400, path + " " + status);
        }
        HttpURLConnection css =
                (HttpURLConnection) new java.net.URL(attacker.shop.at("/assets/withy.css")).openConnection();
        assertEquals(200, css.getResponseCode());
    }
}
