package withy.shop;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;

/** Brings a file to the newest version, one script a version; every step is a transaction of its own. */
final class Migrations {
    /** Newest version this program knows. */
    static final int NEWEST = 6;

    private Migrations() {}

    /** Version of a file; 0 for an empty one. */
    static int version(Database database) {
        return database.read(sql -> (int) sql.number("PRAGMA user_version"));
    }

    /** Refuses a file that a newer program wrote. */
    static void refuseNewer(Database database) {
        int version = version(database);
        if (version > NEWEST) {
            throw ShopFault.refused(
                    database.file() + " is of version " + version + "; this program reads up to " + NEWEST + ".",
                    "a newer withy wrote it: use that one, or bring back an older back-up.");
        }
    }

    /** Brings it up to a version. */
    static void upTo(Database database, int wanted) {
        for (int next = version(database) + 1; next <= wanted; next++) {
            step(database, next);
        }
    }

    private static void step(Database database, int next) {
        String script = script(next);
        database.write(sql -> {
            // Another process may have come first.
            if (sql.number("PRAGMA user_version") < next) {
                apply(sql, script, next);
            }
            return next;
        });
    }

    private static void apply(Sql sql, String script, int next) throws SQLException {
        sql.script(script);
        sql.script("PRAGMA application_id = " + Database.APPLICATION_ID);
        sql.script("PRAGMA user_version = " + next);
    }

    private static String script(int version) {
        String name = "/withy/shop/V" + version + ".sql";
        try (InputStream in = Migrations.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the program's jar");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
