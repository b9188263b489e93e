package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Locale;

/**
 * Writes signs that steer a terminal, or turn the direction of writing round, as their numbers: names in price lists and briefs come from elsewhere.
 * In JSON that is the same text, escaped.
 */
final class PlainWriter extends SignWriter {
    private static final boolean CARRIAGE = System.lineSeparator().indexOf('\r') >= 0;

    private PlainWriter(Writer out) {
        super(out);
    }

    static PrintWriter around(PrintWriter out) {
        return new PrintWriter(new PlainWriter(out), true);
    }

    @Override
    public void write(int sign) throws IOException {
        char c = (char) sign;
        if (harmless(c)) {
            out.write(c);
        } else {
            out.write(String.format(Locale.ROOT, "\\u%04x", sign));
        }
    }

    static boolean harmless(char c) {
        if (c == '\n' || c == '\t' || c == '\r' && CARRIAGE) {
            return true;
        }
        boolean turns = c >= '\u202a' && c <= '\u202e' || c >= '\u2066' && c <= '\u2069';
        boolean marks = c == '\u200e' || c == '\u200f' || c == '\u061c' || c == '\u2028' || c == '\u2029';
        return !Character.isISOControl(c) && !turns && !marks;
    }
}
