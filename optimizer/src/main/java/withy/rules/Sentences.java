package withy.rules;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.units.Money;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Words a verdict in one sentence a customer understands, from the message file; numbers look the same everywhere. */
public final class Sentences {
    private static final int RATIO_DECIMALS = 2;

    private static final String FILE = "/withy/messages_en.properties";
    private static final SortedMap<String, String> MESSAGES = read();

    /** From here on a length is that of a rod, mm. */
    private static final double ROD_MM = 600;

    private final Catalog catalog;
    private final QuantityText units;

    /** Names parts as this catalogue does; metric. */
    public Sentences(Catalog catalog) {
        this(catalog, new QuantityText(UnitSystem.METRIC));
    }

    /** The same for a reader of other units. */
    public Sentences(Catalog catalog, QuantityText units) {
        this.catalog = catalog;
        this.units = units;
    }

    /** Every message by its key. */
    public static SortedMap<String, String> messages() {
        return MESSAGES;
    }

    /** Key of a verdict's message. */
    public static String key(Verdict verdict) {
        return "rule." + verdict.rule() + "." + verdict.check() + "."
                + verdict.outcome().key();
    }

    /** The sentence. */
    public String of(Verdict verdict) {
        String message = MESSAGES.get(key(verdict));
        if (message == null) {
            throw new IllegalStateException("no message " + key(verdict));
        }
        double measured = verdict.measured();
        double limit = verdict.limit();
        double miss = Math.abs(measured - limit);
        int shares = shareDecimals(verdict);
        return message.replace("{measured} %", share(measured, shares))
                .replace("{limit} %", share(limit, shares))
                .replace("{measured} {unit}", amount(measured, verdict))
                .replace("{limit} {unit}", amount(limit, verdict))
                .replace("{miss} {unit}", amount(miss, verdict))
                .replace("{measured}", number(measured, verdict))
                .replace("{limit}", number(limit, verdict))
                .replace("{part}", name(verdict.parts(), 0))
                .replace("{other}", name(verdict.parts(), 1));
    }

    private String name(List<String> ids, int index) {
        if (index >= ids.size()) {
            return "";
        }
        Part part = catalog.find(ids.get(index));
        return part == null ? ids.get(index) : part.facts().name();
    }

    /** A value with its unit, in the reader's; long ones as rods are told, unless that would hide a difference from the limit. */
    private String amount(double value, Verdict verdict) {
        if (verdict.rule().equals(LureRange.CODE) && toldApart(verdict)) {
            return units.lureMass(value);
        }
        if (Double.isNaN(value) || units.system() == UnitSystem.METRIC) {
            int decimals = decimals(verdict, value);
            return verdict.unit() == Unit.MINOR
                    ? number(value, verdict.unit()) + " " + unit(verdict.unit())
                    : trimmed(value, decimals) + " " + unit(verdict.unit());
        }
        return switch (verdict.unit()) {
            case MM -> {
                String measured = units.rodLength(verdict.measured());
                boolean rod = Math.min(verdict.measured(), verdict.limit()) >= ROD_MM && value >= ROD_MM;
                boolean told = rod && !measured.equals(units.rodLength(verdict.limit()));
                yield told ? units.rodLength(value) : units.measuredLength(value);
            }
            case G -> units.measuredMass(value);
            case KG -> units.measuredStrength(value);
            default -> number(value, verdict.unit()) + " " + unit(verdict.unit());
        };
    }

    /** True where a lure and its limit, as a builder says them, are as different as they are. */
    private boolean toldApart(Verdict verdict) {
        double lure = verdict.measured();
        double limit = verdict.limit();
        return lure == limit
                || !Double.isNaN(lure)
                        && !Double.isNaN(limit)
                        && !units.lureMass(lure).equals(units.lureMass(limit));
    }

    private String unit(Unit unit) {
        return unit == Unit.MINOR ? catalog.rates().currency() : unit.symbol();
    }

    private String number(double value, Unit unit) {
        if (Double.isNaN(value)) {
            return "";
        }
        if (unit == Unit.MINOR) {
            Currency currency = Currency.getInstance(catalog.rates().currency());
            String printed = Money.print(Math.round(value), currency);
            return printed.substring(0, printed.indexOf(' '));
        }
        return trimmed(value, decimals(unit));
    }

    /** Of ratios two decimals, unless that would hide a difference from the limit. */
    private String number(double value, Verdict verdict) {
        boolean hidden = trimmed(verdict.measured(), RATIO_DECIMALS).equals(trimmed(verdict.limit(), RATIO_DECIMALS));
        return verdict.unit() == Unit.RATIO && !hidden ? trimmed(value, RATIO_DECIMALS) : number(value, verdict.unit());
    }

    private static String trimmed(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** A ratio in percent. */
    private static String share(double ratio, int decimals) {
        return trimmed(ratio * 100, decimals) + " %";
    }

    /** Of percents: none, unless that would hide a difference from the limit; then as finely as ratios are compared. */
    private static int shareDecimals(Verdict verdict) {
        return trimmed(verdict.measured() * 100, 0).equals(trimmed(verdict.limit() * 100, 0)) ? 1 : 0;
    }

    /** Of strengths one, of lengths of rods none, unless that would hide a difference from the limit. */
    private static int decimals(Verdict verdict, double value) {
        boolean rod = verdict.unit() == Unit.MM && Math.min(verdict.measured(), verdict.limit()) >= ROD_MM;
        if (verdict.unit() != Unit.KG && !(rod && value >= ROD_MM)) {
            return decimals(verdict.unit());
        }
        int few = rod ? 0 : 1;
        String measured = trimmed(verdict.measured(), few);
        return measured.equals(trimmed(verdict.limit(), few)) ? decimals(verdict.unit()) : few;
    }

    /** As many as the grid of limits has, so that a sentence never shows a broken limit as kept. */
    private static int decimals(Unit unit) {
        return switch (unit) {
            case MM, GAUGE -> 2;
            case G, KG, RATIO -> 3;
            case RING_SIZE -> 1;
            case MINOR, COUNT, CLASS -> 0;
        };
    }

    private static SortedMap<String, String> read() {
        Properties properties = new Properties();
        try (InputStream stream = Sentences.class.getResourceAsStream(FILE)) {
            if (stream == null) {
                throw new IllegalStateException("message file missing: " + FILE);
            }
            properties.load(new InputStreamReader(stream, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        SortedMap<String, String> messages = new TreeMap<>();
        properties.stringPropertyNames().forEach(key -> messages.put(key, properties.getProperty(key)));
        return Collections.unmodifiableSortedMap(messages);
    }
}
