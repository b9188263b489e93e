package withy.catalog;

import java.util.Comparator;
import java.util.List;

/** Orders parts by what they are, their id last, so that renaming parts or reordering files cannot change which of two equal builds is chosen. */
final class ContentOrder {
    private static final Comparator<Part> BY_CONTENT = Comparator.<Part>comparingLong(
                    p -> p.facts().priceMinor())
            .thenComparingLong(Part::massMg)
            .thenComparing(p -> -p.facts().durabilityClass())
            .thenComparing(p -> p.facts().name())
            .thenComparing(p -> content(p.facts()))
            .thenComparing(p -> p.toString().replace(p.id(), ""))
            .thenComparing(Part::id);

    private ContentOrder() {}

    /** A sorted copy. */
    static <P extends Part> List<P> sorted(List<P> parts) {
        return parts.stream().sorted(BY_CONTENT).toList();
    }

    private static String content(PartFacts f) {
        return f.material() + "|" + f.colour() + "|" + f.gloss() + "|" + f.setCode() + "|" + f.corrosionClass();
    }
}
