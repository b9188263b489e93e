package withy.explain;

import withy.rules.Sentences;

/** The words of answers, by key, from the one file of the language; facts are already text in the reader's units when they come here. */
public final class Phrases {
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
}
