package withy.brief;

/**
 * One thing wrong with a brief.
 *
 * @param path place in the brief, {@code lure.usualG}; empty for the whole
 * @param line line in the text from 1, or 0 where there is no text (an override)
 * @param column column in the text from 1, or 0
 * @param value what stands there, shortened
 * @param allowed what may stand there, with its unit
 * @param maybe a line that starts "Maybe "
 */
public record BriefFault(String path, int line, int column, String value, String allowed, String maybe) {
    private static final int LONGEST_SHOWN = 60;

    public BriefFault {
        if (!maybe.startsWith("Maybe ")) {
            throw new IllegalArgumentException("a fault ends with a line that starts \"Maybe \": " + maybe);
        }
        value = shortened(value);
    }

    /** The same of another kind of file: what is wrong with the whole is told under its name. */
    public BriefFault in(String file) {
        return new BriefFault(path.isEmpty() ? file : path, line, column, value, allowed, maybe);
    }

    /** Two lines: place, value and what is allowed; then the suggestion. */
    public String message() {
        String place = path.isEmpty() ? "brief" : path;
        String at = line > 0 ? " (line " + line + ", column " + column + ")" : "";
        return place + at + ": " + value + "; allowed is " + allowed + ".\n" + maybe;
    }

    private static String shortened(String value) {
        String plain = value.replaceAll("\\p{Cntrl}", " ");
        return plain.length() <= LONGEST_SHOWN ? plain : plain.substring(0, LONGEST_SHOWN - 1) + "…";
    }
}
