package withy.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;

/** Standard output, which knows why it could not be written: a reader that has seen enough, such as {@code head}, is no fault. */
final class Outlet extends OutputStream {
    private final OutputStream out;
    private boolean leftByReader;

    Outlet(OutputStream out) {
        this.out = out;
    }

    /** True where the first thing that went wrong was that nobody read any more. */
    boolean leftByReader() {
        return leftByReader;
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException e) {
            leftByReader =
                    String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT).contains("pipe");
            throw e;
        }
    }

    @Override
    public void flush() throws IOException {
        out.flush();
    }
}
