package withy.benchmarks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The last part of the page, which a person wrote and every run keeps. */
final class ByHand {
    /** What it begins with. */
    static final String HEAD = "## Where it misses its bars, and why";

    private static final String EMPTY = HEAD + "\n\nNot written yet.\n";

    private ByHand() {}

    /** The part of an earlier page, or the words that there is none. */
    static String of(Path page) throws IOException {
        if (!Files.exists(page)) {
            return EMPTY;
        }
        String old = Files.readString(page, StandardCharsets.UTF_8);
        int at = old.indexOf(HEAD + "\n");
        return at < 0 ? EMPTY : old.substring(at);
    }
}
