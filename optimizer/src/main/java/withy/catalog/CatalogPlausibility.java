package withy.catalog;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What can be read but is hard to believe; never stands in the way, always told. */
final class CatalogPlausibility {
    private CatalogPlausibility() {}

    /**
     * Warnings in the order of kinds and files.
     *
     * @param catalog the catalogue
     * @param lines line of each part id in its file
     */
    static List<Fault> warnings(Catalog catalog, Map<String, Integer> lines) {
        List<Fault> warnings = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            WeightRange usual = WeightRange.of(part.kind());
            double weight = part.facts().weightG();
            if (weight < usual.usualLeast() || weight > usual.usualMost()) {
                warnings.add(new Fault(
                        part.kind().fileName(),
                        lines.getOrDefault(part.id(), 0),
                        "weight_g",
                        Numbers.plain(weight) + " g",
                        "is hard to believe for a " + part.kind().word(),
                        Numbers.plain(usual.usualLeast()) + " to " + Numbers.plain(usual.usualMost()) + " g is usual",
                        "weigh it again"));
            }
        }
        return warnings;
    }
}
