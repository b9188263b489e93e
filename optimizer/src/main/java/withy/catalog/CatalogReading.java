package withy.catalog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What came of reading a catalogue folder.
 *
 * @param catalog the catalogue, or null where a fault stands in the way
 * @param faults everything wrong, in the order of files and lines
 * @param warnings what is readable but hard to believe
 */
public record CatalogReading(@Nullable Catalog catalog, List<Fault> faults, List<Fault> warnings) {
    public CatalogReading {
        faults = List.copyOf(faults);
        warnings = List.copyOf(warnings);
    }
}
