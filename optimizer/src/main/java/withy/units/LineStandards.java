package withy.units;

import java.util.OptionalInt;

/**
 * The number scales of fishing line.
 *
 * <p>Nylon and fluorocarbon: standard diameters after the Japan Fishing Tackle Manufacturers Association, JAFS-D1051100
 * (read as quoted in public tables, the standard itself not); between numbers d = 0.165·√n mm, which the table follows within
 * 0.75 % but for 1.2 (2.35 %), 1.5 (1.44 %) and 1.75 (0.8 %). Number 30 is from memory.
 *
 * <p>Braid: number 1 is 200 denier; standard diameters after the same association as quoted; between numbers d = 0.171·√n mm.
 * They are diameters of packed-solid fibre (the table implies 968 ± 8 kg/m³).
 *
 * <p>X rating: d = 0.011 in − 0.001 in·X, X from 0 to 8, exact; as printed in public tables.
 *
 * <p>Record line classes: the kilogram is the definition, the pound label is nominal (as quoted of the IGFA classes).
 */
public final class LineStandards {
    /** Finest X rating for which the rule holds. */
    public static final int FINEST_TIPPET = 8;

    /** Denier of braid number 1, g/9000 m. */
    public static final double BRAID_ONE_DENIER = 200.0;

    private static final double NYLON_ONE_MM = 0.165;
    private static final double BRAID_ONE_MM = 0.171;

    private static final double[][] NYLON_MM = {
        {0.25, 0.083},
        {0.3, 0.090},
        {0.4, 0.104},
        {0.5, 0.116},
        {0.6, 0.128},
        {0.8, 0.148},
        {1, 0.165},
        {1.2, 0.185},
        {1.5, 0.205},
        {1.75, 0.220},
        {2, 0.235},
        {2.25, 0.248},
        {2.5, 0.260},
        {2.75, 0.274},
        {3, 0.285},
        {3.5, 0.310},
        {4, 0.330},
        {5, 0.370},
        {6, 0.405},
        {7, 0.435},
        {8, 0.470},
        {10, 0.520},
        {12, 0.570},
        {14, 0.620},
        {16, 0.660},
        {18, 0.700},
        {20, 0.740},
        {30, 0.910}
    };

    private static final double[][] BRAID_MM = {
        {0.1, 0.054},
        {0.15, 0.066},
        {0.2, 0.076},
        {0.3, 0.094},
        {0.4, 0.108},
        {0.5, 0.121},
        {0.6, 0.132},
        {0.8, 0.153},
        {1, 0.171},
        {1.2, 0.191},
        {1.5, 0.209},
        {1.7, 0.219},
        {2, 0.242},
        {2.5, 0.270},
        {3, 0.296},
        {4, 0.342},
        {5, 0.382},
        {6, 0.418},
        {8, 0.483},
        {10, 0.540}
    };

    private static final int[][] CLASS_KG_LB = {
        {1, 2}, {2, 4}, {3, 6}, {4, 8}, {6, 12}, {8, 16}, {10, 20}, {15, 30}, {24, 50}, {37, 80}, {60, 130}
    };

    private LineStandards() {}

    /** Standard diameter in mm of nylon or fluorocarbon number n &gt; 0. */
    public static double nylonDiameterMm(double number) {
        return tabled(NYLON_MM, number, NYLON_ONE_MM);
    }

    /** Standard (packed-solid) diameter in mm of braid number n &gt; 0. */
    public static double braidDiameterMm(double number) {
        return tabled(BRAID_MM, number, BRAID_ONE_MM);
    }

    /** Denier, g/9000 m, of braid number n. */
    public static double braidDenier(double number) {
        return BRAID_ONE_DENIER * number;
    }

    /** Diameter in mm of an X rating from 0 to 8. */
    public static double tippetDiameterMm(int rating) {
        return (11 - rating) * 0.0254;
    }

    /** The nominal pound label of a record class in kg, if there is such a class. */
    public static OptionalInt classPounds(double kilograms) {
        for (int[] row : CLASS_KG_LB) {
            if (row[0] == kilograms) {
                return OptionalInt.of(row[1]);
            }
        }
        return OptionalInt.empty();
    }

    /** The record class in kg of a nominal pound label, if there is such a class. */
    public static OptionalInt classKilograms(double pounds) {
        for (int[] row : CLASS_KG_LB) {
            if (row[1] == pounds) {
                return OptionalInt.of(row[0]);
            }
        }
        return OptionalInt.empty();
    }

    /**
     * Solid diameter in mm of a yarn.
     *
     * @param tex linear density, g/km (1 tex = 9 denier)
     * @param densityKgM3 density of the fibre, kg/m³
     */
    public static double solidDiameterMm(double tex, double densityKgM3) {
        return 1000.0 * Math.sqrt(4.0 * tex * 1e-6 / (Math.PI * densityKgM3));
    }

    private static double tabled(double[][] table, double number, double oneMm) {
        for (double[] row : table) {
            if (row[0] == number) {
                return row[1];
            }
        }
        return oneMm * Math.sqrt(number);
    }
}
