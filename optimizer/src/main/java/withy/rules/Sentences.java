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

/** Words a verdict in one sentence a customer understands, from the message file; numbers look the same everywhere. */
public final class Sentences {
    private static final String FILE = "/withy/messages_en.properties";
    private static final SortedMap<String, String> MESSAGES = read();

    private final Catalog catalog;

    /** Names parts as this catalogue does. */
    public Sentences(Catalog catalog) {
        this.catalog = catalog;
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
        return message.replace("{measured}", number(verdict.measured(), verdict.unit()))
                .replace("{limit}", number(verdict.limit(), verdict.unit()))
                .replace("{unit}", unit(verdict.unit()))
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
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals(unit), RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
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
