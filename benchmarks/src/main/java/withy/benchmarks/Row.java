package withy.benchmarks;

import java.util.Comparator;
import java.util.List;

/**
 * All runs of one job on one scenario and shop; none where the time for the whole was up.
 *
 * @param shop the shop
 * @param job the job
 * @param scenario name of the scenario
 * @param samples the runs
 */
record Row(Shop shop, Job job, String scenario, List<Sample> samples) {
    Row {
        samples = List.copyOf(samples);
    }

    Spread spread() {
        return Spread.of(samples.stream().map(Sample::ms).toList());
    }

    boolean ran() {
        return !samples.isEmpty();
    }

    boolean capped() {
        return samples.stream().anyMatch(Sample::capped);
    }

    boolean proven() {
        return ran() && samples.stream().allMatch(Sample::proven);
    }

    /** Missed where the median (the 95th percentile, where the bar is one) is above it, a run was stopped, or an answer was not proven. */
    boolean met() {
        if (!proven() || capped()) {
            return false;
        }
        int bar = job.targetMs(shop);
        return bar == Job.NO_BAR || (job.barOfTail() ? spread().p95Ms() : spread().medianMs()) <= bar;
    }

    /** What the longest run asked about; empty where all ask the same. */
    String slowest() {
        return samples.stream()
                .max(Comparator.comparingDouble(Sample::ms))
                .map(Sample::about)
                .orElse("");
    }

    int builds() {
        return samples.get(0).builds();
    }

    long opened() {
        return samples.get(0).opened();
    }
}
