package withy.explain;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.rules.Sentences;

/** The words of answers, by key, from the one file of the language; facts are already text in the reader's units when they come here. */
public final class Phrases {
    private static final String GUIDE = "guide-";

    private Phrases() {}

    /** The phrase of a key with its facts put in at {@code {0}}, {@code {1}} …; a key without words is our fault. */
    public static String of(String key, Object... facts) {
        String phrase = Sentences.messages().get(key);
        if (phrase == null) {
            throw new IllegalStateException("no words for " + key);
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

    /** A station as a builder says it, by its key: "butt grip", "guide 3". */
    public static String station(String key) {
        return key.startsWith(GUIDE) ? of("bend.guide", key.substring(GUIDE.length())) : of("station." + key);
    }

    /** Stations of one kind that follow each other, first to last: "guide 4–6". */
    public static String stations(String first, String last) {
        return station(first) + (first.equals(last) ? "" : "–" + last.substring(GUIDE.length()));
    }

    /** Words joined as in speech: "a", "a and b", "a, b and c". */
    public static String list(List<String> words) {
        if (words.size() < 2) {
            return words.isEmpty() ? "" : words.get(0);
        }
        String most = String.join(", ", words.subList(0, words.size() - 1));
        return of("list.and", most, words.get(words.size() - 1));
    }

    /** What a sentence says of a thing that it begins with; null where it begins otherwise. */
    public static @Nullable String saidOf(String name, String sentence) {
        return sentence.startsWith(name + " ") ? sentence.substring(name.length() + 1) : null;
    }

    /** The first letter as at the start of a sentence. */
    public static String sentence(String words) {
        int first = words.codePointAt(0);
        return Character.toString(Character.toUpperCase(first)) + words.substring(Character.charCount(first));
    }
}
