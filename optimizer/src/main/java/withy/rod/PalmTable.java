package withy.rod;

/**
 * Palm breadth to the outer diameter of a seat's barrel, mm: up to 75 20–22, up to 85 21–24, up to 95 22–25, above 24–28 (trade table, common
 * practice), with {@value #TOLERANCE_MM} mm either way because barrels taper and hands differ (ASSUMED). Not for surf rods: their barrels follow
 * the blank, whose butt is as thick as these diameters.
 */
public final class PalmTable {
    static final double TOLERANCE_MM = 0.5;

    private static final double[] PALM_MM = {75, 85, 95, Double.MAX_VALUE};
    private static final double[] THINNEST_MM = {20, 21, 22, 24};
    private static final double[] THICKEST_MM = {22, 24, 25, 28};

    /** Thinnest barrel some palm holds well, mm; from here to {@link #THICKEST_OF_ALL_MM} the rows leave no gap. */
    public static final double THINNEST_OF_ALL_MM = THINNEST_MM[0] - TOLERANCE_MM;

    /** Thickest barrel some palm holds well, mm. */
    public static final double THICKEST_OF_ALL_MM = THICKEST_MM[THICKEST_MM.length - 1] + TOLERANCE_MM;

    private PalmTable() {}

    public static double thinnestMm(double palmMm) {
        return THINNEST_MM[row(palmMm)] - TOLERANCE_MM;
    }

    public static double thickestMm(double palmMm) {
        return THICKEST_MM[row(palmMm)] + TOLERANCE_MM;
    }

    private static int row(double palmMm) {
        int row = 0;
        while (palmMm > PALM_MM[row]) {
            row++;
        }
        return row;
    }
}
