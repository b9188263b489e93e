package withy.search;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The multipliers that a search has learnt: of a blank on which a layout was worked its own, since what is dear on one may be cheap on another, and of
 * all others those learnt last.
 */
final class Learnt {
    private final Task task;
    private final Map<Site, Known> own = new HashMap<>();
    private final Before before;
    private final Map<String, Prices> earlier;
    private Known last;

    Learnt(Task task) {
        this.task = task;
        this.before = task.ground.learnt(task.aim);
        this.earlier = Map.copyOf(before.own);
        Prices start = before.last;
        this.last = new Known(start == null ? Prices.start(task.scoring) : start, 0);
    }

    /** What earlier questions with the same aim came to on a ground, whatever parts they forced: where the next one begins. */
    static final class Before {
        private final Map<String, Prices> own = new HashMap<>();
        private @Nullable Prices last;
    }

    /** Multipliers; no two have the same version. */
    private record Known(Prices prices, int version) {}

    private Known of(Site site) {
        Known known = own.get(site);
        if (known == null) {
            Prices began = earlier.get(site.shape().blank().id());
            known = began == null ? last : new Known(began, 0);
        }
        return known;
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
            before.last = better;
            before.own.put(site.shape().blank().id(), better);
        }
    }
}
