package withy.benchmarks.peer;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.uma.jmetal.algorithm.multiobjective.nsgaii.NSGAII;
import org.uma.jmetal.operator.crossover.impl.IntegerSBXCrossover;
import org.uma.jmetal.operator.mutation.impl.IntegerPolynomialMutation;
import org.uma.jmetal.operator.selection.impl.BinaryTournamentSelection;
import org.uma.jmetal.problem.integerproblem.impl.AbstractIntegerProblem;
import org.uma.jmetal.solution.integersolution.IntegerSolution;
import org.uma.jmetal.util.comparator.RankingAndCrowdingDistanceComparator;
import org.uma.jmetal.util.evaluator.impl.MultiThreadedSolutionListEvaluator;
import org.uma.jmetal.util.pseudorandom.JMetalRandom;
import withy.benchmarks.peer.Question.Judged;
import withy.benchmarks.peer.Question.Slot;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;
import withy.rod.Build.Choice;

/** NSGA-II over the six objectives: one number for the layout, one a station; what is broken is one constraint. */
public final class Nsga2 implements Peer {
    private static final int POPULATION = 100;
    private static final double CROSSOVER = 0.9;
    private static final double INDEX = 20;

    @Override
    public String name() {
        return "NSGA-II (jMetal)";
    }

    @Override
    public String setUp() {
        return "jmetal 6.6; population 100, integer SBX 0.9 and polynomial mutation 1/n, both with index 20, binary tournament by rank and crowding, two"
                + " threads measure, seed " + SEED;
    }

    @Override
    public boolean proves() {
        return false;
    }

    @Override
    public void run(Question question, Race race) {
        front(question, race);
    }

    /** The legal builds of its last population. */
    public static List<ObjectiveVector> front(Question question, Race race) {
        if (question.layouts().isEmpty()) {
            return List.of();
        }
        JMetalRandom.getInstance().setSeed(SEED);
        RodProblem problem = new RodProblem(question, race);
        MultiThreadedSolutionListEvaluator<IntegerSolution> evaluator = new MultiThreadedSolutionListEvaluator<>(CORES);
        try {
            Timed algorithm = new Timed(problem, race, evaluator);
            algorithm.run();
            List<ObjectiveVector> front = new ArrayList<>();
            for (IntegerSolution one : algorithm.result()) {
                Judged judged = question.judge(problem.build(one));
                if (judged.legal()) {
                    front.add(judged.vector());
                }
            }
            return front;
        } finally {
            evaluator.shutdown();
        }
    }

    /** Ends when the race does. */
    private static final class Timed extends NSGAII<IntegerSolution> {
        private final Race race;

        Timed(RodProblem problem, Race race, MultiThreadedSolutionListEvaluator<IntegerSolution> evaluator) {
            super(
                    problem,
                    Integer.MAX_VALUE,
                    POPULATION,
                    POPULATION,
                    POPULATION,
                    new IntegerSBXCrossover(CROSSOVER, INDEX),
                    new IntegerPolynomialMutation(1.0 / problem.numberOfVariables(), INDEX),
                    new BinaryTournamentSelection<>(new RankingAndCrowdingDistanceComparator<>()),
                    evaluator);
            this.race = race;
        }

        @Override
        protected boolean isStoppingConditionReached() {
            return race.over();
        }
    }

    /** The rod as numbers. */
    private static final class RodProblem extends AbstractIntegerProblem {
        private static final long serialVersionUID = 1;

        private final transient Question question;
        private final transient Race race;

        RodProblem(Question question, Race race) {
            this.question = question;
            this.race = race;
            numberOfObjectives(Objective.values().length);
            numberOfConstraints(1);
            name("rod");
            List<Integer> low = new ArrayList<>();
            List<Integer> high = new ArrayList<>();
            low.add(0);
            high.add(question.layouts().size() - 1);
            for (Slot slot : question.slots()) {
                low.add(0);
                high.add(slot.choices().size() - 1);
            }
            variableBounds(low, high);
        }

        Build build(IntegerSolution solution) {
            List<@Nullable Choice> chosen = new ArrayList<>();
            List<Slot> slots = question.slots();
            for (int i = 0; i < slots.size(); i++) {
                chosen.add(slots.get(i).choices().get(solution.variables().get(i + 1)));
            }
            return question.build(question.layouts().get(solution.variables().get(0)), chosen);
        }

        @Override
        public IntegerSolution evaluate(IntegerSolution solution) {
            Build build = build(solution);
            Judged judged = question.judge(build);
            for (Objective objective : Objective.values()) {
                solution.objectives()[objective.ordinal()] = judged.vector().loss(objective);
            }
            solution.constraints()[0] = -judged.broken();
            race.offer(build, judged);
            return solution;
        }
    }
}
