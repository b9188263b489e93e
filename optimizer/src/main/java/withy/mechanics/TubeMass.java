package withy.mechanics;

import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Mass of a blank along its length: m'(x) = a·d(x)^n plus point lumps (ferrule overlaps).
 *
 * <p>m' mass per length, g/mm; d outer diameter, mm; a scaled so that the whole weighs what it weighs; n = 1 a thin wall of
 * constant thickness, n = 2 a wall in constant proportion to the diameter or a solid. Each linear piece in closed form
 * ({@link PowerIntegral}). Valid for 0 ≤ n ≤ {@value #LARGEST_EXPONENT}. Standard integrals, no published table.
 *
 * @param profile outer diameter along the blank, mm
 * @param scale a, g/mm^(n+1)
 * @param exponent n
 * @param lumps point masses beside the tube's own, already part of the total
 * @param sum mass, first and second moment of tube and lumps
 */
public record TubeMass(TaperProfile profile, double scale, double exponent, List<Lump> lumps, MassSum sum) {
    /** Largest exponent tried: beyond it the wall would thin faster than any tube is rolled. ASSUMED. */
    public static final double LARGEST_EXPONENT = 4.0;

    private static final double EXPONENT_TOLERANCE = 1e-12;
    private static final int MOST_STEPS = 200;

    /** A point mass at a place, g and mm from the butt. */
    public record Lump(double xMm, double massG) {
        public Lump {
            Finite.any(xMm, "place of a lump in mm");
            Finite.notNegative(massG, "mass of a lump in g");
        }
    }

    public TubeMass {
        lumps = List.copyOf(lumps);
    }

    /** A tube of the given total mass, lumps included. */
    public static TubeMass of(TaperProfile profile, double totalG, double exponent, List<Lump> lumps) {
        Finite.positive(totalG, "mass of the blank in g");
        if (!(exponent >= 0.0 && exponent <= LARGEST_EXPONENT)) {
            throw new IllegalArgumentException("The exponent must lie in 0–" + LARGEST_EXPONENT + ", not " + exponent
                    + ".\nMaybe fit it to a measured balance point.");
        }
        MassSum lumpSum = MassSum.NONE;
        for (Lump lump : lumps) {
            lumpSum = lumpSum.plus(MassSum.point(lump.massG(), lump.xMm()));
        }
        double tubeG = totalG - lumpSum.massG();
        Finite.positive(tubeG, "mass of the blank less its lumps in g");
        MassSum shape = shape(profile, exponent);
        Finite.positive(shape.massG(), "volume of the blank");
        double scale = tubeG / shape.massG();
        return new TubeMass(profile, scale, exponent, lumps, shape.scaled(scale).plus(lumpSum));
    }

    /** The tube whose balance point is the measured one, or why there is none. */
    public static BalanceFit balancedAt(TaperProfile profile, double totalG, double balanceMm, List<Lump> lumps) {
        Finite.any(balanceMm, "measured balance point in mm");
        double towardTip = of(profile, totalG, 0.0, lumps).balanceMm();
        double towardButt = of(profile, totalG, LARGEST_EXPONENT, lumps).balanceMm();
        double low = Math.min(towardTip, towardButt);
        double high = Math.max(towardTip, towardButt);
        if (!(balanceMm >= low && balanceMm <= high) || high - low < 1e-9) {
            return new BalanceFit.Impossible(balanceMm, low, high);
        }
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(EXPONENT_TOLERANCE, 5);
        double exponent = solver.solve(
                MOST_STEPS, n -> of(profile, totalG, n, lumps).balanceMm() - balanceMm, 0.0, LARGEST_EXPONENT);
        return new BalanceFit.Fitted(of(profile, totalG, exponent, lumps));
    }

    /** What came of fitting the exponent to a measured balance point. */
    public sealed interface BalanceFit {
        /** The tube that balances there. */
        record Fitted(TubeMass tube) implements BalanceFit {}

        /** No wall law balances there: the measured point and the range that could be. */
        record Impossible(double measuredMm, double lowestMm, double highestMm) implements BalanceFit {}
    }

    public double massG() {
        return sum.massG();
    }

    public double balanceMm() {
        return sum.centreMm();
    }

    /** Mass per length of the tube without lumps at x, g/mm. */
    public double perLengthGPerMm(double xMm) {
        return scale * Math.pow(profile.at(xMm), exponent);
    }

    private static MassSum shape(TaperProfile profile, double n) {
        double mass = 0.0;
        double first = 0.0;
        double second = 0.0;
        for (int i = 1; i < profile.stations(); i++) {
            double x0 = profile.stationMm(i - 1);
            double length = profile.stationMm(i) - x0;
            if (length > 0.0) {
                PowerIntegral p = PowerIntegral.of(profile.valueAtStation(i - 1), profile.valueAtStation(i), n);
                mass += length * p.i0();
                first += length * (x0 * p.i0() + length * p.i1());
                second += length * (x0 * x0 * p.i0() + 2.0 * x0 * length * p.i1() + length * length * p.i2());
            }
        }
        return new MassSum(mass, first, second);
    }
}
