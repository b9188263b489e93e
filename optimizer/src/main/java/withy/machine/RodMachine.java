package withy.machine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.machine.HandleFit.NamedReel;
import withy.mechanics.BendResult;
import withy.mechanics.OneThirdDrop;
import withy.rod.Rod;
import withy.units.ForceUnit;

/**
 * Everything told of one finished rod as a machine.
 *
 * @param rod the rod
 * @param stiffness its blank's
 * @param hung a few weights hung on its tip, rod level, lightest first
 * @param oneThird the weight that drops its tip by a third of what is free ahead of the handle, and the bend
 * @param working under the working load, line through the rings
 * @param staticTest level, that weight on the line, or null where there is none
 * @param quickness frequencies
 * @param wraps thread and finish
 * @param handle hand, reels, counterweights
 * @param massAlong where its mass lies
 */
public record RodMachine(
        Rod rod,
        BlankStiffness stiffness,
        List<Hung> hung,
        OneThirdDrop.Outcome oneThird,
        LineBend working,
        @Nullable LineBend staticTest,
        Quickness quickness,
        WrapTable wraps,
        HandleFit handle,
        MassAlong massAlong) {
    /** Weights of the load curve, as shares of the one that drops the tip by a third. */
    private static final double[] CURVE = {0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3};

    /** Loads of the curve where no weight drops the tip by a third, g. */
    private static final double PLAIN_STEP_G = 100;

    /**
     * A weight hung on the level rod's tip.
     *
     * @param loadG g
     * @param bend what came of it
     */
    public record Hung(double loadG, BendResult bend) {}

    public RodMachine {
        hung = List.copyOf(hung);
    }

    /** Works all of it out. */
    public static RodMachine of(Rod rod, BlankStiffness stiffness, Pose pose, List<NamedReel> reels) {
        RodBend bend = new RodBend(rod, stiffness);
        OneThirdDrop.Outcome third = bend.oneThirdDrop();
        LineBend staticTest = null;
        double step = PLAIN_STEP_G;
        if (third instanceof OneThirdDrop.Outcome.Found found) {
            step = found.weightG();
            staticTest = bend.line(Pose.hung(found.weightG()));
        }
        List<Hung> hung = new ArrayList<>();
        for (double share : CURVE) {
            BendResult shape = share == 1 && third instanceof OneThirdDrop.Outcome.Found found
                    ? found.shape()
                    : bend.hung(share * step);
            hung.add(new Hung(share * step, shape));
        }
        return new RodMachine(
                rod,
                stiffness,
                hung,
                third,
                bend.line(pose),
                staticTest,
                Quickness.of(rod, stiffness),
                WrapTable.of(rod),
                HandleFit.of(rod, reels),
                MassAlong.of(rod));
    }

    /** Lift rating that counts, kg: the builder's own before the maker's; null where neither is known. */
    public static @Nullable Double liftRatingKg(Blank blank) {
        return blank.ownLiftKg() != null ? blank.ownLiftKg() : blank.liftKg();
    }

    /** Lift rating over the working pull; null where the rating is unknown. */
    public @Nullable Double reserve() {
        Double lift = liftRatingKg(rod.setting().blank());
        return lift == null
                ? null
                : lift * ForceUnit.KILOGRAM_FORCE.newtons() / working.pose().pullN();
    }
}
