package withy.rules;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.mechanics.KnotBulk;
import withy.mechanics.LineDiameter;

/**
 * Where the leader knot is cast through the rings, every ring's clear diameter is 1.5 times a slim knot and 2 times a bulky one.
 *
 * <p>The knot's diameter is the upper bound by geometry from the leader and the over-all diameter of the line (from memory, a bound, no
 * measurement).
 */
final class KnotClearance implements Rule {
    private static final Map<Brief.Knot, KnotBulk> BULK = bulk();

    @Override
    public String code() {
        return "knot-clearance";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (part instanceof Guide guide) {
            ring(brief, guide.ringIdMm(), part.id(), bench);
        } else if (part instanceof TipTop tipTop) {
            ring(brief, tipTop.ringIdMm(), part.id(), bench);
        }
    }

    private static void ring(Brief brief, double ringIdMm, String partId, Bench bench) {
        Brief.Leader leader = brief.leader();
        if (leader == null || !leader.castThroughRings()) {
            bench.notApplicable("ring");
            return;
        }
        bench.atLeast("ring", ringIdMm, neededMm(brief.line(), leader), Unit.MM, partId);
    }

    /** Clear ring diameter the knot asks for, mm. */
    static double neededMm(Brief.MainLine line, Brief.Leader leader) {
        KnotBulk bulk = BULK.get(leader.knot());
        if (bulk == null) {
            throw new IllegalStateException("no bulk of knot " + leader.knot());
        }
        boolean braid = line.kind() == Brief.LineKind.BRAID;
        return bulk.ringNeededMm(leader.diameterMm(), LineDiameter.overallMm(line.diameterMm(), braid));
    }

    private static Map<Brief.Knot, KnotBulk> bulk() {
        Map<Brief.Knot, KnotBulk> map = new EnumMap<>(Brief.Knot.class);
        for (Brief.Knot knot : Brief.Knot.values()) {
            map.put(knot, KnotBulk.valueOf(knot.name()));
        }
        return Collections.unmodifiableMap(map);
    }
}
