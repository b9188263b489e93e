package withy.shop;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import withy.catalog.Catalog;

/** Looks the memory through: the file itself, then whether pieces, ledger and promises say the same. */
public final class Doctor {
    private Doctor() {}

    /**
     * What was found.
     *
     * @param version version of the memory's format
     * @param pieces pieces on the shelf
     * @param movements lines of the ledger
     * @param jobs jobs
     * @param faults everything wrong, one sentence each; empty = sound
     * @param notes what is sound but should be looked at
     */
    public record Finding(
            int version, long pieces, long movements, long jobs, List<String> faults, List<String> notes) {
        public Finding {
            faults = List.copyOf(faults);
            notes = List.copyOf(notes);
        }
    }

    /** Looks a folder's memory through, beside its lists. */
    public static Finding look(Path folder, Catalog lists, LocalDate today) {
        try (Database database = Database.reading(Shop.file(folder))) {
            Migrations.refuseNewer(database);
            int version = Migrations.version(database);
            List<String> faults = faults(database);
            if (!faults.isEmpty() || version < Migrations.NEWEST) {
                return new Finding(version, 0, 0, 0, faults, List.of());
            }
            return database.read(sql -> new Finding(
                    version,
                    sql.number("SELECT count(*) FROM piece WHERE state = 'shelf'"),
                    sql.number("SELECT count(*) FROM movement"),
                    sql.number("SELECT count(*) FROM job"),
                    faults,
                    notes(sql, lists, today)));
        }
    }

    private static List<String> notes(Sql sql, Catalog lists, LocalDate today) throws SQLException {
        List<String> notes = new ArrayList<>();
        List<String> known = sql.rows(row -> row.getString(1), "SELECT part FROM part ORDER BY part");
        for (String part : known) {
            if (lists.find(part) == null && Levels.one(sql, part).shelf() > 0) {
                notes.add(part + " lies on the shelf but is in no list any more");
            }
        }
        long never =
                lists.byId().keySet().stream().filter(id -> !known.contains(id)).count();
        if (never > 0) {
            notes.add(never + " parts of the lists were never counted; they stand at 0 pieces");
        }
        notes.addAll(sql.rows(
                row -> row.getString(1) + ": " + row.getInt(2) + " pieces were due on " + row.getString(3),
                "SELECT part, count(*), due_day FROM piece WHERE state = 'ordered' AND due_day < ?"
                        + " GROUP BY part, due_day ORDER BY due_day, part",
                today.toString()));
        notes.addAll(sql.rows(
                row -> "job " + row.getLong(1) + " waits for " + row.getInt(3) + " lost pieces of " + row.getString(2),
                "SELECT job, part, count(*) FROM promise WHERE piece IS NULL GROUP BY job, part ORDER BY job, part"));
        return notes;
    }

    /** Everything wrong, one sentence each; empty = sound. */
    static List<String> faults(Database database) {
        List<String> faults = new ArrayList<>();
        database.read(sql -> {
            for (String line : sql.rows(row -> row.getString(1), "PRAGMA integrity_check(20)")) {
                if (!line.equals("ok")) {
                    faults.add("the file is damaged: " + line);
                }
            }
            return sql;
        });
        if (!faults.isEmpty()) {
            return faults;
        }
        int version = Migrations.version(database);
        if (version == 0) {
            return List.of("there is nothing in the file");
        }
        database.read(sql -> {
            for (String line : sql.rows(row -> row.getString(1), "PRAGMA foreign_key_check")) {
                faults.add("a line of the table " + line + " points nowhere");
            }
            pieces(sql, faults);
            if (version >= 2) {
                promises(sql, faults);
            }
            return sql;
        });
        return faults;
    }

    private static void pieces(Sql sql, List<String> faults) throws SQLException {
        faults.addAll(sql.rows(
                row -> row.getString(1) + ": " + row.getInt(2) + " pieces on the shelf, " + row.getInt(3)
                        + " by the ledger; " + row.getInt(4) + " on order, " + row.getInt(5) + " by the ledger",
                """
                SELECT a.part, s, coalesce(ls, 0), o, coalesce(lo, 0) FROM (
                  SELECT part,
                    (SELECT count(*) FROM piece WHERE part = part.part AND state = 'shelf') AS s,
                    (SELECT count(*) FROM piece WHERE part = part.part AND state = 'ordered') AS o
                  FROM part) a
                LEFT JOIN (SELECT part, sum(shelf) AS ls, sum(ordered) AS lo FROM movement GROUP BY part) l
                  ON l.part = a.part
                WHERE s <> coalesce(ls, 0) OR o <> coalesce(lo, 0) ORDER BY a.part"""));
    }

    private static void promises(Sql sql, List<String> faults) throws SQLException {
        faults.addAll(sql.rows(
                row -> row.getString(1) + ": " + row.getInt(2) + " pieces promised, " + row.getInt(3)
                        + " by the ledger",
                """
                SELECT a.part, p, l FROM (
                  SELECT part,
                    (SELECT count(*) FROM promise r JOIN piece x ON x.id = r.piece
                      WHERE r.part = part.part AND x.state IN ('shelf', 'ordered')) AS p,
                    (SELECT coalesce(sum(promised), 0) FROM movement WHERE part = part.part) AS l
                  FROM part) a WHERE p <> l ORDER BY a.part"""));
        faults.addAll(sql.rows(
                row -> "job " + row.getLong(1) + " is promised " + row.getString(2) + "#" + row.getInt(3)
                        + ", which is " + row.getString(4),
                """
                SELECT r.job, p.part, p.number, p.state FROM promise r
                JOIN piece p ON p.id = r.piece JOIN job j ON j.id = r.job
                WHERE p.part <> r.part OR p.state NOT IN ('shelf', 'ordered', 'used')
                  OR j.state IN ('built', 'weighed', 'closed') AND p.state <> 'used'
                ORDER BY r.job, p.part, p.number"""));
    }
}
