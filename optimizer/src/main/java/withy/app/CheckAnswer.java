package withy.app;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.CatalogReading;
import withy.catalog.Fault;
import withy.catalog.PartKind;

/**
 * What {@code check} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param sound true where there is no fault
 * @param catalogHash hash of the parsed content, or null where a fault stands in the way
 * @param currency currency of every price, or null likewise
 * @param parts how many of each kind; empty where a fault stands in the way
 * @param faults everything wrong, in the order of files and lines
 * @param warnings what is readable but hard to believe
 */
public record CheckAnswer(
        int schema,
        boolean sound,
        @Nullable String catalogHash,
        @Nullable String currency,
        Map<String, Integer> parts,
        List<Line> faults,
        List<Line> warnings) {
    public CheckAnswer {
        parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
        faults = List.copyOf(faults);
        warnings = List.copyOf(warnings);
    }

    /**
     * One thing to mend or to look at.
     *
     * @param file file within the folder
     * @param line line from 1; 0 where the whole file is meant
     * @param column column or path; empty where the whole line is meant
     * @param value what stands there
     * @param problem what is wrong with it
     * @param allowed what may stand there
     * @param message all of it in words, the last line starting "Maybe" where there is a guess
     */
    public record Line(
            String file, int line, String column, String value, String problem, String allowed, String message) {}

    /** Of a reading. */
    public static CheckAnswer of(CatalogReading reading) {
        Catalog catalog = reading.catalog();
        Map<String, Integer> parts = new LinkedHashMap<>();
        if (catalog != null) {
            for (PartKind kind : PartKind.values()) {
                parts.put(kind.word(), catalog.all(kind).size());
            }
        }
        return new CheckAnswer(
                Answer.SCHEMA,
                catalog != null && reading.faults().isEmpty(),
                catalog == null ? null : catalog.hash(),
                catalog == null ? null : catalog.rates().currency(),
                parts,
                lines(reading.faults()),
                lines(reading.warnings()));
    }

    static List<Line> lines(List<Fault> faults) {
        List<Line> lines = new ArrayList<>();
        for (Fault f : faults) {
            lines.add(new Line(f.file(), f.line(), f.column(), f.value(), f.problem(), f.allowed(), f.message()));
        }
        return lines;
    }
}
