package withy.catalog.sample;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Gloss;
import withy.catalog.Lab;

/** A table of designs kept as a plain comma-separated resource without quotes, one design a row. */
final class DesignTable {
    private DesignTable() {}

    static List<Design> rows(String name) {
        try (InputStream in = DesignTable.class.getResourceAsStream("/withy/catalog/sample/" + name)) {
            if (in == null) {
                throw new IllegalStateException("no design table " + name);
            }
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            String[] names = lines.get(0).split(",", -1);
            List<Design> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",", -1);
                if (cells.length != names.length) {
                    throw new IllegalStateException(name + ": " + line);
                }
                Map<String, String> values = new LinkedHashMap<>();
                for (int i = 0; i < names.length; i++) {
                    values.put(names[i], cells[i]);
                }
                rows.add(new Design(values));
            }
            return List.copyOf(rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * One design.
     *
     * @param values text by column
     */
    record Design(Map<String, String> values) {
        Design {
            values = Map.copyOf(values);
        }

        String text(String column) {
            String value = values.get(column);
            if (value == null) {
                throw new IllegalStateException("design without " + column);
            }
            return value;
        }

        String textOr(String column, String otherwise) {
            return values.getOrDefault(column, otherwise);
        }

        double number(String column) {
            return Double.parseDouble(text(column));
        }

        int whole(String column) {
            return Integer.parseInt(text(column));
        }

        boolean flag(String column) {
            return text(column).equals("yes");
        }

        List<Double> numbers(String column) {
            List<Double> all = new ArrayList<>();
            for (String item : text(column).split("\\|", -1)) {
                if (!item.isEmpty()) {
                    all.add(Double.valueOf(item));
                }
            }
            return all;
        }

        <E extends Enum<E>> E word(String column, Class<E> type) {
            return Enum.valueOf(type, text(column));
        }

        @Nullable
        Lab colour() {
            return text("colour").isEmpty() ? null : Palette.of(text("colour"));
        }

        @Nullable
        Gloss gloss() {
            return text("gloss").isEmpty() ? null : Gloss.valueOf(text("gloss"));
        }

        /** The same design with some cells changed. */
        Design with(Map<String, String> changes) {
            Map<String, String> all = new LinkedHashMap<>(values);
            all.putAll(changes);
            return new Design(all);
        }
    }
}
