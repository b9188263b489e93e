package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.rules.Supply;

/**
 * The guides still offered, in groups of which one train is made, with which guide may follow which. Worked out once a question: whether one
 * guide may follow another depends on brief and number only, never on the layout.
 */
final class GuideTable {
    /** Guide numbers from here on are all runners and asked alike. */
    static final int RUNNER = 4;

    private final Ground ground;
    /** True where a rule counts pieces. */
    private final boolean counted;

    private final List<GuideGroup> groups = new ArrayList<>();
    private final List<Feet> footShapes = new ArrayList<>();

    GuideTable(Ground ground) {
        this.ground = ground;
        this.counted = ground.ruled("stock");
        boolean oneFinish = ground.ruled("guide-train");
        Map<String, List<Guide>> byFinish = new LinkedHashMap<>();
        for (Guide guide : ground.candidates.of(PartKind.GUIDE, Guide.class)) {
            String key = oneFinish ? guide.frameFinish() + "|" + guide.ringMaterial() : "";
            byFinish.computeIfAbsent(key, k -> new ArrayList<>()).add(guide);
        }
        byFinish.forEach((key, guides) -> groups.add(new GuideGroup(this, ground, guides, tipTops(key, oneFinish))));
    }

    private List<TipTop> tipTops(String key, boolean oneFinish) {
        List<TipTop> fitting = new ArrayList<>();
        for (TipTop tipTop : ground.candidates.of(PartKind.TIP_TOP, TipTop.class)) {
            if (!oneFinish || key.equals(tipTop.frameFinish() + "|" + tipTop.ringMaterial())) {
                fitting.add(tipTop);
            }
        }
        return fitting;
    }

    List<GuideGroup> groups() {
        return groups;
    }

    /** Foot shapes (feet, foot length) of all guides: what thread a guide takes depends on its feet and number only. */
    List<Feet> footShapes() {
        return footShapes;
    }

    /** Feet of a guide. */
    record Feet(int count, double lengthMm) {}

    /** Pieces there are of a guide; the largest number where more can be had in time. */
    int pieces(Guide guide) {
        Supply supply = Supply.of(guide, ground.brief, ground.catalog.asOf());
        return counted && !supply.orderable() ? supply.free() : Integer.MAX_VALUE;
    }

    /** Index of a guide's foot shape. */
    int shapeOf(Guide guide) {
        Feet feet = new Feet(guide.feet(), guide.footLengthMm());
        int known = footShapes.indexOf(feet);
        if (known < 0) {
            footShapes.add(feet);
            return footShapes.size() - 1;
        }
        return known;
    }
}
