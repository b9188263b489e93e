package withy.search;

import withy.objectives.Solver.Watch;

/**
 * Whether a handle goes on some blank, whatever guides follow and whatever it costs: the first one ends it. Nothing that is looked at knows the reel, but
 * for what its foot asks of the seat.
 */
final class HandleAnywhere {
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
        for (Site site : lately.likeliestFirst(task.sites())) {
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

    private boolean mayHold(Site site) {
        int leastClass = task.leastClass();
        Linear k = Prices.start(task.scoring).linear(task.aim, task.margin(leastClass));
        Node node = new Node(Long.MIN_VALUE, 0, site, leastClass, null, Node.Stage.OPENED, 0);
        return Hopeless.mayHold(site) && site.mayJoinSeat() && bounds.maySeat(node) && bounds.mayHold(node, k);
    }
}
