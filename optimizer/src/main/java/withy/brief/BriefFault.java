package withy.brief;

import java.util.Set;

/**
 * One thing wrong with a brief.
 *
 * @param path place in the brief, {@code lure.usualG}; empty for the whole
 * @param line line in the text from 1, or 0 where there is no text (an override)
 * @param column column in the text from 1, or 0
 * @param value what stands there, shortened
 * @param plain what may stand there, with its unit, but for how it is written in a file
 * @param maybe a line that starts "Maybe "
 * @param notation what of it is about how a file has it
 */
public record BriefFault(
        String path, int line, int column, String value, String plain, String maybe, Set<Notation> notation) {
    private static final int LONGEST_SHOWN = 60;

    /** What of a fault is about how a brief is written in a file: of no use to who typed into a field. */
    public enum Notation {
        /** It is text with a unit. */
        UNIT,
        /** A least and a most may stand there, too. */
        RANGE,
        /** The line that starts "Maybe " speaks of quotes, keys or brackets. */
        HINT
    }

    /** Of which nothing is about how a file has it. */
    public BriefFault(String path, int line, int column, String value, String plain, String maybe) {
        this(path, line, column, value, plain, maybe, Set.of());
    }

    public BriefFault {
        if (!maybe.startsWith("Maybe ")) {
            throw new IllegalArgumentException("a fault ends with a line that starts \"Maybe \": " + maybe);
        }
        value = shortened(value);
        notation = Set.copyOf(notation);
    }

    /** The same of another kind of file: what is wrong with the whole is told under its name. */
    public BriefFault in(String file) {
        return new BriefFault(path.isEmpty() ? file : path, line, column, value, plain, maybe, notation);
    }

    /** What may stand there, as a file has it. */
    public String allowed() {
        return (notation.contains(Notation.UNIT) ? "text with a unit, " : "")
                + plain
                + (notation.contains(Notation.RANGE) ? ", or an object of min and max" : "");
    }

    /** Two lines: place, value and what is allowed; then the suggestion. */
    public String message() {
        String place = path.isEmpty() ? "brief" : path;
        String at = line > 0 ? " (line " + line + ", column " + column + ")" : "";
        return place + at + ": " + value + "; allowed is " + allowed() + ".\n" + maybe;
    }

    private static String shortened(String value) {
        String plain = value.replaceAll("\\p{Cntrl}", " ");
        return plain.length() <= LONGEST_SHOWN ? plain : plain.substring(0, LONGEST_SHOWN - 1) + "…";
    }
}
