package withy.benchmarks;

import java.util.List;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Search;

/** What is measured warm, with its target on two cores. */
enum Job {
    RANK_1("rank 1", 40, 350),
    THREE("three builds", 250, 2_000),
    BINDING("rank 1, budget binding", 400, 3_000);

    private final String words;
    private final int wideMs;
    private final int largeMs;

    Job(String words, int wideMs, int largeMs) {
        this.words = words;
        this.wideMs = wideMs;
        this.largeMs = largeMs;
    }

    String words() {
        return words;
    }

    /** The bar for a catalogue, ms. */
    int targetMs(Shop shop) {
        return shop.parts() > 5_000 ? largeMs : wideMs;
    }

    /** Does it once, with nothing kept from before. */
    Sample once(Shop shop, Query query) {
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
