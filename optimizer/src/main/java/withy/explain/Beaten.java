package withy.explain;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;

/**
 * Whether some build is at least as good as another in everything and better in something. The best build is looked at first, then builds with another
 * part in the place of the one asked about. Then only what the best one met so far is worse in is forbidden, and the best looked for again, until one
 * beats it, none scores less, or the effort is used up.
 */
final class Beaten {
    /** Looks of the search at whether to go on, in all questions of one answer: counted, so that equal questions get equal answers. */
    private static final long EFFORT = 3_000;

    private final Inquiry inquiry;
    private final Found opponent;
    private long looks;
    private boolean met;

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
        Predicate<Found> beats = one -> beaten.atLeastAsGood(one.vector());
        Found swapped = beats.test(first) ? first : Instead.of(inquiry, opponent, parts, beats);
        return swapped != null ? new Answer(swapped, false) : beaten.searched(first);
    }

    private Answer searched(Found first) {
        Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
        ObjectiveVector best = first.vector();
        while (worse(best, ceilings)) {
            Query under = inquiry.query().under(ceilings);
            Solution solution = inquiry.solved(under, watch());
            ObjectiveVector found = solution.objectives();
            if (found != null && atLeastAsGood(found)) {
                return new Answer(inquiry.measured(Objects.requireNonNull(solution.build())), false);
            }
            if (!solution.proven()) {
                return new Answer(null, true);
            }
            if (found == null || solution.score() >= inquiry.score(opponent.vector())) {
                return new Answer(null, false);
            }
            best = found;
        }
        return new Answer(null, false);
    }

    /** Ends a question with the first build that will do, or when the effort is used up. */
    private Watch watch() {
        Watch asker = inquiry.watch();
        return new Watch(
                () -> met || ++looks > EFFORT || asker.interrupted().getAsBoolean(), (build, objectives, score) -> {
                    met |= atLeastAsGood(objectives);
                    asker.better().found(build, objectives, score);
                });
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

    /** In all six and in what nice wishes count, and not the same in all. */
    private boolean atLeastAsGood(ObjectiveVector one) {
        ObjectiveVector other = opponent.vector();
        boolean least = one.missedMilliSteps() <= other.missedMilliSteps();
        return least && (one.dominates(other) || sixEqual(one, other) && !one.equals(other));
    }

    private static boolean sixEqual(ObjectiveVector one, ObjectiveVector other) {
        for (Objective objective : Objective.values()) {
            if (one.loss(objective) != other.loss(objective)) {
                return false;
            }
        }
        return true;
    }
}
