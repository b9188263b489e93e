package withy.explain;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Properties;

/** The words of answers, by key, from the one file of the language; facts are already text in the reader's units when they come here. */
public final class Phrases {
    private static final String FILE = "/withy/messages_en.properties";
    private static final Properties WORDS = load();

    private Phrases() {}

    /** The phrase of a key with its facts put in at {@code {0}}, {@code {1}} …; a key without words is our fault. */
    public static String of(String key, Object... facts) {
        String phrase = WORDS.getProperty(key);
        if (phrase == null) {
            throw new IllegalStateException("no words for " + key + " in " + FILE);
        }
        StringBuilder text = new StringBuilder();
        int from = 0;
        for (int open = phrase.indexOf('{'); open >= 0; open = phrase.indexOf('{', from)) {
            int close = phrase.indexOf('}', open);
            text.append(phrase, from, open).append(facts[Integer.parseInt(phrase.substring(open + 1, close))]);
            from = close + 1;
        }
        return text.append(phrase.substring(from)).toString();
    }

    private static Properties load() {
        Properties words = new Properties();
        try (InputStream in = Phrases.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException(FILE + " is missing from the program's jar.");
            }
            words.load(new InputStreamReader(in, StandardCharsets.UTF_8));
            return words;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
