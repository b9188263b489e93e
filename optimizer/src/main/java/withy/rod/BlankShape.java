package withy.rod;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.Blank;
import withy.catalog.FerruleKind;
import withy.mechanics.MassSum;
import withy.mechanics.TaperProfile;
import withy.mechanics.TubeMass;

/**
 * What is computed of a blank once, whatever rod it becomes.
 *
 * @param blank the blank
 * @param profile outer diameter along it, mm
 * @param tube its mass along its length, g and mm
 * @param fromBalance true where the measured balance point set the mass along the length; false: mass per length taken in proportion to
 *     the diameter (thin wall of constant thickness)
 * @param joints ferrule zones from butt to tip
 */
public record BlankShape(Blank blank, TaperProfile profile, TubeMass tube, boolean fromBalance, List<Joint> joints) {

    public BlankShape {
        joints = List.copyOf(joints);
    }

    /**
     * One ferrule.
     *
     * @param fromMm end of the overlap toward the butt, mm
     * @param toMm end toward the tip, mm
     */
    public record Joint(double fromMm, double toMm) {}

    /** Its mass as sums about the butt, g. */
    public MassSum mass() {
        return tube.sum();
    }

    /** Computes it. */
    public static BlankShape of(Blank blank) {
        double[] x = blank.stations().stream().mapToDouble(Blank.OdStation::xMm).toArray();
        double[] od =
                blank.stations().stream().mapToDouble(Blank.OdStation::odMm).toArray();
        TaperProfile profile = new TaperProfile(x, od);
        List<Joint> joints = joints(blank);
        List<TubeMass.Lump> lumps = joints.stream()
                .filter(j -> blank.ferruleExtraG() > 0)
                .map(j -> new TubeMass.Lump((j.fromMm() + j.toMm()) / 2, blank.ferruleExtraG()))
                .toList();
        double massG = blank.massMg() / 1000.0;
        Double balance = blank.balanceMm();
        if (balance != null
                && TubeMass.balancedAt(profile, massG, balance, lumps) instanceof TubeMass.BalanceFit.Fitted fitted) {
            return new BlankShape(blank, profile, fitted.tube(), true, joints);
        }
        return new BlankShape(blank, profile, TubeMass.of(profile, massG, 1.0, lumps), false, joints);
    }

    private static List<Joint> joints(Blank blank) {
        List<Joint> joints = new ArrayList<>();
        if (blank.ferruleKind() == FerruleKind.NONE) {
            return joints;
        }
        double end = 0;
        for (int i = 0; i + 1 < blank.sections(); i++) {
            end += blank.sectionLengthsMm().get(i) - (i == 0 ? 0 : blank.ferruleOverlapMm());
            joints.add(new Joint(end - blank.ferruleOverlapMm(), end));
        }
        return joints;
    }
}
