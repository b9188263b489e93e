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
import java.nio.file.Path;
import java.util.Collections;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each way in that should be shut, tried; and beside it the same request as the page itself makes it, which is let in. */
class AttackTest {
    @TempDir
    static Path scratch;

    private static ShopFolder shop;
    private static int port;
    private static String cookie;
    private static String seal;

    @BeforeAll
    static void open() throws Exception {
        shop = new ShopFolder(scratch, "bench");
        port = shop.address().getPort();
        Reply start =
                raw("GET " + shop.address().getPath() + "?" + shop.address().getQuery(), "Host: 127.0.0.1:" + port);
        Matcher set = Pattern.compile("(?i)set-cookie: ([^;]+);([^\r\n]*)").matcher(start.head());
        assertTrue(set.find());
        cookie = set.group(1);
        assertTrue(set.group(2).contains("HttpOnly"));
        assertTrue(set.group(2).contains("SameSite=Strict"));
        Matcher found = Pattern.compile("name=\"seal\" value=\"([^\"]+)\"").matcher(get("/").body());
        assertTrue(found.find());
        seal = found.group(1);
    }

    @AfterAll
    static void close() {
        shop.close();
    }

    private record Reply(int status, String head, String body) {}

    /** One request as typed, so that no client mends its headers. */
    private static Reply raw(String line, String... more) throws IOException {
        return sent(line, "", more);
    }

    private static Reply sent(String line, String body, String... more) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            StringBuilder request = new StringBuilder(line).append(" HTTP/1.1\r\nConnection: close\r\n");
            for (String header : more) {
                request.append(header).append("\r\n");
            }
            if (line.startsWith("POST")) {
                request.append("Content-Length: ").append(body.length()).append("\r\n");
            }
            socket.getOutputStream()
                    .write(request.append("\r\n").append(body).toString().getBytes(StandardCharsets.UTF_8));
            String reply = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int gap = reply.indexOf("\r\n\r\n");
            return new Reply(Integer.parseInt(reply.substring(9, 12)), reply.substring(0, gap), reply.substring(gap));
        }
    }

    private static String host() {
        return "Host: 127.0.0.1:" + port;
    }

    private static String origin() {
        return "Origin: http://127.0.0.1:" + port;
    }

    private static final String FORM = "Content-Type: application/x-www-form-urlencoded";

    private static Reply get(String path) throws IOException {
        return raw("GET " + path, host(), "Cookie: " + cookie);
    }

    private static Reply post(String path, String body, String... headers) throws IOException {
        return sent("POST " + path, body, headers);
    }

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
        assertEquals(
                200,
                raw("GET /", "Host: localhost:" + port, "Cookie: " + cookie).status());
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
        Matcher to = Pattern.compile("(?i)location: (\\S+)").matcher(said.head());
        assertTrue(to.find());
        String path = to.group(1);
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
