package withy.explain;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.rules.Sentences;

/** The words of answers, by key, from the one file of the language; facts are already text in the reader's units when they come here. */
public final class Phrases {
    private static final String GUIDE = "guide-";

    /** "The ring of" a part. */
    private static final Pattern OWN = Pattern.compile(of("clause.own"));

    /** Words a sentence begins with that are no names. */
    private static final Set<String> STARTS = Set.of(of("clause.starts").split(" "));

    /** What two parts do or are, as rules say it. */
    private static final List<String> BOTH = List.of("differ", "are", "have", "stand");

    /** What may follow a name. */
    private static final String BREAK = " ,";

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

    /** The phrase of a key for one thing that is spoken of, or that for several. */
    public static String counted(int things, String key, Object... facts) {
        return of(things == 1 ? key : key + ".several", facts);
    }

    /** A station as a builder says it, by its key: "butt grip", "guide 3". */
    public static String station(String key) {
        return key.startsWith(GUIDE) ? of("bend.guide", key.substring(GUIDE.length())) : of("station." + key);
    }

    /** Stations of one kind that follow each other, first to last: "guides 4 to 6". */
    public static String stations(String first, String last) {
        return first.equals(last)
                ? station(first)
                : of("bend.guides", first.substring(GUIDE.length()), last.substring(GUIDE.length()));
    }

    /** Words joined as in speech: "a", "a and b", "a, b and c"; "a, as it is, and b" where one has a comma of its own. */
    public static String list(List<String> words) {
        boolean comma = words.stream().limit(Math.max(0, words.size() - 1)).anyMatch(word -> word.contains(","));
        return joined(comma ? "list.and.comma" : "list.and", words);
    }

    /** Words of which none is there, joined as in speech: "a", "a or b", "a, b or c". */
    public static String either(List<String> words) {
        return joined("list.or", words);
    }

    private static String joined(String key, List<String> words) {
        if (words.size() < 2) {
            return words.isEmpty() ? "" : words.get(0);
        }
        return of(key, String.join(", ", words.subList(0, words.size() - 1)), words.get(words.size() - 1));
    }

    /**
     * A sentence as a clause after the name of the part it is first of all about: "it …", "its ring …", "the … it …"; null where it begins with something
     * else.
     */
    public static @Nullable String afterName(String name, String sentence) {
        if (sentence.startsWith(name + " ")) {
            return singular(sentence.substring(name.length() + 1));
        }
        Matcher own = OWN.matcher(sentence);
        int end = own.lookingAt() ? own.end() + name.length() : 0;
        if (end > 0
                && end < sentence.length()
                && sentence.startsWith(name, own.end())
                && BREAK.indexOf(sentence.charAt(end)) >= 0) {
            return of("clause.its", own.group(1), sentence.substring(end));
        }
        String first = ownFirst(name, sentence);
        if (first != null) {
            return singular(first);
        }
        String the = of("clause.the");
        return sentence.startsWith(sentence(the)) ? pronoun(name, the + sentence.substring(the.length())) : null;
    }

    /** What is said after a name, of "it": of two things that differ each differs from the other. */
    private static String singular(String said) {
        for (String verb : BOTH) {
            Matcher both = Pattern.compile(of((verb.equals("stand") ? "clause.both." : "drawer.both.") + verb))
                    .matcher(said);
            if (both.matches()) {
                return of(
                        "clause.one." + verb, both.group(1), both.group(2), both.groupCount() > 2 ? both.group(3) : "");
            }
        }
        return of("clause.it", said);
    }

    /** Of a sentence that says something of two parts what comes after the name of the second where that comes first; null where it is no such sentence. */
    public static @Nullable String ownFirst(String name, String sentence) {
        Matcher both = Pattern.compile(of("clause.both", Pattern.quote(name))).matcher(sentence);
        return name.isEmpty() || !both.matches() ? null : of("clause.and", both.group(1), both.group(2));
    }

    /** A clause with "it" for the name where that stands in it as a whole. */
    private static String pronoun(String name, String clause) {
        int at = name.isEmpty() ? -1 : clause.indexOf(" " + name);
        int end = at + 1 + name.length();
        boolean whole = at >= 0 && (end == clause.length() || " ,;.".indexOf(clause.charAt(end)) >= 0);
        return whole ? clause.substring(0, at + 1) + of("clause.object") + clause.substring(end) : clause;
    }

    /** A sentence as it goes on after a colon; one that begins with a name keeps its first letter. */
    public static String clause(String sentence) {
        int word = sentence.indexOf(' ');
        return word > 0 && STARTS.contains(sentence.substring(0, word))
                ? Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1)
                : sentence;
    }

    /** The first letter as at the start of a sentence. */
    public static String sentence(String words) {
        int first = words.codePointAt(0);
        return Character.toString(Character.toUpperCase(first)) + words.substring(Character.charCount(first));
    }
}
