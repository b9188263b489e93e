package withy.app;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.machine.BlankStiffness;
import withy.machine.Pose;
import withy.machine.TrainDesign;
import withy.rod.Rod;

/** Writes compared guide trains down as a {@link TrainSheet}. */
public final class Trains {
    private Trains() {}

    /** Designs trains for a rod under its brief's working load and compares them with its own. */
    public static TrainSheet of(Rod rod) {
        return of(rod, BlankStiffness.of(rod.setting().shape()), Pose.working(rod.brief()));
    }

    static TrainSheet of(Rod rod, BlankStiffness stiffness, Pose working) {
        TrainDesign design = TrainDesign.of(rod, stiffness, working);
        double tip = rod.setting().blank().lengthMm();
        return new TrainSheet(
                number(TrainDesign.offReelDeg(rod, stiffness), 2),
                design.trains().stream().map(t -> train(t, tip)).toList(),
                design.wants().stream()
                        .map(w -> new TrainSheet.Want(
                                w.number(),
                                Sheets.rounded(tip - w.xMm(), 1),
                                Sheets.rounded(w.xMm() - rod.setting().footMm(), 1),
                                w.heightMm() > 0 ? Sheets.rounded(w.heightMm(), 1) : null,
                                w.ringIdMaxMm() > 0 ? Sheets.rounded(w.ringIdMinMm(), 1) : null,
                                w.ringIdMaxMm() > 0 ? Sheets.rounded(w.ringIdMaxMm(), 1) : null))
                        .toList(),
                design.fewerIsAsGood());
    }

    private static TrainSheet.Train train(TrainDesign.Train t, double tip) {
        List<Double> fromTip = new ArrayList<>();
        for (double x : TrainDesign.placesMm(t.rod())) {
            fromTip.add(Sheets.rounded(tip - x, 1));
        }
        String doubt = t.working().doubt() != null
                ? t.working().doubt()
                : t.staticTest().doubt();
        return new TrainSheet.Train(
                t.forBend() ? "bend" : "own",
                t.count(),
                fromTip,
                Sheets.rounded(t.guidesG(), 3),
                t.rod().figures().weightG(),
                Sheets.rounded(t.rod().figures().swingWeightKgM2(), 8),
                number(t.hertz(), 3),
                number(t.working().leastGapMm(), 2),
                number(t.staticTest().leastGapMm(), 2),
                number(Math.toDegrees(t.working().largestTurnRad()), 2),
                number(Math.toDegrees(t.staticTest().largestTurnRad()), 2),
                doubt);
    }

    private static @Nullable Double number(double value, int decimals) {
        return Double.isFinite(value) ? Sheets.rounded(value, decimals) : null;
    }
}
