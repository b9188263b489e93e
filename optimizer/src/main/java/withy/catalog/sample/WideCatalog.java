package withy.catalog.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.sample.DesignTable.Design;

/**
 * Fills a catalogue of any size with varied designs. Kinds keep their shares (in thousandths: blanks 110, seats 70, hoods 40, caps 50, checks 170,
 * guides and tip-tops 330, small parts and consumables 60); grips take the rest, so that the size is met exactly.
 */
final class WideCatalog {
    /** Smallest size that still holds one of each design. */
    static final int LEAST = 1000;

    private final int size;
    private final Variation variation;
    private final List<Part> parts = new ArrayList<>();

    private WideCatalog(int size, long seed) {
        this.size = size;
        this.variation = new Variation(seed);
    }

    static Catalog of(int size, long seed) {
        if (size < LEAST) {
            throw new IllegalArgumentException(
                    "a generated catalogue of " + size + " parts is too small. Allowed: from " + LEAST + ".");
        }
        return new WideCatalog(size, seed).filled();
    }

    private Catalog filled() {
        group(110, "blank-designs.csv", row -> {
            Design design = variation.blank(row);
            return List.of(BlankDesign.of(design).blank(design));
        });
        group(70, "seat-designs.csv", row -> HandleParts.seats(variation.seat(row)));
        group(40, "hood-designs.csv", row -> HandleParts.hoods(variation.hood(row), SampleCatalogs.hoodG(row)));
        group(50, "cap-designs.csv", row -> HandleParts.caps(variation.cap(row)));
        group(170, "check-designs.csv", row -> HandleParts.checks(variation.check(row)));
        group(330, "guide-designs.csv", row -> {
            Design family = variation.family(row);
            List<Part> all = new ArrayList<>(GuideParts.guides(family));
            all.addAll(GuideParts.tipTops(family));
            return all;
        });
        List<Design> small = DesignTable.rows("small-designs.csv");
        small.forEach(row -> parts.add(BenchParts.part(row)));
        int wanted = size * 60 / 1000 - small.size();
        for (int i = 0; i < wanted; i++) {
            parts.add(BenchParts.part(variation.small(small.get(i % small.size()))));
        }
        List<Design> grips = DesignTable.rows("grip-designs.csv");
        for (int i = 0; parts.size() < size; i++) {
            parts.add(HandleParts.grip(variation.grip(grips.get(i % grips.size()))));
        }
        return new Catalog(SampleRates.rates(), SampleCatalogs.AS_OF, "", parts);
    }

    /** Goes round the designs of a kind while a whole group still fits its share. */
    private void group(int thousandths, String table, Function<Design, List<? extends Part>> maker) {
        List<Design> designs = new ArrayList<>();
        for (Design row : DesignTable.rows(table)) {
            designs.addAll(Collections.nCopies(Integer.parseInt(row.textOr("wide_share", "1")), row));
        }
        int share = (int) ((long) size * thousandths / 1000);
        int made = 0;
        for (int i = 0; made < share; i++) {
            List<? extends Part> group = maker.apply(designs.get(i % designs.size()));
            parts.addAll(group);
            made += group.size();
        }
    }
}
