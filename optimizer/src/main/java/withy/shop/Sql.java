package withy.shop;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Statements of one transaction. */
final class Sql {
    private final Connection connection;

    Sql(Connection connection) {
        this.connection = connection;
    }

    /** Makes a value of one row. */
    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    <T> List<T> rows(Reader<T> reader, String sql, @Nullable Object... values) throws SQLException {
        try (PreparedStatement statement = prepared(sql, values);
                ResultSet result = statement.executeQuery()) {
            List<T> rows = new ArrayList<>();
            while (result.next()) {
                rows.add(reader.read(result));
            }
            return rows;
        }
    }

    /** The one row, or null where there is none. */
    <T> @Nullable T row(Reader<T> reader, String sql, @Nullable Object... values) throws SQLException {
        List<T> rows = rows(reader, sql, values);
        return rows.isEmpty() ? null : rows.get(0);
    }

    /** The number in the first column of the one row. */
    long number(String sql, @Nullable Object... values) throws SQLException {
        Long number = row(result -> result.getLong(1), sql, values);
        return number == null ? 0 : number;
    }

    /** The text in the first column of the one row; empty where there is none. */
    String text(String sql, @Nullable Object... values) throws SQLException {
        String text = row(result -> result.getString(1), sql, values);
        return text == null ? "" : text;
    }

    /** Rows changed. */
    int run(String sql, @Nullable Object... values) throws SQLException {
        try (PreparedStatement statement = prepared(sql, values)) {
            return statement.executeUpdate();
        }
    }

    /** The new row's id. */
    long insert(String sql, @Nullable Object... values) throws SQLException {
        run(sql, values);
        return number("SELECT last_insert_rowid()");
    }

    /** Statements that neither take nor give values. */
    void script(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    private PreparedStatement prepared(String sql, @Nullable Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        try {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            return statement;
        } catch (SQLException e) {
            statement.close();
            throw e;
        }
    }
}
