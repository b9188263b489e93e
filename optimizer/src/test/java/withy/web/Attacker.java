package withy.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import withy.web.Caller.Reply;

/** Asks the page of a shop as someone else might, beside what the page itself would say. */
final class Attacker implements AutoCloseable {
    final ShopFolder shop;
    final Caller caller;
    final int port;
    final String cookie;
    final String seal;

    Attacker(ShopFolder shop) throws Exception {
        this.shop = shop;
        caller = new Caller(shop);
        port = caller.port;
        cookie = caller.ticket().substring("Cookie: ".length());
        seal = caller.seal;
        assertTrue(caller.cookie.contains("HttpOnly"));
        assertTrue(caller.cookie.contains("SameSite=Strict"));
    }

    Reply raw(String line, String... headers) throws IOException {
        return caller.raw(line, headers);
    }

    Reply get(String path) throws IOException {
        return caller.get(path);
    }

    Reply post(String path, String body, String... headers) throws IOException {
        return caller.post(path, body, headers);
    }

    String host() {
        return caller.host();
    }

    String origin() {
        return caller.origin();
    }

    /** Not let in, and shown nothing that only a page of ours knows. */
    void refused(Reply reply, String what) {
        assertTrue(reply.status() >= 400 && reply.status() < 500, what + " " + reply.status());
        assertFalse(reply.body().contains(seal), what);
    }

    @Override
    public void close() {
        shop.close();
    }
}
