package withy.shop;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Pieces on the shelf and on order, and every movement of them. */
public final class Stock {
    /** Most pieces of one part moved at once; far above any shop, so that a slip of the finger is caught. */
    public static final int MOST_PIECES = 10_000;

    private final Database database;
    private final String day;

    Stock(Database database, LocalDate today) {
        this.database = database;
        this.day = today.toString();
    }

    /** Every part the shop ever held. */
    public List<Level> levels() {
        return database.read(Levels::all);
    }

    /** How one part stands; all nought where the shop never held it. */
    public Level level(String part) {
        return database.read(sql -> Levels.one(sql, part));
    }

    /** Pieces of a part that are here, on their way, or were used for a job. */
    public List<Piece> pieces(String part) {
        return database.read(sql -> Pieces.of(sql, part));
    }

    /** The last lines of the ledger, newest first; of one part, or of all. */
    public List<Movement> ledger(@Nullable String part, int most) {
        return database.read(sql -> Ledger.lines(sql, part, most));
    }

    /** Jobs that lost what was promised to them. */
    public List<Change.Hit> hits() {
        return database.read(sql -> {
            List<Change.Hit> hits = new ArrayList<>();
            String lost = "SELECT DISTINCT part FROM promise WHERE piece IS NULL ORDER BY part";
            for (String part : sql.rows(row -> row.getString(1), lost)) {
                hits.addAll(Ledger.hits(sql, part));
            }
            return hits;
        });
    }

    /** So many were counted on the shelf. Fewer than before is a loss, which may hit jobs. */
    public Change count(String part, int pieces, String note) {
        return count(new TreeMap<>(Map.of(part, pieces)), "count", note);
    }

    /** The same for many parts at once. */
    Change count(SortedMap<String, Integer> counted, String what, String note) {
        counted.values().forEach(Stock::sound);
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, day, what);
            for (Map.Entry<String, Integer> one : counted.entrySet()) {
                count(ledger, one.getKey(), one.getValue(), note);
            }
            return ledger.change();
        });
    }

    static void count(Ledger ledger, String part, int pieces, String note) throws SQLException {
        ledger.know(part);
        int before = Levels.one(ledger.sql(), part).shelf();
        if (pieces > before) {
            ledger.add(part, pieces - before, "shelf", null, true);
            ledger.line(part, Reason.COUNTED, pieces - before, 0, 0, null, note);
            ledger.makeGood(part);
        } else {
            takeAway(ledger, part, before - pieces, Reason.COUNTED, "lost", note);
        }
    }

    /** Pieces came in: those on order first, promised ones before others, then further ones. */
    public Change receive(String part, int pieces, String note) {
        sound(pieces);
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, day, "receive");
            List<Long> expected = sql.rows(
                    row -> row.getLong(1),
                    "SELECT id FROM piece WHERE part = ? AND state = 'ordered' ORDER BY"
                            + " id NOT IN (SELECT piece FROM promise WHERE piece IS NOT NULL), placed DESC, due_day, number"
                            + " LIMIT ?",
                    part,
                    pieces);
            for (long piece : expected) {
                ledger.set(piece, "shelf");
            }
            ledger.add(part, pieces - expected.size(), "shelf", null, true);
            ledger.line(part, Reason.RECEIVED, pieces, 0, -expected.size(), null, note);
            ledger.makeGood(part);
            return ledger.change();
        });
    }

    /** An order was sent: of pieces already noted as to be ordered first, then further ones. */
    public Change order(String part, int pieces, LocalDate due, String note) {
        sound(pieces);
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, day, "order");
            ledger.know(part);
            int sent = sql.run(
                    "UPDATE piece SET placed = 1, due_day = ? WHERE id IN (SELECT id FROM piece"
                            + " WHERE part = ? AND state = 'ordered' AND placed = 0 ORDER BY number LIMIT ?)",
                    due.toString(),
                    part,
                    pieces);
            ledger.add(part, pieces - sent, "ordered", due.toString(), true);
            ledger.line(part, Reason.ORDERED, 0, 0, pieces - sent, null, sent > 0 ? sent + " of them noted" : note);
            ledger.makeGood(part);
            return ledger.change();
        });
    }

    /** An order was given up; only pieces that nobody was promised. */
    public Change cancel(String part, int pieces, String note) {
        return takeFree(part, pieces, Reason.CANCELLED, note);
    }

    /** Pieces broke; promised ones last. */
    public Change broken(String part, int pieces, String note) {
        return lose(part, pieces, Reason.BROKEN, "broken", note);
    }

    /** This very piece broke. */
    public Change brokenPiece(String part, int number, String note) {
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, day, "broken");
            Long piece = sql.row(
                    row -> row.getLong(1),
                    "SELECT id FROM piece WHERE part = ? AND number = ? AND state = 'shelf'",
                    part,
                    number);
            if (piece == null) {
                throw ShopFault.refused(
                        part + "#" + number + " is not on the shelf.",
                        "another number is on the bag; withy stock " + part + " lists them.");
            }
            ledger.lose(part, piece, Reason.BROKEN, "broken", note);
            return ledger.change();
        });
    }

    /** Pieces went back to the supplier; only ones that nobody was promised. */
    public Change returned(String part, int pieces, String note) {
        return takeFree(part, pieces, Reason.RETURNED, note);
    }

    /** Pieces were used outside the jobs; only ones that nobody was promised. */
    public Change used(String part, int pieces, String note) {
        return takeFree(part, pieces, Reason.USED, note);
    }

    private Change takeFree(String part, int pieces, Reason reason, String note) {
        sound(pieces);
        boolean ofOrder = reason == Reason.CANCELLED;
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, day, reason.word());
            ledger.know(part);
            List<Long> free = ledger.free(part, ofOrder ? "ordered" : "shelf");
            if (free.size() < pieces) {
                throw ShopFault.refused(
                        part + ": " + pieces + " pieces asked, " + free.size()
                                + (ofOrder ? " on order" : " on the shelf") + " are promised to nobody.",
                        "count them first: withy stock " + part + " --count NUMBER.");
            }
            for (long piece : free.subList(0, pieces)) {
                ledger.set(piece, reason.word());
            }
            ledger.line(part, reason, ofOrder ? 0 : -pieces, 0, ofOrder ? -pieces : 0, null, note);
            return ledger.change();
        });
    }

    private Change lose(String part, int pieces, Reason reason, String state, String note) {
        sound(pieces);
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, day, reason.word());
            ledger.know(part);
            int shelf = Levels.one(sql, part).shelf();
            if (pieces > shelf) {
                throw ShopFault.refused(
                        part + ": " + pieces + " pieces asked, " + shelf + " are on the shelf.",
                        "count them first: withy stock " + part + " --count NUMBER.");
            }
            takeAway(ledger, part, pieces, reason, state, note);
            return ledger.change();
        });
    }

    private static void takeAway(Ledger ledger, String part, int pieces, Reason reason, String state, String note)
            throws SQLException {
        List<Long> free = ledger.free(part, "shelf");
        int unpromised = Math.min(pieces, free.size());
        for (long piece : free.subList(free.size() - unpromised, free.size())) {
            ledger.set(piece, state);
        }
        if (unpromised > 0 || pieces == 0) {
            ledger.line(part, reason, -unpromised, 0, 0, null, note);
        }
        List<Long> promised = ledger.promised(part, "shelf");
        for (long piece : promised.subList(0, pieces - unpromised)) {
            ledger.lose(part, piece, reason, state, note);
        }
    }

    private static void sound(int pieces) {
        if (pieces < 0 || pieces > MOST_PIECES) {
            throw ShopFault.refused(
                    pieces + " pieces: allowed are 0 to " + MOST_PIECES + ".",
                    pieces < 0 ? "the sign is a slip." : "a digit too many was typed.");
        }
    }
}
