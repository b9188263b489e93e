package withy.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.shop.Job.State;

/** Reads jobs and what belongs to them. */
final class JobRows {
    private static final String ALL =
            "SELECT id, name, state, brief, wanted_day, build, glued, predicted, revision FROM job ";

    private JobRows() {}

    /** All, oldest first. */
    static List<Job> all(Sql sql) throws SQLException {
        return sql.rows(JobRows::job, ALL + "ORDER BY id");
    }

    /** One with all that belongs to it. */
    static Job.File file(Sql sql, long id) throws SQLException {
        return new Job.File(
                need(sql, id),
                sql.rows(
                        row -> new Job.Offer(
                                row.getLong(1),
                                row.getString(2),
                                row.getString(3),
                                row.getString(4),
                                row.getString(5),
                                row.getString(6),
                                row.getString(7),
                                "lapsed".equals(row.getString(8))),
                        """
                        SELECT o.id, b.on_day, o.catalog_hash, o.answer, o.shown, o.paper, w.on_day, e.what
                        FROM offer o JOIN batch b ON b.id = o.batch
                          LEFT JOIN event e ON e.id = (SELECT min(x.id) FROM event x JOIN batch y ON y.id = x.batch
                            WHERE x.job = o.job AND y.what = 'withdraw' AND y.undone_by IS NULL AND y.id > o.batch)
                          LEFT JOIN batch w ON w.id = e.batch
                        WHERE o.job = ? ORDER BY o.id""",
                        id),
                Pieces.ofJob(sql, id),
                sql.rows(
                        row -> new Change.Hit(id, row.getString(1), row.getString(2), row.getInt(3)),
                        "SELECT j.name, r.part, count(*) FROM promise r JOIN job j ON j.id = r.job"
                                + " WHERE r.job = ? AND r.piece IS NULL GROUP BY r.part ORDER BY r.part",
                        id),
                sql.rows(
                        row -> new Job.Event(row.getString(1), row.getString(2), row.getString(3)),
                        "SELECT b.on_day, e.what, e.note FROM event e JOIN batch b ON b.id = e.batch"
                                + " WHERE e.job = ? ORDER BY e.id",
                        id),
                asBuilt(sql, id));
    }

    /** Pieces promised to a job or built into it, by part; lost ones are not there any more. */
    static SortedMap<String, Integer> held(Sql sql, long id) throws SQLException {
        SortedMap<String, Integer> held = new TreeMap<>();
        sql.rows(
                row -> held.put(row.getString(1), row.getInt(2)),
                "SELECT part, count(*) FROM promise WHERE job = ? AND piece IS NOT NULL GROUP BY part",
                id);
        return held;
    }

    /** What a job is promised and is not here yet, by part. */
    static List<Jobs.Waiting> waiting(Sql sql, long id) throws SQLException {
        return sql.rows(
                row -> new Jobs.Waiting(row.getString(1), row.getInt(2), row.getString(3), row.getInt(4)),
                "SELECT p.part, count(*), max(p.due_day), sum(p.placed = 0) FROM promise r"
                        + " JOIN piece p ON p.id = r.piece WHERE r.job = ? AND p.state = 'ordered'"
                        + " GROUP BY p.part ORDER BY max(p.due_day) DESC, p.part",
                id);
    }

    /** Finished rods as they weigh, less what was foretold of them. */
    static List<Experience.Rod> finished(Sql sql) throws SQLException {
        return sql.rows(
                row -> new Experience.Rod(row.getLong(1) - row.getLong(2), row.getLong(3)),
                "SELECT weight_mg, foretold_mg, tolerance_mg FROM as_built WHERE tolerance_mg > 0 ORDER BY job");
    }

    static Job need(Sql sql, long id) throws SQLException {
        Job job = sql.row(JobRows::job, ALL + "WHERE id = ?", id);
        if (job == null) {
            long last = sql.number("SELECT coalesce(max(id), 0) FROM job");
            throw ShopFault.refused(
                    "There is no job " + id + "; there are 1 to " + last + ".", "withy job lists them.");
        }
        return job;
    }

    private static Job.@Nullable AsBuilt asBuilt(Sql sql, long id) throws SQLException {
        return sql.row(
                row -> new Job.AsBuilt(row.getLong(1) / 1000.0, real(row, 2)),
                "SELECT weight_mg, balance_mm FROM as_built WHERE job = ?",
                id);
    }

    private static @Nullable Double real(ResultSet row, int column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? null : value;
    }

    private static Job job(ResultSet row) throws SQLException {
        Set<String> glued = new TreeSet<>(Arrays.asList(row.getString(7).split(" ", -1)));
        glued.remove("");
        return new Job(
                row.getLong(1),
                row.getString(2),
                State.of(row.getString(3)),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                glued,
                row.getString(8),
                row.getInt(9));
    }
}
