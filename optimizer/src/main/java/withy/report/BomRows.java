package withy.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.Bom;

/** The lines of a list of parts as rows of cells, and back. */
final class BomRows {
    static final List<String> HEADS = List.of(
            "station",
            "part",
            "name",
            "kind",
            "bin",
            "supplier",
            "amount",
            "unit",
            "length_mm",
            "weight_g",
            "price",
            "currency");

    /** Widths of a sheet's columns, in letters. */
    static final List<Double> WIDTHS = List.of(14.0, 34.0, 34.0, 26.0, 14.0, 24.0, 9.0, 8.0, 11.0, 10.0, 10.0, 9.0);

    private static final int AMOUNT = 6;
    private static final int LENGTH = 8;
    private static final int WEIGHT = 9;
    private static final int PRICE = 10;
    private static final int CURRENCY = 11;

    private final boolean comma;
    private final List<String> faults = new ArrayList<>();

    private BomRows(boolean comma) {
        this.comma = comma;
    }

    /** One line: texts, numbers, and null for an empty cell. */
    static List<@Nullable Object> cells(Bom.Line line, String currency) {
        return Arrays.asList(
                line.station(),
                line.part(),
                line.name(),
                line.kind(),
                line.bin(),
                line.supplier(),
                figure(line.amount()),
                line.unit(),
                line.lengthMm() == null ? null : figure(line.lengthMm()),
                figure(line.weightG()),
                BigDecimal.valueOf(line.priceMinor(), digits(currency)),
                currency);
    }

    /** Without the nought a whole number of pieces does not have. */
    private static BigDecimal figure(double value) {
        return new BigDecimal(BigDecimal.valueOf(value).stripTrailingZeros().toPlainString());
    }

    private static int digits(String currency) {
        return Math.max(0, Currency.getInstance(currency).getDefaultFractionDigits());
    }

    static String plain(Number number, boolean comma) {
        String text = new BigDecimal(number.toString()).toPlainString();
        return comma ? text.replace('.', ',') : text;
    }

    /** The list of rows that begin with the heads. */
    static Bom bom(List<List<String>> rows, boolean comma) throws BomFile.Unreadable {
        if (rows.size() < 2 || !rows.get(0).equals(HEADS)) {
            throw new BomFile.Unreadable(List.of(
                    "The list lacks its first row; allowed is: " + String.join(", ", HEADS) + ", and lines below.",
                    "Maybe a column was taken out or another file was named."));
        }
        BomRows reading = new BomRows(comma);
        String currency = reading.currency(rows.get(1));
        List<Bom.Line> lines = new ArrayList<>();
        for (int i = 1; i < rows.size(); i++) {
            List<String> row = rows.get(i);
            if (row.size() != HEADS.size()) {
                reading.fault(i, "", row.size() + " cells", HEADS.size() + " cells", "a separator is in a name");
            } else {
                lines.add(reading.line(i, row, currency));
            }
        }
        if (!reading.faults.isEmpty()) {
            throw new BomFile.Unreadable(reading.faults);
        }
        return new Bom(currency, lines);
    }

    private String currency(List<String> row) {
        String told = row.size() > CURRENCY ? row.get(CURRENCY) : "";
        boolean known = Currency.getAvailableCurrencies().stream()
                .anyMatch(each -> each.getCurrencyCode().equals(told));
        if (!known) {
            fault(1, "currency", told, "an ISO 4217 code", "write EUR");
        }
        return known ? told : "EUR";
    }

    private Bom.Line line(int at, List<String> row, String currency) {
        if (!row.get(CURRENCY).equals(currency)) {
            fault(at, "currency", row.get(CURRENCY), currency + " as on the first line", "two lists were mixed");
        }
        BigDecimal minor = number(at, PRICE, row).movePointRight(digits(currency));
        if (minor.stripTrailingZeros().scale() > 0) {
            fault(at, "price", row.get(PRICE), "whole coins of " + currency, "it is a price for several");
        }
        return new Bom.Line(
                row.get(0),
                row.get(1),
                row.get(2),
                row.get(3),
                row.get(4),
                row.get(5),
                number(at, AMOUNT, row).doubleValue(),
                row.get(AMOUNT + 1),
                row.get(LENGTH).isEmpty() ? null : number(at, LENGTH, row).doubleValue(),
                number(at, WEIGHT, row).doubleValue(),
                minor.longValue());
    }

    private BigDecimal number(int at, int column, List<String> row) {
        String told = row.get(column);
        try {
            BigDecimal value = new BigDecimal(comma ? told.replace(',', '.') : told);
            if (value.signum() >= 0 && value.precision() - value.scale() <= 9 && value.scale() <= 9) {
                return value;
            }
        } catch (NumberFormatException e) {
            // told below with all other faults
        }
        fault(at, HEADS.get(column), told, "a number of at least 0", "a letter or a thousands sign slipped in");
        return BigDecimal.ZERO;
    }

    private void fault(int at, String column, String value, String allowed, String maybe) {
        faults.add("Line " + (at + 1) + (column.isEmpty() ? "" : ", " + column) + ": \"" + value + "\"; allowed is "
                + allowed + ".");
        faults.add("Maybe " + maybe + ".");
    }
}
