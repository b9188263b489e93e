package withy.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.catalog.Material;
import withy.catalog.RodType;
import withy.fixture.Changed;

/** Not asked for: what the program itself means by that, told again. */
final class Unasked {
    private static final double[] PALMS = {75, 85, 95, 105};

    private Unasked() {}

    static List<Brief> but(Brief brief, Set<String> kept) {
        Brief one = brief;
        one = drop(one, kept, "lengthMm", "lengthMinMm", 900.0, "lengthMaxMm", 6000.0);
        one = drop(one, kept, "pieces", "piecesMin", 1, "piecesMax", 9);
        one = drop(one, kept, "packedMaxMm", "packedMaxMm", null);
        one = drop(one, kept, "landing", "landing", Brief.Landing.NET);
        one = drop(one, kept, "largestFish", "largestFishKg", 0.1);
        one = drop(one, kept, "lure.usual", "lure.usualG", 500.0);
        one = drop(one, kept, "lure.heaviest", "lure.heaviestG", 0.1);
        double line = brief.leader() == null ? leastKg(one) : 0.05;
        line = Math.min(line, brief.line().strengthKg());
        one = drop(one, kept, "line.strength", "line.strengthKg", line, "line.diameterMm", 0.03);
        one = brief.line().gauge() == null ? one : drop(one, kept, "line.strength", "line.gauge", 0.01);
        one = drop(one, kept, "line.kind", "line.kind", Brief.LineKind.NYLON);
        one = drop(one, kept, "durabilityClass", "durabilityClass", 1);
        one = drop(one, kept, "water", "corrosionClass", 1);
        boolean surf = brief.rodType() == RodType.SURF_SPINNING;
        one = drop(one, kept, "reachMm", "reachMinMm", Math.min(surf ? 500 : 150, brief.reachMinMm()));
        one = drop(one, kept, "reachMm", "reachMaxMm", Math.max(surf ? 800 : 450, brief.reachMaxMm()));
        for (String wish : List.of("form", "foreGrip", "trigger", "movingHood", "keeper", "action")) {
            one = drop(one, kept, "handle." + wish, "handle." + wish, null);
        }
        one = drop(one, kept, "handle.mixedGrips", "handle.mixedGrips", true);
        one = drop(one, kept, "budgetMinor", "budgetMinor", null);
        one = drop(one, kept, "wantedBy", "wantedBy", null);
        if (brief.leader() != null) {
            double kg = leastKg(one);
            double thin =
                    brief.leader().diameterMm() * Math.sqrt(kg / brief.leader().strengthKg());
            one = drop(one, kept, "leader.strength", "leader.strengthKg", kg, "leader.diameterMm", thin);
            one = drop(one, kept, "leader.knot", "leader.castThroughRings", false);
        }
        Set<Material> refused = new TreeSet<>(one.look().refusedMaterials());
        refused.removeIf(material -> !kept.contains("look.refusedMaterials " + material.word()));
        one = Changed.with(one, "look.refusedMaterials", refused);
        one = Changed.with(one, "insisted", asked(one.insisted(), kept, "insisted"));
        one = Changed.with(one, "refused", asked(one.refused(), kept, "refused"));
        return bodies(one, kept);
    }

    /** A fish swung aboard hangs on the leader with half its weight more, and a knot leaves four fifths of the strength. */
    private static double leastKg(Brief brief) {
        boolean lifted = brief.landing() == Brief.Landing.LIFTED;
        return lifted ? Math.max(0.05, brief.largestFishKg() * 1.5 / 0.8) : 0.05;
    }

    private static List<PartWish> asked(List<PartWish> wishes, Set<String> kept, String field) {
        return wishes.stream()
                .filter(wish -> !wish.hard() || kept.contains(field + " " + wish.partId()))
                .toList();
    }

    private static Brief drop(Brief brief, Set<String> kept, String field, Object... values) {
        Brief one = brief;
        for (int i = 0; i < values.length && !kept.contains(field + " "); i += 2) {
            one = Changed.with(one, (String) values[i], values[i + 1]);
        }
        return one;
    }

    private static List<Brief> bodies(Brief brief, Set<String> kept) {
        List<Brief> palms = new ArrayList<>(List.of(brief));
        for (double palm : PALMS) {
            if (!kept.contains("hand ")) {
                palms.add(Changed.with(brief, "palmMm", palm));
            }
        }
        List<Brief> all = new ArrayList<>(palms);
        for (Brief.Reel reel : withy.brief.UsualReels.of(brief.rodType())) {
            for (Brief palm : palms) {
                if (!kept.contains("reel ")) {
                    all.add(Changed.with(palm, "reel", reel));
                }
            }
        }
        return all;
    }
}
