package withy.search;

import org.jspecify.annotations.Nullable;
import withy.objectives.Scoring;

/**
 * Linear prices of what a share adds: the score made linear. Sums with a ceiling enter through a multiplier, the balance zone through a slope
 * between its two sides, so that no legal build's true score is below its linear cost plus {@code constant}.
 *
 * @param perMg per mg
 * @param perMgMm per mg·mm of moment about the reel foot
 * @param perMgMm2 per mg·mm² about the hand
 * @param perMilli per thousandth of a minor unit of cost
 * @param perStyleCenti worth of a hundredth of a style point
 * @param perMilliStep per thousandth of a step of a missed wish
 * @param constant what every build adds
 */
record Linear(
        long perMg, long perMgMm, long perMgMm2, long perMilli, long perStyleCenti, long perMilliStep, long constant) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Linear that
                && perMg == that.perMg
                && perMgMm == that.perMgMm
                && perMgMm2 == that.perMgMm2
                && perMilli == that.perMilli
                && perStyleCenti == that.perStyleCenti
                && perMilliStep == that.perMilliStep
                && constant == that.constant;
    }

    @Override
    public int hashCode() {
        int hash = Long.hashCode(perMg);
        hash = 31 * hash + Long.hashCode(perMgMm);
        hash = 31 * hash + Long.hashCode(perMgMm2);
        hash = 31 * hash + Long.hashCode(perMilli);
        hash = 31 * hash + Long.hashCode(perStyleCenti);
        hash = 31 * hash + Long.hashCode(perMilliStep);
        return 31 * hash + Long.hashCode(constant);
    }

    /** Cost of what adds so much. */
    long of(Sums s) {
        return of(s.massMg(), s.momentMgMm(), s.inertiaMgMm2(), s.costMilli());
    }

    /** The same told one by one. */
    long of(long massMg, long momentMgMm, long inertiaMgMm2, long costMilli) {
        return perMg * massMg + perMgMm * momentMgMm + perMgMm2 * inertiaMgMm2 + perMilli * costMilli;
    }

    /** The same with its style points and missed wishes. */
    long of(Sums s, long styleCenti, long missedMilliSteps) {
        return of(s) - perStyleCenti * styleCenti + perMilliStep * missedMilliSteps;
    }

    /**
     * Least cost of a milligram between two places: c(u) = perMg + perMgMm·u + perMgMm2·(u + arm)², least at an end or at the vertex.
     *
     * @param fromMm told from the reel foot, mm
     * @param toMm told from the reel foot, mm
     * @param armMm from hand to foot, mm
     */
    double leastPerMg(double fromMm, double toMm, double armMm) {
        double least = Math.min(perMgAt(fromMm, armMm), perMgAt(toMm, armMm));
        if (perMgMm2 > 0) {
            double vertex = -armMm - perMgMm / (2.0 * perMgMm2);
            if (vertex > fromMm && vertex < toMm) {
                least = Math.min(least, perMgAt(vertex, armMm));
            }
        }
        return least;
    }

    /** Cost of a milligram at a place told from the reel foot. */
    double perMgAt(double u, double armMm) {
        return perMg + perMgMm * u + perMgMm2 * (u + armMm) * (u + armMm);
    }

    /** What one step of everything that has a price costs, where these are the prices of a step each. */
    double perStep(Scoring step) {
        return Math.abs((double) perMg) / step.perMg()
                + Math.abs((double) perMgMm) / step.perOutsideMgMm()
                + Math.abs((double) perMgMm2) / step.perMgMm2()
                + Math.abs((double) perMilli) / step.perCostMilli()
                + Math.abs((double) perStyleCenti) / step.perStyleCenti();
    }

    /** True where nothing but where weight hangs has a price. */
    boolean isMoment() {
        return perMgMm != 0 && perMgMm2 == 0 && perMilli == 0 && perStyleCenti == 0 && perMilliStep == 0;
    }

    /** Every price so many times. */
    Linear times(long n) {
        return new Linear(
                perMg * n, perMgMm * n, perMgMm2 * n, perMilli * n, perStyleCenti * n, perMilliStep * n, constant * n);
    }

    /** What both cost together. */
    Linear plus(Linear other) {
        return new Linear(
                perMg + other.perMg,
                perMgMm + other.perMgMm,
                perMgMm2 + other.perMgMm2,
                perMilli + other.perMilli,
                perStyleCenti + other.perStyleCenti,
                perMilliStep + other.perMilliStep,
                constant + other.constant);
    }

    /** The same but for what every build adds. */
    Linear withoutConstant() {
        return constant == 0 ? this : new Linear(perMg, perMgMm, perMgMm2, perMilli, perStyleCenti, perMilliStep, 0);
    }
}
