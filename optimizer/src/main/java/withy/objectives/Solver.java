package withy.objectives;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.rules.Rulebook;

/** What the search offers to everything that asks questions: the best legal build under added conditions, with how far off it may be. */
public interface Solver {

    /**
     * Best legal build for a question.
     *
     * @param query what is asked
     * @param watch progress and interruption
     */
    Solution solve(Query query, Watch watch);

    /**
     * The same by the thread that asks alone, step by step: for a watch that counts how often it is asked, or where the other processors have work.
     *
     * @param query what is asked
     * @param watch progress and interruption
     */
    default Solution solveAlone(Query query, Watch watch) {
        return solve(query, watch);
    }

    /**
     * The same where only builds that score less than a limit are of interest: one of another score may be told, or none.
     *
     * @param limit scores from here on are of no interest
     * @param query what is asked
     * @param watch progress and interruption
     */
    default Solution solveBelow(long limit, Query query, Watch watch) {
        return solveAlone(query, watch);
    }

    /** True where two questions may be put at once: there is memory for what is worked out of both. */
    default boolean hasRoomForTwo() {
        return true;
    }

    /**
     * Some legal build for a question, or the proof that there is none; how good the build is does not matter.
     *
     * @param query what is asked
     * @param watch progress and interruption
     */
    default Solution any(Query query, Watch watch) {
        AtomicBoolean found = new AtomicBoolean();
        BooleanSupplier enough = () -> found.get() || watch.interrupted().getAsBoolean();
        return solve(query, new Watch(enough, (build, objectives, score) -> found.set(true)));
    }

    /**
     * Some legal build for a question where one is soon found, or null, which says nothing. Which one it is depends on what was asked before.
     *
     * @param query what is asked
     * @param watch interruption
     */
    default @Nullable Build soon(Query query, Watch watch) {
        return null;
    }

    /**
     * True where a build is seen to answer a question by being measured and judged; false says nothing.
     *
     * @param query what is asked
     * @param build of the same catalogue
     */
    default boolean answers(Query query, Build build) {
        return false;
    }

    /**
     * False where no handle goes on any blank, whatever guides follow it and whatever it costs: then nothing answers the question, nor one with another
     * reel where the rules do not look at the reel's foot. True says nothing.
     *
     * @param query what is asked
     * @param watch interruption
     */
    default boolean mayHold(Query query, Watch watch) {
        return true;
    }

    /**
     * A question. Everything but the brief is added to it.
     *
     * @param brief the wishes; drop one by passing a changed brief
     * @param rulebook the rules in force
     * @param priorities priorities to score by
     * @param forced parts that must be used at some station
     * @param refused parts that must not be used
     * @param ceilings largest allowed loss by objective, in the whole-number units of {@link ObjectiveVector#loss}
     * @param fixed stations whose choice is given
     * @param empty stations that must stay empty
     * @param reelFootMm reel foot position that is given, mm, or null
     */
    record Query(
            Brief brief,
            Rulebook rulebook,
            Map<Objective, Double> priorities,
            Set<String> forced,
            Set<String> refused,
            Map<Objective, Long> ceilings,
            Map<Station, Choice> fixed,
            Set<Station> empty,
            @Nullable Integer reelFootMm) {
        public Query {
            priorities = Collections.unmodifiableMap(new EnumMap<>(priorities));
            forced = Collections.unmodifiableSet(new TreeSet<>(forced));
            refused = Collections.unmodifiableSet(new TreeSet<>(refused));
            ceilings = Collections.unmodifiableMap(new TreeMap<>(ceilings));
            fixed = Collections.unmodifiableMap(new TreeMap<>(fixed));
            empty = Collections.unmodifiableSet(new TreeSet<>(empty));
        }

        /** The plain question: the brief's best. */
        public static Query of(Brief brief, Rulebook rulebook) {
            return new Query(
                    brief, rulebook, brief.priorities(), Set.of(), Set.of(), Map.of(), Map.of(), Set.of(), null);
        }

        public Query withBrief(Brief other) {
            return new Query(other, rulebook, priorities, forced, refused, ceilings, fixed, empty, reelFootMm);
        }

        public Query withRulebook(Rulebook other) {
            return new Query(brief, other, priorities, forced, refused, ceilings, fixed, empty, reelFootMm);
        }

        public Query withPriorities(Map<Objective, Double> other) {
            return new Query(brief, rulebook, other, forced, refused, ceilings, fixed, empty, reelFootMm);
        }

        public Query forcing(Set<String> other) {
            return new Query(brief, rulebook, priorities, other, refused, ceilings, fixed, empty, reelFootMm);
        }

        public Query refusing(Set<String> other) {
            return new Query(brief, rulebook, priorities, forced, other, ceilings, fixed, empty, reelFootMm);
        }

        public Query under(Map<Objective, Long> other) {
            return new Query(brief, rulebook, priorities, forced, refused, other, fixed, empty, reelFootMm);
        }

        public Query fixing(Map<Station, Choice> choices, Set<Station> emptied, @Nullable Integer footMm) {
            return new Query(brief, rulebook, priorities, forced, refused, ceilings, choices, emptied, footMm);
        }
    }

    /**
     * What was found.
     *
     * @param build best build, or null where there is none (or none was found in time)
     * @param objectives its objectives, or null
     * @param score its score by the query's priorities; {@link Long#MAX_VALUE} without a build
     * @param bound no legal build scores less
     * @param proven true where score and bound meet, or where no legal build exists
     * @param layoutsOpened layouts worked through exactly
     */
    record Solution(
            @Nullable Build build,
            @Nullable ObjectiveVector objectives,
            long score,
            long bound,
            boolean proven,
            long layoutsOpened) {}

    /**
     * Progress and interruption of one solve. May be asked by several threads at once; better builds are told one at a time.
     *
     * @param interrupted asked often; true = stop and give the best so far
     * @param better told each better build
     */
    record Watch(BooleanSupplier interrupted, Better better) {
        /** Takes better builds as they are found. */
        public interface Better {
            void found(Build build, ObjectiveVector objectives, long score);
        }

        /** Runs to the end and tells nobody. */
        public static final Watch NONE = new Watch(() -> false, (build, objectives, score) -> {});
    }
}
