package withy.search;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.rod.Balance;

/**
 * Multipliers that make a question linear, so that every build's linear cost is at most its true score:
 *
 * <pre>
 *   score  ≥  linear part + slope·(moment ahead or behind the zone) + Σ multiplier·(sum − its ceiling)
 * </pre>
 *
 * The slope runs from −(price of a mg·mm outside) for rods behind the zone, over 0 inside, to + that price ahead of it; a ceiling on the moment
 * lets it run further. Multipliers are at least 0. Whatever they are, the bound holds; good ones make it tight.
 *
 * @param slope of the balance, per mg·mm
 * @param weight multiplier of the weight ceiling, per mg
 * @param inertia of the swing weight ceiling, per mg·mm²
 * @param cost of the cost ceiling, per thousandth of a minor unit
 * @param style of the style floor, per hundredth of a point
 */
record Prices(long slope, long weight, long inertia, long cost, long style) {

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Prices that
                && slope == that.slope
                && weight == that.weight
                && inertia == that.inertia
                && cost == that.cost
                && style == that.style;
    }

    @Override
    public int hashCode() {
        return Objects.hash(slope, weight, inertia, cost, style);
    }

    /** Usual start: rods hang ahead of the zone, ceilings do not bind. */
    static Prices start(Scoring scoring) {
        return new Prices(scoring.perOutsideMgMm(), 0, 0, 0, 0);
    }

    /** As linear prices, the durability margin of at least {@code margin} classes credited. */
    Linear linear(Aim aim, long margin) {
        Scoring s = aim.scoring();
        Brief brief = aim.brief();
        Bounds b = aim.bounds();
        Balance reel = Balance.of(brief, 0, 0);
        long ahead = Math.max(0, slope);
        long behind = Math.max(0, -slope);
        long perMoment = ahead - behind;
        long perMassOfBalance = behind * reel.nearMm() - ahead * reel.farMm();
        long perCost = s.perCostMilli() + cost;
        long constant = ahead * reel.aheadMgMm() + behind * reel.behindMgMm() - s.perClass() * margin;
        constant -= excess(slope, s.perOutsideMgMm(), b.outsideMgMm());
        constant -= weight > 0 ? weight * b.weightMg() : 0;
        constant -= inertia > 0 ? inertia * b.inertiaMgMm2() : 0;
        constant -= cost > 0 ? cost * b.costMilli() : 0;
        constant += style > 0 ? style * b.styleCenti() : 0;
        return new Linear(
                s.perMg() + weight + perMassOfBalance,
                perMoment,
                s.perMgMm2() + inertia,
                perCost,
                s.perStyleCenti() + style,
                s.perMilliStep(),
                constant);
    }

    /** What a slope beyond the score's own pays for the ceiling on the moment. */
    private static long excess(long slope, long own, long ceiling) {
        long beyond = Math.abs(slope) - own;
        return beyond > 0 && ceiling != Long.MAX_VALUE ? beyond * ceiling : 0;
    }

    /** The same with another slope. */
    Prices slope(long other) {
        return new Prices(other, weight, inertia, cost, style);
    }

    /** True where some multiplier is off by more than an eighth of its natural size, or of itself where it is larger. */
    boolean differs(Prices other, Scoring s) {
        boolean differs = far(slope, other.slope, s.perOutsideMgMm());
        for (Kind kind : Kind.values()) {
            differs |= far(of(kind), other.of(kind), scale(s, kind));
        }
        return differs;
    }

    private static boolean far(long one, long other, long size) {
        return Math.abs(one - other) > Math.max(size, Math.min(Math.abs(one), Math.abs(other))) / 8;
    }

    /** How far a build is from meeting its ceilings, by multiplier. */
    static long over(ObjectiveVector v, Bounds b, Kind kind) {
        return switch (kind) {
            case WEIGHT -> v.weightMg() - b.weightMg();
            case INERTIA -> v.inertiaMgMm2() - b.inertiaMgMm2();
            case COST -> v.costMilli() - b.costMilli();
            case STYLE -> b.styleCenti() - v.styleCenti();
        };
    }

    /** True where a ceiling of this kind is set. */
    static boolean bounded(Bounds b, Kind kind) {
        return switch (kind) {
            case WEIGHT -> b.weightMg() != Long.MAX_VALUE;
            case INERTIA -> b.inertiaMgMm2() != Long.MAX_VALUE;
            case COST -> b.costMilli() != Long.MAX_VALUE;
            case STYLE -> b.styleCenti() != Long.MIN_VALUE;
        };
    }

    /** True where a ceiling of this kind is set and broken. */
    static boolean exceeds(ObjectiveVector v, Bounds b, Kind kind) {
        return bounded(b, kind) && over(v, b, kind) > 0;
    }

    /** Prices under which a build costs just one sum (style: its loss). */
    static Linear only(Kind kind) {
        return switch (kind) {
            case WEIGHT -> new Linear(1, 0, 0, 0, 0, 0, 0);
            case INERTIA -> new Linear(0, 0, 1, 0, 0, 0, 0);
            case COST -> new Linear(0, 0, 0, 1, 0, 0, 0);
            case STYLE -> new Linear(0, 0, 0, 0, 1, 0, 0);
        };
    }

    /** The ceiling on that sum. */
    static long ceiling(Bounds b, Kind kind) {
        return switch (kind) {
            case WEIGHT -> b.weightMg();
            case INERTIA -> b.inertiaMgMm2();
            case COST -> b.costMilli();
            case STYLE -> -b.styleCenti();
        };
    }

    /** What the score itself pays for a unit: the natural size of the multiplier. */
    static long scale(Scoring s, Kind kind) {
        return switch (kind) {
            case WEIGHT -> s.perMg();
            case INERTIA -> s.perMgMm2();
            case COST -> s.perCostMilli();
            case STYLE -> s.perStyleCenti();
        };
    }

    /** The multipliers of sums. */
    enum Kind {
        WEIGHT,
        INERTIA,
        COST,
        STYLE
    }

    long of(Kind kind) {
        return switch (kind) {
            case WEIGHT -> weight;
            case INERTIA -> inertia;
            case COST -> cost;
            case STYLE -> style;
        };
    }

    Prices with(Kind kind, long value) {
        return switch (kind) {
            case WEIGHT -> new Prices(slope, value, inertia, cost, style);
            case INERTIA -> new Prices(slope, weight, value, cost, style);
            case COST -> new Prices(slope, weight, inertia, value, style);
            case STYLE -> new Prices(slope, weight, inertia, cost, value);
        };
    }
}
