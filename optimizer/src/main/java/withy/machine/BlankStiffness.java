package withy.machine;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Material;
import withy.catalog.MaterialDensity;
import withy.mechanics.StiffnessProfile;
import withy.mechanics.StiffnessScale;
import withy.mechanics.TaperProfile;
import withy.rod.BlankShape;

/**
 * Stiffness of a blank along its length.
 *
 * <p>EI = E·π/64·(D⁴ − (D − 2t)⁴) from outer diameter D and wall t; the wall is the maker's, else what the blank's weight and the density of
 * its material leave for a thin wall of constant thickness. E is set by the weight that drops the tip by a third of the length where the
 * maker or the shop knows it (level, held at the butt end, own weight acting, drop counted from the straight line of the unbent blank), else a
 * usual value of the material. The double wall of a joint counts only by its diameter.
 *
 * @param profile EI, N·mm²
 * @param source what it was worked out from
 * @param modulusMpa E, N/mm²; 0 where it was fitted without one
 * @param doubt why a measured test could not be used, or null
 */
public record BlankStiffness(
        StiffnessProfile profile,
        Source source,
        double modulusMpa,
        @Nullable String doubt) {

    /** What a stiffness rests on. */
    public enum Source {
        /** The shop's own bend test. */
        BEND_TEST,
        /** The catalogue's weight for a third of the length. */
        THIRD_TEST,
        /** Diameters and wall of the catalogue, modulus assumed. */
        WALL,
        /** Diameters of the catalogue, wall from the weight, modulus assumed. */
        WEIGHT
    }

    /** Of a blank, from the catalogue. */
    public static BlankStiffness of(BlankShape shape) {
        Blank blank = shape.blank();
        double modulus = usualModulusMpa(blank.facts().material());
        Double told = blank.wallMm();
        double wall = told == null ? wallFromWeightMm(shape) : told;
        double[] x = {shape.profile().startMm(), shape.profile().endMm()};
        StiffnessProfile.OfWall plain =
                new StiffnessProfile.OfWall(shape.profile(), new TaperProfile(x, new double[] {wall, wall}), modulus);
        Source source = told == null ? Source.WEIGHT : Source.WALL;
        Double third = blank.thirdTestG();
        if (third == null) {
            return new BlankStiffness(plain, source, modulus, null);
        }
        StiffnessScale.Outcome outcome = StiffnessScale.toDrop(
                plain,
                shape.profile().startMm(),
                shape.tube(),
                third,
                shape.profile().lengthMm() / 3.0);
        return outcome instanceof StiffnessScale.Outcome.Scaled scaled
                ? new BlankStiffness(scaled.stiffness(), Source.THIRD_TEST, modulus * scaled.factor(), null)
                : new BlankStiffness(plain, source, modulus, ((StiffnessScale.Outcome.None) outcome).reason());
    }

    /** As the shop's own bend test found it. */
    public static BlankStiffness measured(StiffnessProfile fitted) {
        return new BlankStiffness(fitted, Source.BEND_TEST, 0, null);
    }

    /** Modulus in bending of a rolled blank, N/mm²: laminates with some of the fibres across. ASSUMED; a measured test replaces it. */
    static double usualModulusMpa(Material material) {
        return switch (material) {
            case GLASS -> 28_000;
            case COMPOSITE -> 45_000;
            default -> 70_000;
        };
    }

    /** Wall of a thin tube of constant wall that weighs what the blank weighs, mm. */
    private static double wallFromWeightMm(BlankShape shape) {
        double density = MaterialDensity.of(shape.blank().facts().material()).usualGMm3();
        double tubeG = shape.tube().massG()
                - shape.tube().lumps().stream().mapToDouble(l -> l.massG()).sum();
        double low = 0.0;
        double high = Arrays.stream(shape.profile().value()).max().orElse(1.0);
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (tubeG(shape.profile(), middle, density) < tubeG) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double tubeG(TaperProfile profile, double wall, double density) {
        double sum = 0.0;
        for (int i = 1; i < profile.stations(); i++) {
            double length = profile.stationMm(i) - profile.stationMm(i - 1);
            double a = Math.max(profile.valueAtStation(i - 1), wall);
            double b = Math.max(profile.valueAtStation(i), wall);
            sum += density * Math.PI * wall * ((a + b) / 2 - wall) * length;
        }
        return sum;
    }
}
