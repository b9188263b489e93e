package withy.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/** A writer that looks at every sign by itself. */
abstract class SignWriter extends FilterWriter {
    SignWriter(Writer out) {
        super(out);
    }

    @Override
    public abstract void write(int sign) throws IOException;

    @Override
    public final void write(char[] text, int from, int length) throws IOException {
        for (int i = from; i < from + length; i++) {
            write(text[i]);
        }
    }

    @Override
    public final void write(String text, int from, int length) throws IOException {
        for (int i = from; i < from + length; i++) {
            write(text.charAt(i));
        }
    }
}
