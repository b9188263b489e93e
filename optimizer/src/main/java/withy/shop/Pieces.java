package withy.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;

/** Reads pieces. */
final class Pieces {
    private static final String ALL = """
            SELECT p.part, p.number, p.state, p.due_day, r.job,
              (SELECT weight_mg FROM reading JOIN batch b ON b.id = batch
                WHERE piece = p.id AND b.undone_by IS NULL ORDER BY reading.id DESC LIMIT 1)
            FROM piece p LEFT JOIN promise r ON r.piece = p.id
            """;

    private Pieces() {}

    static List<Piece> of(Sql sql, String part) throws SQLException {
        return sql.rows(
                Pieces::piece,
                ALL + "WHERE p.part = ? AND (p.state IN ('shelf', 'ordered') OR r.job IS NOT NULL) ORDER BY p.number",
                part);
    }

    /** The piece of a row. */
    static List<Piece> of(Sql sql, long id) throws SQLException {
        return sql.rows(Pieces::piece, ALL + "WHERE p.id = ?", id);
    }

    static List<Piece> ofJob(Sql sql, long job) throws SQLException {
        return sql.rows(Pieces::piece, ALL + "WHERE r.job = ? ORDER BY p.part, p.number", job);
    }

    private static Piece piece(ResultSet row) throws SQLException {
        long job = row.getLong(5);
        Long ofJob = row.wasNull() ? null : job;
        long mg = row.getLong(6);
        Double grams = row.wasNull() ? null : mg / 1000.0;
        return new Piece(row.getString(1), row.getInt(2), row.getString(3), row.getString(4), grams, ofJob);
    }
}
