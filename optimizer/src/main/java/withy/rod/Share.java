package withy.rod;

/**
 * What one placed part adds to the rod, in whole numbers so that sums are exact in any order: itself, and the thread, finish, glue and tape
 * that hold it.
 *
 * @param partMg the part as fitted, mg (all pieces of the station)
 * @param threadMg thread, mg
 * @param finishMg cured finish, mg
 * @param glueMg adhesive, mg
 * @param tapeMg tape rings, mg
 * @param momentMgMm Σ m·(x − reel foot), mg·mm
 * @param inertiaMgMm2 Σ m·(x − hand)² + own inertia, mg·mm²
 * @param partCostMilli price of the part, thousandths of a minor unit
 * @param threadCostMilli price of the thread used
 * @param labourCostMilli price of the work
 * @param finishUl finish applied, µl, both coats together
 * @param threadMm thread used, mm
 */
public record Share(
        long partMg,
        long threadMg,
        long finishMg,
        long glueMg,
        long tapeMg,
        long momentMgMm,
        long inertiaMgMm2,
        long partCostMilli,
        long threadCostMilli,
        long labourCostMilli,
        long finishUl,
        long threadMm) {

    /** Nothing. */
    public static final Share NONE = new Share(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    /** Whole mass, mg. */
    public long massMg() {
        return partMg + threadMg + finishMg + glueMg + tapeMg;
    }

    /** Cost before fixed consumables, margin and tax, thousandths of a minor unit. */
    public long costMilli() {
        return partCostMilli + threadCostMilli + labourCostMilli;
    }

    /** Both together. */
    public Share plus(Share o) {
        return new Share(
                partMg + o.partMg,
                threadMg + o.threadMg,
                finishMg + o.finishMg,
                glueMg + o.glueMg,
                tapeMg + o.tapeMg,
                momentMgMm + o.momentMgMm,
                inertiaMgMm2 + o.inertiaMgMm2,
                partCostMilli + o.partCostMilli,
                threadCostMilli + o.threadCostMilli,
                labourCostMilli + o.labourCostMilli,
                finishUl + o.finishUl,
                threadMm + o.threadMm);
    }
}
