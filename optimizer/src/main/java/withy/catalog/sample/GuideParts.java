package withy.catalog.sample;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.Guide;
import withy.catalog.Material;
import withy.catalog.RingMaterial;
import withy.catalog.TipTop;
import withy.catalog.sample.DesignTable.Design;

/** Guides and tip-tops of one family from its design: ring and frame are computed from the ring size. */
final class GuideParts {
    /** 1/64 in, mm: exact by the inch of 25.4 mm. */
    private static final double SIXTY_FOURTH_MM = 0.396875;

    /** Nominal ring sizes and inner diameters, mm: trade table, from memory, rough. */
    private static final double[][] RING_ID = {
        {3, 2.0},
        {3.5, 2.3},
        {4, 2.7},
        {4.5, 3.1},
        {5, 3.5},
        {5.5, 3.8},
        {6, 4.2},
        {7, 5.0},
        {8, 5.8},
        {10, 7.5},
        {12, 9.1},
        {16, 12.4},
        {20, 16.2},
        {25, 20.5},
        {30, 25},
        {40, 34},
        {50, 43}
    };

    /** How a guide stands: feet, height of the ring, class. */
    private enum Stand {
        SINGLE("S", 1),
        LOW("D", 2),
        HIGH("H", 2);

        private final String letter;
        private final int feet;

        Stand(String letter, int feet) {
            this.letter = letter;
            this.feet = feet;
        }

        double heightMm(double ring) {
            return switch (this) {
                case SINGLE -> ring < 8 ? ring / 2 + 3.5 : ring * 1.3 + 3;
                case LOW -> ring / 2 + 4.5;
                case HIGH -> ring <= 16 ? ring * 1.6 + 2 : 16 + ring * 0.85;
            };
        }
    }

    private GuideParts() {}

    static List<Guide> guides(Design row) {
        List<Guide> guides = new ArrayList<>();
        row.numbers("single").forEach(ring -> guides.add(guide(row, Stand.SINGLE, ring)));
        row.numbers("low").forEach(ring -> guides.add(guide(row, Stand.LOW, ring)));
        row.numbers("high").forEach(ring -> guides.add(guide(row, Stand.HIGH, ring)));
        return guides;
    }

    private static Guide guide(Design row, Stand stand, double ring) {
        double height = Shapes.to(stand.heightMm(ring), 0.1);
        double foot = Shapes.to((stand == Stand.SINGLE ? 5.5 : 5.0) + ring * 0.45, 0.1);
        double wire = stand.feet * (foot + 1.15 * height) + Math.PI * ring;
        double grams = ringG(row, ring) + frameG(row, ring, wire, stand.feet);
        int durability = stand == Stand.SINGLE ? row.whole("single_class") - (ring < 4.5 ? 1 : 0) : doubleClass(row);
        boolean small = ring <= 8;
        double size = Math.sqrt(ring);
        double price =
                row.number("price_factor") * (0.75 + 0.09 * ring * size / 2 + (stand == Stand.SINGLE ? 0.4 : 1.1));
        return new Guide(
                Draft.of(
                                row.text("maker"),
                                row.text("family") + " " + stand.letter + HandleParts.plain(ring),
                                row.word("frame", Material.class))
                        .weight(grams, 0.01, 8)
                        .price(Shapes.to(price, 0.05))
                        .supplied(row, small ? 24 : 6, 7)
                        .supplier("North Quay Ring Co.")
                        .bin("guide case")
                        .look(row.colour(), row.gloss(), row.text("set"))
                        .classes(durability, row.whole("corrosion"))
                        .facts(),
                row.text("family"),
                ring,
                ringId(row, ring),
                row.word("ring", RingMaterial.class),
                row.flag("braid"),
                row.text("finish"),
                height,
                stand.feet,
                foot,
                stand == Stand.HIGH || stand == Stand.SINGLE && ring >= 8);
    }

    private static int doubleClass(Design row) {
        return Math.min(5, row.whole("single_class") + 1);
    }

    /** Tip-tops: {@code ring:from-to/step} in 64ths, several with | between. */
    static List<TipTop> tipTops(Design row) {
        List<TipTop> tops = new ArrayList<>();
        for (String group : row.text("tips").split("\\|", -1)) {
            String[] parts = group.split("[:\\-/]", -1);
            double ring = Double.parseDouble(parts[0]);
            double from = Double.parseDouble(parts[1]);
            double step = Double.parseDouble(parts[3]);
            int count = (int) Math.round((Double.parseDouble(parts[2]) - from) / step);
            for (int i = 0; i <= count; i++) {
                tops.add(tipTop(row, ring, from + i * step));
            }
        }
        return tops;
    }

    private static TipTop tipTop(Design row, double ring, double sixtyFourths) {
        double tube = Shapes.to(sixtyFourths * SIXTY_FOURTH_MM, 0.0001);
        double depth = Shapes.to(5 + ring * 0.4 + tube, 0.5);
        double added = Shapes.to(ring * 1.25 + 2, 0.1);
        Material frame = row.word("frame", Material.class);
        double tubeG = Shapes.annulus(tube + 0.5, tube, depth) * Shapes.density(frame);
        double grams = ringG(row, ring) + frameG(row, ring, 2 * added + Math.PI * ring, 1) + tubeG;
        return new TipTop(
                Draft.of(
                                row.text("maker"),
                                row.text("family") + " Tip " + HandleParts.plain(ring) + "-"
                                        + HandleParts.plain(sixtyFourths) + "/64",
                                frame)
                        .weight(grams, 0.01, 8)
                        .price(Shapes.to(row.number("price_factor") * (1.6 + 0.12 * ring), 0.05))
                        .supplied(row, 3, 7)
                        .supplier("North Quay Ring Co.")
                        .bin("tip case")
                        .look(row.colour(), row.gloss(), row.text("set"))
                        .classes(doubleClass(row), row.whole("corrosion"))
                        .facts(),
                row.text("family"),
                tube,
                depth,
                ring,
                ringId(row, ring),
                row.word("ring", RingMaterial.class),
                row.flag("braid"),
                row.text("finish"),
                added);
    }

    /**
     * Alumina needs a wall about 15 % thicker than silicon carbide (trade table, from memory); a plain steel ring is bent from wire about half as
     * thick (ASSUMED).
     */
    private static double ringId(Design row, double ring) {
        for (double[] pair : RING_ID) {
            if (pair[0] == ring) {
                double thick = switch (row.word("ring", RingMaterial.class)) {
                    case ALUMINA -> 1.15;
                    case STEEL -> 0.5;
                    case SILICON_CARBIDE, ZIRCONIA, SILICON_NITRIDE, TITANIUM -> 1;
                };
                return Shapes.to(ring - (ring - pair[1]) * thick, 0.1);
            }
        }
        throw new IllegalArgumentException("no ring of size " + ring);
    }

    /** Ring as an annulus 0.55·√size mm thick along the line; a plain steel ring is a loop of the frame's own wire and counted there. */
    private static double ringG(Design row, double ring) {
        if (row.word("ring", RingMaterial.class) == RingMaterial.STEEL) {
            return 0;
        }
        double density = switch (row.word("ring", RingMaterial.class)) {
            case SILICON_CARBIDE -> 3.15e-3;
            case ALUMINA -> 3.90e-3;
            case ZIRCONIA -> 5.50e-3;
            case SILICON_NITRIDE -> 3.20e-3;
            case STEEL -> 8.00e-3;
            case TITANIUM -> 4.43e-3;
        };
        return Shapes.annulus(ring, ringId(row, ring), 0.55 * Math.sqrt(ring)) * density;
    }

    /**
     * Frame as a strap whose section grows with √size: titanium 0.165, steel 0.225 mm² at size 1, a quarter more for two feet; bare wire that carries
     * no insert 0.185.
     */
    private static double frameG(Design row, double ring, double wireMm, int feet) {
        Material frame = row.word("frame", Material.class);
        boolean wire = row.word("ring", RingMaterial.class) == RingMaterial.STEEL;
        double section = (frame == Material.TITANIUM ? 0.165 : wire ? 0.185 : 0.225) * Math.sqrt(ring);
        double stout = feet == 1 ? 1 : ring >= 30 ? 1.6 : 1.25;
        return wireMm * section * stout * Shapes.density(frame);
    }
}
