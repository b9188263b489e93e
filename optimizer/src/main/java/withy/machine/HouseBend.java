package withy.machine;

import java.util.List;
import withy.catalog.Blank;
import withy.mechanics.BendCase;
import withy.mechanics.BendResult;
import withy.mechanics.BendUnderLoad;
import withy.mechanics.BentAxis;
import withy.mechanics.OneThirdDrop;
import withy.mechanics.PointLoad;
import withy.rod.Setting;

/** A bare blank held where a usual handle ends: bent by the working load at its tip, and level by a weight that drops the tip by a third. */
sealed interface HouseBend {
    Lately<Key, HouseBend> LATELY = new Lately<>(500);

    /** Grid of the reel foot for where the blank is held, mm: one bend serves several reel positions. ASSUMED. */
    int GRID_MM = 50;

    /** Both shapes. */
    record Bent(BentAxis working, BentAxis third) implements HouseBend {}

    /** None to be trusted. */
    record None(String reason) implements HouseBend {}

    /** All that decides it. */
    record Key(Blank blank, double heldMm, double dragKg) {}

    static HouseBend of(Setting setting) {
        double held = Math.round((double) setting.footMm() / GRID_MM) * GRID_MM + HouseRings.FOOT_TO_FRONT_MM;
        Key key = new Key(setting.blank(), held, setting.brief().dragKg());
        return LATELY.of(key, k -> now(setting, held));
    }

    private static HouseBend now(Setting setting, double heldMm) {
        BlankStiffness stiffness = BlankStiffness.of(setting.shape());
        double tip = stiffness.profile().tipMm();
        if (!(heldMm < tip)) {
            return new None("The handle would reach beyond the tip.");
        }
        Pose pose = Pose.working(setting.brief());
        double pull = Math.toRadians(pose.pullDeg());
        PointLoad load = new PointLoad(tip, pose.pullN() * Math.cos(pull), pose.pullN() * Math.sin(pull), 0);
        BendResult working = BendUnderLoad.solve(new BendCase(
                stiffness.profile(),
                heldMm,
                Math.toRadians(pose.buttDeg()),
                setting.shape().tube(),
                List.of(load)));
        if (!(working instanceof BendResult.Bent bent)) {
            return new None(((BendResult.NotConverged) working).reason());
        }
        OneThirdDrop.Outcome third =
                OneThirdDrop.of(stiffness.profile(), heldMm, setting.shape().tube(), List.of());
        return third instanceof OneThirdDrop.Outcome.Found found
                ? new Bent(
                        new BentAxis(bent.nodes()), new BentAxis(found.shape().nodes()))
                : new None(((OneThirdDrop.Outcome.None) third).reason());
    }
}
