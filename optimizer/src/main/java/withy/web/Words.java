package withy.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Properties;
import withy.explain.Phrases;

/** The words of the page, by key, from the page's own message file; those it shares with other answers come from theirs. */
public final class Words {
    private static final Properties MESSAGES = read();

    private Words() {}

    /** The words of a key with facts put in at {@code {0}}, {@code {1}} …; a key without words is our fault. */
    public static String say(String key, Object... facts) {
        String words = MESSAGES.getProperty(key);
        if (words == null) {
            return Phrases.of(key, facts);
        }
        for (int i = 0; i < facts.length; i++) {
            words = words.replace("{" + i + "}", String.valueOf(facts[i]));
        }
        return words;
    }

    /** True where the page has words of its own for a key. */
    static boolean has(String key) {
        return MESSAGES.containsKey(key);
    }

    private static Properties read() {
        Properties messages = new Properties();
        try (InputStream in = Words.class.getResourceAsStream("/withy/web/words_en.properties")) {
            if (in == null) {
                throw new IllegalStateException("the page's words are missing");
            }
            messages.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return messages;
    }
}
