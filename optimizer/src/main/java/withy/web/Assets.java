package withy.web;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/** The few files the page brings beside its words: its style sheet, its script and its mark. Only these names are answered. */
final class Assets {
    /** A style sheet is written in several files, one idea each, and sent as one, as the script is: what comes later overrules what was said before. */
    private static final List<String> STYLE =
            List.of("look.css", "talk.css", "builds.css", "shop.css", "narrow.css", "paper.css");

    private static final Map<String, Asset> ASSETS = Map.of(
            "withy.css", new Asset("text/css; charset=utf-8", read(STYLE)),
            "withy.js", new Asset("text/javascript; charset=utf-8", read(List.of("withy.js", "hand.js"))),
            "mark.svg", new Asset("image/svg+xml", read(List.of("mark.svg"))));

    private record Asset(String type, byte[] content) {}

    private Assets() {}

    static void send(Context ctx) {
        Asset asset = ASSETS.get(ctx.pathParam("name"));
        if (asset == null) {
            throw new Refusal(404, Words.say("page.none"));
        }
        ctx.contentType(asset.type).result(asset.content);
    }

    private static byte[] read(List<String> names) {
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        for (String name : names) {
            try (InputStream in = Assets.class.getResourceAsStream("/withy/web/" + name)) {
                if (in == null) {
                    throw new IllegalStateException(name + " is missing from the program's jar");
                }
                in.transferTo(content);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return content.toByteArray();
    }
}
