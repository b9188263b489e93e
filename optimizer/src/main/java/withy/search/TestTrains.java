package withy.search;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The trains of a walk under the prices of each of its tests; what does not depend on the thread is worked out for the first one. */
final class TestTrains {
    private final List<Walk.Test> tests;
    private final @Nullable BareTrains[] bare;
    private final boolean[] asked;

    TestTrains(List<Walk.Test> tests) {
        this.tests = tests;
        this.bare = new BareTrains[tests.size()];
        this.asked = new boolean[tests.size()];
    }

    /** Those with one thread; the first under the prices last set. */
    TrainCosts[] of(Dressing with) {
        TrainCosts[] costs = new TrainCosts[tests.size()];
        costs[0] = with.train();
        for (int f = 1; f < costs.length; f++) {
            int test = f;
            costs[f] = with.train(tests.get(f).k(), k -> bare(test, with));
        }
        return costs;
    }

    private @Nullable BareTrains bare(int test, Dressing with) {
        if (!asked[test]) {
            bare[test] = with.bare(tests.get(test).k());
            asked[test] = true;
        }
        return bare[test];
    }
}
