package withy.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;

/**
 * The offer: the brief's best build, and up to two others that are worth showing beside it. An alternative is the proven best when other things count
 * for more, with every objective kept at a weight above nothing, so no legal build is at least as good in all six and better in one. It must look or
 * feel different (blank, seat, grip material or guide family), beat rank 1 by more than a noticeable step in some objective, and cost at most
 * {@link Worth#MOST_REGRET} of rank 1's score in the brief's own score. Of those found, the two are shown that cover most with rank 1 ({@link Spread}).
 */
public final class Offer {
    /** How much more the favoured objective counts: its priority times this, at least the mean priority times this. */
    private static final double[] FAVOURS = {4, 1.5};

    private static final Objective[] ORDER = {
        Objective.WEIGHT, Objective.PRICE, Objective.STYLE, Objective.DURABILITY, Objective.SWING_WEIGHT
    };

    private final Search search;
    private final Query query;
    private final Watch watch;
    private final Worth worth;

    private Offer(Search search, Query query, Watch watch) {
        this.search = search;
        this.query = query;
        this.watch = watch;
        this.worth = new Worth(query, search.catalog().rates());
    }

    /** Up to three builds, best first; empty where no build is legal (or none was found before the interruption). */
    public static List<Proposal> three(Search search, Query query, Watch watch) {
        return three(search, query, watch, best -> {});
    }

    /**
     * The same.
     *
     * @param early told of the best build as soon as it is known, before others are looked for
     */
    public static List<Proposal> three(Search search, Query query, Watch watch, Consumer<Proposal> early) {
        return three(search, query, watch, null, early);
    }

    /**
     * The same.
     *
     * @param known the proven best of this very question, or null where it has to be looked for
     */
    public static List<Proposal> three(
            Search search, Query query, Watch watch, @Nullable Solution known, Consumer<Proposal> early) {
        return new Offer(search, query, watch).three(known, early);
    }

    /**
     * The best, and at the same time what is best where one objective counts for more; then what lies between, near what is to be shown; then,
     * where fewer than three differ, what there is without a part that is seen of rank 1.
     */
    private List<Proposal> three(@Nullable Solution known, Consumer<Proposal> early) {
        FutureTask<@Nullable Proposal> first = new FutureTask<>(() -> best(known, early));
        List<Callable<List<Proposal>>> questions = new ArrayList<>();
        questions.add(() -> {
            first.run();
            return Stream.ofNullable(first.get()).toList();
        });
        for (Objective objective : ORDER) {
            questions.add(() -> favouring(objective, first));
        }
        Map<String, Proposal> pool = new LinkedHashMap<>();
        ask(questions, pool);
        return pool.isEmpty()
                ? List.of()
                : ranked(widest(pool.values().iterator().next(), pool));
    }

    private @Nullable Proposal best(@Nullable Solution known, Consumer<Proposal> early) {
        Solution first = known == null ? search.solveAlone(query, watch) : known;
        Build build = first.build();
        ObjectiveVector vector = first.objectives();
        if (build == null || vector == null) {
            return null;
        }
        Proposal best = new Proposal(
                1, build, vector, first.score(), first.bound(), first.score() - first.bound(), first.proven(), null);
        early.accept(best);
        return best;
    }

    private List<Proposal> widest(Proposal best, Map<String, Proposal> pool) {
        List<Callable<List<Proposal>>> questions = new ArrayList<>();
        Spread spread = spread(pool);
        for (Proposal one : shown(spread, pool)) {
            Query wider = query.withPriorities(spread.wider(one.objectives(), query.priorities()));
            questions.add(() -> worth.candidates(search.solveAlone(wider, watch), best));
        }
        ask(questions, pool);
        List<Proposal> shown = shown(spread(pool), pool);
        for (Map<Objective, Double> under :
                List.of(spread(pool).wider(best.objectives(), query.priorities()), query.priorities())) {
            if (shown.size() < 3) {
                shown = without(query.withPriorities(under), best, pool);
            }
        }
        return shown;
    }

    /** With the best without each part that is seen of rank 1; those that are shown are checked to be beaten by none with it. */
    private List<Proposal> without(Query asked, Proposal best, Map<String, Proposal> pool) {
        List<String> ids = seen(best.build());
        Map<String, String> withheld = new HashMap<>();
        List<Solution> found = new Lacking(search, asked, watch).each(ids);
        for (int i = 0; i < ids.size(); i++) {
            for (Proposal one : worth.candidates(found.get(i), best)) {
                String signature = one.build().signature();
                if (pool.putIfAbsent(signature, one) == null) {
                    withheld.put(signature, ids.get(i));
                }
            }
        }
        while (true) {
            List<Proposal> shown = shown(spread(pool), pool);
            boolean allStand = true;
            for (Proposal one : shown) {
                String signature = one.build().signature();
                String id = withheld.remove(signature);
                if (id != null && beaten(one, asked, id)) {
                    pool.remove(signature);
                    allStand = false;
                }
            }
            if (allStand) {
                return shown;
            }
        }
    }

    /**
     * True where a build is at least as good in every objective and better in one. Without the part that was withheld none is, since nothing scores less there; so one with it is
     * looked for, by the same priorities.
     */
    private boolean beaten(Proposal one, Query asked, String withheld) {
        Map<Objective, Long> losses = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            losses.put(objective, one.objectives().loss(objective));
        }
        if (one.proven()) {
            Query forcing = asked.under(losses).forcing(Lacking.with(query.forced(), Stream.of(withheld)));
            Solution better = search.below(one.bound() + one.gap(), forcing, watch);
            if (better.build() != null || better.proven()) {
                return better.build() != null;
            }
        }
        return search.solveAlone(query.under(losses), watch).score() < one.score();
    }

    private Spread spread(Map<String, Proposal> pool) {
        return new Spread(
                query.brief(),
                search.catalog().rates(),
                pool.values().stream().map(Proposal::objectives).toList());
    }

    private List<Proposal> shown(Spread spread, Map<String, Proposal> pool) {
        List<Proposal> all = new ArrayList<>(pool.values());
        all.removeIf(one -> one.rank() != 1 && one.strength() == null);
        return spread.widest(all, (one, other) -> differs(one.build(), other.build()));
    }

    /** Alternatives 2 and 3 in the order of the brief's own score. */
    private static List<Proposal> ranked(List<Proposal> chosen) {
        List<Proposal> sorted = new ArrayList<>(chosen);
        sorted.sort((a, b) -> Long.compare(a.score(), b.score()));
        List<Proposal> ranked = new ArrayList<>();
        for (Proposal p : sorted) {
            ranked.add(new Proposal(
                    ranked.size() + 1,
                    p.build(),
                    p.objectives(),
                    p.score(),
                    p.bound(),
                    p.gap(),
                    p.proven(),
                    p.strength()));
        }
        return ranked;
    }

    /** Questions that do not depend on each other; what was found joins the pool. */
    private static void ask(List<Callable<List<Proposal>>> questions, Map<String, Proposal> pool) {
        Workers.all(questions, Workers.MOST)
                .forEach(found ->
                        found.forEach(one -> pool.putIfAbsent(one.build().signature(), one)));
    }

    /** What a customer sees of a build, as parts that an alternative can do without. */
    private static List<String> seen(Build build) {
        List<String> ids = new ArrayList<>();
        for (Station station : new Station[] {Station.BLANK, Station.SEAT, Station.REAR_GRIP, Station.guide(1)}) {
            String id = build.partAt(station);
            if (id != null) {
                ids.add(id);
            }
        }
        return ids;
    }

    /**
     * What may be shown when an objective counts for more, the most it may be first.
     *
     * @param first answers with rank 1; while it is not known the question is worked already, and given up where there is none
     */
    private List<Proposal> favouring(Objective objective, Future<@Nullable Proposal> first) throws Exception {
        Watch besides = new Watch(() -> isNone(first) || watch.interrupted().getAsBoolean(), Watch.NONE.better());
        List<Proposal> found = new ArrayList<>();
        for (double favour : FAVOURS) {
            if (besides.interrupted().getAsBoolean()) {
                break;
            }
            Solution favoured = search.solveAlone(favouring(objective, favour), besides);
            Proposal best = first.get();
            if (best == null) {
                break;
            }
            List<Proposal> now = worth.candidates(favoured, best);
            found.addAll(now);
            boolean stillBest = now.stream().anyMatch(one -> one.build().equals(best.build()));
            if (stillBest
                    || now.stream().anyMatch(one -> one.strength() != null && differs(one.build(), best.build()))) {
                break; // what is best at both ends is best in between
            }
        }
        return found;
    }

    private static boolean isNone(Future<@Nullable Proposal> first) {
        try {
            return first.isDone() && first.get() == null;
        } catch (InterruptedException | ExecutionException e) {
            return true;
        }
    }

    private Query favouring(Objective objective, double favour) {
        Map<Objective, Double> priorities = new EnumMap<>(query.priorities());
        double sum = 0;
        for (double priority : query.priorities().values()) {
            sum += priority;
        }
        double own = priorities.getOrDefault(objective, 0.0);
        double mean = sum / Objective.values().length;
        priorities.put(objective, Math.max(own, mean) * (1 + favour));
        return query.withPriorities(priorities);
    }

    private boolean differs(Build one, Build other) {
        return !search.visible(one).equals(search.visible(other));
    }
}
