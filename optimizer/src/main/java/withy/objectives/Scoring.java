package withy.objectives;

import java.util.EnumMap;
import java.util.Map;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Rates;
import withy.rod.Balance;
import withy.rod.Tariff;

/**
 * Score = Σ priority × value / step, to be minimised, style and durability counting negative, plus the nice wishes missed. Whole numbers
 * throughout: one noticeable step of an objective with the average priority counts {@link #SCALE}. Priorities are first divided by their mean, so
 * that scaling them all changes nothing. An objective without priority counts {@link #TIE_BREAK} of the mean, so that the best build is never
 * dominated. One durability class counts at least what one gram does: a class is not traded for under a gram.
 *
 * @param perMg price of a milligram
 * @param perOutsideMgMm price of a mg·mm outside the balance zone
 * @param perMgMm2 price of a mg·mm² of swing weight
 * @param perCostMilli price of a thousandth of a minor unit of cost
 * @param perStyleCenti worth of a hundredth of a style point
 * @param perClass worth of a durability class
 * @param perMilliStep price of a thousandth of a step of a missed nice wish
 */
public record Scoring(
        long perMg,
        long perOutsideMgMm,
        long perMgMm2,
        long perCostMilli,
        long perStyleCenti,
        long perClass,
        long perMilliStep) {

    /** Whole-number score of one step at mean priority. */
    public static final double SCALE = 1e12;

    /** Share of the mean priority that an objective without priority keeps, to break ties. ASSUMED. */
    public static final double TIE_BREAK = 1e-4;

    private static final double MGMM2_PER_KGM2 = 1e12;

    /** For a brief with its own priorities. */
    public static Scoring of(Brief brief, Rates rates) {
        return of(brief, rates, brief.priorities());
    }

    /** For a brief with other priorities; where just one objective is named, nothing else counts, neither nice wishes nor to break ties. */
    public static Scoring of(Brief brief, Rates rates, Map<Objective, Double> priorities) {
        if (priorities.size() == 1) {
            return even(brief, rates).only(priorities.keySet().iterator().next());
        }
        Map<Objective, Double> p = relative(priorities);
        double priceFactor = new Tariff(rates, brief).factor();
        double durability = per(p, Objective.DURABILITY) / brief.step(Objective.DURABILITY);
        double oneGram = per(p, Objective.WEIGHT) / brief.step(Objective.WEIGHT);
        return new Scoring(
                units(per(p, Objective.WEIGHT) / (brief.step(Objective.WEIGHT) * 1000)),
                units(per(p, Objective.BALANCE) / (brief.step(Objective.BALANCE) / Balance.NMM_PER_MGMM)),
                units(per(p, Objective.SWING_WEIGHT) / (brief.step(Objective.SWING_WEIGHT) * MGMM2_PER_KGM2)),
                units(per(p, Objective.PRICE) * priceFactor / (brief.step(Objective.PRICE) * Tariff.MILLI)),
                units(per(p, Objective.STYLE) / (brief.step(Objective.STYLE) * 100)),
                units(Math.max(durability, oneGram)),
                units(1.0 / 1000));
    }

    /** Every objective at the same priority. */
    public static Scoring even(Brief brief, Rates rates) {
        Map<Objective, Double> ones = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            ones.put(objective, 1.0);
        }
        return of(brief, rates, ones);
    }

    private Scoring only(Objective one) {
        return new Scoring(
                one == Objective.WEIGHT ? perMg : 0,
                one == Objective.BALANCE ? perOutsideMgMm : 0,
                one == Objective.SWING_WEIGHT ? perMgMm2 : 0,
                one == Objective.PRICE ? perCostMilli : 0,
                one == Objective.STYLE ? perStyleCenti : 0,
                one == Objective.DURABILITY ? perClass : 0,
                0);
    }

    /** The score of a build's objectives; less is better. */
    public long score(ObjectiveVector v) {
        long sum = missed(v);
        for (Objective objective : Objective.values()) {
            sum += share(objective, v);
        }
        return sum;
    }

    /** What one objective adds to the score. */
    public long share(Objective objective, ObjectiveVector v) {
        return switch (objective) {
            case WEIGHT -> v.weightMg() * perMg;
            case BALANCE -> v.outsideMgMm() * perOutsideMgMm;
            case SWING_WEIGHT -> v.inertiaMgMm2() * perMgMm2;
            case PRICE -> v.costMilli() * perCostMilli;
            case STYLE -> -v.styleCenti() * perStyleCenti;
            case DURABILITY -> -v.durabilityClasses() * perClass;
        };
    }

    /** What the nice wishes missed add to the score. */
    public long missed(ObjectiveVector v) {
        return v.missedMilliSteps() * perMilliStep;
    }

    /** A whole-number score in steps at mean priority, as shown. */
    public static double steps(long score) {
        return score / SCALE;
    }

    private static Map<Objective, Double> relative(Map<Objective, Double> priorities) {
        double sum = 0;
        for (Objective objective : Objective.values()) {
            sum += raw(priorities, objective);
        }
        double mean = sum > 0 ? sum / Objective.values().length : 1;
        Map<Objective, Double> relative = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            relative.put(objective, Math.max(TIE_BREAK, raw(priorities, objective) / mean));
        }
        return relative;
    }

    private static double raw(Map<Objective, Double> priorities, Objective objective) {
        Double value = priorities.get(objective);
        return value == null ? 0 : value;
    }

    private static double per(Map<Objective, Double> relative, Objective objective) {
        Double value = relative.get(objective);
        return value == null ? 0 : value;
    }

    private static long units(double stepsPerUnit) {
        return Math.max(1, Math.round(stepsPerUnit * SCALE));
    }
}
