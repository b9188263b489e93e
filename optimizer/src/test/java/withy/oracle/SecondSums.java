package withy.oracle;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Adhesive;
import withy.catalog.Finish;
import withy.catalog.Operation;
import withy.catalog.Part;
import withy.catalog.Rates;
import withy.catalog.WrapThread;

/** Sums of a rod, thing by thing: mass, first and second moment, money, tolerances; and the figures they come to. Grams and millimetres. */
class SecondSums {
    private static final double GRAVITY = 9.80665e-3;

    final SecondRod rod;
    final Rates rates;
    final Finish finish;
    final Adhesive adhesive;
    final Map<String, Double> tolerances = new TreeMap<>();

    double mass;
    double moment;
    double inertia;
    double finishMl;
    BigDecimal cost = BigDecimal.ZERO;

    private final WrapThread thread;

    SecondSums(SecondRod rod) {
        this.rod = rod;
        this.rates = rod.catalog.rates();
        this.thread = rod.thread;
        this.finish = rod.finish;
        this.adhesive = rod.adhesive;
    }

    double weightG() {
        return mass;
    }

    double toleranceG() {
        double squares = rates.workmanshipToleranceG() * rates.workmanshipToleranceG();
        for (double tolerance : tolerances.values()) {
            squares += tolerance * tolerance;
        }
        return Math.sqrt(squares);
    }

    private double reelG() {
        return rod.brief.reel().massG();
    }

    /** Σ m·(x − b) of rod and reel, x from the butt. */
    private double about(double b) {
        double reelX = rod.foot + rod.brief.reel().centreOffsetMm();
        return moment - mass * b + reelG() * (reelX - b);
    }

    double tipHeavyNmm() {
        return GRAVITY * about(rod.hand);
    }

    double balancePointMm() {
        return about(rod.foot) / (mass + reelG());
    }

    /** The zone's edges count in whole millimetres. */
    double outsideNmm() {
        double ahead = about(rod.foot + (double) Math.round(rod.brief.zoneFarMm()));
        double behind = -about(rod.foot + (double) Math.round(rod.brief.zoneNearMm()));
        return GRAVITY * Math.max(0, Math.max(ahead, behind));
    }

    double counterweightG() {
        double pivot = rod.foot + (double) Math.round(rod.brief.zoneFarMm());
        return Math.max(0, about(pivot)) / pivot;
    }

    double swingWeightKgM2() {
        return inertia * 1e-9;
    }

    /** Price before the one rounding. */
    BigDecimal priceMinor() {
        BigDecimal margin = BigDecimal.ONE.add(percent(rates.marginPercent()));
        BigDecimal tax = BigDecimal.ONE.add(percent(rates.taxPercent()));
        return cost.multiply(margin).multiply(tax);
    }

    void point(double grams, double x) {
        own(grams, x, 0);
    }

    void own(double grams, double x, double ownInertia) {
        mass += grams;
        moment += grams * x;
        inertia += grams * (x - rod.hand) * (x - rod.hand) + ownInertia;
    }

    void pay(@Nullable Part part, int pieces) {
        if (part != null && !rod.brief.owned().contains(part.id())) {
            cost = cost.add(BigDecimal.valueOf(part.facts().priceMinor() * pieces));
        }
    }

    void work(Operation operation, int times) {
        double minutes = rates.labourMinutes().getOrDefault(operation, 0.0);
        BigDecimal one = BigDecimal.valueOf(minutes)
                .multiply(BigDecimal.valueOf(rates.hourlyRateMinor()))
                .multiply(BigDecimal.ONE.subtract(percent(rates.labourDiscountPercent())))
                .divide(BigDecimal.valueOf(60), 12, RoundingMode.HALF_UP);
        cost = cost.add(one.multiply(BigDecimal.valueOf(times)));
    }

    void tolerance(@Nullable Part part, double share) {
        if (part != null) {
            tolerances.merge(part.id(), part.facts().weightTolG() * share, Double::sum);
        }
    }

    static double grams(Part part) {
        Double weighed = part.facts().measuredG();
        return weighed == null ? part.facts().weightG() : weighed;
    }

    void glue(double diameter, double length, double x) {
        point(Math.PI * diameter * length * rates.adhesiveFilmMm() * adhesive.densityGMl() / 1000, x);
    }

    void tape(double outer, double inner, double length, double x) {
        double bore = Math.min(outer, inner);
        point(Math.PI / 4 * (outer * outer - bore * bore) * length * rates.tapeDensityGMm3(), x);
    }

    void wrap(double x, double width, boolean onlyUnder) {
        double d = rod.od(x);
        double t = thread.diameterMm();
        double turns = width / t;
        double length = turns * Math.hypot(Math.PI * (d + t), t);
        point(length * thread.tex() / 1e6, x);
        double film = onlyUnder ? 0 : rates.finishFilmMm();
        double over = d + 2 * t + 2 * film;
        double volume = Math.PI / 4 * (over * over - d * d) * width - length * Math.PI / 4 * t * t;
        coat(Math.max(0, volume) + (onlyUnder ? 0 : film(d, 2)), x);
        if (!rod.brief.owned().contains(thread.id())) {
            double share = length / 1000 / thread.metresPerSpool();
            cost = cost.add(BigDecimal.valueOf(share * thread.facts().priceMinor()));
        }
    }

    double film(double d, double length) {
        double over = d + 2 * rates.finishFilmMm();
        return Math.PI / 4 * (over * over - d * d) * length;
    }

    void coat(double mm3, double x) {
        point(mm3 / 1000 * finish.densityGMl(), x);
        finishMl += mm3 / 1000;
    }

    static BigDecimal percent(double value) {
        return BigDecimal.valueOf(value).divide(BigDecimal.valueOf(100), 12, RoundingMode.HALF_UP);
    }
}
