package withy.benchmarks.peer.engine;

import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import ai.timefold.solver.core.api.score.stream.Constraint;
import ai.timefold.solver.core.api.score.stream.ConstraintFactory;
import ai.timefold.solver.core.api.score.stream.ConstraintProvider;
import ai.timefold.solver.core.api.score.stream.uni.UniConstraintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import withy.benchmarks.peer.Question.Judged;
import withy.rules.Rule;
import withy.rules.Rulebook;

/** A hard constraint a rule, the score as one soft constraint. */
public final class SlotConstraints implements ConstraintProvider {
    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        List<Constraint> all = new ArrayList<>();
        for (Rule rule : Rulebook.standard().rules()) {
            all.add(rods(factory)
                    .filter(rod -> judged(rod).faults().containsKey(rule.code()))
                    .penalizeLong(
                            HardSoftLongScore.ONE_HARD,
                            rod -> judged(rod).faults().get(rule.code()))
                    .asConstraint(rule.code()));
        }
        all.add(rods(factory)
                .impactLong(HardSoftLongScore.ONE_SOFT, rod -> -judged(rod).score())
                .asConstraint("score"));
        return all.toArray(Constraint[]::new);
    }

    /** Rods that are judged; null until the engine has worked the shadows out. */
    private static UniConstraintStream<SlotRod> rods(ConstraintFactory factory) {
        return factory.forEachIncludingUnassigned(SlotRod.class).filter(rod -> rod.judged() != null);
    }

    private static Judged judged(SlotRod rod) {
        return Objects.requireNonNull(rod.judged());
    }
}
