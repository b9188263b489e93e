package withy.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What was done with a job last, and whether it can be taken back: job, promises and pieces as they were before, with lines that say the opposite.
 *
 * @param act number of what was done
 * @param day day it was done
 * @param event what was done, as the job's history has it
 * @param note its note
 * @param obstacles what stands against it, one sentence a piece or promise that is another one by now; empty = it can be taken back
 */
public record WayBack(long act, String day, String event, String note, List<String> obstacles) {
    /** What the job itself can take back; an offer is withdrawn instead, a finished rod weighed again. */
    private static final Set<String> ACTS = Set.of("withdraw", "accept", "glue", "built", "close", "cancel");

    public WayBack {
        obstacles = List.copyOf(obstacles);
    }

    /** Promise of a job: its place among those of a part. */
    private record Slot(long job, String part, long slot) {}

    /** A promise before and after one step; neither piece nor loss = it is not there. */
    private record Step(
            Slot at,
            @Nullable Object piece,
            @Nullable Object lost,
            @Nullable Object pieceAfter,
            @Nullable Object lostAfter) {}

    /** A piece before and after all of it. */
    private record Moved(long piece, String before, String after, int placedAfter) {}

    /** Of a job, or null where nothing was done that has a way back, or an older program did it, which left no trace. */
    static @Nullable WayBack of(Sql sql, long job) throws SQLException {
        WayBack last = sql.row(
                row -> new WayBack(
                        ACTS.contains(row.getString(5)) && row.getInt(6) == 1 ? row.getLong(1) : 0,
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        List.of()),
                """
                SELECT b.id, b.on_day, e.what, e.note, b.what,
                  EXISTS (SELECT 1 FROM job_trace t WHERE t.batch = b.id AND t.job = e.job)
                FROM event e JOIN batch b ON b.id = e.batch
                WHERE e.job = ? AND b.undone_by IS NULL AND b.what <> 'undo' ORDER BY e.id DESC LIMIT 1""",
                job);
        return last == null || last.act == 0
                ? null
                : new WayBack(last.act, last.day, last.event, last.note, obstacles(sql, last.act));
    }

    private static List<String> obstacles(Sql sql, long act) throws SQLException {
        Set<String> found = new TreeSet<>();
        Map<Slot, Step> promises = new LinkedHashMap<>();
        for (Step step : steps(sql, act)) {
            promises.merge(
                    step.at(),
                    step,
                    (first, last) ->
                            new Step(first.at(), first.piece(), first.lost(), last.pieceAfter(), last.lostAfter()));
        }
        Set<Object> moved = new LinkedHashSet<>();
        for (Moved piece : moved(sql, act)) {
            moved.add(piece.piece());
            boolean as = 1
                    == sql.number(
                            "SELECT count(*) FROM piece WHERE id = ? AND state = ? AND placed = ?",
                            piece.piece(),
                            piece.after(),
                            piece.placedAfter());
            if (!as) {
                found.add(now(sql, piece.piece()));
            } else if (!Set.of("shelf", "ordered", "used").contains(piece.before())) {
                promisedElsewhere(sql, piece.piece(), promises.keySet(), found);
            }
        }
        for (Step step : promises.values()) {
            if (!stands(sql, step)) {
                found.add(step.at().part() + ": " + otherwise(sql, step.at()));
            }
            Object piece = step.piece();
            if (piece != null && !moved.contains(((Number) piece).longValue())) {
                long id = ((Number) piece).longValue();
                if (sql.number("SELECT count(*) FROM piece WHERE id = ? AND state IN ('shelf', 'ordered')", id) == 0) {
                    found.add(now(sql, id));
                }
                promisedElsewhere(sql, id, promises.keySet(), found);
            }
        }
        return new ArrayList<>(found);
    }

    private static void promisedElsewhere(Sql sql, long piece, Set<Slot> own, Set<String> found) throws SQLException {
        List<Slot> holders = sql.rows(
                row -> new Slot(row.getLong(1), row.getString(2), row.getLong(3)),
                "SELECT job, part, slot FROM promise WHERE piece = ?",
                piece);
        for (Slot holder : holders) {
            if (!own.contains(holder)) {
                found.add(name(sql, piece) + " is promised to job " + holder.job() + " by now.");
            }
        }
    }

    private static boolean stands(Sql sql, Step step) throws SQLException {
        boolean gone = step.pieceAfter() == null && step.lostAfter() == null;
        Slot at = step.at();
        return gone
                ? sql.number(
                                "SELECT count(*) FROM promise WHERE job = ? AND part = ? AND slot = ?",
                                at.job(),
                                at.part(),
                                at.slot())
                        == 0
                : sql.number(
                                "SELECT count(*) FROM promise WHERE job = ? AND part = ? AND slot = ?"
                                        + " AND piece IS ? AND lost_by IS ?",
                                at.job(),
                                at.part(),
                                at.slot(),
                                step.pieceAfter(),
                                step.lostAfter())
                        == 1;
    }

    private static String otherwise(Sql sql, Slot at) throws SQLException {
        boolean lost = sql.number(
                        "SELECT count(*) FROM promise WHERE job = ? AND part = ? AND slot = ? AND piece IS NULL",
                        at.job(),
                        at.part(),
                        at.slot())
                == 1;
        return lost
                ? "a piece promised to job " + at.job() + " got lost since."
                : "job " + at.job() + " is promised another piece by now.";
    }

    private static String name(Sql sql, long piece) throws SQLException {
        return sql.text("SELECT part || ': piece ' || number FROM piece WHERE id = ?", piece);
    }

    private static String now(Sql sql, long piece) throws SQLException {
        String state = sql.text("SELECT state FROM piece WHERE id = ?", piece);
        String is = switch (state) {
            case "shelf" -> "has come in by now.";
            case "ordered" -> "was ordered since.";
            case "used" -> "is built in by now.";
            case "broken" -> "broke since.";
            case "returned" -> "was sent back since.";
            case "cancelled" -> "is not on order any more.";
            default -> "is not on the shelf any more.";
        };
        return name(sql, piece) + " " + is;
    }

    private static List<Step> steps(Sql sql, long act) throws SQLException {
        return sql.rows(
                row -> new Step(
                        new Slot(row.getLong(1), row.getString(2), row.getLong(3)),
                        row.getObject(4),
                        row.getObject(5),
                        row.getObject(6),
                        row.getObject(7)),
                "SELECT job, part, slot, piece_before, lost_before, piece_after, lost_after FROM promise_trace"
                        + " WHERE batch = ? ORDER BY id",
                act);
    }

    private static List<Moved> moved(Sql sql, long act) throws SQLException {
        return sql.rows(WayBack::moved, """
                SELECT f.piece, f.state_before, l.state_after, l.placed_after
                FROM piece_trace f JOIN piece_trace l ON l.batch = f.batch AND l.piece = f.piece
                WHERE f.batch = ?
                  AND f.id = (SELECT min(id) FROM piece_trace WHERE batch = f.batch AND piece = f.piece)
                  AND l.id = (SELECT max(id) FROM piece_trace WHERE batch = f.batch AND piece = f.piece)
                ORDER BY f.piece""", act);
    }

    private static Moved moved(ResultSet row) throws SQLException {
        return new Moved(row.getLong(1), row.getString(2), row.getString(3), row.getInt(4));
    }

    /** Takes it back, where nothing stands against it; the parts of which anything moved. */
    Set<String> take(Ledger ledger, long job) throws SQLException {
        Sql sql = ledger.sql();
        Set<String> parts = new TreeSet<>();
        List<Step> back = steps(sql, act);
        Collections.reverse(back);
        for (Step step : back) {
            undo(sql, step);
            parts.add(step.at().part());
        }
        sql.run("""
                UPDATE piece SET (state, due_day, placed) =
                  (SELECT state_before, due_before, placed_before FROM piece_trace t
                    WHERE t.batch = ?1 AND t.piece = piece.id ORDER BY t.id LIMIT 1)
                WHERE id IN (SELECT piece FROM piece_trace WHERE batch = ?1)""", act);
        for (Movement line : Ledger.ofBatch(sql, act)) {
            Reason reason = Reason.of(line.reason());
            ledger.line(
                    line.part(), reason, -line.shelf(), -line.promised(), -line.ordered(), line.job(), "taken back");
            parts.add(line.part());
        }
        sql.run("""
                UPDATE job SET (state, brief, wanted_day, build, glued, predicted) =
                  (SELECT state_before, brief_before, wanted_before, build_before, glued_before, predicted_before
                    FROM job_trace t WHERE t.batch = ?1 AND t.job = job.id), revision = revision + 1
                WHERE id = ?2""", act, job);
        sql.run("UPDATE batch SET undone_by = ? WHERE id = ?", ledger.batch(), act);
        return parts;
    }

    private static void undo(Sql sql, Step step) throws SQLException {
        Slot at = step.at();
        boolean was = step.piece() != null || step.lost() != null;
        boolean is = step.pieceAfter() != null || step.lostAfter() != null;
        if (!was) {
            sql.run("DELETE FROM promise WHERE job = ? AND part = ? AND slot = ?", at.job(), at.part(), at.slot());
        } else if (is) {
            sql.run(
                    "UPDATE promise SET piece = ?, lost_by = ? WHERE job = ? AND part = ? AND slot = ?",
                    step.piece(),
                    step.lost(),
                    at.job(),
                    at.part(),
                    at.slot());
        } else {
            sql.run(
                    "INSERT INTO promise (job, part, slot, piece, lost_by) VALUES (?, ?, ?, ?, ?)",
                    at.job(),
                    at.part(),
                    at.slot(),
                    step.piece(),
                    step.lost());
        }
    }
}
