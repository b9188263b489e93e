package withy.rod;

import withy.mechanics.MassSum;

/** Collects one part's share and rounds it once. */
final class ShareSum {
    private final double footMm;
    private final double handMm;
    private final double finishDensity;
    private final Consumables with;
    private final Tariff tariff;

    private long partMg;
    private double threadG;
    private double finishG;
    private double glueG;
    private double tapeG;
    private double momentGmm;
    private double inertiaGmm2;
    private double finishUl;
    private double threadMm;
    private long partMilli;
    private long labourMilli;

    ShareSum(Setting setting, Consumables with, Tariff tariff) {
        this.footMm = setting.footMm();
        this.handMm = setting.handMm();
        this.with = with;
        this.tariff = tariff;
        this.finishDensity = with.finish().densityGMl();
    }

    /** The part itself; its weight counts as the whole milligrams told beside the masses. */
    ShareSum part(MassSum mass, long mg) {
        partMg += mg;
        momentGmm += mass.firstGmm() - mass.massG() * footMm;
        inertiaGmm2 += mass.inertiaGmm2(handMm);
        return this;
    }

    ShareSum wrap(Wraps.Wrap wrap) {
        threadG += wrap.threadG();
        threadMm += wrap.threadMm();
        at(wrap.threadG(), wrap.xMm());
        return coat(wrap.finishUl(), wrap.xMm());
    }

    ShareSum coat(double ul, double xMm) {
        double massG = ul / 1000 * finishDensity;
        finishG += massG;
        finishUl += ul;
        at(massG, xMm);
        return this;
    }

    ShareSum glue(double massG, double xMm) {
        glueG += massG;
        at(massG, xMm);
        return this;
    }

    ShareSum tape(double massG, double xMm) {
        tapeG += massG;
        at(massG, xMm);
        return this;
    }

    ShareSum cost(long partMilli, long labourMilli) {
        this.partMilli += partMilli;
        this.labourMilli += labourMilli;
        return this;
    }

    Share share() {
        return new Share(
                partMg,
                Math.round(threadG * 1000),
                Math.round(finishG * 1000),
                Math.round(glueG * 1000),
                Math.round(tapeG * 1000),
                Math.round(momentGmm * 1000),
                Math.round(inertiaGmm2 * 1000),
                partMilli,
                tariff.threadMilli(with.thread(), threadMm),
                labourMilli,
                Math.round(finishUl),
                Math.round(threadMm));
    }

    private void at(double massG, double xMm) {
        momentGmm += massG * (xMm - footMm);
        inertiaGmm2 += massG * (xMm - handMm) * (xMm - handMm);
    }
}
