package withy.shop;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Promises the very pieces a job needs: from the shelf, then from what is on its way in time, then by noting what is to be ordered. */
final class Promises {
    private final Ledger ledger;
    private final Sql sql;
    private final long job;
    private final LocalDate today;
    private final @Nullable LocalDate wanted;
    private final List<String> lackingParts = new ArrayList<>();

    Promises(Ledger ledger, long job, LocalDate today, @Nullable LocalDate wanted) {
        this.ledger = ledger;
        this.sql = ledger.sql();
        this.job = job;
        this.today = today;
        this.wanted = wanted;
    }

    /** Lets go what is not needed any more, then promises what is. All or nothing: it never promises what nobody can have. */
    void settle(List<Need> needs) throws SQLException {
        SortedMap<String, Need> wantedParts = new TreeMap<>();
        needs.forEach(need -> wantedParts.put(need.part(), need));
        for (Map.Entry<String, Integer> held : held().entrySet()) {
            Need need = wantedParts.get(held.getKey());
            letGo(held.getKey(), held.getValue() - (need == null ? 0 : need.pieces()));
        }
        SortedMap<String, Integer> held = held();
        for (Need need : wantedParts.values()) {
            ledger.know(need.part());
            Integer has = held.get(need.part());
            promise(need, need.pieces() - (has == null ? 0 : has));
        }
        if (!lackingParts.isEmpty()) {
            throw ShopFault.refused(
                    "Too few pieces are free for job " + job + ":\n" + String.join("\n", lackingParts),
                    "choose again: withy out PART, or order them with a day that is in time.");
        }
    }

    /** Lets all go that is not built in. */
    void release() throws SQLException {
        for (Map.Entry<String, Integer> held : held().entrySet()) {
            letGo(held.getKey(), held.getValue());
        }
    }

    private SortedMap<String, Integer> held() throws SQLException {
        SortedMap<String, Integer> held = new TreeMap<>();
        sql.rows(
                row -> held.put(row.getString(1), row.getInt(2)),
                "SELECT part, count(*) FROM promise WHERE job = ? GROUP BY part",
                job);
        return held;
    }

    /** Missing ones first, then what is still to be ordered, what is on its way, what is on the shelf; never what is built in. */
    private void letGo(String part, int pieces) throws SQLException {
        if (pieces <= 0) {
            return;
        }
        List<long[]> slots = sql.rows(
                row -> new long[] {row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4)}, """
                SELECT r.slot, coalesce(p.id, 0), coalesce(p.state = 'ordered', 0), coalesce(p.placed, 1)
                FROM promise r LEFT JOIN piece p ON p.id = r.piece
                WHERE r.job = ? AND r.part = ? AND coalesce(p.state, '') <> 'used'
                ORDER BY p.id IS NOT NULL, coalesce(p.placed, 1), coalesce(p.state = 'shelf', 0), r.slot DESC""", job, part);
        boolean freed = false;
        int unsent = 0;
        for (long[] slot : slots.subList(0, Math.min(pieces, slots.size()))) {
            sql.run("DELETE FROM promise WHERE job = ? AND part = ? AND slot = ?", job, part, slot[0]);
            if (slot[1] != 0) {
                ledger.line(part, Reason.RELEASED, 0, -1, 0, job, "");
                if (slot[2] == 1 && slot[3] == 0) {
                    ledger.set(slot[1], "cancelled");
                    unsent++;
                } else {
                    freed = true;
                }
            }
        }
        if (unsent > 0) {
            ledger.unsent(part, unsent, job);
        }
        if (freed) {
            ledger.makeGood(part);
        }
    }

    private void promise(Need need, int pieces) throws SQLException {
        if (pieces <= 0) {
            return;
        }
        List<Long> found = new ArrayList<>(ledger.free(need.part(), "shelf"));
        found.addAll(sql.rows(
                row -> row.getLong(1),
                "SELECT id FROM piece WHERE part = ? AND state = 'ordered' AND due_day <= ?"
                        + " AND id NOT IN (SELECT piece FROM promise WHERE piece IS NOT NULL) ORDER BY due_day, number",
                need.part(),
                wanted == null ? "9999-12-31" : wanted.toString()));
        Integer lead = need.leadDays();
        int lacking = pieces - found.size();
        if (lacking > 0) {
            LocalDate due = lead == null ? null : today.plusDays(lead);
            if (due == null || wanted != null && due.isAfter(wanted)) {
                lackingParts.add(need.part() + ": " + pieces + " needed, " + found.size() + " free"
                        + (due == null ? ", and none can be ordered" : ", and an order would come on " + due));
                return;
            }
            int pack = Math.max(1, need.packQty());
            int ordered = (lacking + pack - 1) / pack * pack;
            found.addAll(ledger.add(need.part(), ordered, "ordered", due.toString(), false));
            ledger.line(need.part(), Reason.ORDERED, 0, 0, ordered, job, "still to be sent");
        }
        int slot = (int)
                sql.number("SELECT coalesce(max(slot), 0) FROM promise WHERE job = ? AND part = ?", job, need.part());
        for (long piece : found.subList(0, pieces)) {
            slot++;
            sql.run("INSERT INTO promise (job, part, slot, piece) VALUES (?, ?, ?, ?)", job, need.part(), slot, piece);
        }
        ledger.line(need.part(), Reason.PROMISED, 0, pieces, 0, job, "");
    }

    /** Builds pieces in: they leave the shelf. */
    void use(Map<String, Integer> pieces) throws SQLException {
        List<String> lacking = new ArrayList<>();
        for (Map.Entry<String, Integer> one : pieces.entrySet()) {
            List<Long> here = sql.rows(
                    row -> row.getLong(1),
                    "SELECT p.id FROM promise r JOIN piece p ON p.id = r.piece"
                            + " WHERE r.job = ? AND r.part = ? AND p.state = 'shelf' ORDER BY p.number",
                    job,
                    one.getKey());
            if (here.size() < one.getValue()) {
                lacking.add(one.getKey() + ": " + one.getValue() + " needed, " + here.size() + " here");
                continue;
            }
            for (long piece : here.subList(0, one.getValue())) {
                ledger.set(piece, "used");
            }
            ledger.line(one.getKey(), Reason.USED, -one.getValue(), -one.getValue(), 0, job, "");
        }
        if (!lacking.isEmpty()) {
            throw ShopFault.refused(
                    "Not all pieces of job " + job + " are on the shelf:\n" + String.join("\n", lacking),
                    "they came in and were not booked: withy stock PART --receive N.");
        }
    }

    /** Pieces promised and not yet built in, by part; lost ones count. */
    SortedMap<String, Integer> unused() throws SQLException {
        SortedMap<String, Integer> unused = new TreeMap<>();
        sql.rows(
                row -> unused.put(row.getString(1), row.getInt(2)),
                "SELECT r.part, count(*) FROM promise r LEFT JOIN piece p ON p.id = r.piece"
                        + " WHERE r.job = ? AND coalesce(p.state, '') <> 'used' GROUP BY r.part",
                job);
        return unused;
    }
}
