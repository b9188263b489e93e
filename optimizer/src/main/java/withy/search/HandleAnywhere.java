package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import withy.objectives.Solver.Watch;

/**
 * Whether a handle goes on some blank, whatever guides follow and whatever it costs: the first one ends it. Nothing that is looked at knows the reel, but
 * for what its foot asks of the seat.
 */
final class HandleAnywhere {
    /** Under whatever prices the same goes on; under these it need not be told where the guides stand. */
    private static final Linear MONEY = Prices.only(Prices.Kind.COST);

    private final Task task;
    private final Watch watch;
    private final Lately lately;
    private final NodeBounds bounds;

    /**
     * @param lately blanks to be looked at first; the one that ends it is told to it
     */
    HandleAnywhere(Task task, Watch watch, Lately lately) {
        this.task = task;
        this.watch = watch;
        this.lately = lately;
        this.bounds = new NodeBounds(task);
    }

    /** False where none does; true where one may, or where it was interrupted. */
    boolean mayHold() {
        if (!task.ground.complete()) {
            return true;
        }
        List<Site> others = new ArrayList<>();
        List<Site> likely = lately.likely(task.sites(), others);
        return anyOf(likely) || anyOf(widestFirst(others));
    }

    private boolean anyOf(List<Site> sites) {
        for (Site site : sites) {
            if (watch.interrupted().getAsBoolean()) {
                return true;
            }
            if (mayHold(site)) {
                lately.held(site.shape().blank().id());
                return true;
            }
        }
        return false;
    }

    /** Where a check is given, those blanks first on which it may lie with the reel at most places: there it may soonest go with the rest. */
    private List<Site> widestFirst(List<Site> sites) {
        if (sites.stream().noneMatch(site -> site.stations().givenCheck())) {
            return sites;
        }
        Map<Site, Integer> feet = new IdentityHashMap<>();
        for (Site site : sites) {
            feet.put(site, Hopeless.mayHold(site) ? bounds.feetForChecks(node(site)) : 0);
        }
        return sites.stream()
                .sorted(Comparator.comparing((Site site) -> -feet.getOrDefault(site, 0)))
                .toList();
    }

    private Node node(Site site) {
        return new Node(Long.MIN_VALUE, 0, site, task.leastClass(), null, Node.Stage.OPENED, 0);
    }

    private boolean mayHold(Site site) {
        Node node = node(site);
        return Hopeless.mayHold(site)
                && site.mayJoinSeat()
                && bounds.maySeat(node)
                && bounds.mayHold(node, MONEY, lately);
    }
}
