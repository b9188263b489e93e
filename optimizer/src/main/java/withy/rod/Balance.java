package withy.rod;

import withy.brief.Brief;
import withy.mechanics.MassSum;

/**
 * How rod and reel hang, in whole milligrams and milligram-millimetres: M·b is exact because zone edges are whole millimetres.
 *
 * @param massMg rod and reel, mg
 * @param momentMgMm Σ m·(x − reel foot) of rod and reel, mg·mm
 * @param nearMm near edge of the wanted zone, mm ahead of the foot
 * @param farMm far edge
 */
public record Balance(long massMg, long momentMgMm, long nearMm, long farMm) {

    /** N·mm in one mg·mm. */
    public static final double NMM_PER_MGMM = MassSum.NMM_PER_GMM / 1000;

    /** Of a rod's total with the brief's reel on it. */
    public static Balance of(Brief brief, long rodMg, long rodMomentMgMm) {
        return new Balance(
                rodMg + reelMg(brief),
                rodMomentMgMm + reelMomentMgMm(brief),
                Math.round(brief.zoneNearMm()),
                Math.round(brief.zoneFarMm()));
    }

    /** Mass of the reel with line, mg. */
    public static long reelMg(Brief brief) {
        return Math.round(brief.reel().massG() * 1000);
    }

    /** The reel's moment about its own foot, mg·mm. */
    public static long reelMomentMgMm(Brief brief) {
        return Math.round(brief.reel().massG() * 1000 * brief.reel().centreOffsetMm());
    }

    /** Moment ahead of the zone's far edge, mg·mm; negative behind it. */
    public long aheadMgMm() {
        return momentMgMm - farMm * massMg;
    }

    /** Moment behind the zone's near edge, mg·mm; negative ahead of it. */
    public long behindMgMm() {
        return nearMm * massMg - momentMgMm;
    }

    /** Moment by which the zone is missed, mg·mm; 0 inside. */
    public long outsideMgMm() {
        return Math.max(0, Math.max(aheadMgMm(), behindMgMm()));
    }

    /** Balance point ahead of the reel foot, mm. */
    public double pointMm() {
        return (double) momentMgMm / massMg;
    }
}
