package withy.search.planning;

import ai.timefold.solver.core.api.domain.solution.PlanningEntityCollectionProperty;
import ai.timefold.solver.core.api.domain.solution.PlanningScore;
import ai.timefold.solver.core.api.domain.solution.PlanningSolution;
import ai.timefold.solver.core.api.score.buildin.bendablelong.BendableLongScore;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;
import withy.search.planning.Assignment.Way;

/** All jobs with the ways each can be served. */
@PlanningSolution
public class PlanBoard {
    private List<? extends List<? extends Way>> pool = List.of();
    private ToLongFunction<List<Way>> excess = ways -> 0;
    private ToLongFunction<List<Way>> orders = ways -> 0;

    @PlanningEntityCollectionProperty
    private List<JobChoice> jobs = new ArrayList<>();

    @PlanningScore(bendableHardLevelsSize = 1, bendableSoftLevelsSize = 3)
    private @Nullable BendableLongScore score;

    /** For the engine. */
    public PlanBoard() {}

    @SuppressWarnings("unchecked")
    <W extends Way> PlanBoard(
            List<List<W>> pool, List<W> start, ToLongFunction<List<W>> excess, ToLongFunction<List<W>> orders) {
        this.pool = pool;
        this.excess = ways -> excess.applyAsLong((List<W>) ways);
        this.orders = ways -> orders.applyAsLong((List<W>) ways);
        for (int job = 0; job < pool.size(); job++) {
            List<W> ways = pool.get(job);
            jobs.add(new JobChoice(job, ways.size(), ways.indexOf(start.get(job))));
        }
    }

    /** The ways picked, in the order of the jobs. */
    @SuppressWarnings("unchecked")
    <W extends Way> List<W> picked() {
        List<W> picked = new ArrayList<>();
        for (JobChoice job : jobs) {
            picked.add((W) pool.get(job.job()).get(job.way()));
        }
        return picked;
    }

    BendableLongScore judged() {
        List<Way> ways = picked();
        long unserved = 0;
        long sum = 0;
        for (Way way : ways) {
            unserved += way.served() ? 0 : 1;
            sum += way.score();
        }
        return BendableLongScore.of(
                new long[] {-excess.applyAsLong(ways)}, new long[] {-unserved, -sum, -orders.applyAsLong(ways)});
    }

    @Nullable
    BendableLongScore score() {
        return score;
    }
}
