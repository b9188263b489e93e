package withy.shop;

import java.util.List;

/**
 * What the scale says of one part.
 *
 * @param pieces pieces weighed
 * @param meanG their mean, g
 * @param toleranceG ± within which a further piece is to be expected, g; NaN while too few were weighed to tell
 */
public record Weights(int pieces, double meanG, double toleranceG) {
    /** Fewest pieces whose spread is believed. ASSUMED. */
    public static final int FEWEST = 3;

    /** Least ± told of a weighed part: a bench scale reads to 0.1 g or 0.01 g and is not exact in its last digit. ASSUMED, g. */
    private static final double SCALE_G = 0.02;

    /** Two standard deviations, widened for the uncertain mean: 2·s·√(1 + 1/n), about 19 of 20 further pieces of a normal spread. */
    static Weights of(List<Long> weightsMg) {
        int n = weightsMg.size();
        double mean = weightsMg.stream().mapToLong(Long::longValue).sum() / (double) n;
        if (n < FEWEST) {
            return new Weights(n, mean / 1000, Double.NaN);
        }
        double squares =
                weightsMg.stream().mapToDouble(mg -> (mg - mean) * (mg - mean)).sum();
        double s = Math.sqrt(squares / (n - 1));
        double tolerance = Math.max(SCALE_G, 2 * s * Math.sqrt(1 + 1.0 / n) / 1000);
        return new Weights(n, mean / 1000, Math.round(tolerance * 1000) / 1000.0);
    }

    /** True where enough were weighed to tell how much pieces differ. */
    public boolean spreadKnown() {
        return !Double.isNaN(toleranceG);
    }
}
