package withy.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;

/** The few files the page brings beside its words: its style sheets and its script. Only these names are answered. */
final class Assets {
    private static final Map<String, String> TYPES = Map.of(
            "withy.css", "text/css; charset=utf-8",
            "paper.css", "text/css; charset=utf-8",
            "withy.js", "text/javascript; charset=utf-8",
            "mark.svg", "image/svg+xml");

    private Assets() {}

    static void send(Context ctx) {
        String name = ctx.pathParam("name");
        String type = TYPES.get(name);
        if (type == null) {
            throw new Refusal(404, Words.say("page.none"));
        }
        try (InputStream in = Assets.class.getResourceAsStream("/withy/web/" + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the program's jar");
            }
            ctx.contentType(type).result(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
