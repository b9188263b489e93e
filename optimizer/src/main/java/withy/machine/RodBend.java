package withy.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.mechanics.BendCase;
import withy.mechanics.BendResult;
import withy.mechanics.BendUnderLoad;
import withy.mechanics.LineCase;
import withy.mechanics.LineClearance;
import withy.mechanics.LineDiameter;
import withy.mechanics.LineResult;
import withy.mechanics.LineThroughRings;
import withy.mechanics.OneThirdDrop;
import withy.mechanics.PointLoad;
import withy.mechanics.TubeMass;
import withy.rod.LineOffSpool;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Setting;

/**
 * Bends a finished rod: its blank held fast where the handle ends, with all it carries.
 *
 * <p>Grips, seat and reel don't bend. Wraps add weight, no stiffness. The line lies in its rings where the load presses it: at the edge away
 * from the blank with the guides below, at the edge toward it with the guides above.
 */
public final class RodBend {
    /** Wall of a tip-top's tube, mm. ASSUMED. */
    static final double TUBE_WALL_MM = 0.3;

    /** Least blank ahead of the handle that is bent, mm. ASSUMED. */
    private static final double LEAST_FREE_MM = 200;

    private final Rod rod;
    private final @Nullable String unbendable;
    private final BlankStiffness stiffness;
    private final List<PointLoad> weights;

    public RodBend(Rod rod, BlankStiffness stiffness) {
        this.rod = rod;
        this.unbendable = unbendable(rod);
        this.stiffness = stiffness;
        this.weights = Carried.of(rod).stream().map(Carried::load).toList();
    }

    /** Why a rod can't be bent at all, or null: a handle that leaves no blank free, or guides that don't stand on it in order. */
    static @Nullable String unbendable(Rod rod) {
        double tip = rod.setting().blank().lengthMm();
        double before = rod.handleFrontMm();
        if (before > tip - LEAST_FREE_MM) {
            return String.format(Locale.ROOT, "The handle reaches to %.0f mm of a blank of %.0f mm.", before, tip);
        }
        for (Placed placed : rod.placed().values()) {
            if (placed.part() instanceof Guide) {
                if (placed.fromMm() <= before || placed.fromMm() >= tip) {
                    return String.format(
                            Locale.ROOT,
                            "A guide at %.0f mm does not stand between %.0f mm and the tip at %.0f mm.",
                            placed.fromMm(),
                            before,
                            tip);
                }
                before = placed.fromMm();
            } else if (placed.part().kind() != PartKind.BLANK && placed.fromMm() > tip) {
                return String.format(
                        Locale.ROOT, "A part lies at %.0f mm, beyond the tip at %.0f mm.", placed.fromMm(), tip);
            }
        }
        return null;
    }

    /** Where the blank is held fast, mm from the butt. */
    public double clampMm() {
        return rod.handleFrontMm();
    }

    /** Level, with a weight hung on its tip. */
    public BendResult hung(double grams) {
        if (unbendable != null) {
            return new BendResult.NotConverged(unbendable);
        }
        List<PointLoad> loads = new ArrayList<>(weights);
        if (grams > 0) {
            loads.add(PointLoad.hung(stiffness.profile().tipMm(), grams));
        }
        return BendUnderLoad.solve(new BendCase(stiffness.profile(), clampMm(), 0, tube(), loads));
    }

    /** The weight that drops the tip of the finished rod by a third of what is free ahead of the handle. */
    public OneThirdDrop.Outcome oneThirdDrop() {
        if (unbendable != null) {
            return new OneThirdDrop.Outcome.None(unbendable);
        }
        return OneThirdDrop.of(stiffness.profile(), clampMm(), tube(), weights);
    }

    /** With a line through the rings. */
    public LineBend line(Pose pose) {
        if (unbendable != null) {
            return new LineBend(pose, null, List.of(), Double.NaN, unbendable);
        }
        List<LineCase.Ring> rings = rings();
        LineResult result = rings.isEmpty()
                ? new LineResult.NotConverged("There is no tip-top for the line to run through.")
                : solve(pose, rings);
        if (!(result instanceof LineResult.Held held)) {
            return new LineBend(pose, null, List.of(), Double.NaN, ((LineResult.NotConverged) result).reason());
        }
        List<LineClearance.Approach> gaps =
                LineClearance.of(held, rod.setting().profile(), lineMm(rod.brief()), side(rod.brief()));
        return new LineBend(pose, held, gaps, handMoment(held, pose), null);
    }

    private LineResult solve(Pose pose, List<LineCase.Ring> rings) {
        Setting setting = rod.setting();
        BendCase held = new BendCase(stiffness.profile(), clampMm(), Math.toRadians(pose.buttDeg()), tube(), weights);
        LineCase.Ring reel = new LineCase.Ring(
                LineOffSpool.leavesMm(setting), side(rod.brief()) * LineOffSpool.leavesHeightMm(setting));
        try {
            return LineThroughRings.solve(
                    new LineCase(held, rings, reel, pose.pullN(), Math.toRadians(pose.pullDeg())));
        } catch (IllegalArgumentException e) {
            return new LineResult.NotConverged(firstLine(e));
        }
    }

    /** Where the line touches the rings, stripper first; empty without a tip-top. */
    List<LineCase.Ring> rings() {
        List<LineCase.Ring> rings = new ArrayList<>();
        int side = side(rod.brief());
        double line = lineMm(rod.brief());
        boolean tipTop = false;
        for (Placed placed : rod.placed().values()) {
            if (placed.part() instanceof Guide guide) {
                double centre = rod.setting().odAt(placed.fromMm()) / 2 + guide.heightMm();
                rings.add(new LineCase.Ring(placed.fromMm(), side * edge(centre, guide.ringIdMm(), line, side)));
            } else if (placed.part() instanceof TipTop tip) {
                tipTop = true;
                double centre = rod.setting().blank().tipOdMm() / 2 + TUBE_WALL_MM + tip.ringSize() / 2;
                rings.add(new LineCase.Ring(placed.fromMm(), side * edge(centre, tip.ringIdMm(), line, side)));
            }
        }
        return tipTop ? rings : List.of();
    }

    private static double edge(double centreMm, double ringIdMm, double lineMm, int side) {
        return centreMm - side * (ringIdMm - lineMm) / 2;
    }

    /** 1 where the guides stand above the blank, −1 where they hang below. */
    static int side(Brief brief) {
        return brief.rodType().spinningReel() ? -1 : 1;
    }

    /** Diameter over all of the line in the rings, mm. */
    static double lineMm(Brief brief) {
        return LineDiameter.overallMm(brief.line().diameterMm(), brief.line().kind() == Brief.LineKind.BRAID);
    }

    private double handMoment(LineResult.Held held, Pose pose) {
        LineResult.RingLoad tip = held.rings().get(held.rings().size() - 1);
        double behind = clampMm() - rod.setting().handMm();
        double butt = Math.toRadians(pose.buttDeg());
        double x = tip.xMm() + behind * Math.cos(butt);
        double y = tip.yMm() + behind * Math.sin(butt);
        double pull = Math.toRadians(pose.pullDeg());
        return -pose.pullN() * (x * Math.sin(pull) - y * Math.cos(pull));
    }

    private TubeMass tube() {
        return rod.setting().shape().tube();
    }

    private static String firstLine(IllegalArgumentException e) {
        return String.valueOf(e.getMessage()).lines().findFirst().orElse("");
    }
}
