package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import withy.app.PlanAnswer;
import withy.app.WaitLine;

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

    @Test
    void oneJobHasNoOrderToBeTakenIn() {
        String same = "Taking the jobs one by one in order of date would be as good.";
        assertFalse(PlanText.summary(of(List.of(job(1)), 0, 0, 0.0, true)).contains(same));
        assertTrue(
                PlanText.summary(of(List.of(job(1), job(2)), 0, 0, 0.0, true)).contains(same));
    }

    @Test
    void whatAJobWaitsForIsToldWithItsDay() {
        assertEquals(
                "Waits for 2 of A seat: on order, due 2026-06-09.",
                new WaitLine("seat", "A seat", 2, "2026-06-09", 0, false).sentence());
        assertEquals(
                "Waits for 2 of A seat: still to be ordered, would come 2026-06-09. That is after the day the rod is wanted.",
                new WaitLine("seat", "A seat", 2, "2026-06-09", 2, true).sentence());
        assertEquals(
                "Waits for 2 of A seat: on order, 1 of them still to be ordered, all here on 2026-06-09.",
                new WaitLine("seat", "A seat", 2, "2026-06-09", 1, false).sentence());
    }

    private static String last(PlanAnswer answer) {
        List<String> lines = PlanText.summary(answer);
        return lines.get(lines.size() - 1);
    }

    private static PlanAnswer answer(int unserved, int atLeast, @Nullable Double gap, boolean proven) {
        return of(List.of(), unserved, atLeast, gap, proven);
    }

    private static PlanAnswer of(
            List<PlanAnswer.JobLine> jobs, int unserved, int atLeast, @Nullable Double gap, boolean proven) {
        return new PlanAnswer(1, "", "EUR", jobs, unserved, unserved, atLeast, 0, gap, proven, List.of(), false);
    }

    private static PlanAnswer.JobLine job(long number) {
        return new PlanAnswer.JobLine(
                number, "a rod", null, false, List.of(), true, null, null, 0, 0, List.of(), List.of(), null);
    }
}
