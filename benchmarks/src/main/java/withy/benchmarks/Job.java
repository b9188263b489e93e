package withy.benchmarks;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.search.ChangeLadder;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Search;

/** What is measured warm, with its target on two cores. */
enum Job {
    RANK_1("rank 1", 5, 40, 350),
    THREE("three builds", 50, 250, 2_000),
    BINDING("rank 1, budget binding", 50, 400, 3_000),
    REASON("why not this seat", 20, 60, 500),
    REASONS("why not a part of each kind", 20, 60, 500),
    FLIPS("when it would win", 100, 500, 4_000),
    LEDGER("lighter ledger", 200, 1_000, 8_000),
    CURVE("weight curve", 1_000, 5_000, 40_000),
    CONFLICT("conflict and repairs", 150, 500, 3_000),
    OUT("part out, fewest changes that do", 10, 100, 250),
    OUT_1("part out, one change", 10, 100, 250),
    OUT_2("part out, up to two changes", 10, 100, 250),
    OUT_3("part out, up to three changes", 10, 100, 250),
    PLAN("plan of ten jobs", Job.NO_BAR, Job.NO_BAR, Job.NO_BAR);

    /** What is measured on a large catalogue. */
    static final List<Job> OF_LARGE = List.of(RANK_1, THREE, BINDING, REASON, LEDGER, CONFLICT, OUT_1);

    /** Where the project states none. */
    static final int NO_BAR = 0;

    /** Bar beyond 20,000 parts, ms. */
    private static final int HUGE_MS = 5_000;

    private static final int LARGE_FROM = 5_000;
    private static final int WIDE_FROM = 500;

    private final String words;
    private final int smallMs;
    private final int wideMs;
    private final int largeMs;

    Job(String words, int smallMs, int wideMs, int largeMs) {
        this.words = words;
        this.smallMs = smallMs;
        this.wideMs = wideMs;
        this.largeMs = largeMs;
    }

    String words() {
        return words;
    }

    /** The bar for a catalogue, ms; {@link #NO_BAR} where there is none. */
    int targetMs(Shop shop) {
        if (smallMs == NO_BAR) {
            return NO_BAR;
        }
        if (shop.parts() > Shop.LARGE_SIZE) {
            return HUGE_MS;
        }
        return shop.parts() > LARGE_FROM ? largeMs : shop.parts() > WIDE_FROM ? wideMs : smallMs;
    }

    /** True where its bar is one of the 95th percentile. */
    boolean barOfTail() {
        return this == REASONS || compareTo(OUT) >= 0;
    }

    /** True where it is asked of all scenarios together. */
    boolean together() {
        return this == PLAN;
    }

    /**
     * Does it once, with nothing kept from before.
     *
     * @param run how many runs were before; asks for another part each time
     * @return the run, or null where the question can't be asked
     */
    @Nullable
    Sample once(Shop shop, Query query, int run) {
        return switch (this) {
            case RANK_1, BINDING -> best(shop, query);
            case THREE -> three(shop, query);
            case OUT -> Again.once(shop, query, run, ChangeLadder::fewest, 3);
            case OUT_1 -> Again.once(shop, query, run, ChangeLadder::climb, 1);
            case OUT_2 -> Again.once(shop, query, run, ChangeLadder::climb, 2);
            case OUT_3 -> Again.once(shop, query, run, ChangeLadder::climb, 3);
            case PLAN -> throw new IllegalArgumentException("a plan is asked of several jobs");
            case REASON, REASONS, FLIPS, LEDGER, CURVE, CONFLICT -> Why.once(this, shop, query, run);
        };
    }

    static Sample best(Shop shop, Query query) {
        Search search = new Search(shop.catalog());
        Cap cap = new Cap(Cap.WARM_SECONDS);
        double cpu = Cpu.ms();
        long start = System.nanoTime();
        Solution solution = search.solve(query, cap.watch());
        double ms = millisSince(start);
        int builds = solution.build() == null ? 0 : 1;
        return new Sample(ms, Cpu.ms() - cpu, solution.layoutsOpened(), builds, solution.proven(), cap.reached());
    }

    private static Sample three(Shop shop, Query query) {
        Search search = new Search(shop.catalog());
        Cap cap = new Cap(Cap.WARM_SECONDS);
        double cpu = Cpu.ms();
        long start = System.nanoTime();
        List<Proposal> builds = Offer.three(search, query, cap.watch());
        double ms = millisSince(start);
        boolean proven = builds.stream().allMatch(Proposal::proven);
        return new Sample(
                ms, Cpu.ms() - cpu, Sample.NOT_COUNTED, builds.size(), proven && !cap.reached(), cap.reached());
    }

    static double millisSince(long startNanos) {
        return (System.nanoTime() - startNanos) / 1e6;
    }
}
