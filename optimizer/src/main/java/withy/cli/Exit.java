package withy.cli;

/** How a command ends; the same on every command. */
final class Exit {
    /** All went well. */
    static final int FINE = 0;

    /** The program is at fault. */
    static final int OUR_FAULT = 1;

    /** The command line is at fault. */
    static final int USAGE = 2;

    /** Brief, build or catalogue are at fault. */
    static final int BAD_DATA = 3;

    /** No legal build, or the measured build is illegal. */
    static final int NOT_LEGAL = 4;

    /** Can't read or write. */
    static final int DISK = 5;

    /** Interrupted, after printing the best so far. */
    static final int INTERRUPTED = 130;

    private Exit() {}
}
