package withy.shop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * One open file. Writes go through {@code BEGIN IMMEDIATE}, so that of two processes one waits for the other and never reads what the other is
 * about to change; WAL with full synchronisation, so that what was told as done survives a crash.
 */
final class Database implements AutoCloseable {
    /** Marks the file as ours: "WITH" in ASCII. */
    static final int APPLICATION_ID = 0x57495448;

    /** How long a writer waits for another one, ms. */
    static final int BUSY_MS = 10_000;

    private final Path file;
    private final Connection connection;
    private final boolean readOnly;

    private Database(Path file, Connection connection, boolean readOnly) {
        this.file = file;
        this.connection = connection;
        this.readOnly = readOnly;
    }

    /** Work inside one transaction. */
    interface Work<T> {
        T in(Sql sql) throws SQLException;
    }

    /** Opens for writing; makes the file where there is none. */
    static Database open(Path file) {
        return open(file, false);
    }

    /** Opens for reading only; the file must be there. In a folder nobody may write to it reads past the locks, which nobody can hold there. */
    static Database reading(Path file) {
        return open(file, true);
    }

    private static Database open(Path file, boolean readOnly) {
        try {
            SQLiteConfig config = new SQLiteConfig();
            config.enforceForeignKeys(true);
            config.setBusyTimeout(BUSY_MS);
            config.setReadOnly(readOnly);
            String url = "jdbc:sqlite:" + file;
            if (readOnly && !Files.isWritable(parent(file)) && !Files.exists(Path.of(file + "-wal"))) {
                url = "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath() + "?immutable=1";
            }
            Database database = new Database(file, config.createConnection(url), readOnly);
            database.settle();
            return database;
        } catch (SQLException e) {
            throw fault(file, readOnly ? "read" : "open", e);
        }
    }

    private static Path parent(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        return parent == null ? file : parent;
    }

    private void settle() throws SQLException {
        try {
            Sql sql = new Sql(connection);
            long own = sql.number("PRAGMA application_id");
            long tables = sql.number("SELECT count(*) FROM sqlite_master");
            if (own != APPLICATION_ID && tables > 0) {
                throw ShopFault.refused(
                        file + " is no shop of Withy: its mark is " + own + ", ours is " + APPLICATION_ID + ".",
                        "another program's file lies there; name another folder.");
            }
            if (!readOnly) {
                sql.text("PRAGMA journal_mode = WAL");
                sql.script("PRAGMA synchronous = FULL");
            }
        } catch (SQLException | ShopFault e) {
            connection.close();
            throw e;
        }
    }

    /** Reads in one transaction: all of it as of one moment. */
    <T> T read(Work<T> work) {
        return transaction("BEGIN", "read", work);
    }

    /** Writes all of it or nothing. */
    <T> T write(Work<T> work) {
        return transaction("BEGIN IMMEDIATE", "write", work);
    }

    /** A statement that stands outside transactions. */
    void outside(Work<?> work) {
        try {
            work.in(new Sql(connection));
        } catch (SQLException e) {
            throw fault(file, "write", e);
        }
    }

    private <T> T transaction(String begin, String what, Work<T> work) {
        Sql sql = new Sql(connection);
        try {
            sql.script(begin);
            try {
                T result = work.in(sql);
                sql.script("COMMIT");
                return result;
            } catch (SQLException | RuntimeException e) {
                rollback(sql, e);
                if (!(e instanceof ShopFault) && damaged(sql)) {
                    throw ShopFault.damaged("Can't " + what + " " + file + ": the file is damaged.");
                }
                throw e;
            }
        } catch (SQLException e) {
            throw fault(file, what, e);
        }
    }

    /** Whether what was read can't be what was written, so that anything may have come of it. */
    private static boolean damaged(Sql sql) {
        try {
            return !sql.text("PRAGMA integrity_check(1)").equals("ok");
        } catch (SQLException unreadable) {
            return true;
        }
    }

    /** A full disk may have rolled back by itself; then there is nothing left to undo. */
    private static void rollback(Sql sql, Exception reason) {
        try {
            sql.script("ROLLBACK");
        } catch (SQLException already) {
            reason.addSuppressed(already);
        }
    }

    static ShopFault fault(Path file, String what, SQLException e) {
        SQLiteErrorCode code = e instanceof SQLiteException one ? one.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
        String start = "Can't " + what + " " + file + ": ";
        return switch (code) {
            case SQLITE_FULL ->
                ShopFault.disk(start + "the disk is full. Nothing was changed.", "free some space, then try again.");
            case SQLITE_BUSY, SQLITE_BUSY_SNAPSHOT, SQLITE_BUSY_RECOVERY, SQLITE_LOCKED ->
                ShopFault.disk(
                        start + "another program has been writing to it for " + BUSY_MS / 1000
                                + " s. Nothing was changed.",
                        "close the other one, or wait and try again.");
            case SQLITE_READONLY,
                    SQLITE_READONLY_DIRECTORY,
                    SQLITE_READONLY_DBMOVED,
                    SQLITE_CANTOPEN,
                    SQLITE_CANTOPEN_ISDIR,
                    SQLITE_PERM ->
                ShopFault.disk(
                        start + "no right to write in the folder " + parent(file) + ". Nothing was changed.",
                        "it belongs to another user of this machine, or lies on a disk or stick that is locked against writing.");
            case SQLITE_NOTADB -> ShopFault.damaged(start + "it is no memory of a shop, or its beginning is damaged.");
            case SQLITE_CORRUPT, SQLITE_CORRUPT_VTAB -> ShopFault.damaged(start + "the file is damaged.");
            default ->
                ShopFault.disk(
                        start + e.getMessage() + ". Nothing was changed.",
                        "the disk is at fault, or a stick was pulled out.");
        };
    }

    Path file() {
        return file;
    }

    Connection connection() {
        return connection;
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw fault(file, "close", e);
        }
    }
}
