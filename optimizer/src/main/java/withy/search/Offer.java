package withy.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
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
 * The offer: the brief's best build, and up to two others that are worth showing beside it. An alternative is the proven best when one objective
 * counts for more; since every objective keeps a weight above nothing, no legal build is at least as good in all six and better in one. It must
 * look or feel different (blank, seat, grip material or guide family), beat rank 1 by more than a noticeable step in the objective it was found
 * with, and cost at most {@link #MOST_REGRET} of rank 1's score in the brief's own score.
 */
public final class Offer {
    /** Most that an alternative may be worse in the brief's own score, as a share of rank 1's. ASSUMED. */
    static final double MOST_REGRET = 0.12;

    /** How much more the favoured objective counts: its priority times this, at least the mean priority times this. */
    private static final double[] FAVOURS = {4, 1.5};

    private static final Objective[] ORDER = {
        Objective.WEIGHT, Objective.PRICE, Objective.STYLE, Objective.DURABILITY, Objective.SWING_WEIGHT
    };

    /** Questions worked at a time. */
    private static final int WORKERS = 2;

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
        List<Proposal> pool = pool(best);
        List<Proposal> chosen = new ArrayList<>(List.of(best));
        while (chosen.size() < 3) {
            Proposal next = furthest(pool, chosen);
            if (next == null) {
                break;
            }
            chosen.add(next);
        }
        return ranked(chosen);
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

    /** Two questions at a time: they do not depend on each other, and each has one answer. */
    private List<Proposal> pool(Proposal best) {
        List<Callable<@Nullable Proposal>> questions = new ArrayList<>();
        for (Objective objective : ORDER) {
            questions.add(() -> favouring(objective, query, best));
        }
        Map<String, Proposal> pool = new LinkedHashMap<>(asked(questions));
        if (enough(pool, best)) {
            return new ArrayList<>(pool.values());
        }
        questions.clear();
        for (String id : seen(best.build())) {
            questions.add(() -> without(id, best));
        }
        pool.putAll(asked(questions));
        return new ArrayList<>(pool.values());
    }

    private boolean enough(Map<String, Proposal> pool, Proposal best) {
        Set<String> looks = new TreeSet<>();
        looks.add(search.visible(best.build()));
        pool.values().forEach(one -> looks.add(search.visible(one.build())));
        return looks.size() >= 3;
    }

    private Map<String, Proposal> asked(List<Callable<@Nullable Proposal>> questions) {
        ExecutorService workers = Executors.newFixedThreadPool(WORKERS);
        try {
            Map<String, Proposal> found = new LinkedHashMap<>();
            for (Future<@Nullable Proposal> answer : workers.invokeAll(questions)) {
                Proposal one = answer.get();
                if (one != null) {
                    found.putIfAbsent(one.build().signature(), one);
                }
            }
            return found;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Map.of();
        } catch (ExecutionException e) {
            throw new IllegalStateException("looking for an alternative failed", e.getCause());
        } finally {
            workers.shutdownNow();
        }
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

    /** The brief's best without one part, where it is not dominated and better than rank 1 in something. */
    private @Nullable Proposal without(String id, Proposal best) {
        Set<String> refused = new TreeSet<>(query.refused());
        refused.add(id);
        Solution found = search.solve(query.refusing(refused), watch);
        Build build = found.build();
        ObjectiveVector vector = found.objectives();
        if (build == null || vector == null || vector.equals(best.objectives())) {
            return null;
        }
        Objective strength = strength(vector, best.objectives());
        if (strength == null || !affordable(found.score(), best) || !differs(build, best.build())) {
            return null;
        }
        Solution better = search.solve(query.under(losses(vector)), watch);
        boolean undominated = better.score() >= found.score();
        return undominated
                ? new Proposal(
                        0,
                        build,
                        vector,
                        found.score(),
                        found.bound(),
                        found.score() - found.bound(),
                        found.proven(),
                        strength)
                : null;
    }

    private static Map<Objective, Long> losses(ObjectiveVector vector) {
        Map<Objective, Long> losses = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            losses.put(objective, vector.loss(objective));
        }
        return losses;
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

    private @Nullable Proposal favouring(Objective objective, Query asked, Proposal best) {
        for (double favour : FAVOURS) {
            if (watch.interrupted().getAsBoolean()) {
                return null;
            }
            Proposal found = favouring(objective, favour, asked, best);
            if (found != null) {
                return found;
            }
        }
        return null;
    }

    private @Nullable Proposal favouring(Objective objective, double favour, Query asked, Proposal best) {
        Map<Objective, Double> priorities = new EnumMap<>(query.priorities());
        double sum = 0;
        for (double priority : query.priorities().values()) {
            sum += priority;
        }
        double own = priorities.getOrDefault(objective, 0.0);
        double mean = sum / Objective.values().length;
        priorities.put(objective, Math.max(own, mean) * (1 + favour));
        Solution found = search.solve(asked.withPriorities(priorities), watch);
        Build build = found.build();
        ObjectiveVector vector = found.objectives();
        if (build == null || vector == null) {
            return null;
        }
        long score = Scoring.of(query.brief(), search.catalog().rates(), query.priorities())
                .score(vector);
        return affordable(score, best) && beats(vector, best.objectives(), objective) && differs(build, best.build())
                ? new Proposal(
                        0,
                        build,
                        vector,
                        score,
                        found.bound(),
                        found.score() - found.bound(),
                        found.proven(),
                        objective)
                : null;
    }

    /** True where one beats the other by more than a noticeable step. */
    private boolean beats(ObjectiveVector one, ObjectiveVector other, Objective objective) {
        return other.loss(objective) - one.loss(objective) > step(objective);
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

    /** The one of the pool that lies furthest from what is chosen, in steps, and looks different from all of it. */
    private @Nullable Proposal furthest(List<Proposal> pool, List<Proposal> chosen) {
        Proposal best = null;
        double most = 0;
        for (Proposal one : pool) {
            double nearest = Double.POSITIVE_INFINITY;
            for (Proposal other : chosen) {
                nearest = differs(one.build(), other.build())
                        ? Math.min(nearest, distance(one.objectives(), other.objectives()))
                        : 0;
                if (nearest == 0) {
                    break;
                }
            }
            if (nearest > most) {
                most = nearest;
                best = one;
            }
        }
        return best;
    }

    private double distance(ObjectiveVector one, ObjectiveVector other) {
        double sum = 0;
        for (Objective objective : Objective.values()) {
            double steps = (one.value(objective) - other.value(objective)) / step(objective);
            sum += steps * steps;
        }
        return Math.sqrt(sum);
    }
}
