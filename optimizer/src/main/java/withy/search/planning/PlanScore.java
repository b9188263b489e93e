package withy.search.planning;

import ai.timefold.solver.core.api.score.buildin.bendablelong.BendableLongScore;
import ai.timefold.solver.core.api.score.calculator.EasyScoreCalculator;

/** Judges a plan as a whole; a few dozen jobs are added up faster than anything finer could be kept. */
public class PlanScore implements EasyScoreCalculator<PlanBoard, BendableLongScore> {
    @Override
    public BendableLongScore calculateScore(PlanBoard board) {
        return board.judged();
    }
}
