package withy.cli;

import java.util.List;

/** Ends a command with an exit code and lines for standard error. */
final class Stop extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int exitCode;

    Stop(int exitCode, List<String> lines) {
        super(String.join("\n", lines));
        this.exitCode = exitCode;
    }

    Stop(int exitCode, String... lines) {
        this(exitCode, List.of(lines));
    }

    int exitCode() {
        return exitCode;
    }
}
