package withy.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** How parts stand, counted from their pieces: all parts in two statements, whatever their number. */
final class Levels {
    /** No piece is promised twice, so the join counts none twice. */
    private static final String COUNTS = """
            SELECT a.part,
              count(CASE WHEN p.state = 'shelf' THEN 1 END),
              count(CASE WHEN p.state IN ('shelf', 'ordered') AND r.piece IS NOT NULL THEN 1 END),
              count(CASE WHEN p.state = 'ordered' THEN 1 END),
              count(CASE WHEN p.state = 'ordered' AND p.placed = 0 THEN 1 END),
              (SELECT count(*) FROM promise lost WHERE lost.part = a.part AND lost.piece IS NULL),
              count(CASE WHEN p.state = 'shelf' AND r.piece IS NULL THEN 1 END),
              a.revision
            FROM part a LEFT JOIN piece p ON p.part = a.part LEFT JOIN promise r ON r.piece = p.id
            """;

    private static final String FREE_DUE = """
            SELECT p.part, p.due_day, count(*) FROM piece p LEFT JOIN promise r ON r.piece = p.id
            WHERE p.state = 'ordered' AND r.piece IS NULL
            """;

    private Levels() {}

    /** Every part the shop ever held, by id. */
    static List<Level> all(Sql sql) throws SQLException {
        Map<String, SortedMap<String, Integer>> due = new HashMap<>();
        sql.rows(row -> due(due, row), FREE_DUE + "GROUP BY p.part, p.due_day");
        return new ArrayList<>(sql.rows(row -> level(row, due), COUNTS + "GROUP BY a.part ORDER BY a.part"));
    }

    /** One part; all nought where the shop never held it. */
    static Level one(Sql sql, String part) throws SQLException {
        Map<String, SortedMap<String, Integer>> due = new HashMap<>();
        sql.rows(row -> due(due, row), FREE_DUE + "AND p.part = ? GROUP BY p.part, p.due_day", part);
        Level level = sql.row(row -> level(row, due), COUNTS + "WHERE a.part = ? GROUP BY a.part", part);
        return level == null ? new Level(part, 0, 0, 0, 0, 0, 0, new TreeMap<>(), 0) : level;
    }

    private static Integer due(Map<String, SortedMap<String, Integer>> due, ResultSet row) throws SQLException {
        int pieces = row.getInt(3);
        due.computeIfAbsent(row.getString(1), any -> new TreeMap<>()).put(row.getString(2), pieces);
        return pieces;
    }

    private static Level level(ResultSet row, Map<String, SortedMap<String, Integer>> due) throws SQLException {
        String part = row.getString(1);
        return new Level(
                part,
                row.getInt(2),
                row.getInt(3),
                row.getInt(4),
                row.getInt(5),
                row.getInt(6),
                row.getInt(7),
                due.getOrDefault(part, new TreeMap<>()),
                row.getInt(8));
    }
}
