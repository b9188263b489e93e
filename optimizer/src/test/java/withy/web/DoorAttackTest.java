package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.file.Path;
import java.util.Collections;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.web.Caller.Reply;

/** Each way in that should be shut, tried; and beside it the same request as the page itself makes it, which is let in. */
class DoorAttackTest {
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
    void onlyLoopbackAnswers() throws Exception {
        for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(card.getInetAddresses())) {
                if (!address.isLoopbackAddress()) {
                    try (Socket socket = new Socket()) {
                        socket.connect(new InetSocketAddress(address, attacker.port), 500);
                        throw new AssertionError("answers at " + address);
                    } catch (IOException shut) {
                        // as it should be
                    }
                }
            }
        }
        assertEquals(200, attacker.get("/").status());
    }

    @Test
    void anotherHostNameIsRefused() throws Exception {
        for (String other : new String[] {
            "evil.example:" + attacker.port, "127.0.0.1", "127.0.0.1:1", "127.0.0.1.evil.example:" + attacker.port
        }) {
            assertEquals(
                    421,
                    attacker.raw("GET /", "Host: " + other, "Cookie: " + attacker.cookie)
                            .status(),
                    other);
        }
        // spellings that lead to this machine as well, and names a rebound address could be asked by
        for (String other : new String[] {
            "127.0.0.1.:" + attacker.port,
            "localhost.:" + attacker.port,
            "LOCALHOST:" + attacker.port,
            "127.1:" + attacker.port,
            "2130706433:" + attacker.port,
            "0.0.0.0:" + attacker.port,
            "[::1]:" + attacker.port,
            "[::ffff:127.0.0.1]:" + attacker.port,
            "127.0.0.1:0" + attacker.port,
            "127.0.0.1:" + attacker.port + ":80",
            "evil@127.0.0.1:" + attacker.port,
            "evil.example#127.0.0.1:" + attacker.port,
            "127.0.0.1:" + attacker.port + ", evil.example"
        }) {
            attacker.refused(attacker.raw("GET /", "Host: " + other, "Cookie: " + attacker.cookie), other);
        }
        attacker.refused(
                attacker.raw("GET /", attacker.host(), "Host: evil.example", "Cookie: " + attacker.cookie),
                "two hosts");
        attacker.refused(attacker.raw("GET /", "Cookie: " + attacker.cookie), "no host");
        assertEquals(
                200,
                attacker.raw("GET /", "Host: localhost:" + attacker.port, "Cookie: " + attacker.cookie)
                        .status());
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
            "http://127.0.0.1:" + attacker.port + "/assets/../jobs"
        }) {
            attacker.refused(attacker.raw("GET " + path, attacker.host()), path);
        }
        attacker.refused(
                attacker.post(
                        "/assets/../brief",
                        "seal=" + attacker.seal + "&start=brook",
                        attacker.host(),
                        FORM,
                        attacker.origin()),
                "a change by way of the assets");
        for (String method : new String[] {"TRACE", "OPTIONS", "PUT"}) {
            Reply reply = attacker.raw(
                    method + " /", attacker.host(), "Cookie: " + attacker.cookie, "Origin: http://evil.example");
            attacker.refused(reply, method);
            assertFalse(reply.head().contains("Access-Control-Allow"), reply.head());
        }
    }

    @Test
    void keysAndSealsOfAnotherStartAreOfNoUse() throws Exception {
        try (ShopFolder again = new ShopFolder(attacker.shop.folder)) {
            Caller other = new Caller(again);
            String body = "start=brook&from=&seal=";
            assertEquals(
                    403,
                    attacker.post(
                                    "/brief",
                                    body + other.seal,
                                    attacker.host(),
                                    "Cookie: " + attacker.cookie,
                                    FORM,
                                    attacker.origin())
                            .status());
            String ticket = other.ticket().replace("withy-" + other.port, "withy-" + attacker.port);
            assertEquals(403, attacker.raw("GET /", attacker.host(), ticket).status());
            assertEquals(
                    403,
                    attacker.raw("GET /start?" + again.address().getQuery(), attacker.host())
                            .status());
            assertEquals(
                    403,
                    attacker.post(
                                    "/brief",
                                    body + attacker.seal,
                                    attacker.host(),
                                    "Cookie: " + attacker.cookie,
                                    FORM,
                                    other.origin())
                            .status());
        }
    }

    @Test
    void withoutTheLaunchKeyNobodyGetsIn() throws Exception {
        for (String path : new String[] {"/", "/jobs", "/stock", "/brief?start=brook", "/plan"}) {
            Reply reply = attacker.raw("GET " + path, attacker.host());
            assertEquals(403, reply.status(), path);
            assertFalse(reply.body().contains(attacker.seal));
        }
        Reply wrong = attacker.raw("GET /start?key=wrong", attacker.host());
        assertEquals(403, wrong.status());
        assertTrue(wrong.body().contains("open the whole address again"), "who came by a bookmark: " + wrong.body());
        assertEquals(403, attacker.raw("GET /start", attacker.host()).status());
        assertEquals(
                403,
                attacker.raw("GET /", attacker.host(), "Cookie: withy-" + attacker.port + "=guess")
                        .status());
    }

    @Test
    void aChangeFromAnotherOriginIsRefused() throws Exception {
        String body = "seal=" + attacker.seal + "&from=&start=brook";
        assertEquals(
                403,
                attacker.post(
                                "/brief",
                                body,
                                attacker.host(),
                                "Cookie: " + attacker.cookie,
                                FORM,
                                "Origin: http://evil.example")
                        .status());
        assertEquals(
                403,
                attacker.post("/brief", body, attacker.host(), "Cookie: " + attacker.cookie, FORM, "Origin: null")
                        .status());
        assertEquals(
                403,
                attacker.post("/brief", body, attacker.host(), "Cookie: " + attacker.cookie, FORM)
                        .status());
        assertEquals(
                403,
                attacker.post(
                                "/brief",
                                body,
                                attacker.host(),
                                "Cookie: " + attacker.cookie,
                                FORM,
                                attacker.origin(),
                                "Sec-Fetch-Site: cross-site")
                        .status());
        assertEquals(
                303,
                attacker.post("/brief", body, attacker.host(), "Cookie: " + attacker.cookie, FORM, attacker.origin())
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
                    attacker.post(
                                    path,
                                    "start=brook",
                                    attacker.host(),
                                    "Cookie: " + attacker.cookie,
                                    FORM,
                                    attacker.origin())
                            .status(),
                    path);
            assertEquals(
                    403,
                    attacker.post(
                                    path,
                                    "seal=guess",
                                    attacker.host(),
                                    "Cookie: " + attacker.cookie,
                                    FORM,
                                    attacker.origin())
                            .status(),
                    path);
        }
        assertEquals(
                415,
                attacker.post(
                                "/brief",
                                "{}",
                                attacker.host(),
                                "Cookie: " + attacker.cookie,
                                attacker.origin(),
                                "Content-Type: application/json")
                        .status());
        assertEquals(
                405,
                attacker.raw("DELETE /jobs/1", attacker.host(), "Cookie: " + attacker.cookie)
                        .status());
    }

    @Test
    void tooMuchIsRefused() throws Exception {
        String body = "seal=" + attacker.seal + "&json=" + "x".repeat((int) Door.MOST_BYTES);
        assertEquals(
                413,
                attacker.post("/paste", body, attacker.host(), "Cookie: " + attacker.cookie, FORM, attacker.origin())
                        .status());
        String chunk = "x".repeat((int) Door.MOST_BYTES);
        String size = Integer.toHexString(chunk.length());
        String head = "seal=" + attacker.seal + "&json=";
        String pieces = Integer.toHexString(head.length()) + "\r\n" + head + "\r\n" + size + "\r\n" + chunk;
        assertEquals(
                411,
                attacker.caller.chunked("/paste", pieces + "\r\n0\r\n\r\n").status(),
                "a length that is not told beforehand");
        String header = "X-Long: " + "x".repeat(1 << 20);
        assertEquals(
                431,
                attacker.raw("GET /", attacker.host(), "Cookie: " + attacker.cookie, header)
                        .status());
        assertEquals(200, attacker.get("/").status());
        String large = "seal=" + attacker.seal + "&json=" + "x".repeat((int) Door.MOST_BYTES / 2);
        assertEquals(
                422,
                attacker.post("/paste", large, attacker.host(), "Cookie: " + attacker.cookie, FORM, attacker.origin())
                        .status());
    }
}
