package withy.search;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Future;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;

/**
 * One question worked by two threads, each with every other blank on ground of its own. What one has found the other need not reach, but for builds
 * as good: of two with the same score that on the blank that comes first is taken, as one thread would, so that it does not matter which is found first.
 */
final class Halves {
    /** Memory a part of the catalogue, bytes, with which two grounds leave the collector room. With 20,000 parts and 2 GB two threads were no faster than one. */
    private static final long BYTES_PER_PART = 150_000;

    private final long under;
    private final Watch watch;
    private final Map<Half, Long> found = new EnumMap<>(Half.class);
    private volatile boolean over;

    /**
     * @param under scores from here on are of no interest
     */
    Halves(long under, Watch watch) {
        this.under = under;
        this.watch = new Watch(() -> over || watch.interrupted().getAsBoolean(), watch.better());
    }

    /** True where there is more than one blank, and memory for another ground. */
    static boolean divides(Task task) {
        List<Site> sites = task.sites();
        return !sites.isEmpty()
                && sites.get(0).shape() != sites.get(sites.size() - 1).shape()
                && hasRoom(task.ground.catalog.size(), Runtime.getRuntime().maxMemory());
    }

    /** False where what is worked out of so many parts may fill the memory when it is worked out twice. */
    static boolean hasRoom(int parts, long memory) {
        return parts * BYTES_PER_PART <= memory;
    }

    /**
     * The answer to the whole question.
     *
     * @param task the question on the ground of the thread that asks
     * @param even answers with {@link #half} of the even half on another ground
     */
    Solution both(Task task, Callable<Solution> even) {
        Future<Solution> beside = Workers.beside(even);
        try {
            Solution odd = half(task, Half.ODD);
            return both(task, odd, Workers.answer(beside));
        } finally {
            over = true;
        }
    }

    /** One half of it. */
    Solution half(Task task, Half half) {
        return new Proof(task, watch).under(under).half(half, this).run();
    }

    /** Scores from here on are of no interest to a half, whatever it has found itself. */
    synchronized long limit(Half half) {
        Long other = found.get(half == Half.ODD ? Half.EVEN : Half.ODD);
        return other == null ? Long.MAX_VALUE : other + 1;
    }

    /** A half has found a build better than any of its own before. */
    synchronized void found(Half half, Build build, ObjectiveVector objectives, long score) {
        long before = found.values().stream().mapToLong(Long::longValue).min().orElse(Long.MAX_VALUE);
        found.put(half, score);
        if (score < before) {
            watch.better().found(build, objectives, score);
        }
    }

    private static Solution both(Task task, Solution odd, Solution even) {
        boolean second = even.score() < odd.score() || even.score() == odd.score() && at(task, even) < at(task, odd);
        Solution best = second ? even : odd;
        long bound = Math.min(odd.bound(), even.bound());
        boolean none = best.build() == null;
        return new Solution(
                best.build(),
                best.objectives(),
                best.score(),
                Math.min(bound, best.score()),
                none ? odd.proven() && even.proven() : bound >= best.score(),
                odd.layoutsOpened() + even.layoutsOpened());
    }

    /** The position of the blank among all. */
    private static int at(Task task, Solution one) {
        Build build = one.build();
        for (int i = 0; build != null && i < task.ground.blanks.size(); i++) {
            if (task.ground.blanks.get(i).id().equals(build.layout().blankId())) {
                return i;
            }
        }
        return Integer.MAX_VALUE;
    }
}
