package withy.catalog;

/** Bounds on what is read, so that a wrong or hostile file can't exhaust the machine. All chosen by this project. */
final class Limits {
    /** Bytes in one file: 100,000 rows of 200 characters. */
    static final long FILE_BYTES = 20_000_000;

    /** Rows in one file. */
    static final int ROWS = 200_000;

    /** Characters in one cell. */
    static final int CELL = 2_000;

    /** Columns in one file. */
    static final int COLUMNS = 200;

    /** Characters in a name. */
    static final int TEXT = 120;

    /** Values in one list cell. */
    static final int LIST = 100;

    /** Faults told for one file; a file with more is wrong as a whole. */
    static final int FAULTS = 200;

    private Limits() {}
}
