package withy.catalog.sample;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import withy.catalog.sample.DesignTable.Design;

/**
 * Changes designs at random within what stays believable. Uses {@link Random}, whose sequence the Java platform fixes for a seed, so that equal
 * seeds give equal catalogues everywhere.
 */
final class Variation {
    private static final List<String> MAKERS = List.of(
            "Tarnrigg",
            "Hollinbeck",
            "Ostermoor",
            "Marrick",
            "Quernstone",
            "Fellcork",
            "Nethermill",
            "Ferrowick",
            "Lanternhead",
            "Askham Vale",
            "Brackensett",
            "Dunholme Reach",
            "Ellerwater",
            "Garrowby Works");

    private static final List<String> BLANK_COLOURS =
            List.of("CHARCOAL", "BLACK", "OLIVE", "BROWN", "FOREST", "NAVY", "SEA", "BURGUNDY", "SLATE");
    private static final List<String> FOAM_COLOURS = List.of("BLACK", "BLACK", "CHARCOAL", "NAVY", "SEA", "FOREST");
    private static final List<String> THREAD_COLOURS = List.of(
            "BLACK", "FOREST", "BURGUNDY", "NAVY", "BROWN", "SLATE", "COPPER", "OLIVE", "CREAM", "ORANGE", "SILVER");
    private static final List<String> SETS = List.of("", "", "", "tideway", "brookside", "sprat");

    private final Random random;
    private int serial;

    Variation(long seed) {
        this.random = new Random(seed);
    }

    Design blank(Design base) {
        Map<String, String> cells = common(base);
        double stretch = share(0.98, 1.02);
        cells.put("length_mm", text(Shapes.to(base.number("length_mm") * stretch, 10)));
        scale(base, cells, "butt_mm", 0.96, 1.05, 0.1);
        scale(base, cells, "tip_mm", 0.95, 1.07, 0.05);
        scale(base, cells, "target_g", 0.9, 1.15, 0.5);
        scale(base, cells, "lure_min_g", 0.85, 1.0, 0.1);
        scale(base, cells, "lure_max_g", 1.0, 1.2, 0.5);
        scale(base, cells, "line_max_kg", 1.0, 1.2, 0.1);
        scale(base, cells, "lift_kg", 0.9, 1.15, 0.1);
        scale(base, cells, "third_test_g", 0.9, 1.1, 5);
        cells.put("colour", pick(BLANK_COLOURS));
        cells.put("gloss", pick(List.of("MATT", "SATIN", "GLOSS")));
        cells.put("balance_known", random.nextInt(3) == 0 ? "no" : "yes");
        return base.with(cells);
    }

    Design seat(Design base) {
        Map<String, String> cells = common(base);
        scale(base, cells, "fill", 0.9, 1.12, 0.01);
        return base.with(cells);
    }

    Design hood(Design base) {
        Map<String, String> cells = common(base);
        scale(base, cells, "factor", 0.88, 1.12, 0.01);
        return base.with(cells);
    }

    Design grip(Design base) {
        Map<String, String> cells = common(base);
        double longer = 5 * random.nextInt(4);
        cells.put("length", text(base.number("length") + longer));
        double wider = 0.5 * (random.nextInt(3) - 1);
        for (String end : List.of("front", "mid", "rear")) {
            cells.put(end, text(base.number(end) + wider));
        }
        if (base.text("material").equals("EVA")) {
            cells.put("colour", pick(FOAM_COLOURS));
        }
        scale(base, cells, "grade", 0.92, 1.12, 0.01);
        return base.with(cells);
    }

    Design cap(Design base) {
        return base.with(common(base));
    }

    Design check(Design base) {
        Map<String, String> cells = common(base);
        cells.put("extra", text(base.number("extra") + 0.5 * (random.nextInt(4) - 1)));
        cells.put("width", text(base.number("width") + 0.5 * random.nextInt(3)));
        return base.with(cells);
    }

    Design family(Design base) {
        Map<String, String> cells = common(base);
        cells.put("family", base.text("family") + " " + serial);
        cells.remove("model");
        if (random.nextInt(3) == 0) {
            cells.put("finish", base.text("finish") + "-matt");
            cells.put("gloss", "MATT");
        }
        scale(base, cells, "price_factor", 0.75, 1.35, 0.01);
        cells.remove("price_eur");
        return base.with(cells);
    }

    Design small(Design base) {
        Map<String, String> cells = common(base);
        if (base.text("kind").equals("thread")) {
            cells.put("colour", pick(THREAD_COLOURS));
        }
        return base.with(cells);
    }

    private Map<String, String> common(Design base) {
        serial++;
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("maker", pick(MAKERS));
        cells.put("model", base.textOr("model", "") + " No." + serial);
        if (!base.textOr("price_eur", "").isEmpty()) {
            scale(base, cells, "price_eur", 0.75, 1.35, 0.1);
        }
        cells.put("set", pick(SETS));
        int supply = random.nextInt(20);
        cells.put("supply", supply < 2 ? "order" : supply == 2 ? "last" : "");
        cells.put("weighed", random.nextInt(8) == 0 ? text(Shapes.to(share(0.97, 1.03), 0.001)) : "");
        return cells;
    }

    private void scale(Design base, Map<String, String> cells, String column, double from, double to, double step) {
        cells.put(column, text(Math.max(step, Shapes.to(base.number(column) * share(from, to), step))));
    }

    private double share(double from, double to) {
        return from + (to - from) * random.nextDouble();
    }

    private String pick(List<String> words) {
        return words.get(random.nextInt(words.size()));
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
