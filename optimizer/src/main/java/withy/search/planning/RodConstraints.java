package withy.search.planning;

import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import ai.timefold.solver.core.api.score.stream.Constraint;
import ai.timefold.solver.core.api.score.stream.ConstraintFactory;
import ai.timefold.solver.core.api.score.stream.ConstraintProvider;
import ai.timefold.solver.core.api.score.stream.uni.UniConstraintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;

/**
 * One hard constraint a rule, named by the rule's code, and one for what the question adds; one soft constraint an objective and one for the nice
 * wishes. None decides anything itself: each reads the rod's one {@link Reading}, which asked the rules and the objectives. The soft score of a
 * rod is its score with the sign turned.
 */
public final class RodConstraints implements ConstraintProvider {
    /** Between rule codes in {@link #setCodes}. */
    static final String SEPARATOR = ",";

    static final String WISHES = "nice-wishes";

    private List<String> codes = List.of();

    /** For the engine, which tells the codes next. */
    public RodConstraints() {}

    RodConstraints(List<String> codes) {
        this.codes = List.copyOf(codes);
    }

    /** Codes of the rules in force, in order; told by the engine's configuration. */
    public void setCodes(String joined) {
        codes = List.of(joined.split(SEPARATOR, -1));
    }

    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        List<Constraint> all = new ArrayList<>();
        for (String code : codes) {
            all.add(rule(factory, code));
        }
        all.add(rule(factory, Reading.QUESTION));
        for (Objective objective : Objective.values()) {
            all.add(objective(factory, objective));
        }
        all.add(wishes(factory));
        return all.toArray(Constraint[]::new);
    }

    Constraint rule(ConstraintFactory factory, String code) {
        return read(factory)
                .filter(rod -> reading(rod).broken(code) > 0)
                .penalizeLong(HardSoftLongScore.ONE_HARD, rod -> reading(rod).broken(code))
                .asConstraint(code);
    }

    Constraint objective(ConstraintFactory factory, Objective objective) {
        UniConstraintStream<RodChoice> rods = read(factory);
        // what is better in plenty may be worth points or, below what was asked, cost them
        return (objective.moreIsBetter()
                        ? rods.impactLong(
                                HardSoftLongScore.ONE_SOFT, rod -> -scoring(rod).share(objective, vector(rod)))
                        : rods.penalizeLong(
                                HardSoftLongScore.ONE_SOFT, rod -> scoring(rod).share(objective, vector(rod))))
                .asConstraint(objective.name());
    }

    Constraint wishes(ConstraintFactory factory) {
        return read(factory)
                .impactLong(HardSoftLongScore.ONE_SOFT, rod -> -scoring(rod).missed(vector(rod)))
                .asConstraint(WISHES);
    }

    /** Rods that are measured; a reading is null until the engine has worked the shadows out. */
    private static UniConstraintStream<RodChoice> read(ConstraintFactory factory) {
        return factory.forEachIncludingUnassigned(RodChoice.class).filter(rod -> rod.reading() != null);
    }

    private static Reading reading(RodChoice rod) {
        return Objects.requireNonNull(rod.reading());
    }

    private static ObjectiveVector vector(RodChoice rod) {
        return reading(rod).objectives();
    }

    private static Scoring scoring(RodChoice rod) {
        return rod.desk().problem().scoring();
    }
}
