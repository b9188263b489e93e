package withy.report;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Words as they are to be wrapped: a number stays on one line with its unit and with the short word before it ("guide 4", "R 16"). All that is written
 * for a reader passes through here: the page, the papers, and the terminal, which writes plain spaces again.
 */
public final class Unbroken {
    /** The space that no line breaks at. */
    static final char JOIN = '\u00a0';

    /** From a number to its unit, or to the number or size that goes on with it ("1 1/4", "No.197 16", "3 D5.5"). */
    private static final Pattern TO_UNIT = Pattern.compile(
            "(?<=\\d) (?=\\p{Lu}?\\d|(kg|g|mm|cm|m|in|ft|oz|lb|ml|N|min|h|s|days?|pieces?|%|×|\\p{Lu}{3})(?![\\p{L}\\d]))");

    /** From a sign, a short word or a place to its number. */
    private static final Pattern TO_NUMBER = Pattern.compile(
            "(?<=[±×≤≥~]|(?<!\\p{L})(\\p{L}{1,3}|[Gg]uides?|[Ss]ize|[Rr]ing|[Bb]uild|[Ss]tep|[Rr]ank)) (?=\\d)");

    /** A size with a sign inside at which a browser would break: "205-1", "6-4.5/64", "4–7". */
    private static final Pattern SIZE =
            Pattern.compile("(?<![^ \u00a0])[^ \u00a0]{0,10}\\d[-–]\\d[^ \u00a0]{0,10}(?![^ \u00a0])");

    private Unbroken() {}

    /** Where in a text the sizes are that a browser would break. */
    public static List<MatchResult> sizes(String words) {
        return SIZE.matcher(words).results().toList();
    }

    /** The same words, the spaces that must hold made ones that do. */
    public static String of(String words) {
        return TO_NUMBER
                .matcher(TO_UNIT.matcher(words).replaceAll(String.valueOf(JOIN)))
                .replaceAll(String.valueOf(JOIN));
    }

    /** The same words with plain spaces. */
    static String plain(String words) {
        return words.replace(JOIN, ' ');
    }
}
