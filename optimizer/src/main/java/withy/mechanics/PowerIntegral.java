package withy.mechanics;

/**
 * I_k = ∫₀¹ s^k · d(s)^n ds for k = 0, 1, 2 with d(s) = d₀ + (d₁ − d₀)·s, any real n ≥ 0, d ≥ 0.
 *
 * <p>Closed form with P_j = (d₁^j − d₀^j)/j and D = d₁ − d₀: I₀ = P_{n+1}/D; I₁ = (P_{n+2} − d₀·P_{n+1})/D²;
 * I₂ = (P_{n+3} − 2d₀·P_{n+2} + d₀²·P_{n+1})/D³. These cancel as D → 0, so where the diameters differ by less than a fifth of
 * their mean the binomial series about the mean is summed instead (24 terms, remainder below 1e-17 for n ≤ 8); at equal
 * diameters it gives the limit d^n/(k+1). For n = 0, 1, 2 the polynomials are exact. Standard integrals.
 */
record PowerIntegral(double i0, double i1, double i2) {
    private static final double SERIES_BELOW = 0.2;
    private static final int TERMS = 24;

    static PowerIntegral of(double d0, double d1, double n) {
        if (n == 0.0) {
            return new PowerIntegral(1.0, 1.0 / 2.0, 1.0 / 3.0);
        }
        if (n == 1.0) {
            return new PowerIntegral((d0 + d1) / 2.0, (d0 + 2.0 * d1) / 6.0, (d0 + 3.0 * d1) / 12.0);
        }
        if (n == 2.0) {
            return new PowerIntegral(
                    (d0 * d0 + d0 * d1 + d1 * d1) / 3.0,
                    (d0 * d0 + 2.0 * d0 * d1 + 3.0 * d1 * d1) / 12.0,
                    (d0 * d0 + 3.0 * d0 * d1 + 6.0 * d1 * d1) / 30.0);
        }
        double mean = (d0 + d1) / 2.0;
        if (mean == 0.0) {
            return new PowerIntegral(0.0, 0.0, 0.0);
        }
        double difference = d1 - d0;
        return Math.abs(difference) < SERIES_BELOW * mean ? series(mean, difference, n) : closed(d0, d1, n);
    }

    private static PowerIntegral closed(double d0, double d1, double n) {
        double difference = d1 - d0;
        double p1 = (Math.pow(d1, n + 1.0) - Math.pow(d0, n + 1.0)) / (n + 1.0);
        double p2 = (Math.pow(d1, n + 2.0) - Math.pow(d0, n + 2.0)) / (n + 2.0);
        double p3 = (Math.pow(d1, n + 3.0) - Math.pow(d0, n + 3.0)) / (n + 3.0);
        return new PowerIntegral(
                p1 / difference,
                (p2 - d0 * p1) / (difference * difference),
                (p3 - 2.0 * d0 * p2 + d0 * d0 * p1) / (difference * difference * difference));
    }

    /** With s = (1 + t)/2, t from −1 to 1, d = mean·(1 + e·t), e = difference/(2·mean). */
    private static PowerIntegral series(double mean, double difference, double n) {
        double e = difference / (2.0 * mean);
        double coefficient = 1.0;
        double t0 = 0.0;
        double t1 = 0.0;
        double t2 = 0.0;
        for (int j = 0; j < TERMS; j++) {
            if (j % 2 == 0) {
                t0 += coefficient / (j + 1);
                t2 += coefficient / (j + 3);
            } else {
                t1 += coefficient / (j + 2);
            }
            coefficient *= e * (n - j) / (j + 1);
        }
        double scale = Math.pow(mean, n);
        return new PowerIntegral(scale * t0, scale * (t0 + t1) / 2.0, scale * (t0 + 2.0 * t1 + t2) / 4.0);
    }
}
