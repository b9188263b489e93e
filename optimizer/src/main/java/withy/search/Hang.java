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

    private final Ground ground;
    private final double heaviestSeatG;
    private final double heaviestCapG;
    /** True where no grip goes on that is much too wide for the blank. */
    private final boolean boreRuled;

    Hang(Ground ground) {
        this.ground = ground;
        this.heaviestSeatG = heaviestG(PartKind.REEL_SEAT);
        this.heaviestCapG = heaviestG(PartKind.BUTT_CAP);
        this.boreRuled = ground.ruled("grip-on-blank");
    }

    /** False where blank and reel alone keep the rod from hanging behind its zone, whatever a handle weighs. */
    boolean mayBeBehind(BlankShape shape) {
        double near = ground.brief.zoneNearMm();
        double grips = heaviestGripsG(shape.blank());
        for (int foot : ground.feet) {
            double ahead = shape.mass().firstGmm()
                    - shape.mass().massG() * (foot + near)
                    + ground.brief.reel().massG() * (ground.brief.reel().centreOffsetMm() - near);
            double behind = heaviestSeatG * (near + Ground.LONGEST_CAP_MM)
                    + grips * (foot + near)
                    + heaviestCapG * (foot + near + Ground.LONGEST_CAP_MM)
                    + GLUE_AND_RINGS_G * (foot + near);
            if (ahead < behind) {
                return true;
            }
        }
        return false;
    }

    /** Heaviest grips of a handle on a blank: one full, or rear and butt grip, no longer than the reach. */
    private double heaviestGripsG(Blank blank) {
        return Math.max(
                heaviestG(blank, ground.fullGrips),
                heaviestG(blank, ground.rearGrips) + heaviestG(blank, ground.buttGrips));
    }

    private double heaviestG(Blank blank, List<Grip> grips) {
        double heaviest = 0;
        for (Grip grip : grips) {
            if (!boreRuled || grip.boreMm() <= blank.buttOdMm() + LOOSEST_BORE_MM) {
                double share = Math.min(1, ground.brief.reachMaxMm() / grip.lengthMm());
                heaviest = Math.max(heaviest, grip.massMg() / 1000.0 * share);
            }
        }
        return heaviest;
    }

    private double heaviestG(PartKind kind) {
        return ground.candidates.of(kind).stream().mapToLong(Part::massMg).max().orElse(0) / 1000.0;
    }
}
