package withy.app;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Station;
import withy.search.Proposal;

/** What proposing needs of a search. */
public interface Chooser extends Solver {

    /** Up to three builds, best first. */
    List<Proposal> offer(Query query, Watch watch);

    /**
     * The same; the best is told as soon as it is known.
     *
     * @param best told once, before the others are looked for; not at all where there is none
     */
    default List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> best) {
        List<Proposal> all = offer(query, watch);
        if (!all.isEmpty()) {
            best.accept(all.get(0));
        }
        return all;
    }

    /**
     * The same where the best is known already: it is told at once.
     *
     * @param known the proven best of this very question, or null where it has to be looked for
     */
    default List<Proposal> offer(Query query, Watch watch, @Nullable Solution known, Consumer<Proposal> best) {
        return offer(query, watch, best);
    }

    /** False where {@link #offer} gives the best build only, so that a single one says nothing about alternatives. */
    default boolean looksFurther() {
        return true;
    }

    /** Parts that fit the brief and parts that do not, by station. */
    Map<Station.Place, Fit> fits(Query query);

    /**
     * How a station's parts fared.
     *
     * @param offered parts that fit the brief
     * @param refusals the others by the rule that refused them, most first
     */
    record Fit(int offered, List<Refusals> refusals) {
        public Fit {
            refusals = List.copyOf(refusals);
        }

        /** Parts that do not fit. */
        public int refused() {
            return refusals.stream().mapToInt(Refusals::parts).sum();
        }
    }

    /**
     * Parts one check of one rule refused.
     *
     * @param rule the rule's code
     * @param check its check
     * @param parts how many
     */
    record Refusals(String rule, String check, int parts) {}
}
