package withy.search;

import withy.rod.Share;

/**
 * What of a share counts for the choice, or of several together.
 *
 * @param massMg whole mass, mg
 * @param momentMgMm Σ m·(x − reel foot), mg·mm
 * @param inertiaMgMm2 Σ m·(x − hand)² + own inertia, mg·mm²
 * @param costMilli cost before fixed consumables, margin and tax, thousandths of a minor unit
 */
record Sums(long massMg, long momentMgMm, long inertiaMgMm2, long costMilli) {
    /** Of nothing. */
    static final Sums NONE = new Sums(0, 0, 0, 0);

    static Sums of(Share share) {
        return new Sums(share.massMg(), share.momentMgMm(), share.inertiaMgMm2(), share.costMilli());
    }

    /** Both together. */
    Sums plus(Sums other) {
        return new Sums(
                massMg + other.massMg,
                momentMgMm + other.momentMgMm,
                inertiaMgMm2 + other.inertiaMgMm2,
                costMilli + other.costMilli);
    }
}
