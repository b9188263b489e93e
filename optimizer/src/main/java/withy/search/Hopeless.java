package withy.search;

import org.jspecify.annotations.Nullable;

/** Of which blanks and layouts nothing can come: told before they are looked at more closely. */
final class Hopeless {
    private final Task task;
    private final NodeBounds bounds;
    private final @Nullable Lately lately;

    /** @param lately where the first build found ends the search: then it is worth while to ask sooner and of less; else null */
    Hopeless(Task task, NodeBounds bounds, @Nullable Lately lately) {
        this.task = task;
        this.bounds = bounds;
        this.lately = lately;
    }

    /** How closely blanks are looked at to begin with. */
    Node.Stage first() {
        return lately == null && task.ground.manyBlanks() ? Node.Stage.LISTED : Node.Stage.OPENED;
    }

    /** True where none of a blank need be opened. */
    boolean is(Site site) {
        boolean hope = site.mayHaveGuides() && (first() == Node.Stage.LISTED || mayHold(site));
        return !hope || lately != null && !(site.mayHaveTrain() && site.mayJoinSeat());
    }

    /** False where no cap and tip-top make a rod of the length wanted, or a part that is given goes nowhere on the blank. */
    static boolean mayHold(Site site) {
        return !site.ends().isEmpty() && site.mayHaveGiven();
    }

    /**
     * True where a node need not be looked at more closely.
     *
     * @param ceilingsBite true once a layout was met in which no build keeps its ceilings
     * @param k the prices of the moment
     */
    boolean is(Node node, boolean ceilingsBite, Linear k) {
        return ceilingsBite && !bounds.mayKeepCeilings(node)
                || lately != null && node.stage() == Node.Stage.OPENED && !bounds.maySeat(node)
                || lately != null && handleIsNext(node) && !bounds.mayHold(node, k, lately)
                || node.stage() == Node.Stage.LISTED && !mayHold(node.site());
    }

    /** A handle is looked for before the guides, but after what the guides cost where money is short. */
    private boolean handleIsNext(Node node) {
        boolean budgeted = Prices.bounded(task.bounds, Prices.Kind.COST);
        return node.setting() == null && node.stage() == (budgeted ? Node.Stage.LOOKED : Node.Stage.OPENED);
    }
}
