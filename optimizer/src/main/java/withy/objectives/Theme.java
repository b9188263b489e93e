package withy.objectives;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import withy.catalog.Gloss;
import withy.catalog.Lab;
import withy.catalog.Material;

/**
 * What a look means in materials, surface and colours. Our own table, ASSUMED; a brief's own liked materials and colours are added to it.
 */
public enum Theme {
    CLASSIC(
            EnumSet.of(Material.CORK, Material.WOOD, Material.NICKEL_SILVER, Material.SILK, Material.BRASS),
            Gloss.GLOSS,
            List.of(new Lab(38, 14, 28), new Lab(62, 8, 30), new Lab(30, 4, 10), new Lab(74, 2, 8))),
    MODERN(
            EnumSet.of(Material.CARBON, Material.EVA, Material.TITANIUM, Material.CARBON_FILLED, Material.ALUMINIUM),
            Gloss.MATT,
            List.of(new Lab(22, 0, -2), new Lab(45, 0, -4), new Lab(60, 0, -3))),
    NATURAL(
            EnumSet.of(Material.CORK, Material.WOOD, Material.RUBBER_CORK),
            Gloss.SATIN,
            List.of(new Lab(62, 8, 30), new Lab(40, -8, 18), new Lab(45, 10, 26))),
    STEALTH(
            EnumSet.of(Material.EVA, Material.CARBON, Material.CARBON_FILLED, Material.TITANIUM),
            Gloss.MATT,
            List.of(new Lab(18, 0, 0), new Lab(26, 0, -1))),
    BRIGHT(
            EnumSet.of(Material.EVA, Material.ALUMINIUM),
            Gloss.GLOSS,
            List.of(new Lab(55, 60, 35), new Lab(45, 5, -55), new Lab(75, 10, 75), new Lab(60, -50, 40))),
    NONE(EnumSet.noneOf(Material.class), Gloss.SATIN, List.of());

    private final Set<Material> materials;
    private final Gloss gloss;
    private final List<Lab> palette;

    Theme(Set<Material> materials, Gloss gloss, List<Lab> palette) {
        this.materials = materials;
        this.gloss = gloss;
        this.palette = palette;
    }

    /** The theme of this name; NONE for an empty or unknown one. */
    public static Theme of(String name) {
        for (Theme theme : values()) {
            if (theme.name().toLowerCase(Locale.ROOT).equals(name.toLowerCase(Locale.ROOT))) {
                return theme;
            }
        }
        return NONE;
    }

    boolean likes(Material material) {
        return materials.contains(material);
    }

    Gloss gloss() {
        return gloss;
    }

    List<Lab> palette() {
        return palette;
    }
}
