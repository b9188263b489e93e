package withy.app;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import withy.catalog.Material;
import withy.explain.Phrases;
import withy.rod.Placed;
import withy.rod.Rod;

/** What to mind (handbook, section 8), each only where a shown build gives cause. */
final class Cautions {
    private static final Set<Material> CONDUCTS = EnumSet.of(Material.CARBON, Material.COMPOSITE);
    private static final Set<Material> DUSTY = EnumSet.of(
            Material.CARBON, Material.GLASS, Material.COMPOSITE, Material.CORK, Material.RUBBER_CORK, Material.WOOD);

    private Cautions() {}

    static List<String> of(List<Rod> rods) {
        return list(rods, false, rods.stream().anyMatch(Cautions::weightTold));
    }

    /** Those beside figures that tell of weight in the butt. */
    static List<String> withWeight(List<Rod> rods) {
        return list(rods, false, true);
    }

    /** Those that concern who builds the rod: blades, what turns and what burns, too. */
    static List<String> atBench(List<Rod> rods) {
        return list(rods, true, rods.stream().anyMatch(Cautions::weightTold));
    }

    private static List<String> list(List<Rod> rods, boolean bench, boolean weight) {
        List<String> list = new ArrayList<>();
        if (rods.isEmpty()) {
            return list;
        }
        if (rods.stream()
                .anyMatch(r -> CONDUCTS.contains(r.setting().blank().facts().material()))) {
            list.add(Phrases.of("caution.carbon"));
        }
        if (rods.stream().flatMap(r -> r.placed().values().stream()).anyMatch(Cautions::makesDust)) {
            list.add(Phrases.of("caution.dust"));
        }
        list.add(Phrases.of("caution.epoxy"));
        if (weight) {
            list.add(Phrases.of("caution.lead"));
        }
        if (bench) {
            list.add(Phrases.of("caution.edges"));
        }
        list.add(Phrases.of("caution.ratings"));
        list.add(Phrases.of("caution.rules"));
        return list;
    }

    /** Those that concern who fishes with the rod. */
    static List<String> forCustomer(List<Rod> rods) {
        List<String> bench = Stream.of("caution.dust", "caution.epoxy", "caution.lead")
                .map(Phrases::of)
                .toList();
        return of(rods).stream().filter(caution -> !bench.contains(caution)).toList();
    }

    private static boolean weightTold(Rod rod) {
        return BuildSheet.FigureLines.outside(rod.figures().balanceOutsideZoneNmm())
                && rod.figures().counterweightG() > 0;
    }

    /** Blanks are abraded under every wrap and grip, grips and arbors reamed. */
    private static boolean makesDust(Placed placed) {
        return switch (placed.part().kind()) {
            case BLANK, GRIP, ARBOR -> DUSTY.contains(placed.part().facts().material());
            default -> false;
        };
    }
}
