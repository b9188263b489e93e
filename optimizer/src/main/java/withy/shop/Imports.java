package withy.shop;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** Counts and prices taken over from a list in one go, and taken back in one go. */
public final class Imports {
    private static final String WHAT = "import";

    private final Database database;
    private final LocalDate today;

    Imports(Database database, LocalDate today) {
        this.database = database;
        this.today = today;
    }

    /**
     * What came of an import.
     *
     * @param change movements and levels
     * @param backup file of the back-up made before it
     */
    public record Imported(Change change, String backup) {}

    /** Takes over counts and prices, all or nothing, after a back-up. */
    public Imported apply(SortedMap<String, Integer> counts, SortedMap<String, Long> pricesMinor) {
        String backup =
                Backups.automatic(database, "before-import").getFileName().toString();
        Change change = database.write(sql -> {
            Ledger ledger = new Ledger(sql, today.toString(), WHAT);
            for (Map.Entry<String, Integer> one : counts.entrySet()) {
                Stock.count(ledger, one.getKey(), one.getValue(), WHAT);
            }
            for (Map.Entry<String, Long> one : pricesMinor.entrySet()) {
                ledger.know(one.getKey());
                sql.run(
                        "INSERT INTO price (batch, part, price_minor, price_day) VALUES (?, ?, ?, ?)",
                        ledger.batch(),
                        one.getKey(),
                        one.getValue(),
                        today.toString());
            }
            return ledger.change();
        });
        return new Imported(change, backup);
    }

    /** Takes the last import back: its counts by the same difference, its prices altogether. */
    public Change undo() {
        return database.write(sql -> {
            Long last = sql.row(
                    row -> row.getLong(1),
                    "SELECT id FROM batch WHERE what = ? AND undone_by IS NULL ORDER BY id DESC LIMIT 1",
                    WHAT);
            if (last == null) {
                throw ShopFault.refused(
                        "There is no import to take back.", "it was taken back already; see withy stock --history.");
            }
            Ledger ledger = new Ledger(sql, today.toString(), "undo");
            sql.run("UPDATE batch SET undone_by = ? WHERE id = ?", ledger.batch(), last);
            List<Map.Entry<String, Integer>> moved = sql.rows(
                    row -> Map.entry(row.getString(1), row.getInt(2)),
                    "SELECT part, sum(shelf) FROM movement WHERE batch = ? AND reason = 'counted' GROUP BY part",
                    last);
            for (Map.Entry<String, Integer> one : moved) {
                back(ledger, one.getKey(), one.getValue());
            }
            return ledger.change();
        });
    }

    private static void back(Ledger ledger, String part, int moved) throws SQLException {
        Sql sql = ledger.sql();
        if (moved > 0) {
            List<Long> free = ledger.free(part, "shelf");
            if (free.size() < moved) {
                throw ShopFault.refused(
                        part + ": the import counted " + moved + " more, of which " + (moved - free.size())
                                + " are promised or used by now. Nothing was taken back.",
                        "count the part by hand: withy stock " + part + " --count NUMBER.");
            }
            for (long piece : free.subList(free.size() - moved, free.size())) {
                ledger.set(piece, "lost");
            }
        } else if (moved < 0) {
            List<Long> lost = sql.rows(
                    row -> row.getLong(1),
                    "SELECT id FROM piece WHERE part = ? AND state = 'lost' ORDER BY number DESC LIMIT ?",
                    part,
                    -moved);
            for (long piece : lost) {
                ledger.set(piece, "shelf");
            }
        }
        if (moved != 0) {
            ledger.line(part, Reason.COUNTED, -moved, 0, 0, null, "import taken back");
            ledger.makeGood(part);
        }
    }

    static SortedMap<String, Snapshot.Price> prices(Sql sql) throws SQLException {
        SortedMap<String, Snapshot.Price> prices = new TreeMap<>();
        sql.rows(
                row -> prices.put(
                        row.getString(1), new Snapshot.Price(row.getLong(2), LocalDate.parse(row.getString(3)))),
                "SELECT part, price_minor, price_day FROM price JOIN batch b ON b.id = price.batch"
                        + " WHERE b.undone_by IS NULL ORDER BY price.id");
        return prices;
    }
}
