package withy.search.planning;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rules.Judge;

/** Where rods are measured and judged for one run of the engine, and counted; looks up now and then whether it is to stop. */
final class Desk {
    /** Builds between two looks at whether to stop. */
    private static final int LOOK_EVERY = 64;

    private static final int REMEMBERED = 1_000;

    private final Problem problem;
    private final EngineSettings settings;
    private final BooleanSupplier interrupted;
    private final Map<Build, Reading> recent = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Build, Reading> eldest) {
            return size() > REMEMBERED;
        }
    };
    private Runnable stop = () -> {};
    private long measured;
    private long completed;
    private long best = Long.MAX_VALUE;
    private boolean stopped;

    Desk(Problem problem, EngineSettings settings, BooleanSupplier interrupted) {
        this.problem = problem;
        this.settings = settings;
        this.interrupted = interrupted;
    }

    /** Layouts the decoder may still have completed; none once it is to stop. */
    long layoutsLeft() {
        return stopped ? 0 : settings.layouts() - completed;
    }

    Problem problem() {
        return problem;
    }

    /** What to do when interrupted. */
    void onInterruption(Runnable action) {
        stop = action;
    }

    long measured() {
        return measured;
    }

    long completed() {
        return completed;
    }

    /** Measures and judges; a build seen a short while ago (a move taken back) is not measured again. */
    Reading read(Build build) {
        Reading known = recent.get(build);
        if (known == null) {
            known = readNow(build);
            recent.put(build, known);
        }
        return known;
    }

    private Reading readNow(Build build) {
        if (++measured % LOOK_EVERY == 0) {
            look();
        }
        Rod rod = Rod.measure(
                problem.catalog(),
                problem.brief(),
                build,
                problem.shapes().apply(build.layout().blankId()));
        BrokenRules tally = new BrokenRules();
        Judge.ask(rod, problem.rules(), tally);
        ObjectiveVector vector = ObjectiveVector.of(rod, problem.style(), problem.wishes());
        SortedMap<String, Long> broken = tally.broken();
        long question = question(build, vector);
        if (question > 0) {
            broken.put(Reading.QUESTION, question);
        }
        if (broken.isEmpty()) {
            best = Math.min(best, problem.scoring().score(vector));
        }
        return new Reading(broken, vector);
    }

    /** Score of the best legal build read so far; {@link Long#MAX_VALUE} before the first. */
    long best() {
        return best;
    }

    /** Has the kernel complete a layout, for builds that score less than a limit. */
    @Nullable
    Build complete(Layout layout, Set<String> without, long under) {
        completed++;
        look();
        return problem.kernel().complete(layout, without, under);
    }

    private void look() {
        if (interrupted.getAsBoolean()) {
            stopped = true;
            stop.run();
        }
    }

    private long question(Build build, ObjectiveVector vector) {
        long size = 0;
        for (Map.Entry<Objective, Long> ceiling : problem.ceilings().entrySet()) {
            long over = vector.loss(ceiling.getKey()) - ceiling.getValue();
            if (over > 0) {
                double scale = Math.max(1.0, Math.abs((double) ceiling.getValue()));
                size += BrokenRules.BROKEN
                        + Math.min(BrokenRules.MOST_EXCESS, Math.round(BrokenRules.MOST_EXCESS * (over / scale)));
            }
        }
        for (String id : problem.forced()) {
            boolean there = build.layout().blankId().equals(id)
                    || build.choices().values().stream()
                            .anyMatch(choice -> choice.partId().equals(id));
            size += there ? 0 : BrokenRules.BROKEN;
        }
        return size;
    }
}
