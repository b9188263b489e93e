package withy.rod;

import withy.catalog.Grip;
import withy.catalog.Material;
import withy.mechanics.Frustum;
import withy.mechanics.MassSum;
import withy.mechanics.TaperProfile;

/**
 * A grip as it ends up on the blank.
 *
 * <p>Rigid grips (cork, wood, carbon …) are reamed to the blank + {@value #REAM_OVER_MM} mm where their bore is tighter; foams stretch while
 * their bore is at least {@value #STRETCH_MIN} of the blank and are reamed to {@value #STRETCH_REAM} of it where it is tighter. Mass =
 * density as sold × what is left.
 *
 * @param boreRearMm bore at the rear end as fitted, mm
 * @param boreFrontMm bore at the front end as fitted, mm
 * @param thickMm the blank at its thickest under the grip, mm
 * @param tapeGapMm radial gap to be filled with tape rings, mm; 0 where the bore is close enough
 */
public record GripFit(double boreRearMm, double boreFrontMm, double thickMm, double tapeGapMm) {
    /** Reamed bore over the blank, mm (trade table 0.1–0.3). */
    public static final double REAM_OVER_MM = 0.2;

    /** Loosest bore over the blank that glue alone fills, mm (handbook, rule 10). */
    public static final double LOOSE_MM = 0.3;

    /** Tightest foam bore that stretches, as a share of the blank (handbook, rule 10). */
    public static final double STRETCH_MIN = 0.85;

    /** What a tighter foam bore is reamed to. ASSUMED, the middle of the handbook's 0.85–1.0. */
    public static final double STRETCH_REAM = 0.95;

    /** Works the fit out; the grip's rear end lies at {@code fromMm}. */
    public static GripFit of(Grip grip, TaperProfile profile, double fromMm, double lengthMm) {
        double rear = profile.at(fromMm);
        double front = profile.at(fromMm + lengthMm);
        double thick = profile.largestBetween(fromMm, fromMm + lengthMm);
        boolean soft = stretches(grip);
        double boreRear = soft ? foamBore(grip.boreMm(), thick) : Math.max(grip.boreMm(), rear + REAM_OVER_MM);
        double boreFront = soft ? foamBore(grip.boreMm(), thick) : Math.max(grip.boreMm(), front + REAM_OVER_MM);
        double loose = soft ? grip.boreMm() - thick : grip.boreMm() - thick - LOOSE_MM;
        double tapeGap = loose > 0 ? (grip.boreMm() - thick) / 2 : 0;
        return new GripFit(boreRear, boreFront, thick, tapeGap);
    }

    /** The fitted grip as masses along the rod, g; its rear end at {@code fromMm}. */
    public MassSum mass(Grip grip, double fromMm, double lengthMm) {
        return shape(grip, lengthMm, boreRearMm, boreFrontMm).moved(fromMm).scaled(densityGCm3(grip));
    }

    /** Density as sold, g/cm³. */
    public static double densityGCm3(Grip grip) {
        return grip.massMg() / 1000.0 / soldCm3(grip);
    }

    /** Volume as sold, cm³. */
    private static double soldCm3(Grip grip) {
        double outer = square(grip.rearOdMm(), grip.midOdMm()) + square(grip.midOdMm(), grip.frontOdMm());
        double bore = grip.boreMm() * grip.boreMm();
        return Math.PI / 4 * grip.lengthMm() * (outer / 2 - bore) / 1000;
    }

    /** Mean square diameter of a frustum, mm². */
    private static double square(double d0, double d1) {
        return (d0 * d0 + d0 * d1 + d1 * d1) / 3;
    }

    /** True for grips whose bore stretches over the blank instead of being reamed. */
    public static boolean stretches(Grip grip) {
        Material material = grip.facts().material();
        return material == Material.EVA || material == Material.FOAM || material == Material.RUBBER;
    }

    private static double foamBore(double boreMm, double thickMm) {
        return boreMm >= STRETCH_MIN * thickMm ? boreMm : STRETCH_REAM * thickMm;
    }

    /** Two frusta, rear to middle and middle to front, of density 1 g/cm³; a bore wider than the outside leaves nothing. */
    private static MassSum shape(Grip grip, double lengthMm, double boreRear, double boreFront) {
        double half = lengthMm / 2;
        double boreMid = (boreRear + boreFront) / 2;
        return piece(half, grip.rearOdMm(), grip.midOdMm(), boreRear, boreMid)
                .plus(piece(half, grip.midOdMm(), grip.frontOdMm(), boreMid, boreFront)
                        .moved(half));
    }

    private static MassSum piece(double lengthMm, double od0, double od1, double bore0, double bore1) {
        Frustum left = new Frustum(lengthMm, od0, od1, Math.min(bore0, od0), Math.min(bore1, od1));
        return left.volumeMm3() > 0 ? left.at(0, 1.0) : MassSum.NONE;
    }
}
