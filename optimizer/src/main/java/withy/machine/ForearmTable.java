package withy.machine;

/**
 * Forearm-to-grip length of grown-ups, mm, at the percentiles 1, 5, 25, 50, 75, 95, 99; ANSUR II (2012), computed from the public data
 * (4082 men, 1986 women). Linear between.
 */
enum ForearmTable {
    WOMEN(279, 290, 306, 316, 329, 350, 363),
    MEN(310, 320, 337, 348, 361, 379, 395);

    private static final double[] SHARES = {0.01, 0.05, 0.25, 0.50, 0.75, 0.95, 0.99};

    private final double[] lengthsMm;

    ForearmTable(double... lengthsMm) {
        this.lengthsMm = lengthsMm.clone();
    }

    /** Share whose forearm is no longer, 0 to 1. */
    double share(double lengthMm) {
        if (lengthMm < lengthsMm[0]) {
            return 0;
        }
        for (int i = 1; i < SHARES.length; i++) {
            if (lengthMm <= lengthsMm[i]) {
                double part = (lengthMm - lengthsMm[i - 1]) / (lengthsMm[i] - lengthsMm[i - 1]);
                return SHARES[i - 1] + part * (SHARES[i] - SHARES[i - 1]);
            }
        }
        return 1;
    }
}
