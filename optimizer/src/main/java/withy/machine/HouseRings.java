package withy.machine;

import java.util.ArrayList;
import java.util.List;
import withy.mechanics.LineCase.Ring;
import withy.rod.LineOffSpool;
import withy.rod.Setting;

/** Rings and handle of the house's usual sizes: what depends on the layout alone may not depend on the parts chosen. */
final class HouseRings {
    /** Reel foot to where a usual handle ends, mm. ASSUMED. */
    static final double FOOT_TO_FRONT_MM = 60;

    /** Blank's surface to the middle of a usual runner's ring, mm. ASSUMED. */
    private static final double RUNNER_MM = 6;

    /** Clear inner diameter of a usual runner's ring, size 5 of the trade table (rough), mm. */
    private static final double RUNNER_ID_MM = 3.5;

    private HouseRings() {}

    /** Middle of a ring over the axis at x, mm: on the line off the spool, and never lower than a runner. */
    static double heightMm(Setting setting, double xMm) {
        double runner = setting.odAt(xMm) / 2 + RUNNER_MM;
        return setting.brief().rodType().spinningReel()
                ? Math.max(runner, LineOffSpool.heightMm(setting, xMm))
                : runner;
    }

    /** Where the line touches the rings, stripper first, tip-top last. */
    static List<Ring> touched(Setting setting) {
        int side = RodBend.side(setting.brief());
        double toEdge = side * (RUNNER_ID_MM - RodBend.lineMm(setting.brief())) / 2;
        List<Ring> rings = new ArrayList<>();
        for (int number = 1; number <= setting.guideCount(); number++) {
            double x = setting.guideMm(number);
            rings.add(new Ring(x, side * (heightMm(setting, x) - toEdge)));
        }
        double tip = setting.blank().lengthMm();
        double ring = setting.odAt(tip) / 2 + RodBend.TUBE_WALL_MM + RUNNER_ID_MM / 2;
        rings.add(new Ring(tip, side * (ring - toEdge)));
        return rings;
    }
}
