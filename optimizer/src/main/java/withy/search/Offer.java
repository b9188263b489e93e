package withy.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Balance;
import withy.rod.Build;
import withy.rod.Station;
import withy.rod.Tariff;

/**
 * The offer: the brief's best build, and up to two others that are worth showing beside it. An alternative is the proven best when other things count
 * for more, with every objective kept at a weight above nothing, so no legal build is at least as good in all six and better in one. It must look or
 * feel different (blank, seat, grip material or guide family), beat rank 1 by more than a noticeable step in some objective, and cost at most
 * {@link #MOST_REGRET} of rank 1's score in the brief's own score. Of those found, the two are shown that cover most with rank 1 ({@link Spread}).
 */
public final class Offer {
    /** Most that an alternative may be worse in the brief's own score, as a share of rank 1's. ASSUMED. */
    static final double MOST_REGRET = 0.12;

    /** How much more the favoured objective counts: its priority times this, at least the mean priority times this. */
    private static final double[] FAVOURS = {4, 1.5};

    private static final Objective[] ORDER = {
        Objective.WEIGHT, Objective.PRICE, Objective.STYLE, Objective.DURABILITY, Objective.SWING_WEIGHT
    };

    private final Search search;
    private final Query query;
    private final Watch watch;

    private Offer(Search search, Query query, Watch watch) {
        this.search = search;
        this.query = query;
        this.watch = watch;
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
        return new Offer(search, query, watch).three(early);
    }

    private List<Proposal> three(Consumer<Proposal> early) {
        Solution first = search.solve(query, watch);
        Build build = first.build();
        ObjectiveVector vector = first.objectives();
        if (build == null || vector == null) {
            return List.of();
        }
        Proposal best = new Proposal(
                1, build, vector, first.score(), first.bound(), first.score() - first.bound(), first.proven(), null);
        early.accept(best);
        return ranked(widest(best));
    }

    /**
     * First what is best where one objective counts for more; then what lies between, near what is to be shown; then, where fewer than three
     * differ, what there is without a part that is seen of rank 1.
     */
    private List<Proposal> widest(Proposal best) {
        Map<String, Proposal> pool = new LinkedHashMap<>();
        pool.put(best.build().signature(), best);
        List<Callable<List<Proposal>>> questions = new ArrayList<>();
        for (Objective objective : ORDER) {
            questions.add(() -> favouring(objective, best));
        }
        ask(questions, pool);
        questions.clear();
        Spread spread = spread(pool);
        for (Proposal one : shown(spread, pool)) {
            Query wider = query.withPriorities(spread.wider(one.objectives(), query.priorities()));
            questions.add(() -> candidates(search.solve(wider, watch), best));
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
        List<Callable<List<Proposal>>> questions = new ArrayList<>();
        for (String id : seen(best.build())) {
            Set<String> refused = new TreeSet<>(query.refused());
            refused.add(id);
            questions.add(() -> candidates(search.solve(asked.refusing(refused), watch), best));
        }
        Set<String> unbeaten = new TreeSet<>(pool.keySet());
        ask(questions, pool);
        while (true) {
            List<Proposal> shown = shown(spread(pool), pool);
            boolean allStand = true;
            for (Proposal one : shown) {
                String signature = one.build().signature();
                if (unbeaten.add(signature) && beaten(one)) {
                    pool.remove(signature);
                    allStand = false;
                }
            }
            if (allStand) {
                return shown;
            }
        }
    }

    /** True where a build is at least as good in every objective and better in one. */
    private boolean beaten(Proposal one) {
        Map<Objective, Long> losses = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            losses.put(objective, one.objectives().loss(objective));
        }
        return search.solve(query.under(losses), watch).score() < one.score();
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

    /** The objective in which one beats the other by most steps, more than one; null where there is none. */
    private @Nullable Objective strength(ObjectiveVector one, ObjectiveVector other) {
        Objective strength = null;
        double most = 1;
        for (Objective objective : Objective.values()) {
            double steps = (other.loss(objective) - one.loss(objective)) / step(objective);
            if (steps > most) {
                most = steps;
                strength = objective;
            }
        }
        return strength;
    }

    private static boolean affordable(long score, Proposal best) {
        return score - best.score() <= MOST_REGRET * Math.abs(best.score());
    }

    /** What may be shown when an objective counts for more, the most it may be first. */
    private List<Proposal> favouring(Objective objective, Proposal best) {
        List<Proposal> found = new ArrayList<>();
        for (double favour : FAVOURS) {
            if (watch.interrupted().getAsBoolean()) {
                break;
            }
            List<Proposal> now = candidates(search.solve(favouring(objective, favour), watch), best);
            found.addAll(now);
            boolean stillBest = now.stream().anyMatch(one -> one.build().equals(best.build()));
            if (stillBest
                    || now.stream().anyMatch(one -> one.strength() != null && differs(one.build(), best.build()))) {
                break; // what is best at both ends is best in between
            }
        }
        return found;
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

    /** A build that was found, unless it costs too much of rank 1's score; without a strength where it is noticeably better in nothing. */
    private List<Proposal> candidates(Solution found, Proposal best) {
        Build build = found.build();
        ObjectiveVector vector = found.objectives();
        if (build == null || vector == null) {
            return List.of();
        }
        long score = Scoring.of(query.brief(), search.catalog().rates(), query.priorities())
                .score(vector);
        return score - best.score() > MOST_REGRET * Math.abs(best.score())
                ? List.of()
                : List.of(new Proposal(
                        0,
                        build,
                        vector,
                        score,
                        found.bound(),
                        found.score() - found.bound(),
                        found.proven(),
                        strength(vector, best.objectives())));
    }

    /** A noticeable step in the whole-number unit of the objective. */
    private double step(Objective objective) {
        Brief brief = query.brief();
        double step = brief.step(objective);
        return switch (objective) {
            case WEIGHT -> step * 1000;
            case BALANCE -> step / Balance.NMM_PER_MGMM;
            case SWING_WEIGHT -> step * 1e12;
            case PRICE -> step * Tariff.MILLI / new Tariff(search.catalog().rates(), brief).factor();
            case STYLE -> step * 100;
            case DURABILITY -> step * 0.999;
        };
    }

    private boolean differs(Build one, Build other) {
        return !search.visible(one).equals(search.visible(other));
    }
}
