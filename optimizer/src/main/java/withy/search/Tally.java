package withy.search;

import withy.objectives.ObjectiveVector;
import withy.rod.Balance;

/** Running sums of a build in the making, in the whole numbers of {@link ObjectiveVector}: what its score is made of, before it is measured. */
final class Tally {
    private long massMg;
    private long momentMgMm;
    private long inertiaMgMm2;
    private long costMilli;
    private long styleCenti;
    private long missedMilliSteps;

    /** A copy to go on with. */
    Tally copy() {
        Tally copy = new Tally();
        copy.massMg = massMg;
        copy.momentMgMm = momentMgMm;
        copy.inertiaMgMm2 = inertiaMgMm2;
        copy.costMilli = costMilli;
        copy.styleCenti = styleCenti;
        copy.missedMilliSteps = missedMilliSteps;
        return copy;
    }

    Tally add(Sums sums, long style, long missed) {
        add(sums.massMg(), sums.momentMgMm(), sums.inertiaMgMm2(), sums.costMilli());
        return looks(style, missed);
    }

    Tally add(Option<?> option) {
        option.addTo(this);
        return this;
    }

    Tally add(long mg, long mgMm, long mgMm2, long milli) {
        massMg += mg;
        momentMgMm += mgMm;
        inertiaMgMm2 += mgMm2;
        costMilli += milli;
        return this;
    }

    Tally looks(long style, long missed) {
        styleCenti += style;
        missedMilliSteps += missed;
        return this;
    }

    /** Cost of these sums under some prices, with what every build adds. */
    long cost(Linear k) {
        return k.constant()
                + k.of(massMg, momentMgMm, inertiaMgMm2, costMilli)
                - k.perStyleCenti() * styleCenti
                + k.perMilliStep() * missedMilliSteps;
    }

    /**
     * The objectives these sums make.
     *
     * @param classes classes of durability above what was asked that are credited
     */
    ObjectiveVector vector(Aim aim, long classes) {
        long outside = Balance.of(aim.brief(), massMg, momentMgMm).outsideMgMm();
        return new ObjectiveVector(massMg, outside, inertiaMgMm2, costMilli, styleCenti, classes, missedMilliSteps);
    }

    /** Score of these sums, or {@link TrainGraph#NONE} where they break a ceiling. */
    long score(Aim aim, long classes) {
        ObjectiveVector vector = vector(aim, classes);
        return aim.bounds().keeps(vector) ? aim.scoring().score(vector) : TrainGraph.NONE;
    }
}
