package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The multipliers that a search has learnt: of a blank on which a layout was worked its own, since what is dear on one may be cheap on another, and of
 * all others those of them all that make its floor highest at first sight.
 */
final class Learnt {
    private final Task task;
    private final NodeBounds bounds;
    private final Map<Site, Known> own = new HashMap<>();
    /** In the order they were learnt, those that a search begins with first. */
    private final List<Known> all = new ArrayList<>();

    private final Map<Site, Highest> highest = new HashMap<>();
    private boolean anyWillDo;

    Learnt(Task task, NodeBounds bounds) {
        this.task = task;
        this.bounds = bounds;
        Prices start = Prices.start(task.scoring);
        all.add(new Known(start, 0));
        all.add(new Known(start.slope(0), 1));
    }

    /** Multipliers; no two have the same version. */
    private record Known(Prices prices, int version) {}

    /** Of the first multipliers that were learnt, those that make a blank's floor highest, and that floor. */
    private record Highest(Known known, long floor, int of) {}

    /** Floors need not be high: all begin with the same. */
    void anyWillDo() {
        anyWillDo = true;
    }

    private Known of(Site site) {
        Known known = own.get(site);
        return known != null ? known : anyWillDo ? all.get(0) : highest(site);
    }

    private Known highest(Site site) {
        Highest best = highest.getOrDefault(site, new Highest(all.get(0), Long.MIN_VALUE, 0));
        if (best.of < all.size()) {
            for (Known known : all.subList(best.of, all.size())) {
                long floor = floor(site, known);
                best = new Highest(
                        floor >= best.floor ? known : best.known, Math.max(floor, best.floor), known.version + 1);
            }
            highest.put(site, best);
        }
        return best.known;
    }

    private long floor(Site site, Known known) {
        int leastClass = task.leastClass();
        Node listed = Node.blank(0, site, leastClass, Node.Stage.LISTED, known.version);
        return bounds.of(listed, known.prices.linear(task.aim, task.margin(leastClass)), Long.MAX_VALUE);
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
            Known known = new Known(better, all.size());
            all.add(known);
            own.put(site, known);
        }
    }
}
