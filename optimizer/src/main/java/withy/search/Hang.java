package withy.search;

import java.util.List;
import withy.catalog.Blank;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.BlankShape;

/** Which way a rod can hang in its balance zone, told before its parts are chosen. */
final class Hang {
    /** Bores looser than this over the blank are refused whatever fills them, mm. */
    private static final double LOOSEST_BORE_MM = 2;

    /** Glue, arbors and rings of a handle weigh less than this, g. */
    private static final double GLUE_AND_RINGS_G = 15;

    private Hang() {}

    /** False where blank and reel alone keep the rod from hanging behind its zone, whatever a handle weighs. */
    static boolean mayBeBehind(Ground ground, BlankShape shape) {
        Blank blank = shape.blank();
        double near = ground.brief.zoneNearMm();
        for (int foot : ground.feet) {
            double ahead = shape.mass().firstGmm()
                    - shape.mass().massG() * (foot + near)
                    + ground.brief.reel().massG() * (ground.brief.reel().centreOffsetMm() - near);
            double behind = heaviestG(ground, PartKind.REEL_SEAT) * (near + Ground.LONGEST_CAP_MM)
                    + heaviestGripsG(ground, blank) * (foot + near)
                    + heaviestG(ground, PartKind.BUTT_CAP) * (foot + near + Ground.LONGEST_CAP_MM)
                    + GLUE_AND_RINGS_G * (foot + near);
            if (ahead < behind) {
                return true;
            }
        }
        return false;
    }

    /** Heaviest grips of a handle on a blank: one full, or rear and butt grip, no longer than the reach. */
    private static double heaviestGripsG(Ground ground, Blank blank) {
        return Math.max(
                heaviestG(ground, blank, ground.fullGrips),
                heaviestG(ground, blank, ground.rearGrips) + heaviestG(ground, blank, ground.buttGrips));
    }

    private static double heaviestG(Ground ground, Blank blank, List<Grip> grips) {
        double heaviest = 0;
        for (Grip grip : grips) {
            if (!ground.ruled("grip-on-blank") || grip.boreMm() <= blank.buttOdMm() + LOOSEST_BORE_MM) {
                double share = Math.min(1, ground.brief.reachMaxMm() / grip.lengthMm());
                heaviest = Math.max(heaviest, grip.massMg() / 1000.0 * share);
            }
        }
        return heaviest;
    }

    private static double heaviestG(Ground ground, PartKind kind) {
        return ground.candidates.of(kind).stream().mapToLong(Part::massMg).max().orElse(0) / 1000.0;
    }
}
