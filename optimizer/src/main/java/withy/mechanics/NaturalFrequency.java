package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;

/**
 * Lowest natural frequencies of small bending vibration of a rod held fast at one place.
 *
 * <p>Euler–Bernoulli beam of cubic Hermite elements with consistent mass: K·φ = ω²·M·φ, K = ∫EI·N″N″ᵀ, M = ∫m'·NNᵀ + Σm·NNᵀ
 * (point masses, their own rotary inertia left out). EI N·mm², m' g/mm, x mm; ω² in 1/s² after 1 N = 10⁶ g·mm/s². Four Gauss points
 * an element. A Ritz method: every frequency lies above the true one and falls as the mesh is refined. Solved as M·y =
 * (1/ω²)·K·y through the Cholesky factor of K, so the lowest modes are the largest eigenvalues and the most exact. Standard
 * finite elements; exact values for tapers after Conway, Becker and Dubil, J. Appl. Mech. 31 (1964) 329–331 (from memory).
 * Valid for slender rods and swings of a few degrees.
 */
public final class NaturalFrequency {
    /** Elements that give 0.001 % in the first mode of a taper to a fifth. */
    public static final int USUAL_ELEMENTS = 24;

    private static final double G_MM_S2_PER_N = 1e6;
    private static final double[] GAUSS_AT = {
        -0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526
    };
    private static final double[] GAUSS_WEIGHT = {
        0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538
    };
    private static final double PLACE_TOLERANCE_MM = 1e-9;

    private NaturalFrequency() {}

    /** A mass that moves with the rod at a place, g and mm from the butt. */
    public record PointMass(double sMm, double massG) {
        public PointMass {
            Finite.any(sMm, "place of a mass in mm");
            Finite.notNegative(massG, "mass in g");
        }
    }

    /** Hertz a gram at a place takes off the lowest frequency, by first order: f·φ²/(2·φᵀMφ), φ the lowest mode. */
    public record Cost(double sMm, double hertzPerGram) {}

    /** What came of it. */
    public sealed interface Outcome {
        /**
         * What was found.
         *
         * @param hertz frequencies, lowest first
         * @param costs what a gram more at a place takes off the lowest, by places from clamp to tip
         */
        record Modes(List<Double> hertz, List<Cost> costs) implements Outcome {
            public Modes {
                hertz = List.copyOf(hertz);
                costs = List.copyOf(costs);
            }

            /** What a gram more at a place takes off the lowest frequency, Hz; 0 behind the clamp. */
            public double hertzPerGramAt(double sMm) {
                Cost before = new Cost(Double.NEGATIVE_INFINITY, 0.0);
                for (Cost cost : costs) {
                    if (cost.sMm() >= sMm - PLACE_TOLERANCE_MM) {
                        double gap = cost.sMm() - before.sMm();
                        double share = Double.isInfinite(gap) ? 1.0 : (sMm - before.sMm()) / gap;
                        return before.hertzPerGram() + share * (cost.hertzPerGram() - before.hertzPerGram());
                    }
                    before = cost;
                }
                return before.hertzPerGram();
            }

            public double firstHz() {
                return hertz.get(0);
            }
        }

        /** No frequencies to be trusted, and why. */
        record NotConverged(String reason) implements Outcome {}
    }

    /**
     * The lowest frequencies.
     *
     * @param stiffness EI along the rod
     * @param clampMm where it is held, mm from the butt; what lies behind does not move
     * @param tube the rod's own mass
     * @param masses guides, wraps, tip-top; those behind the clamp do not count
     * @param elements elements over the free length, at least; each break and mass adds one
     * @param modes how many frequencies
     */
    public static Outcome lowest(
            StiffnessProfile stiffness,
            double clampMm,
            TubeMass tube,
            List<PointMass> masses,
            int elements,
            int modes) {
        List<PointMass> points = new ArrayList<>(masses);
        for (TubeMass.Lump lump : tube.lumps()) {
            points.add(new PointMass(lump.xMm(), lump.massG()));
        }
        double[] mesh = mesh(stiffness, clampMm, tube, points, elements);
        int unknowns = 2 * (mesh.length - 1);
        if (modes < 1 || modes > unknowns / 2) {
            throw new IllegalArgumentException("A mesh of " + (mesh.length - 1) + " elements gives 1–" + unknowns / 2
                    + " frequencies, not " + modes + ".\nMaybe ask for more elements.");
        }
        double[][] stiff = new double[unknowns][unknowns];
        double[][] mass = new double[unknowns][unknowns];
        for (int e = 1; e < mesh.length; e++) {
            addElement(stiff, mass, stiffness, tube, mesh[e - 1], mesh[e], 2 * (e - 2));
        }
        for (PointMass point : points) {
            addPoint(mass, mesh, point);
        }
        return solve(stiff, mass, modes, mesh);
    }

    private static double[] mesh(
            StiffnessProfile stiffness, double clampMm, TubeMass tube, List<PointMass> points, int elements) {
        double tip = stiffness.tipMm();
        Finite.positive(tip - clampMm, "free length in mm");
        TreeSet<Double> places = new TreeSet<>();
        places.add(clampMm);
        places.add(tip);
        for (double place : stiffness.breaksMm()) {
            places.add(place);
        }
        for (double place : tube.profile().xMm()) {
            places.add(Math.min(place, tip));
        }
        for (PointMass point : points) {
            places.add(Math.min(point.sMm(), tip));
        }
        List<Double> kept = new ArrayList<>();
        double longest = (tip - clampMm) / elements;
        double before = clampMm;
        kept.add(clampMm);
        for (double place : places.tailSet(clampMm, false)) {
            if (place - before > PLACE_TOLERANCE_MM) {
                int parts = (int) Math.ceil((place - before) / longest - 1e-9);
                for (int part = 1; part <= parts; part++) {
                    kept.add(part == parts ? place : before + (place - before) * part / parts);
                }
                before = place;
            }
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static void addElement(
            double[][] stiff,
            double[][] mass,
            StiffnessProfile stiffness,
            TubeMass tube,
            double from,
            double to,
            int first) {
        double h = to - from;
        StiffnessProfile.Stretch ei = stiffness.stretch(from, to);
        for (int g = 0; g < GAUSS_AT.length; g++) {
            double t = (1.0 + GAUSS_AT[g]) / 2.0;
            double x = from + h * t;
            double weight = GAUSS_WEIGHT[g] * h / 2.0;
            double[] shape = {
                1.0 - 3.0 * t * t + 2.0 * t * t * t,
                h * (t - 2.0 * t * t + t * t * t),
                3.0 * t * t - 2.0 * t * t * t,
                h * (t * t * t - t * t)
            };
            double[] curve = {
                (12.0 * t - 6.0) / (h * h), (6.0 * t - 4.0) / h, (6.0 - 12.0 * t) / (h * h), (6.0 * t - 2.0) / h
            };
            double stiffWeight = weight * ei.atNmm2(x) * G_MM_S2_PER_N;
            double massWeight = weight * perLength(tube, x);
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    if (first + i >= 0 && first + j >= 0) {
                        stiff[first + i][first + j] += stiffWeight * curve[i] * curve[j];
                        mass[first + i][first + j] += massWeight * shape[i] * shape[j];
                    }
                }
            }
        }
    }

    private static double perLength(TubeMass tube, double x) {
        return x <= tube.profile().endMm() && x >= tube.profile().startMm() ? tube.perLengthGPerMm(x) : 0.0;
    }

    private static void addPoint(double[][] mass, double[] mesh, PointMass point) {
        for (int node = 1; node < mesh.length; node++) {
            if (Math.abs(mesh[node] - Math.min(point.sMm(), mesh[mesh.length - 1])) <= PLACE_TOLERANCE_MM) {
                mass[2 * (node - 1)][2 * (node - 1)] += point.massG();
                return;
            }
        }
    }

    private static Outcome solve(double[][] stiff, double[][] mass, int modes, double[] mesh) {
        int n = stiff.length;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1.0 / Math.sqrt(stiff[i][i]);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                stiff[i][j] *= scale[i] * scale[j];
                stiff[j][i] = stiff[i][j];
                mass[i][j] *= scale[i] * scale[j];
                mass[j][i] = mass[i][j];
            }
        }
        try {
            RealMatrix lower = new CholeskyDecomposition(new Array2DRowRealMatrix(stiff, false), 1e-9, 1e-14).getL();
            double[][] reduced = reduce(lower.getData(), mass);
            EigenDecompositionSymmetric eigen =
                    new EigenDecompositionSymmetric(new Array2DRowRealMatrix(reduced, false), 1e-14, true);
            double[] eigenvalues = eigen.getEigenvalues();
            List<Double> hertz = new ArrayList<>();
            for (int mode = 0; mode < modes; mode++) {
                double omega = 1.0 / Math.sqrt(eigenvalues[mode]);
                if (!(omega > 0.0) || Double.isInfinite(omega)) {
                    return new Outcome.NotConverged("Mode " + (mode + 1) + " has no frequency above 0.");
                }
                hertz.add(omega / (2.0 * Math.PI));
            }
            double[] mode = backward(lower, eigen.getEigenvector(0).toArray());
            List<Cost> costs = new ArrayList<>();
            costs.add(new Cost(mesh[0], 0.0));
            for (int node = 1; node < mesh.length; node++) {
                double sway = mode[2 * (node - 1)] * scale[2 * (node - 1)];
                costs.add(new Cost(mesh[node], hertz.get(0) * sway * sway / (2.0 * eigenvalues[0])));
            }
            return new Outcome.Modes(hertz, costs);
        } catch (MathRuntimeException e) {
            return new Outcome.NotConverged("The eigenvalues were not found: " + e.getMessage());
        }
    }

    /** L⁻¹·M·L⁻ᵀ by forward substitution on columns, then on rows; symmetric to the last digit. */
    private static double[][] reduce(double[][] lower, double[][] mass) {
        int n = mass.length;
        double[][] left = forward(lower, mass);
        double[][] turned = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                turned[i][j] = left[j][i];
            }
        }
        double[][] both = forward(lower, turned);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double even = (both[i][j] + both[j][i]) / 2.0;
                both[i][j] = even;
                both[j][i] = even;
            }
        }
        return both;
    }

    /** L⁻ᵀ·y. */
    private static double[] backward(RealMatrix lower, double[] right) {
        double[] solved = right.clone();
        for (int i = solved.length - 1; i >= 0; i--) {
            solved[i] /= lower.getEntry(i, i);
            for (int j = 0; j < i; j++) {
                solved[j] -= lower.getEntry(i, j) * solved[i];
            }
        }
        return solved;
    }

    private static double[][] forward(double[][] lower, double[][] right) {
        int n = right.length;
        double[][] solved = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] row = right[i].clone();
            for (int k = 0; k < i; k++) {
                double factor = lower[i][k];
                if (factor != 0.0) {
                    double[] above = solved[k];
                    for (int j = 0; j < n; j++) {
                        row[j] -= factor * above[j];
                    }
                }
            }
            for (int j = 0; j < n; j++) {
                row[j] /= lower[i][i];
            }
            solved[i] = row;
        }
        return solved;
    }
}
