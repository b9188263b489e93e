package withy.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who gets in. Only a browser of this machine that was given the launch key; a change only from a page of ours, with its seal. Every answer
 * carries headers that let it load nothing from elsewhere and run no script but ours.
 */
final class Door {
    /** Largest form that is read, bytes: a pasted brief of the largest size with every character escaped fits. */
    static final long MOST_BYTES = 1_000_000;

    static final String SEAL = "seal";

    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
            + " font-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
    private static final String FORM = "application/x-www-form-urlencoded";
    private static final String INSIDE = "inside";
    private static final int SECRET_BYTES = 24;
    private static final Set<String> OPEN = Set.of("/start");

    private final String key = secret();
    private final String ticket = secret();
    private final String seal = secret();
    private int port;

    /** Something nobody can guess. */
    static String secret() {
        byte[] bytes = new byte[SECRET_BYTES];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** The key of the address that was printed. */
    String key() {
        return key;
    }

    /** From here on this is the port that hosts must name. */
    void opened(int at) {
        port = at;
    }

    /** Lets a request in or throws. */
    void check(Context ctx) {
        headers(ctx);
        String host = ctx.header("Host");
        if (host == null || !hosts().contains(host)) {
            throw new Refusal(421, Words.say("door.host", "127.0.0.1:" + port));
        }
        if (ctx.contentLength() > MOST_BYTES) {
            throw new Refusal(413, Words.say("door.size", MOST_BYTES / 1000));
        }
        if (ctx.header("Transfer-Encoding") != null) {
            throw new Refusal(411, Words.say("door.length"));
        }
        if (OPEN.contains(ctx.path()) || ctx.path().startsWith("/assets/")) {
            reading(ctx);
            return;
        }
        if (!same(ctx.cookie(cookie()), ticket)) {
            throw new Refusal(403, Words.say("door.key"), Words.say("door.key.maybe"));
        }
        ctx.attribute(INSIDE, true);
        if (!reading(ctx)) {
            changing(ctx, host);
        }
    }

    /** True where the request came from a browser that was let in. */
    static boolean inside(Context ctx) {
        return Boolean.TRUE.equals(ctx.attribute(INSIDE));
    }

    /** The page of ours that a request was made from, or empty. */
    static String from(Context ctx) {
        String own = "http://" + ctx.header("Host");
        String page = ctx.header("Referer");
        // two slashes would lead to another host
        boolean ours = page != null && page.startsWith(own + "/") && !page.startsWith(own + "//");
        return inside(ctx) && ours ? page.substring(own.length()) : "";
    }

    private static boolean reading(Context ctx) {
        String method = ctx.method().name();
        if (method.equals("GET") || method.equals("HEAD")) {
            return true;
        }
        if (!method.equals("POST")) {
            throw new Refusal(405, Words.say("door.method"));
        }
        return false;
    }

    /** A change comes from a page of this very address, as a form, sealed. */
    private void changing(Context ctx, String host) {
        String origin = ctx.header("Origin");
        String site = ctx.header("Sec-Fetch-Site");
        if (!("http://" + host).equals(origin) || site != null && !site.equals("same-origin")) {
            throw new Refusal(403, Words.say("door.origin"));
        }
        String type = ctx.contentType();
        if (type == null || !type.split(";", -1)[0].strip().equalsIgnoreCase(FORM)) {
            throw new Refusal(415, Words.say("door.type"));
        }
        if (!same(ctx.formParam(SEAL), seal)) {
            throw new Refusal(403, Words.say("door.seal"));
        }
    }

    private static void headers(Context ctx) {
        ctx.header("Content-Security-Policy", POLICY)
                .header("X-Content-Type-Options", "nosniff")
                .header("X-Frame-Options", "DENY")
                .header("Referrer-Policy", "same-origin")
                .header("Cross-Origin-Opener-Policy", "same-origin")
                .header("Cross-Origin-Resource-Policy", "same-origin")
                .header("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
                .header("Cache-Control", "no-store");
    }

    private Set<String> hosts() {
        return Set.of("127.0.0.1:" + port, "localhost:" + port);
    }

    /** Lets a browser in that brings the key. */
    void enter(Context ctx) {
        if (!same(ctx.queryParam("key"), key)) {
            throw new Refusal(403, Words.say("door.key"), Words.say("door.key.maybe"));
        }
        Cookie cookie = new Cookie(cookie(), ticket);
        cookie.setHttpOnly(true);
        cookie.setPath("/");
        cookie.setSameSite(SameSite.STRICT);
        ctx.cookie(cookie);
    }

    /** What a form carries, so that no other page can make one. */
    String seal() {
        return seal;
    }

    /** Cookies do not know of ports, and two pages may be open at two of them. */
    private String cookie() {
        return "withy-" + port;
    }

    private static boolean same(@Nullable String told, String right) {
        return told != null
                && MessageDigest.isEqual(told.getBytes(StandardCharsets.UTF_8), right.getBytes(StandardCharsets.UTF_8));
    }
}
