package withy.machine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Reel;
import withy.catalog.RodType;
import withy.mechanics.MassSum;
import withy.rod.PalmTable;
import withy.rod.Rod;
import withy.rod.SeatSet;

/**
 * How a rod fits hand and forearm, and how it hangs with several reels and with weight in the butt.
 *
 * <p>Reach: reel foot to butt end is 0.65–0.80 × forearm-to-grip length for one hand, 1.0–1.25 × for two (common practice); so a reach
 * suits forearms from reach/0.80 to reach/0.65, or reach/1.25 to reach/1.0. Barrel: trade table by palm breadth (common practice).
 *
 * @param reachMm reel foot centre to butt end, mm
 * @param wantedMinMm the brief's shortest, mm
 * @param wantedMaxMm the brief's longest, mm
 * @param forearm forearms it suits by the body rule, or null on a surf rod
 * @param palmMm the customer's palm breadth, mm
 * @param barrelMm outer diameter of the seat where the palm lies, mm; 0 without a seat
 * @param barrelMinMm thinnest for that palm, mm; 0 on a surf rod, whose barrel follows the blank
 * @param barrelMaxMm thickest, mm
 * @param reels the brief's first
 * @param counterweights lightest first
 */
public record HandleFit(
        double reachMm,
        double wantedMinMm,
        double wantedMaxMm,
        @Nullable Forearm forearm,
        double palmMm,
        double barrelMm,
        double barrelMinMm,
        double barrelMaxMm,
        List<ReelBalance> reels,
        List<Counterweight> counterweights) {
    private static final double ONE_HAND_LEAST = 0.65;
    private static final double ONE_HAND_MOST = 0.80;
    private static final double TWO_HANDS_LEAST = 1.0;
    private static final double TWO_HANDS_MOST = 1.25;

    /** Weights told of, g. */
    private static final int[] COUNTERWEIGHTS_G = {5, 10, 20, 30};

    private static final double KGM2_PER_GMM2 = 1e-9;

    public HandleFit {
        reels = List.copyOf(reels);
        counterweights = List.copyOf(counterweights);
    }

    /**
     * Forearm-to-grip lengths a reach suits.
     *
     * @param leastMm shortest, mm
     * @param mostMm longest, mm
     * @param womenPercent share of women whose forearm lies between, %
     * @param menPercent share of men, %
     */
    public record Forearm(double leastMm, double mostMm, double womenPercent, double menPercent) {}

    /** A reel to be tried: what it is called and what counts of it. */
    public record NamedReel(String name, Reel reel) {}

    /**
     * The rod with one reel on.
     *
     * @param name what it is called
     * @param massG with line, g
     * @param balanceMm balance point ahead of the reel foot, mm
     * @param tipHeavyNmm moment about the hand, N·mm
     * @param zoneGrams weight at the butt end that would bring the balance into the wanted zone, g; negative: weight it has too much there
     */
    public record ReelBalance(String name, double massG, double balanceMm, double tipHeavyNmm, double zoneGrams) {}

    /**
     * Weight in the butt.
     *
     * @param grams g at the butt end
     * @param balanceMm balance point then, mm ahead of the reel foot
     * @param tipHeavyNmm moment about the hand then, N·mm
     * @param swingWeightKgM2 added to the swing weight
     * @param tipGrams weight at the tip that would add as much swing weight, g
     */
    public record Counterweight(
            int grams, double balanceMm, double tipHeavyNmm, double swingWeightKgM2, double tipGrams) {}

    /** With the brief's reel and others. */
    public static HandleFit of(Rod rod, List<NamedReel> others) {
        boolean surf = rod.brief().rodType() == RodType.SURF_SPINNING;
        double reach = rod.figures().reelToButtMm();
        SeatSet seat = rod.seat();
        double palm = rod.brief().palmMm();
        List<ReelBalance> reels = new ArrayList<>();
        reels.add(balance(rod, new NamedReel("", rod.brief().reel())));
        others.forEach(reel -> reels.add(balance(rod, reel)));
        List<Counterweight> weights = new ArrayList<>();
        for (int grams : COUNTERWEIGHTS_G) {
            weights.add(counterweight(rod, grams));
        }
        return new HandleFit(
                reach,
                rod.brief().reachMinMm(),
                rod.brief().reachMaxMm(),
                surf ? null : forearm(reach, rod.brief().twoHanded()),
                palm,
                seat == null ? 0 : seat.seat().barrelOdMm(),
                surf ? 0 : PalmTable.thinnestMm(palm),
                surf ? 0 : PalmTable.thickestMm(palm),
                reels,
                weights);
    }

    private static Forearm forearm(double reach, boolean twoHanded) {
        double least = reach / (twoHanded ? TWO_HANDS_MOST : ONE_HAND_MOST);
        double most = reach / (twoHanded ? TWO_HANDS_LEAST : ONE_HAND_LEAST);
        return new Forearm(
                least,
                most,
                100 * (ForearmTable.WOMEN.share(most) - ForearmTable.WOMEN.share(least)),
                100 * (ForearmTable.MEN.share(most) - ForearmTable.MEN.share(least)));
    }

    private static ReelBalance balance(Rod rod, NamedReel named) {
        Reel reel = named.reel();
        double massG = rod.total().massMg() / 1000.0 + reel.massG();
        double moment = rod.total().momentMgMm() / 1000.0 + reel.massG() * reel.centreOffsetMm();
        double far = rod.brief().zoneFarMm();
        double near = rod.brief().zoneNearMm();
        double ahead = moment - far * massG;
        double behind = near * massG - moment;
        double grams = ahead > 0
                ? ahead / (rod.setting().footMm() + far)
                : behind > 0 ? -behind / (rod.setting().footMm() + near) : 0;
        return new ReelBalance(named.name(), reel.massG(), moment / massG, tipHeavy(rod, massG, moment), grams);
    }

    private static double tipHeavy(Rod rod, double massG, double momentGmm) {
        double arm = rod.setting().footMm() - rod.setting().handMm();
        return (momentGmm + massG * arm) * MassSum.NMM_PER_GMM;
    }

    private static Counterweight counterweight(Rod rod, int grams) {
        Reel reel = rod.brief().reel();
        double massG = rod.total().massMg() / 1000.0 + reel.massG() + grams;
        double moment = rod.total().momentMgMm() / 1000.0
                + reel.massG() * reel.centreOffsetMm()
                - (double) grams * rod.setting().footMm();
        double hand = rod.setting().handMm();
        double tip = rod.setting().blank().lengthMm() - hand;
        return new Counterweight(
                grams,
                moment / massG,
                tipHeavy(rod, massG, moment),
                grams * hand * hand * KGM2_PER_GMM2,
                grams * hand * hand / (tip * tip));
    }
}
