package withy.cli;

import java.io.IOException;
import java.io.Writer;

/** Breaks lines wider than a terminal at a space; what follows is indented by two. A line without a space stays whole. */
final class NarrowWriter extends SignWriter {
    private static final int WIDTH = 80;
    private static final String INDENT = "  ";

    private final StringBuilder line = new StringBuilder();

    NarrowWriter(Writer out) {
        super(out);
    }

    @Override
    public void write(int sign) throws IOException {
        line.append((char) sign);
        if (sign == '\n') {
            pass();
        }
    }

    @Override
    public void flush() throws IOException {
        pass();
        super.flush();
    }

    private void pass() throws IOException {
        int end = line.toString().stripTrailing().length();
        while (end > WIDTH) {
            int from = INDENT.length();
            int at = line.lastIndexOf(" ", WIDTH);
            if (at <= from) {
                at = line.indexOf(" ", WIDTH);
            }
            if (at < 0 || at >= end) {
                break;
            }
            out.write(line.substring(0, at).stripTrailing());
            out.write(System.lineSeparator());
            line.replace(0, at + 1, INDENT);
            end = line.toString().stripTrailing().length();
        }
        out.write(line.toString());
        line.setLength(0);
    }
}
