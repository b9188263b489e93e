package withy.catalog.sample;

import java.util.Map;
import withy.catalog.Lab;

/** Colours of the samples, CIE L*a*b* D65; chosen by eye for the samples, from no standard. */
final class Palette {
    private static final Map<String, Lab> COLOURS = Map.ofEntries(
            Map.entry("BLACK", new Lab(18, 0, -1)),
            Map.entry("CHARCOAL", new Lab(30, 0, -2)),
            Map.entry("SLATE", new Lab(45, -2, -6)),
            Map.entry("SILVER", new Lab(78, 0, 1)),
            Map.entry("TITANIUM", new Lab(62, 1, 4)),
            Map.entry("NAVY", new Lab(22, 4, -22)),
            Map.entry("SEA", new Lab(45, -18, -18)),
            Map.entry("FOREST", new Lab(28, -16, 10)),
            Map.entry("OLIVE", new Lab(40, -6, 22)),
            Map.entry("BURGUNDY", new Lab(27, 32, 12)),
            Map.entry("BROWN", new Lab(34, 12, 18)),
            Map.entry("WALNUT", new Lab(36, 11, 19)),
            Map.entry("CHERRY", new Lab(47, 20, 27)),
            Map.entry("CORK", new Lab(70, 8, 26)),
            Map.entry("BURL", new Lab(50, 10, 22)),
            Map.entry("COPPER", new Lab(55, 22, 32)),
            Map.entry("CREAM", new Lab(88, 1, 14)),
            Map.entry("ORANGE", new Lab(62, 42, 55)),
            Map.entry("YELLOW", new Lab(82, 2, 70)));

    private Palette() {}

    static Lab of(String name) {
        Lab colour = COLOURS.get(name);
        if (colour == null) {
            throw new IllegalArgumentException("no sample colour is called " + name);
        }
        return colour;
    }
}
