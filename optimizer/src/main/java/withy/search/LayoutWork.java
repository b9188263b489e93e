package withy.search;

import java.util.ArrayList;
import java.util.List;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Consumables;
import withy.rod.Setting;

/**
 * Works layouts to the end, on each of their stands with every thread worth looking at. What can't be walked in a few steps is put off with the multipliers
 * found for it, and walked in slices when no other layout may hold a better build.
 */
final class LayoutWork {
    /** Handles and builds met in one walk through a layout, at first and when no other may hold a better one. */
    private static final long FIRST_STEPS = 20_000;

    /** The same under several ceilings: most layouts have nothing that keeps them all, which multipliers learnt elsewhere soon tell. */
    private static final long FIRST_STEPS_UNDER_CEILINGS = 2_000;

    private static final long MOST_STEPS = 20_000_000;

    private final Task task;
    private final NodeBounds bounds;
    private final Watch watch;
    private final Search search;
    private final long firstSteps;
    private final Slices slices = new Slices();

    /**
     * @param firstSteps handles and builds met before a layout is put off
     */
    LayoutWork(Task task, NodeBounds bounds, Watch watch, Search search, long firstSteps) {
        this.task = task;
        this.bounds = bounds;
        this.watch = watch;
        this.search = search;
        this.firstSteps = firstSteps;
    }

    /** Handles and builds met before a layout is put off, of a question. */
    static long firstSteps(Query query) {
        return query.ceilings().size() > 1 ? FIRST_STEPS_UNDER_CEILINGS : FIRST_STEPS;
    }

    /** What the search knows meanwhile. */
    interface Search {
        /** Scores from here on are of no interest. */
        long limit();

        /** Multipliers to begin with on a blank. */
        Prices prices(Site site);

        /** True where the first build found ends it. */
        boolean firstWillDo();

        /**
         * Takes what became of a stand of a blank.
         *
         * @param refused builds that a rule outside the chain refused
         */
        void took(Site site, Dual.Outcome outcome, long refused);
    }

    /** Looks for the best build of a layout in few steps; a number what was not seen of it does not score below, or the largest where all was. */
    long first(Node node, Setting setting) {
        return complete(node, setting, search.limit(), firstSteps);
    }

    /** Where the next slice of a layout that was put off ends. */
    long end(Node node) {
        return slices.end(node, search.limit());
    }

    /** The same of what scores less than a limit, however many steps it takes. */
    long slice(Node node, Setting setting, long most) {
        return complete(node, setting, most, MOST_STEPS);
    }

    private long complete(Node node, Setting setting, long most, long mostSteps) {
        long least = Long.MAX_VALUE;
        for (Stand stand : node.site().stands(setting)) {
            least = Math.min(least, complete(node, setting, stand, Math.min(most, search.limit()), mostSteps));
        }
        return least;
    }

    private long complete(Node node, Setting setting, Stand stand, long most, long mostSteps) {
        if (slices.isWalked(node, stand, most)) {
            return Long.MAX_VALUE;
        }
        Linear k = search.prices(node.site()).linear(task.aim, task.margin(node.leastClass()));
        List<Completion.Candidate> with = candidates(node, setting, stand, k);
        if (with.isEmpty()) {
            return Long.MAX_VALUE;
        }
        Completion completion =
                new Completion(stand, setting, with, k, node.leastClass(), most, slices.dressings(node, stand));
        Dual dual = new Dual(task, completion, node.shape(), node.leastClass(), watch, mostSteps);
        LayoutCeilings ceilings =
                slices.ceilings(task, setting.layout(), stand, completion.threads(), node.leastClass());
        ceilings.hard(bounds.hard());
        dual.ceilings(ceilings);
        if (search.firstWillDo()) {
            dual.firstWillDo();
        }
        Prices before = slices.prices(node, stand);
        Dual.Outcome outcome =
                before == null ? dual.solve(search.prices(node.site()), most) : dual.settle(before, most);
        if (outcome.whole()) {
            slices.walked(node, stand, most);
        } else {
            slices.putOff(node, stand, outcome.prices());
        }
        TwoCeilings.Edge ruling = ceilings.ruling();
        if (ruling != null) {
            bounds.hard(ruling);
        }
        search.took(node.site(), outcome, dual.refused());
        return outcome.whole() ? Long.MAX_VALUE : outcome.bound();
    }

    /** Threads worth looking at, each with a number no build with it scores below. */
    private List<Completion.Candidate> candidates(Node node, Setting setting, Stand stand, Linear k) {
        List<Consumables> all = node.site().threads();
        boolean works = node.site().burdens(k);
        long[] floors = works ? bounds.dressed(node, setting, stand, k, search.limit()) : new long[all.size()];
        List<Completion.Candidate> with = new ArrayList<>();
        for (int t = 0; t < all.size(); t++) {
            if (all.get(t).adhesive().id().equals(stand.fitter.with().adhesive().id())) {
                with.add(new Completion.Candidate(all.get(t), works ? floors[t] : Long.MIN_VALUE));
            }
        }
        return with;
    }
}
