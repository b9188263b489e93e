package withy.mechanics;

/**
 * The knot that joins line and leader and must pass the rings, as bounds by geometry (no published diameters exist; trade
 * figures from memory). D leader diameter, d over-all diameter of the line, mm: each knot is αD + βd at its widest.
 */
public enum KnotBulk {
    /** Braid plaited around a straight leader: D + 2d to D + 4d. */
    FG(true, 1.0, 2.0, 1.0, 4.0),
    /** Braid bound around a straight leader: D + 2d to D + 3d. */
    PR(true, 1.0, 2.0, 1.0, 3.0),
    /** Doubled leader wrapped by line: 2D + 2d to 2.5D + 2d. */
    ALBRIGHT(false, 2.0, 2.0, 2.5, 2.0),
    /** 3D to 4D. */
    DOUBLE_UNI(false, 3.0, 0.0, 4.0, 0.0),
    /** 3D to 4D. */
    SURGEON(false, 3.0, 0.0, 4.0, 0.0),
    /** 3D to 3.5D. */
    BLOOD(false, 3.0, 0.0, 3.5, 0.0);

    /** Clear ring diameter asked as a multiple of a slim and of a bulky knot; house rule from memory. */
    private static final double SLIM_CLEARANCE = 1.5;

    private static final double BULKY_CLEARANCE = 2.0;

    /**
     * Diameter of the smallest circle around 1 to 7 equal circles of diameter 1; circle packing in a circle (R. L. Graham 1968,
     * from memory).
     */
    private static final double[] BUNDLE = {1.0, 2.0, 2.1547005, 2.4142136, 2.7013016, 3.0, 3.0};

    private final boolean slim;
    private final double leaderLow;
    private final double lineLow;
    private final double leaderHigh;
    private final double lineHigh;

    KnotBulk(boolean slim, double leaderLow, double lineLow, double leaderHigh, double lineHigh) {
        this.slim = slim;
        this.leaderLow = leaderLow;
        this.lineLow = lineLow;
        this.leaderHigh = leaderHigh;
        this.lineHigh = lineHigh;
    }

    public boolean slim() {
        return slim;
    }

    /** Thinnest the knot can be at its widest, mm. */
    public double lowMm(double leaderMm, double lineMm) {
        return leaderLow * leaderMm + lineLow * lineMm;
    }

    /** Thickest the knot is expected to be, mm. */
    public double highMm(double leaderMm, double lineMm) {
        return leaderHigh * leaderMm + lineHigh * lineMm;
    }

    /** How many times the knot's diameter a ring must leave clear. */
    public double clearance() {
        return slim ? SLIM_CLEARANCE : BULKY_CLEARANCE;
    }

    /** Smallest clear ring diameter, mm, for the knot's upper bound. */
    public double ringNeededMm(double leaderMm, double lineMm) {
        return clearance() * highMm(leaderMm, lineMm);
    }

    /** Diameter, mm, of the tightest bundle of 1 to 7 equal strands. */
    public static double bundleMm(int strands, double strandMm) {
        if (strands < 1 || strands > BUNDLE.length) {
            throw new IllegalArgumentException("A bundle has 1–" + BUNDLE.length + " strands, not " + strands
                    + ".\nMaybe count the strands side by side at the widest place.");
        }
        return BUNDLE[strands - 1] * strandMm;
    }
}
