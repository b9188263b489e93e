package withy.explain;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rules.Judge;
import withy.rules.Rulebook;

/**
 * Whether some build is at least as good as another in everything and better in something. The best build is looked at first, then builds with another
 * part in the place of the one asked about. Then only what the best one met so far is worse in is forbidden, and what would be nice and the other has is
 * insisted on where the best one lacks some of it; the best is looked for again, until one beats it or none scores less. Another thread forbids everything
 * at once meanwhile, on the other's own blank, then on all others, with priorities under which each of the six counts; where the first takes long that is
 * gone on with by both, until one beats it, there is none, or the effort is used up. Of two that beat it that is taken which took fewer looks, so that it
 * does not matter which is found first.
 */
final class Beaten {
    /** Looks of the search at whether to go on, of each question that forbids everything: counted, so that equal questions get equal answers. */
    private static final long EFFORT = 3_000;

    /** The same on one ceiling after another: where few are enough that is soon known. */
    private static final long STEPWISE = 100;

    private static final Solution GIVEN_UP = new Solution(null, null, Long.MAX_VALUE, Long.MIN_VALUE, false, 0);

    private final Inquiry inquiry;
    private final Found opponent;

    private Beaten(Inquiry inquiry, Found opponent) {
        this.inquiry = inquiry;
        this.opponent = opponent;
    }

    /**
     * What was found.
     *
     * @param by the build that beats it, or null
     * @param open true where none was found and the effort did not suffice to show that there is none
     */
    record Answer(@Nullable Found by, boolean open) {}

    /**
     * Finds it.
     *
     * @param first the best build for the brief
     * @param opponent what may be beaten
     * @param parts what is asked about
     */
    static Answer of(Inquiry inquiry, Found first, Found opponent, Set<String> parts) {
        Beaten beaten = new Beaten(inquiry, opponent);
        Found swapped = beaten.beats(first) ? first : Instead.of(inquiry, opponent, parts, beaten::beats);
        if (swapped != null) {
            return new Answer(swapped, false);
        }
        Answer answer = beaten.searched(first);
        Found by = answer.by;
        Found nearer = by == null || beaten.plainly(by) ? by : beaten.nearer(first, by);
        return nearer != null && beaten.plainly(nearer) ? new Answer(nearer, false) : answer;
    }

    /** True where it is better in something that would be noticed. */
    private boolean plainly(Found better) {
        return !Missed.of(opponent.rod(), better.rod()).isEmpty()
                || TradeOffs.between(better.side(0), opponent.side(1), inquiry.units()).stream()
                        .anyMatch(one -> one.better() && one.noticeable());
    }

    /** One that beats it as well and is as near to the best build as may be: there what is better is more than a hair. */
    private Found nearer(Found first, Found better) {
        Build nearer = Nearer.of(first.build(), better.build(), Set.of(), next -> {
            Found found = inquiry.measured(next);
            return beats(found) && Judge.legal(found.rod(), Rulebook.standard());
        });
        return inquiry.measured(nearer);
    }

    private Answer searched(Found first) {
        boolean insists = misses(first);
        Set<String> blank = Set.of(opponent.build().layout().blankId());
        Counted own = new Counted(EFFORT);
        Counted others = new Counted(EFFORT);
        Once<Answer> there =
                new Once<>(() -> others.notAfter(own, atOnce(insists, own, query -> query.forcing(blank))));
        Once<Answer> elsewhere =
                new Once<>(() -> own.notAfter(others, atOnce(insists, others, query -> query.refusing(blank))));
        if (inquiry.hasRoomForTwo()) {
            Once.beside(there, elsewhere);
        }
        try {
            Answer stepwise = stepwise(first, new Counted(STEPWISE));
            if (!stepwise.open) {
                return stepwise;
            }
            Answer any = elsewhere.answer();
            Answer near = there.answer();
            boolean sooner = near.by != null && (any.by == null || own.looks <= others.looks);
            return sooner ? near : any.by != null ? any : new Answer(null, near.open || any.open);
        } finally {
            own.stop();
            others.stop();
            there.answer();
            elsewhere.answer();
        }
    }

    /** Forbids one thing after another, by the brief's own priorities. */
    private Answer stepwise(Found first, Counted counted) {
        Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
        Found best = first;
        boolean insists = false;
        while (true) {
            boolean forbids = worse(best.vector(), ceilings);
            if (!insists && misses(best)) {
                insists = true;
                forbids = true;
            }
            if (!forbids) {
                return new Answer(null, true);
            }
            Solution solution = counted.asked(brief(insists).under(ceilings));
            Found found = found(solution);
            if (found != null && beats(found)) {
                return new Answer(found, false);
            }
            if (!solution.proven()) {
                return new Answer(null, true);
            }
            if (found == null || solution.score() >= inquiry.score(opponent.vector())) {
                return new Answer(null, false);
            }
            best = found;
        }
    }

    /** Forbids everything the other is better in, and looks for a build that is worse in nothing. */
    private Answer atOnce(boolean insisting, Counted counted, UnaryOperator<Query> where) {
        boolean insists = insisting;
        while (true) {
            Query query = where.apply(under(insists, everything()));
            long score = Scoring.of(query.brief(), inquiry.catalog().rates(), query.priorities())
                    .score(opponent.vector());
            Solution solution = counted.asked(query, score);
            Found found = found(solution);
            if (found != null && beats(found)) {
                return new Answer(found, false);
            }
            boolean none = found == null || solution.score() >= score;
            if (!solution.proven() || none || insists) {
                return new Answer(null, !(solution.proven() && none));
            }
            insists = true;
        }
    }

    private Map<Objective, Long> everything() {
        Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            ceilings.put(objective, opponent.vector().loss(objective));
        }
        return ceilings;
    }

    private Query brief(boolean insists) {
        Query query = inquiry.query();
        return insists ? query.withBrief(Insisting.on(opponent.rod())) : query;
    }

    /** By priorities under which every objective counts once more than the average of the customer's: builds that keep the ceilings lie that way. */
    private Query under(boolean insists, Map<Objective, Long> ceilings) {
        double sum = 0;
        for (Objective objective : Objective.values()) {
            sum += inquiry.brief().priority(objective);
        }
        double average = sum > 0 ? sum / Objective.values().length : 1;
        Map<Objective, Double> evened = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            evened.put(objective, inquiry.brief().priority(objective) + average);
        }
        return brief(insists).withPriorities(evened).under(ceilings);
    }

    private @Nullable Found found(Solution solution) {
        Build build = solution.build();
        return build == null ? null : inquiry.measured(build);
    }

    /** Questions of one thread, each ended with the first build that will do, or all when the effort is used up. */
    private class Counted {
        private volatile long most;
        private volatile boolean stopped;

        /** Looks so far. */
        long looks;

        private boolean met;

        Counted(long most) {
            this.most = most;
        }

        /** What scores less than a limit. */
        Solution asked(Query query, long limit) {
            return stopped ? GIVEN_UP : inquiry.solvedBelow(limit, query, watch());
        }

        Solution asked(Query query) {
            return inquiry.solved(query, watch());
        }

        private Watch watch() {
            Watch asker = inquiry.watch();
            return new Watch(this::ended, (build, objectives, score) -> {
                met |= noneWorse(objectives) && beats(inquiry.measured(build));
                told(asker, build, objectives, score);
            });
        }

        private boolean ended() {
            if (!met) {
                looks++;
            }
            return met || stopped || looks > most || inquiry.stopped();
        }

        /** Where others found one, what takes more looks than they did is of no interest. */
        Answer notAfter(Counted others, Answer found) {
            if (found.by != null) {
                most = Math.min(most, others.looks);
            }
            return found;
        }

        /** Nothing more is wanted of it; that others found one without a look says less: then it may do so, too. */
        void stop() {
            stopped = true;
        }
    }

    private synchronized void told(Watch asker, Build build, ObjectiveVector objectives, long score) {
        asker.better().found(build, objectives, score);
    }

    /** True where a build is worse in something; a ceiling is put on each such objective. */
    private boolean worse(ObjectiveVector one, Map<Objective, Long> ceilings) {
        boolean worse = false;
        for (Objective objective : Objective.values()) {
            long most = opponent.vector().loss(objective);
            if (one.loss(objective) > most) {
                worse |= ceilings.put(objective, most) == null;
            }
        }
        return worse;
    }

    private boolean noneWorse(ObjectiveVector one) {
        return Arrays.stream(Objective.values())
                .allMatch(o -> one.loss(o) <= opponent.vector().loss(o));
    }

    /** True where a build lacks something nice that the other has. */
    private boolean misses(Found one) {
        return !Missed.of(one.rod(), opponent.rod()).isEmpty();
    }

    /** In all six, in each nice wish and in what these count together, and not the same in all. */
    private boolean beats(Found one) {
        ObjectiveVector other = opponent.vector();
        return noneWorse(one.vector())
                && one.vector().missedMilliSteps() <= other.missedMilliSteps()
                && !one.vector().equals(other)
                && !misses(one);
    }
}
