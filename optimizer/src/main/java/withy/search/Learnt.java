package withy.search;

import java.util.HashMap;
import java.util.Map;

/**
 * The multipliers that a search has learnt: of a blank on which a layout was worked its own, since what is dear on one may be cheap on another, and of
 * all others those learnt last.
 */
final class Learnt {
    private final Task task;
    private final Map<Site, Known> own = new HashMap<>();
    private Known last;

    Learnt(Task task) {
        this.task = task;
        this.last = new Known(Prices.start(task.scoring), 0);
    }

    /** Multipliers; no two have the same version. */
    private record Known(Prices prices, int version) {}

    private Known of(Site site) {
        return own.getOrDefault(site, last);
    }

    /** Those of a blank. */
    Prices prices(Site site) {
        return of(site).prices;
    }

    /** A number that those of a blank have as long as they stay the same. */
    int version(Site site) {
        return of(site).version;
    }

    /** Those of a node's blank as linear prices. */
    Linear linear(Node node) {
        return linear(node.site(), node.leastClass());
    }

    /** By how much builds of one class more are credited. */
    long credit(Site site, int leastClass) {
        return linear(site, leastClass - 1).constant()
                - linear(site, leastClass).constant();
    }

    private Linear linear(Site site, int leastClass) {
        return prices(site).linear(task.aim, task.margin(leastClass));
    }

    /** Takes what was learnt of a blank. Other multipliers make other floors; small changes are not worth new ones. */
    void learn(Site site, Prices better) {
        if (better.differs(prices(site), task.scoring)) {
            last = new Known(better, last.version + 1);
            own.put(site, last);
        }
    }
}
