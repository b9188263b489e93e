package withy.shop;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Scale readings. Each is of one piece; the last one of a piece counts. */
public final class Scale {
    private static final String LAST = """
            SELECT p.part, r.weight_mg FROM reading r JOIN piece p ON p.id = r.piece
            WHERE r.id = (SELECT max(x.id) FROM reading x JOIN batch b ON b.id = x.batch
              WHERE x.piece = r.piece AND b.undone_by IS NULL)
            ORDER BY p.part, p.number
            """;

    private final Database database;
    private final String day;

    Scale(Database database, LocalDate today) {
        this.database = database;
        this.day = today.toString();
    }

    /**
     * What came of weighing.
     *
     * @param piece the piece that was weighed, with its number
     * @param weights the part's readings so far
     */
    public record Weighed(Piece piece, Weights weights) {}

    /**
     * Weighs a piece that is here or was used: the one of this number, or the first on the shelf that was never weighed; where all were, the
     * first one again. With nothing on the shelf a piece is taken to be in hand, and counted.
     */
    public Weighed weigh(String part, @Nullable Integer number, long weightMg) {
        return weigh(part, number, weightMg, Integer.MAX_VALUE);
    }

    /**
     * The same, unless it was weighed since it was looked at.
     *
     * @param seen as many {@link #readings} as there were when the piece, or the part where no number is told, was looked at
     * @throws ShopFault that is stale where there are more by now; nothing was booked
     */
    public Weighed weigh(String part, @Nullable Integer number, long weightMg, int seen) {
        return database.write(sql -> {
            if (readings(sql, part, number) > seen) {
                throw new ShopFault(
                        ShopFault.Kind.STALE,
                        part + (number == null ? "" : "#" + number) + " was weighed meanwhile. Nothing was booked.",
                        "look at it again: withy stock " + part + ".");
            }
            Ledger ledger = new Ledger(sql, day, "weigh");
            ledger.know(part);
            long piece = number == null ? unweighed(ledger, part) : numbered(sql, part, number);
            sql.run("INSERT INTO reading (batch, piece, weight_mg) VALUES (?, ?, ?)", ledger.batch(), piece, weightMg);
            int told = (int) sql.number("SELECT number FROM piece WHERE id = ?", piece);
            Piece weighed = Pieces.of(sql, part).stream()
                    .filter(one -> one.number() == told)
                    .findFirst()
                    .orElse(new Piece(part, told, "used", null, weightMg / 1000.0, null));
            Weights weights = weights(sql).get(part);
            return new Weighed(weighed, weights == null ? Weights.of(List.of(weightMg)) : weights);
        });
    }

    /** How many readings of a piece were ever booked, or of all pieces of a part where no number is told; those taken back count. */
    public int readings(String part, @Nullable Integer number) {
        return database.read(sql -> readings(sql, part, number));
    }

    private static int readings(Sql sql, String part, @Nullable Integer number) throws SQLException {
        return (int) sql.number(
                "SELECT count(*) FROM reading r JOIN piece p ON p.id = r.piece WHERE p.part = ? AND coalesce(?, p.number) = p.number",
                part,
                number);
    }

    /** The piece that {@link #weigh} would book a reading for, with its weight so far; null where none of the part is known to be here. */
    public @Nullable Piece next(String part, @Nullable Integer number) {
        List<Piece> next = database.read(sql -> {
            Long piece = number == null
                    ? first(sql, part)
                    : sql.row(
                            row -> row.getLong(1), "SELECT id FROM piece WHERE part = ? AND number = ?", part, number);
            return piece == null ? List.<Piece>of() : Pieces.of(sql, (long) piece);
        });
        return next.isEmpty() ? null : next.get(0);
    }

    /** Readings of every part that was ever weighed. */
    public SortedMap<String, Weights> weights() {
        return database.read(Scale::weights);
    }

    static SortedMap<String, Weights> weights(Sql sql) throws SQLException {
        SortedMap<String, List<Long>> readings = new TreeMap<>();
        sql.rows(
                row -> readings.computeIfAbsent(row.getString(1), part -> new ArrayList<>())
                        .add(row.getLong(2)),
                LAST);
        SortedMap<String, Weights> weights = new TreeMap<>();
        readings.forEach((part, mg) -> weights.put(part, Weights.of(mg)));
        return weights;
    }

    private static @Nullable Long first(Sql sql, String part) throws SQLException {
        return sql.row(
                row -> row.getLong(1),
                "SELECT id FROM piece WHERE part = ? AND state = 'shelf'"
                        + " ORDER BY id IN (SELECT piece FROM reading JOIN batch b ON b.id = batch"
                        + " WHERE b.undone_by IS NULL), number LIMIT 1",
                part);
    }

    private static long unweighed(Ledger ledger, String part) throws SQLException {
        Long piece = first(ledger.sql(), part);
        if (piece != null) {
            return piece;
        }
        long found = ledger.add(part, 1, "shelf", null, true).get(0);
        ledger.line(part, Reason.COUNTED, 1, 0, 0, null, "on the scale");
        ledger.makeGood(part);
        return found;
    }

    private static long numbered(Sql sql, String part, int number) throws SQLException {
        Long piece = sql.row(
                row -> row.getLong(1),
                "SELECT id FROM piece WHERE part = ? AND number = ? AND state IN ('shelf', 'used')",
                part,
                number);
        if (piece == null) {
            throw ShopFault.refused(
                    part + "#" + number + " is neither on the shelf nor in a rod.",
                    "another number is on the bag; withy stock " + part + " lists them.");
        }
        return piece;
    }
}
