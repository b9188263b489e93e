package withy.machine;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.PartKind;
import withy.mechanics.NaturalFrequency.PointMass;
import withy.mechanics.PointLoad;
import withy.mechanics.TubeMass;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;

/**
 * What the blank carries ahead of the handle, as masses at places.
 *
 * @param what group it belongs to
 * @param station where it belongs
 * @param sMm along the blank, mm from the butt
 * @param massG g
 */
public record Carried(Group what, Station station, double sMm, double massG) {
    /** Groups whose cost in quickness is told. */
    public enum Group {
        GUIDES,
        WRAPS,
        TIP_TOP,
        FERRULES,
        OTHER
    }

    private static final double MG_PER_G = 1000;

    /** All of it, from butt to tip; what lies behind the front of the handle is left out. */
    public static List<Carried> of(Rod rod) {
        List<Carried> all = new ArrayList<>();
        for (BlankShape.Joint joint : rod.setting().shape().joints()) {
            double wrapsG = wrapsG(shareOf(rod, Station.BLANK))
                    / rod.setting().shape().joints().size();
            all.add(new Carried(Group.FERRULES, Station.BLANK, (joint.fromMm() + joint.toMm()) / 2, wrapsG));
        }
        for (Placed placed : rod.placed().values()) {
            Share share = shareOf(rod, placed.station());
            if (placed.part().kind() == PartKind.GUIDE) {
                all.add(new Carried(Group.GUIDES, placed.station(), placed.fromMm(), share.partMg() / MG_PER_G));
                all.add(new Carried(Group.WRAPS, placed.station(), placed.fromMm(), wrapsG(share)));
            } else if (placed.part().kind() == PartKind.TIP_TOP) {
                all.add(new Carried(Group.TIP_TOP, placed.station(), placed.fromMm(), share.massMg() / MG_PER_G));
            } else if (placed.part().kind() == PartKind.KEEPER || placed.part().kind() == PartKind.DECAL) {
                all.add(new Carried(
                        Group.OTHER,
                        placed.station(),
                        (placed.fromMm() + placed.toMm()) / 2,
                        share.massMg() / MG_PER_G));
            }
        }
        all.removeIf(carried -> carried.sMm() <= rod.handleFrontMm() || !(carried.massG() > 0));
        return all;
    }

    /** The blank without the lumps of its ferrules. */
    static TubeMass withoutLumps(TubeMass tube) {
        double lumpsG = tube.lumps().stream().mapToDouble(TubeMass.Lump::massG).sum();
        return TubeMass.of(tube.profile(), tube.massG() - lumpsG, tube.exponent(), List.of());
    }

    PointMass mass() {
        return new PointMass(sMm, massG);
    }

    PointLoad load() {
        return PointLoad.hung(sMm, massG);
    }

    private static double wrapsG(Share share) {
        return (share.massMg() - share.partMg()) / MG_PER_G;
    }

    private static Share shareOf(Rod rod, Station station) {
        Share share = rod.shares().get(station);
        return share == null ? Share.NONE : share;
    }
}
