package withy.benchmarks;

import java.util.List;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Search;

/** What is measured warm, with its target on two cores. */
enum Job {
    RANK_1("rank 1", 5, 40, 350),
    THREE("three builds", 50, 250, 2_000),
    BINDING("rank 1, budget binding", 50, 400, 3_000),
    REASON("why not this seat", 20, 60, 500),
    FLIPS("when it would win", 100, 500, 4_000),
    LEDGER("lighter ledger", 200, 1_000, 8_000),
    CURVE("weight curve", 1_000, 5_000, 40_000),
    CONFLICT("conflict and repairs", 150, 500, 3_000);

    /** Bar beyond 20,000 parts, ms. */
    private static final int HUGE_MS = 5_000;

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

    /** The bar for a catalogue, ms. */
    int targetMs(Shop shop) {
        if (shop.parts() > Shop.LARGE_SIZE) {
            return HUGE_MS;
        }
        return shop.parts() > 5_000 ? largeMs : shop.parts() > 500 ? wideMs : smallMs;
    }

    /** Does it once, with nothing kept from before. */
    Sample once(Shop shop, Query query) {
        if (compareTo(REASON) >= 0) {
            return Why.once(this, shop, query);
        }
        Search search = new Search(shop.catalog());
        Cap cap = new Cap(Cap.SECONDS);
        long start = System.nanoTime();
        if (this == THREE) {
            List<Proposal> builds = Offer.three(search, query, cap.watch());
            double ms = millisSince(start);
            boolean proven = builds.stream().allMatch(Proposal::proven);
            return new Sample(ms, Sample.NOT_COUNTED, builds.size(), proven && !cap.reached(), cap.reached());
        }
        Solution solution = search.solve(query, cap.watch());
        double ms = millisSince(start);
        int builds = solution.build() == null ? 0 : 1;
        return new Sample(ms, solution.layoutsOpened(), builds, solution.proven(), cap.reached());
    }

    static double millisSince(long startNanos) {
        return (System.nanoTime() - startNanos) / 1e6;
    }
}
