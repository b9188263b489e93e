package withy.explain;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.regex.Pattern;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.rod.Balance;
import withy.rod.Figures;
import withy.rod.Rod;
import withy.units.Money;
import withy.units.QuantityText;

/**
 * What one build gives up or gains against another, objective by objective. A difference counts as noticeable from one step of the brief on; in
 * weight it must also be larger than both builds' weighing tolerances together (root of the sum of squares), else they are told as equal.
 */
public final class TradeOffs {
    private static final double KGM2_PER_MGMM2 = 1e-12;

    /** A number that is not nought. */
    private static final Pattern SHOWN = Pattern.compile("[1-9]");

    private TradeOffs() {}

    /**
     * One build as it is compared.
     *
     * @param rank how it is called
     * @param rod measured
     * @param objectives its objectives
     */
    public record Side(int rank, Rod rod, ObjectiveVector objectives) {}

    /**
     * One objective of one build against another.
     *
     * @param against rank of the other build
     * @param objective which
     * @param difference this build less the other, in {@code unit}
     * @param unit unit of the difference
     * @param noticeable true from one step on and, in weight, beyond the tolerance
     * @param better true where this build has the better value, however little
     * @param plain the same in words
     * @param sentence the words, with a remark where it is too little to notice
     * @param equal in weight, where builds differ by less than their tolerances: that they count as equal; else empty
     */
    public record TradeOff(
            int against,
            Objective objective,
            double difference,
            String unit,
            boolean noticeable,
            boolean better,
            String plain,
            String sentence,
            String equal) {

        /** True where the difference is none, or would be told as nought. */
        public boolean same() {
            return plain.equals(Phrases.of("tradeOff." + objective.key() + ".same"));
        }
    }

    /** All six objectives of one build against another, in their order. */
    public static List<TradeOff> between(Side mine, Side other, QuantityText units) {
        List<TradeOff> list = new ArrayList<>();
        for (Objective objective : Objective.values()) {
            list.add(one(objective, mine, other, units));
        }
        return list;
    }

    /** One line: what is noticeable, gains first, each group in the order of the objectives; then whether weights that differ count as equal. */
    public static String gist(List<TradeOff> tradeOffs) {
        List<TradeOff> noticeable =
                tradeOffs.stream().filter(TradeOff::noticeable).toList();
        if (noticeable.isEmpty()) {
            return Phrases.of("tradeOff.none");
        }
        String gist = gainsAndLosses(noticeable);
        return tradeOffs.stream()
                .map(TradeOff::equal)
                .filter(equal -> !equal.isEmpty())
                .findFirst()
                .map(equal -> Phrases.of("tradeOff.besides", gist, equal))
                .orElse(gist);
    }

    /** What is better, but what is worse, of at least one. */
    static String gainsAndLosses(List<TradeOff> tradeOffs) {
        String gains = list(tradeOffs, true);
        String losses = list(tradeOffs, false);
        return gains.isEmpty() || losses.isEmpty() ? gains + losses : Phrases.of("tradeOff.both", gains, losses);
    }

    private static String list(List<TradeOff> tradeOffs, boolean better) {
        return Phrases.list(tradeOffs.stream()
                .filter(t -> t.better() == better)
                .map(TradeOff::plain)
                .toList());
    }

    /** Weighing tolerance of a difference in weight, g. */
    public static double toleranceG(Rod one, Rod other) {
        return Math.hypot(one.figures().weightToleranceG(), other.figures().weightToleranceG());
    }

    private static TradeOff one(Objective objective, Side mine, Side other, QuantityText units) {
        double difference = difference(objective, mine, other);
        Brief brief = mine.rod().brief();
        boolean large = Math.abs(difference) >= brief.step(objective);
        boolean inTolerance =
                objective == Objective.WEIGHT && Math.abs(difference) <= toleranceG(mine.rod(), other.rod());
        boolean better = mine.objectives().loss(objective) < other.objectives().loss(objective);
        String plain = sentence(objective, mine, other, difference, units);
        String same = Phrases.of("tradeOff." + objective.key() + ".same");
        String equal = inTolerance && difference != 0
                ? Phrases.of("tradeOff.weight.equal", units.mass(toleranceG(mine.rod(), other.rod())))
                : "";
        String sentence =
                !equal.isEmpty() ? equal : plain + (large || plain.equals(same) ? "" : Phrases.of("tradeOff.small"));
        boolean noticeable = large && !inTolerance;
        return new TradeOff(
                other.rank(), objective, difference, objective.unit(), noticeable, better, plain, sentence, equal);
    }

    /** This build less the other, in the objective's unit; prices are those the customer pays. */
    private static double difference(Objective objective, Side mine, Side other) {
        if (objective == Objective.PRICE) {
            return mine.rod().figures().priceMinor() - other.rod().figures().priceMinor();
        }
        double whole = mine.objectives().value(objective) - other.objectives().value(objective);
        return switch (objective) {
            case WEIGHT -> whole / 1000;
            case BALANCE -> whole * Balance.NMM_PER_MGMM;
            case SWING_WEIGHT -> whole * KGM2_PER_MGMM2;
            case STYLE -> whole / 100;
            case PRICE, DURABILITY -> whole;
        };
    }

    private static String sentence(Objective objective, Side mine, Side other, double difference, QuantityText units) {
        String way = difference == 0 ? "same" : difference < 0 ? "less" : "more";
        double size = Math.abs(difference);
        String words = words(objective, mine, other, way, size, units);
        boolean shown =
                objective == Objective.DURABILITY || SHOWN.matcher(words).find();
        return shown ? words : Phrases.of("tradeOff." + objective.key() + ".same");
    }

    /** What would be told as a difference of nought is told as none. Differences are those of the figures as they are printed beside them. */
    private static String words(
            Objective objective, Side mine, Side other, String way, double size, QuantityText units) {
        Figures one = mine.rod().figures();
        Figures two = other.rod().figures();
        return switch (objective) {
            case WEIGHT -> Phrases.of("tradeOff.weight." + way, units.massBetween(one.weightG(), two.weightG()));
            case BALANCE ->
                Phrases.of(
                        "tradeOff.balance." + way + side(mine, other, way),
                        units.momentBetween(one.balanceOutsideZoneNmm(), two.balanceOutsideZoneNmm()));
            case SWING_WEIGHT ->
                Phrases.of(
                        "tradeOff.swingWeight." + way,
                        units.inertiaBetween(one.swingWeightKgM2(), two.swingWeightKgM2()));
            case PRICE -> Phrases.of("tradeOff.price." + way, money(mine, size));
            case STYLE -> count(objective, way, Math.abs(points(mine) - points(other)));
            case DURABILITY -> count(objective, way, Math.round(size));
        };
    }

    private static String count(Objective objective, String way, long whole) {
        return Phrases.of("tradeOff." + objective.key() + "." + way + (whole == 1 ? ".one" : ""), whole);
    }

    /** For looks, as they are printed. */
    private static long points(Side side) {
        return Math.round(side.objectives().value(Objective.STYLE) / 100.0);
    }

    /** Of a build that misses the wanted zone by more, the side to which both miss it, or the one that does. What tips the rod in the hand is another figure. */
    private static String side(Side mine, Side other, String way) {
        if (!way.equals("more")) {
            return "";
        }
        boolean ahead = ahead(mine) || ahead(other);
        boolean behind = behind(mine) || behind(other);
        return ahead && behind ? "" : ahead ? ".ahead" : ".behind";
    }

    private static boolean ahead(Side side) {
        return side.rod().balance().aheadMgMm() > 0;
    }

    private static boolean behind(Side side) {
        return side.rod().balance().behindMgMm() > 0;
    }

    private static String money(Side side, double minor) {
        String currency = side.rod().setting().catalog().rates().currency();
        return Money.print(Math.round(minor), Currency.getInstance(currency));
    }
}
