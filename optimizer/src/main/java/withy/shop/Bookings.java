package withy.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What was booked of one part by hand, and the way back from the last booking: lines that say the opposite, never a line less. */
public final class Bookings {
    /** What is booked by hand; jobs and imports have ways back of their own. */
    private static final Set<String> BY_HAND =
            Set.of("count", "receive", "order", "broken", "returned", "used", "cancelled", "weigh");

    private static final String UNDO = "undo";

    private static final String LAST = """
            SELECT b.id, b.on_day,
              CASE WHEN (EXISTS (SELECT 1 FROM piece_trace WHERE batch = b.id)
                OR NOT EXISTS (SELECT 1 FROM movement WHERE batch = b.id))
                AND NOT EXISTS (SELECT 1 FROM promise_trace t WHERE t.batch = b.id AND NOT EXISTS
                  (SELECT 1 FROM promise p WHERE p.job = t.job AND p.slot = t.slot AND p.part = ?1))
                THEN b.what ELSE '' END,
              (SELECT coalesce(sum(shelf), 0) FROM movement WHERE batch = b.id AND part = ?1),
              (SELECT coalesce(sum(ordered), 0) FROM movement WHERE batch = b.id AND part = ?1),
              (SELECT p.number FROM reading r JOIN piece p ON p.id = r.piece WHERE r.batch = b.id),
              (SELECT weight_mg FROM reading WHERE batch = b.id)
            FROM batch b WHERE b.undone_by IS NULL AND b.what <> 'undo' AND b.id IN (
              SELECT batch FROM movement WHERE part = ?1 AND (shelf <> 0 OR promised <> 0 OR ordered <> 0)
              UNION SELECT t.batch FROM piece_trace t JOIN piece p ON p.id = t.piece WHERE p.part = ?1
              UNION SELECT r.batch FROM reading r JOIN piece p ON p.id = r.piece WHERE p.part = ?1)
            ORDER BY b.id DESC LIMIT 1
            """;

    private final Database database;
    private final String day;

    Bookings(Database database, LocalDate today) {
        this.database = database;
        this.day = today.toString();
    }

    /**
     * A booking that can be taken back.
     *
     * @param booking its number
     * @param day day it was booked
     * @param what count, receive, order, broken, returned, used, cancelled or weigh
     * @param part catalogue id
     * @param shelf pieces it put on the shelf; negative = taken
     * @param ordered pieces it put on order; negative = arrived or given up
     * @param number number of the piece that was weighed, or null
     * @param weightG what the scale said, g, or null
     */
    public record Booking(
            long booking,
            String day,
            String what,
            String part,
            int shelf,
            int ordered,
            @Nullable Integer number,
            @Nullable Double weightG) {}

    /** The last booking of a part, or null where there is none, or something else happened to the part since. */
    public @Nullable Booking last(String part) {
        List<Booking> last = database.read(sql -> last(sql, part));
        return last.isEmpty() ? null : last.get(0);
    }

    /** Takes the last booking of a part back. */
    public Change takeBack(String part) {
        return takeBack(part, null);
    }

    /**
     * Takes a booking back: every piece and promise it moved is as it was before, and its reading does not count any more.
     *
     * @param booking the booking that was looked at; where it is not the last one any more nothing is done
     */
    public Change takeBack(String part, @Nullable Long booking) {
        return database.write(sql -> {
            List<Booking> found = last(sql, part);
            if (found.isEmpty()) {
                throw ShopFault.refused(
                        part + ": there is no booking that can be taken back.",
                        "it was taken back already, or a job took pieces since; then count it: withy stock " + part
                                + " --count NUMBER.");
            }
            Booking last = found.get(0);
            if (booking != null && booking != last.booking()) {
                throw new ShopFault(
                        ShopFault.Kind.STALE,
                        part + ": something else was booked meanwhile, or this was taken back already. Nothing was"
                                + " changed.",
                        "look at it again: withy stock " + part + ".");
            }
            Ledger ledger = new Ledger(sql, day, UNDO);
            promises(sql, last);
            pieces(sql, last);
            for (Movement line : Ledger.ofBatch(sql, last.booking())) {
                Reason reason = Reason.of(line.reason());
                ledger.line(part, reason, -line.shelf(), -line.promised(), -line.ordered(), line.job(), "taken back");
            }
            sql.run("UPDATE batch SET undone_by = ? WHERE id = ?", ledger.batch(), last.booking());
            return ledger.change(part);
        });
    }

    /** Scale readings of a part, newest first; those taken back stay in the list and say so. */
    public List<Reading> readings(String part, int most) {
        return database.read(sql -> sql.rows(
                row -> new Reading(row.getInt(1), row.getString(2), row.getLong(3) / 1000.0, row.getInt(4) == 1),
                "SELECT p.number, b.on_day, r.weight_mg, b.undone_by IS NOT NULL FROM reading r"
                        + " JOIN piece p ON p.id = r.piece JOIN batch b ON b.id = r.batch"
                        + " WHERE p.part = ? ORDER BY r.id DESC LIMIT ?",
                part,
                most));
    }

    /**
     * One scale reading.
     *
     * @param number number of the piece
     * @param day day it was booked
     * @param weightG what the scale said, g
     * @param takenBack true where it does not count any more
     */
    public record Reading(int number, String day, double weightG, boolean takenBack) {}

    /** None or one. What an older program booked left no trace of its pieces; a job that chose again after it lost some has no place for them any more. */
    private static List<Booking> last(Sql sql, String part) throws SQLException {
        List<Booking> last = sql.rows(row -> booking(row, part), LAST, part);
        return last.stream().filter(one -> BY_HAND.contains(one.what())).toList();
    }

    private static Booking booking(ResultSet row, String part) throws SQLException {
        int number = row.getInt(6);
        Integer piece = row.wasNull() ? null : number;
        long mg = row.getLong(7);
        Double grams = row.wasNull() ? null : mg / 1000.0;
        return new Booking(
                row.getLong(1), row.getString(2), row.getString(3), part, row.getInt(4), row.getInt(5), piece, grams);
    }

    private static void promises(Sql sql, Booking last) throws SQLException {
        record Step(
                long job,
                long slot,
                @Nullable Object was,
                @Nullable Object lost,
                @Nullable Object is) {}
        List<Step> steps = sql.rows(
                row -> new Step(row.getLong(1), row.getLong(2), row.getObject(3), row.getObject(4), row.getObject(5)),
                "SELECT job, slot, piece_before, lost_before, piece_after FROM promise_trace WHERE batch = ? ORDER BY id",
                last.booking());
        Collections.reverse(steps);
        for (Step step : steps) {
            int rows = sql.run(
                    "UPDATE promise SET piece = ?, lost_by = ? WHERE job = ? AND part = ? AND slot = ? AND piece IS ?",
                    step.was(),
                    step.lost(),
                    step.job(),
                    last.part(),
                    step.slot(),
                    step.is());
            asItWas(rows, last);
        }
    }

    private static void pieces(Sql sql, Booking last) throws SQLException {
        record Step(long piece, String was, @Nullable String due, int placed, String is) {}
        List<Step> steps = sql.rows(
                row -> new Step(row.getLong(1), row.getString(2), row.getString(3), row.getInt(4), row.getString(5)),
                "SELECT piece, state_before, due_before, placed_before, state_after FROM piece_trace WHERE batch = ?"
                        + " ORDER BY id",
                last.booking());
        Collections.reverse(steps);
        for (Step step : steps) {
            int rows = sql.run(
                    "UPDATE piece SET state = ?, due_day = ?, placed = ? WHERE id = ? AND state = ?",
                    step.was(),
                    step.due(),
                    step.placed(),
                    step.piece(),
                    step.is());
            asItWas(rows, last);
        }
    }

    /** Nothing but an import that was taken back can have moved these pieces since; then nothing is done. */
    private static void asItWas(int rows, Booking last) {
        if (rows != 1) {
            throw ShopFault.refused(
                    last.part() + ": its pieces were moved since, so that the booking can't be taken back.",
                    "count the part by hand: withy stock " + last.part() + " --count NUMBER.");
        }
    }
}
