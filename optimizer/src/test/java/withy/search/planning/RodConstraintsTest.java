package withy.search.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import ai.timefold.solver.test.api.score.stream.ConstraintVerifier;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rule;
import withy.rules.Verdict;
import withy.search.SmallShop;

/** Each constraint says what its rule or objective says of the same rod. */
class RodConstraintsTest {
    private static final List<String> CODES =
            TwoStationsAtMost.added().rules().stream().map(Rule::code).toList();

    private final SmallShop shop = SmallShop.of(2);
    private final Query query = shop.query(TwoStationsAtMost.added());
    private final Problem problem = shop.problem(query);
    private final Build best =
            Objects.requireNonNull(Engine.improve(problem, null, EngineSettings.STANDARD.with(1_000, 0), Watch.NONE)
                    .build());
    private final ConstraintVerifier<RodConstraints, RodPlan> verifier =
            ConstraintVerifier.build(new RodConstraints(CODES), RodPlan.class, RodChoice.class, StationChoice.class);

    @Test
    void aLegalRodScoresWhatTheScoringSays() {
        ObjectiveVector vector = vector(best);
        verifier.verifyThat()
                .givenSolution(plan(best))
                .settingAllShadowVariables()
                .scores(HardSoftLongScore.of(0, -problem.scoring().score(vector)));
    }

    /** Style and durability may count either way, which the verifier does not compare; the whole score above holds them. */
    @Test
    void everyObjectiveTellsItsShare() {
        ObjectiveVector vector = vector(best);
        for (Objective objective : Objective.values()) {
            if (!objective.moreIsBetter()) {
                verifier.verifyThat((constraints, factory) -> constraints.objective(factory, objective))
                        .givenSolution(plan(best))
                        .settingAllShadowVariables()
                        .penalizesBy(problem.scoring().share(objective, vector));
            }
        }
    }

    @Test
    void anEmptySeatBreaksTheHandleOnly() {
        Build seatless = best.without(Station.SEAT);
        verifier.verifyThat((constraints, factory) -> constraints.rule(factory, "handle"))
                .givenSolution(plan(seatless))
                .settingAllShadowVariables()
                .penalizesBy(read(seatless).broken("handle"));
        assertTrue(read(seatless).broken("handle") >= BrokenRules.BROKEN);
        verifier.verifyThat((constraints, factory) -> constraints.rule(factory, "lure-range"))
                .givenSolution(plan(seatless))
                .settingAllShadowVariables()
                .penalizesBy(0);
    }

    @Test
    void aThirdStationBreaksTheAddedRuleByItsSize() {
        Choice one = Choice.of("guide-5");
        Build third =
                best.with(Station.guide(4), one).with(Station.guide(5), one).with(Station.guide(6), one);
        int count = (int) third.choices().values().stream().filter(one::equals).count();
        verifier.verifyThat((constraints, factory) -> constraints.rule(factory, TwoStationsAtMost.CODE))
                .givenSolution(plan(third))
                .settingAllShadowVariables()
                .penalizesBy(BrokenRules.BROKEN + Math.round(BrokenRules.MOST_EXCESS * (count - 2.0) / count));
    }

    @Test
    void aCeilingAndAForcedPartAreTheQuestions() {
        long weight = vector(best).weightMg();
        Query asked = query.under(Map.of(Objective.WEIGHT, weight - 1)).forcing(Set.of("keeper"));
        Problem stricter = shop.problem(asked);
        Build keeperless = best.without(Station.KEEPER);
        Desk desk = desk(stricter);
        long both = 2 * BrokenRules.BROKEN;
        assertEquals(both, desk.read(keeperless).broken(Reading.QUESTION), 1);
        assertEquals(0, desk.read(keeperless).broken("stock"));
    }

    @Test
    void aRodWithoutALayoutIsReadByNoConstraint() {
        verifier.verifyThat()
                .givenSolution(new RodPlan(desk(problem)))
                .settingAllShadowVariables()
                .scores(HardSoftLongScore.ZERO);
    }

    @Test
    void aReadingBreaksExactlyTheRulesTheJudgeRefuses() {
        Random random = new Random(7);
        Desk desk = desk(problem);
        Build build = best;
        int illegal = 0;
        for (int n = 0; n < 400; n++) {
            Slot slot = problem.slots().get(random.nextInt(problem.slots().size()));
            boolean placed = slot.station().number() <= build.layout().guideCount();
            if (placed && !slot.choices().isEmpty() && random.nextInt(5) > 0) {
                build = build.with(
                        slot.station(),
                        slot.choices().get(random.nextInt(slot.choices().size())));
            } else if (placed) {
                build = build.without(slot.station());
            }
            build = n % 10 == 9 ? best : build;
            Rod rod = Rod.measure(problem.catalog(), problem.brief(), build);
            Set<String> refused = Judge.judge(rod, problem.rules()).stream()
                    .filter(verdict -> !verdict.outcome().legal())
                    .map(Verdict::rule)
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(refused, desk.read(build).broken().keySet(), build::signature);
            assertEquals(refused.isEmpty(), shop.legal(query, build), build::signature);
            illegal += refused.isEmpty() ? 0 : 1;
        }
        assertTrue(illegal > 100 && illegal < 400, illegal + " of 400 were illegal");
    }

    private ObjectiveVector vector(Build build) {
        return ObjectiveVector.of(
                Rod.measure(problem.catalog(), problem.brief(), build), problem.style(), problem.wishes());
    }

    private Reading read(Build build) {
        return desk(problem).read(build);
    }

    private RodPlan plan(Build build) {
        RodPlan plan = new RodPlan(desk(problem));
        for (String variable : List.of(RodChoice.BLANK, RodChoice.FOOT, RodChoice.FORM, RodChoice.COUNT)) {
            plan.rod().change(variable, build.layout());
        }
        plan.rod().stations().forEach(station -> station.choose(build.choices().get(station.station())));
        return plan;
    }

    private static Desk desk(Problem problem) {
        return new Desk(problem, EngineSettings.STANDARD, () -> false);
    }
}
