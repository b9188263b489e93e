package withy.benchmarks;

import java.util.List;

/**
 * Times of several runs.
 *
 * @param medianMs middle one (the mean of the middle two), ms
 * @param p95Ms 95 % of the runs took at most so long, ms
 * @param p99Ms 99 % of the runs took at most so long, ms
 * @param leastMs shortest, ms
 * @param mostMs longest, ms
 */
record Spread(double medianMs, double p95Ms, double p99Ms, double leastMs, double mostMs) {

    static Spread of(List<Double> ms) {
        List<Double> sorted = ms.stream().sorted().toList();
        int last = sorted.size() - 1;
        double median = (sorted.get(last / 2) + sorted.get((last + 1) / 2)) / 2;
        return new Spread(median, rank(sorted, 0.95), rank(sorted, 0.99), sorted.get(0), sorted.get(last));
    }

    /** Nearest rank. */
    private static double rank(List<Double> sorted, double share) {
        return sorted.get((int) Math.ceil(share * sorted.size()) - 1);
    }
}
