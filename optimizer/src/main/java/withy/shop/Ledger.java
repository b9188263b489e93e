package withy.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** The ledger inside one transaction: every change of pieces goes through here, so that pieces and lines can't part. */
final class Ledger {
    private static final String LINES = """
            SELECT m.id, b.on_day, b.what, m.part, m.reason, m.shelf, m.promised, m.ordered, m.job, m.note,
              b.undone_by IS NOT NULL
            FROM movement m JOIN batch b ON b.id = m.batch
            """;

    private final Sql sql;
    private final long batch;
    private final Set<String> touched = new TreeSet<>();
    private final long first;

    /** Opens a batch: one command that writes. */
    Ledger(Sql sql, String day, String what) throws SQLException {
        this.sql = sql;
        this.batch = sql.insert("INSERT INTO batch (on_day, what) VALUES (?, ?)", day, what);
        this.first = sql.number("SELECT coalesce(max(id), 0) FROM movement") + 1;
    }

    long batch() {
        return batch;
    }

    Sql sql() {
        return sql;
    }

    /** Makes sure the part has its row. */
    void know(String part) throws SQLException {
        sql.run("INSERT INTO part (part) VALUES (?) ON CONFLICT DO NOTHING", part);
    }

    /** Writes a line; its number. */
    long line(String part, Reason reason, int shelf, int promised, int ordered, @Nullable Long job, String note)
            throws SQLException {
        touched.add(part);
        sql.run("UPDATE part SET revision = revision + 1 WHERE part = ?", part);
        return sql.insert(
                "INSERT INTO movement (batch, part, reason, shelf, promised, ordered, job, note)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                batch,
                part,
                reason.word(),
                shelf,
                promised,
                ordered,
                job,
                note);
    }

    /** New pieces with numbers never used before; their ids. */
    List<Long> add(String part, int pieces, String state, @Nullable String due, boolean placed) throws SQLException {
        know(part);
        int last = (int) sql.number("SELECT last_number FROM part WHERE part = ?", part);
        List<Long> ids = new ArrayList<>();
        for (int n = 1; n <= pieces; n++) {
            ids.add(sql.insert(
                    "INSERT INTO piece (part, number, state, due_day, placed) VALUES (?, ?, ?, ?, ?)",
                    part,
                    last + n,
                    state,
                    due,
                    placed ? 1 : 0));
        }
        sql.run("UPDATE part SET last_number = ? WHERE part = ?", last + pieces, part);
        return ids;
    }

    void set(long piece, String state) throws SQLException {
        sql.run("UPDATE piece SET state = ? WHERE id = ?", state, piece);
    }

    /** Ids of pieces nobody was promised, on the shelf by number or on order by the day they are due. */
    List<Long> free(String part, String state) throws SQLException {
        return sql.rows(
                row -> row.getLong(1),
                "SELECT id FROM piece WHERE part = ? AND state = ?"
                        + " AND id NOT IN (SELECT piece FROM promise WHERE piece IS NOT NULL)"
                        + " ORDER BY due_day, number",
                part,
                state);
    }

    /** Ids of promised pieces in this state, the youngest job first. */
    List<Long> promised(String part, String state) throws SQLException {
        return sql.rows(
                row -> row.getLong(1),
                "SELECT p.id FROM piece p JOIN promise r ON r.piece = p.id WHERE p.part = ? AND p.state = ?"
                        + " ORDER BY r.job DESC, r.slot DESC",
                part,
                state);
    }

    /** A piece leaves the shelf for good; a promise that stood on it moves to a free piece or is recorded as broken. */
    void lose(String part, long piece, Reason reason, String state, String note) throws SQLException {
        Long job = sql.row(row -> row.getLong(1), "SELECT job FROM promise WHERE piece = ?", piece);
        set(piece, state);
        long line = line(part, reason, -1, job == null ? 0 : -1, 0, job, note);
        if (job != null) {
            sql.run("UPDATE promise SET piece = NULL, lost_by = ? WHERE piece = ?", line, piece);
            makeGood(part);
        }
    }

    /** Gives free pieces to promises that lost theirs, then those on the shelf to promises that wait for an order; the oldest job first. */
    void makeGood(String part) throws SQLException {
        foundAgain(part);
        fromTheShelf(part);
    }

    private void foundAgain(String part) throws SQLException {
        List<long[]> lost = sql.rows(
                row -> new long[] {row.getLong(1), row.getLong(2)},
                "SELECT job, slot FROM promise WHERE part = ? AND piece IS NULL ORDER BY job, slot",
                part);
        if (lost.isEmpty()) {
            return;
        }
        List<Long> free = new ArrayList<>(free(part, "shelf"));
        free.addAll(free(part, "ordered"));
        for (int i = 0; i < Math.min(lost.size(), free.size()); i++) {
            long job = lost.get(i)[0];
            sql.run(
                    "UPDATE promise SET piece = ?, lost_by = NULL WHERE job = ? AND part = ? AND slot = ?",
                    free.get(i),
                    job,
                    part,
                    lost.get(i)[1]);
            line(part, Reason.PROMISED, 0, 1, 0, job, "made good");
        }
    }

    /** What lies here and is free is promised rather than what is on its way; an order not sent yet is then given up. */
    private void fromTheShelf(String part) throws SQLException {
        List<Long> free = free(part, "shelf");
        List<long[]> waiting = sql.rows(
                row -> new long[] {row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4)},
                "SELECT r.job, r.slot, p.id, p.placed FROM promise r JOIN piece p ON p.id = r.piece"
                        + " WHERE r.part = ? AND p.state = 'ordered' ORDER BY r.job, r.slot LIMIT ?",
                part,
                free.size());
        Map<Long, int[]> moved = new TreeMap<>();
        for (int i = 0; i < waiting.size(); i++) {
            long[] one = waiting.get(i);
            sql.run(
                    "UPDATE promise SET piece = ? WHERE job = ? AND part = ? AND slot = ?",
                    free.get(i),
                    one[0],
                    part,
                    one[1]);
            int[] counts = moved.computeIfAbsent(one[0], job -> new int[2]);
            counts[0]++;
            if (one[3] == 0) {
                set(one[2], "cancelled");
                counts[1]++;
            }
        }
        for (Map.Entry<Long, int[]> one : moved.entrySet()) {
            int pieces = one.getValue()[0];
            line(part, Reason.RELEASED, 0, -pieces, 0, one.getKey(), "on order");
            line(part, Reason.PROMISED, 0, pieces, 0, one.getKey(), "from the shelf");
            if (one.getValue()[1] > 0) {
                unsent(part, one.getValue()[1], one.getKey());
            }
        }
    }

    /** Orders noted for a job and not sent are given up; with the last one also what only a whole pack would have brought. */
    void unsent(String part, int pieces, long job) throws SQLException {
        String rest = "FROM piece p LEFT JOIN promise r ON r.piece = p.id"
                + " WHERE p.part = ? AND p.state = 'ordered' AND p.placed = 0";
        List<Long> over = sql.number("SELECT count(r.piece) " + rest, part) > 0
                ? List.of()
                : sql.rows(row -> row.getLong(1), "SELECT p.id " + rest, part);
        for (long piece : over) {
            set(piece, "cancelled");
        }
        line(part, Reason.CANCELLED, 0, 0, -pieces - over.size(), job, "the order was not sent yet");
    }

    /** What this batch did; levels also of a part of which nothing moved. */
    Change change(String part) throws SQLException {
        touched.add(part);
        return change();
    }

    /** What this batch did. */
    Change change() throws SQLException {
        List<Movement> lines = sql.rows(Ledger::line, LINES + "WHERE m.id >= ? ORDER BY m.id", first);
        List<Level> levels = new ArrayList<>();
        List<Change.Hit> hits = new ArrayList<>();
        for (String part : touched) {
            levels.add(Levels.one(sql, part));
            hits.addAll(hits(sql, part));
        }
        return new Change(lines, levels, hits);
    }

    static List<Change.Hit> hits(Sql sql, String part) throws SQLException {
        return sql.rows(
                row -> new Change.Hit(row.getLong(1), row.getString(2), row.getString(3), row.getInt(4)),
                "SELECT j.id, j.name, r.part, count(*) FROM promise r JOIN job j ON j.id = r.job"
                        + " WHERE r.piece IS NULL AND r.part = ? GROUP BY j.id, r.part ORDER BY j.id",
                part);
    }

    /** The lines of one batch, in their order. */
    static List<Movement> ofBatch(Sql sql, long batch) throws SQLException {
        return sql.rows(Ledger::line, LINES + "WHERE m.batch = ? ORDER BY m.id", batch);
    }

    static List<Movement> lines(Sql sql, @Nullable String part, int most) throws SQLException {
        return part == null
                ? sql.rows(Ledger::line, LINES + "ORDER BY m.id DESC LIMIT ?", most)
                : sql.rows(Ledger::line, LINES + "WHERE m.part = ? ORDER BY m.id DESC LIMIT ?", part, most);
    }

    private static Movement line(ResultSet row) throws SQLException {
        long job = row.getLong(9);
        Long ofJob = row.wasNull() ? null : job;
        return new Movement(
                row.getLong(1),
                row.getString(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getInt(6),
                row.getInt(7),
                row.getInt(8),
                ofJob,
                row.getString(10),
                row.getInt(11) == 1);
    }
}
