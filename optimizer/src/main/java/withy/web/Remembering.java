package withy.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.app.Chooser;
import withy.objectives.Solver;
import withy.rod.Station;
import withy.search.Proposal;

/**
 * A search that remembers what it has proven: every page of a talk asks for the best build again, and a reason asks what another page has asked.
 * What was cut short is not remembered. May be used by several threads.
 */
final class Remembering implements Chooser {
    /** Questions kept in mind; an answer is a few kilobytes. */
    private static final int MOST_QUESTIONS = 500;

    private final Chooser asked;
    private final Map<Solver.Query, Solver.Solution> proven = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Solver.Query, Solver.Solution> eldest) {
            return size() > MOST_QUESTIONS;
        }
    };

    Remembering(Chooser asked) {
        this.asked = asked;
    }

    @Override
    public Solution solve(Query query, Watch watch) {
        Solution known = known(query);
        return known == null ? kept(query, asked.solve(query, watch)) : known;
    }

    @Override
    public Solution any(Query query, Watch watch) {
        Solution known = known(query);
        return known == null ? asked.any(query, watch) : known;
    }

    @Override
    public List<Proposal> offer(Query query, Watch watch) {
        return offer(query, watch, best -> {});
    }

    @Override
    public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> best) {
        return asked.offer(query, watch, one -> {
            kept(query, new Solution(one.build(), one.objectives(), one.score(), one.bound(), one.proven(), 0));
            best.accept(one);
        });
    }

    @Override
    public boolean looksFurther() {
        return asked.looksFurther();
    }

    @Override
    public Map<Station.Place, Fit> fits(Query query) {
        return asked.fits(query);
    }

    private @Nullable Solution known(Query query) {
        synchronized (proven) {
            return proven.get(query);
        }
    }

    private Solution kept(Query query, Solution solution) {
        if (solution.proven()) {
            synchronized (proven) {
                proven.put(query, solution);
            }
        }
        return solution;
    }
}
