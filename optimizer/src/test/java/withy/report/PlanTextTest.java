package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import withy.app.PlanAnswer;

/** What is told of how far a plan may be off. */
class PlanTextTest {
    @Test
    void fewerWithoutARodAreToldBeforeSteps() {
        assertEquals(
                "Not proven: a plan that leaves one job fewer without a rod has not been ruled out.",
                last(answer(3, 2, null, false)));
        assertEquals(
                "Not proven: a plan that leaves 2 fewer jobs without a rod has not been ruled out.",
                last(answer(3, 1, null, false)));
    }

    @Test
    void stepsAreToldOfPlansThatLeaveAsManyWithout() {
        assertEquals(
                "Not proven to the end: a better plan could gain at most 1.50 noticeable steps.",
                last(answer(3, 3, 1.5, false)));
        assertEquals("Not proven, and how much better a plan could be is not known.", last(answer(3, 3, null, false)));
        assertEquals("Proven: no plan from this stock is better.", last(answer(3, 3, 0.0, true)));
    }

    private static String last(PlanAnswer answer) {
        List<String> lines = PlanText.summary(answer);
        return lines.get(lines.size() - 1);
    }

    private static PlanAnswer answer(int unserved, int atLeast, @Nullable Double gap, boolean proven) {
        return new PlanAnswer(1, "", "EUR", List.of(), unserved, unserved, atLeast, 0, gap, proven, List.of(), false);
    }
}
