package withy.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.app.Chooser;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.Proposal;

/**
 * A search that remembers what it has proven: every page of a talk asks for the best build again, and a reason asks what another page has asked.
 * What was cut short is not remembered. May be used by several threads.
 */
final class Remembering implements Chooser {
    /** Questions kept in mind; an answer is a few kilobytes. */
    private static final int MOST_QUESTIONS = 500;

    /** The same for offers. */
    private static final int MOST_OFFERS = 64;

    private final Chooser asked;
    private final Map<Query, Solution> proven = lately(MOST_QUESTIONS);
    private final Map<Query, List<Proposal>> offers = lately(MOST_OFFERS);

    Remembering(Chooser asked) {
        this.asked = asked;
    }

    /** Holds so many, and lets go of what was not asked for longest. */
    private static <V> Map<Query, V> lately(int most) {
        return new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Query, V> eldest) {
                return size() > most;
            }
        };
    }

    @Override
    public Solution solve(Query query, Watch watch) {
        Solution known = known(query);
        return known == null ? kept(query, asked.solve(query, watch)) : known;
    }

    @Override
    public Solution solveAlone(Query query, Watch watch) {
        Solution known = known(query);
        return known == null ? kept(query, asked.solveAlone(query, watch)) : known;
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
        List<Proposal> known;
        synchronized (offers) {
            known = offers.get(query);
        }
        if (known != null) {
            known.stream().findFirst().ifPresent(best);
            return known;
        }
        List<Proposal> all = asked.offer(query, watch, known(query), one -> {
            kept(query, new Solution(one.build(), one.objectives(), one.score(), one.bound(), one.proven(), 0));
            best.accept(one);
        });
        if (!watch.interrupted().getAsBoolean()) {
            synchronized (offers) {
                offers.put(query, all);
            }
        }
        return all;
    }

    @Override
    public boolean mayHold(Query query, Watch watch) {
        return asked.mayHold(query, watch);
    }

    @Override
    public boolean looksFurther() {
        return asked.looksFurther();
    }

    @Override
    public Map<Station.Place, Fit> fits(Query query) {
        return asked.fits(query);
    }

    /** The build that was proven the best for a question, whoever asked; null where none was. */
    @Nullable
    Build best(Query query) {
        Solution known = known(query);
        return known == null ? null : known.build();
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
