package withy.benchmarks;

import java.util.List;

/**
 * Times of several runs.
 *
 * @param medianMs middle one (the mean of the middle two), ms
 * @param leastMs shortest, ms
 * @param mostMs longest, ms
 */
record Spread(double medianMs, double leastMs, double mostMs) {

    static Spread of(List<Double> ms) {
        List<Double> sorted = ms.stream().sorted().toList();
        int last = sorted.size() - 1;
        return new Spread((sorted.get(last / 2) + sorted.get((last + 1) / 2)) / 2, sorted.get(0), sorted.get(last));
    }
}
