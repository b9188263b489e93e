package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
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
    private final List<Double> tubeDepths = new ArrayList<>();

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

    /** How deep the tubes of the tip-tops are, mm, each depth once: what glues and dresses a tip-top depends on that only. */
    List<Double> tubeDepths() {
        return tubeDepths;
    }

    /** Feet of a guide. */
    record Feet(int count, double lengthMm) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Feet that && count == that.count && Double.compare(lengthMm, that.lengthMm) == 0;
        }

        @Override
        public int hashCode() {
            return 31 * count + Double.hashCode(lengthMm);
        }
    }

    /** Pieces there are of a guide; the largest number where more can be had in time. */
    int pieces(Guide guide) {
        Supply supply = Supply.of(guide, ground.brief, ground.catalog.asOf());
        return counted && !supply.orderable() ? supply.free() : Integer.MAX_VALUE;
    }

    /** Index of a guide's foot shape. */
    int shapeOf(Guide guide) {
        return index(footShapes, new Feet(guide.feet(), guide.footLengthMm()));
    }

    /** Index of how deep the tube of a tip-top is. */
    int depthOf(TipTop tipTop) {
        return index(tubeDepths, tipTop.tubeDepthMm());
    }

    private static <T> int index(List<T> known, T one) {
        int index = known.indexOf(one);
        if (index < 0) {
            known.add(one);
            return known.size() - 1;
        }
        return index;
    }
}
