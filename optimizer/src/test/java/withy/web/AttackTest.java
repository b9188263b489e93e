package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.web.Caller.Reply;

/** Each way in that should be shut, tried; and beside it the same request as the page itself makes it, which is let in. */
class AttackTest {
    @TempDir
    static Path scratch;

    private static ShopFolder shop;
    private static Caller caller;
    private static int port;
    private static String cookie;
    private static String seal;

    @BeforeAll
    static void open() throws Exception {
        shop = new ShopFolder(scratch, "bench");
        caller = new Caller(shop);
        port = caller.port;
        cookie = caller.ticket().substring("Cookie: ".length());
        seal = caller.seal;
        assertTrue(caller.cookie.contains("HttpOnly"));
        assertTrue(caller.cookie.contains("SameSite=Strict"));
    }

    @AfterAll
    static void close() {
        shop.close();
    }

    private static Reply raw(String line, String... headers) throws IOException {
        return caller.raw(line, headers);
    }

    private static String host() {
        return caller.host();
    }

    private static String origin() {
        return caller.origin();
    }

    private static Reply get(String path) throws IOException {
        return caller.get(path);
    }

    private static Reply post(String path, String body, String... headers) throws IOException {
        return caller.post(path, body, headers);
    }

    private static final String FORM = Caller.FORM;

    @Test
    void onlyLoopbackAnswers() throws Exception {
        for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(card.getInetAddresses())) {
                if (!address.isLoopbackAddress()) {
                    try (Socket socket = new Socket()) {
                        socket.connect(new InetSocketAddress(address, port), 500);
                        throw new AssertionError("answers at " + address);
                    } catch (IOException shut) {
                        // as it should be
                    }
                }
            }
        }
        assertEquals(200, get("/").status());
    }

    @Test
    void anotherHostNameIsRefused() throws Exception {
        for (String other :
                new String[] {"evil.example:" + port, "127.0.0.1", "127.0.0.1:1", "127.0.0.1.evil.example:" + port}) {
            assertEquals(
                    421, raw("GET /", "Host: " + other, "Cookie: " + cookie).status(), other);
        }
        // spellings that lead to this machine as well, and names a rebound address could be asked by
        for (String other : new String[] {
            "127.0.0.1.:" + port,
            "localhost.:" + port,
            "LOCALHOST:" + port,
            "127.1:" + port,
            "2130706433:" + port,
            "0.0.0.0:" + port,
            "[::1]:" + port,
            "[::ffff:127.0.0.1]:" + port,
            "127.0.0.1:0" + port,
            "127.0.0.1:" + port + ":80",
            "evil@127.0.0.1:" + port,
            "evil.example#127.0.0.1:" + port,
            "127.0.0.1:" + port + ", evil.example"
        }) {
            refused(raw("GET /", "Host: " + other, "Cookie: " + cookie), other);
        }
        refused(raw("GET /", host(), "Host: evil.example", "Cookie: " + cookie), "two hosts");
        refused(raw("GET /", "Cookie: " + cookie), "no host");
        assertEquals(
                200,
                raw("GET /", "Host: localhost:" + port, "Cookie: " + cookie).status());
    }

    /** Not let in, and shown nothing that only a page of ours knows. */
    private static void refused(Reply reply, String what) {
        assertTrue(reply.status() >= 400 && reply.status() < 500, what + " " + reply.status());
        assertFalse(reply.body().contains(seal), what);
    }

    @Test
    void noPathLeadsRoundTheKey() throws Exception {
        for (String path : new String[] {
            "/assets/../jobs",
            "/assets/..;/jobs",
            "/assets/%2e%2e/jobs",
            "/assets/..%2fjobs",
            "/assets/%2e%2e%2fjobs",
            "/assets/x/../../jobs",
            "/assets/..\\jobs",
            "/assets//../jobs",
            "/start/../jobs",
            "/start;/../jobs",
            "//jobs",
            "/jobs;/assets/",
            "/JOBS",
            "http://127.0.0.1:" + port + "/assets/../jobs"
        }) {
            refused(raw("GET " + path, host()), path);
        }
        refused(
                post("/assets/../brief", "seal=" + seal + "&start=brook", host(), FORM, origin()),
                "a change by way of the assets");
        for (String method : new String[] {"TRACE", "OPTIONS", "PUT"}) {
            Reply reply = raw(method + " /", host(), "Cookie: " + cookie, "Origin: http://evil.example");
            refused(reply, method);
            assertFalse(reply.head().contains("Access-Control-Allow"), reply.head());
        }
    }

    @Test
    void keysAndSealsOfAnotherStartAreOfNoUse() throws Exception {
        try (ShopFolder again = new ShopFolder(shop.folder)) {
            Caller other = new Caller(again);
            String body = "start=brook&from=&seal=";
            assertEquals(
                    403,
                    post("/brief", body + other.seal, host(), "Cookie: " + cookie, FORM, origin())
                            .status());
            String ticket = other.ticket().replace("withy-" + other.port, "withy-" + port);
            assertEquals(403, raw("GET /", host(), ticket).status());
            assertEquals(
                    403, raw("GET /start?" + again.address().getQuery(), host()).status());
            assertEquals(
                    403,
                    post("/brief", body + seal, host(), "Cookie: " + cookie, FORM, other.origin())
                            .status());
        }
    }

    @Test
    void noLineBreakReachesAHeader() throws Exception {
        String split = "%0d%0aX-Evil:%201%0d%0a%0d%0a<script>alert(1)</script>";
        for (String path :
                new String[] {"/stock/", "/out/", "/why/", "/builds/", "/assets/", "/start?key=", "/stock?q="}) {
            Reply reply = get(path + split);
            assertFalse(reply.head().contains("X-Evil"), path);
            assertFalse(reply.body().contains("<script>alert"), path);
        }
        Reply booked = caller.form("/weigh", "piece", "a\r\nX-Evil: 1", "weight", "1 g\r\nX-Evil: 1");
        assertFalse(booked.head().contains("X-Evil"), booked.head());
        Reply named = caller.form("/brief", "from", "", "start", "brook", "name", "a\r\nX-Evil: 1\".exe");
        Reply file = get(named.location().replace("builds", "brief") + "/export");
        assertTrue(file.head().contains("attachment; filename=\"brief.json\""), file.head());
        assertFalse(file.head().contains("X-Evil"), file.head());
    }

    @Test
    void aWayBackLeadsToThisPageOnly() throws Exception {
        for (String page : new String[] {"//evil.example/", "@evil.example/", ".evil.example/"}) {
            Reply reply = raw("GET /nowhere", host(), "Cookie: " + cookie, "Referer: http://127.0.0.1:" + port + page);
            assertFalse(reply.body().contains("evil.example"), page);
        }
        assertTrue(raw("GET /nowhere", host(), "Cookie: " + cookie, "Referer: http://127.0.0.1:" + port + "/jobs")
                .body()
                .contains("href=\"/jobs\">Back"));
    }

    @Test
    void withoutTheLaunchKeyNobodyGetsIn() throws Exception {
        for (String path : new String[] {"/", "/jobs", "/stock", "/brief?start=brook", "/plan"}) {
            Reply reply = raw("GET " + path, host());
            assertEquals(403, reply.status(), path);
            assertFalse(reply.body().contains(seal));
        }
        assertEquals(403, raw("GET /start?key=wrong", host()).status());
        assertEquals(403, raw("GET /start", host()).status());
        assertEquals(
                403, raw("GET /", host(), "Cookie: withy-" + port + "=guess").status());
    }

    @Test
    void aChangeFromAnotherOriginIsRefused() throws Exception {
        String body = "seal=" + seal + "&from=&start=brook";
        assertEquals(
                403,
                post("/brief", body, host(), "Cookie: " + cookie, FORM, "Origin: http://evil.example")
                        .status());
        assertEquals(
                403,
                post("/brief", body, host(), "Cookie: " + cookie, FORM, "Origin: null")
                        .status());
        assertEquals(
                403, post("/brief", body, host(), "Cookie: " + cookie, FORM).status());
        assertEquals(
                403,
                post("/brief", body, host(), "Cookie: " + cookie, FORM, origin(), "Sec-Fetch-Site: cross-site")
                        .status());
        assertEquals(
                303,
                post("/brief", body, host(), "Cookie: " + cookie, FORM, origin())
                        .status());
    }

    @Test
    void aFormWithoutItsSealIsRefused() throws Exception {
        for (String path : new String[] {
            "/brief",
            "/paste",
            "/count",
            "/change",
            "/jobs",
            "/jobs/1",
            "/weigh",
            "/backup",
            "/stock/quernstone-featherlode-x-16",
            "/out/quernstone-featherlode-x-16"
        }) {
            assertEquals(
                    403,
                    post(path, "start=brook", host(), "Cookie: " + cookie, FORM, origin())
                            .status(),
                    path);
            assertEquals(
                    403,
                    post(path, "seal=guess", host(), "Cookie: " + cookie, FORM, origin())
                            .status(),
                    path);
        }
        assertEquals(
                415,
                post("/brief", "{}", host(), "Cookie: " + cookie, origin(), "Content-Type: application/json")
                        .status());
        assertEquals(405, raw("DELETE /jobs/1", host(), "Cookie: " + cookie).status());
    }

    @Test
    void tooMuchIsRefused() throws Exception {
        String body = "seal=" + seal + "&json=" + "x".repeat((int) Door.MOST_BYTES);
        assertEquals(
                413,
                post("/paste", body, host(), "Cookie: " + cookie, FORM, origin())
                        .status());
        String chunk = "x".repeat((int) Door.MOST_BYTES);
        String size = Integer.toHexString(chunk.length());
        String head = "seal=" + seal + "&json=";
        String pieces = Integer.toHexString(head.length()) + "\r\n" + head + "\r\n" + size + "\r\n" + chunk;
        assertEquals(
                411,
                caller.chunked("/paste", pieces + "\r\n0\r\n\r\n").status(),
                "a length that is not told beforehand");
        String header = "X-Long: " + "x".repeat(1 << 20);
        assertEquals(431, raw("GET /", host(), "Cookie: " + cookie, header).status());
        assertEquals(200, get("/").status());
        String large = "seal=" + seal + "&json=" + "x".repeat((int) Door.MOST_BYTES / 2);
        assertEquals(
                422,
                post("/paste", large, host(), "Cookie: " + cookie, FORM, origin())
                        .status());
    }

    @Test
    void whatIsTypedIsNeverMarkup() throws Exception {
        String nasty = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";
        String body = "seal=" + seal + "&from=&start=estuary&name=" + URLEncoder.encode(nasty, StandardCharsets.UTF_8);
        Reply said = post("/brief", body, host(), "Cookie: " + cookie, FORM, origin());
        String path = said.location();
        for (String page : new String[] {path, path.replace("builds", "brief"), "/"}) {
            String shown = get(page).body();
            assertTrue(shown.contains("alert(1)"), page);
            // inside a quoted attribute a bracket is harmless as long as the quote can't be closed
            String outside = shown.replaceAll("=\"[^\"]*\"", "");
            assertFalse(outside.contains("<script>alert"), page);
            assertFalse(outside.contains("<img src=x"), page);
        }
        Reply pasted = post(
                "/paste",
                "seal=" + seal + "&json=" + URLEncoder.encode("</textarea>" + nasty, StandardCharsets.UTF_8),
                host(),
                "Cookie: " + cookie,
                FORM,
                origin());
        assertFalse(pasted.body().contains("<script>alert"));
    }

    @Test
    void namesFromListsAndCustomersAreNeverMarkup() throws Exception {
        String nasty = "<svg/onload=alert(1)>\"'&lt;";
        Path lists = shop.folder.resolve("blanks.csv");
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
            Reply reply = get(path);
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
            int status = get(path).status();
            assertTrue(status == 404 || status == 400, path + " " + status);
        }
        HttpURLConnection css = (HttpURLConnection) new java.net.URL(shop.at("/assets/withy.css")).openConnection();
        assertEquals(200, css.getResponseCode());
    }
}
