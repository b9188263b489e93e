package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** What is worked out before it is asked for: there when it is wanted, given up when it is in the way. */
class BeforehandTest {
    private static final List<Object> ONE = List.of("one");
    private static final List<Object> TWO = List.of("two");

    private final Queue<Runnable> waiting = new ArrayDeque<>();
    private final Soon soon = new Soon(waiting::add, 8);
    private final Beforehand ahead = new Beforehand(soon);
    private int worked;

    private Patience patience() {
        return new Patience(() -> 0, 10);
    }

    /** Tells whether it was cut short. */
    private Supplier<String> work(Patience patience) {
        return () -> {
            worked++;
            return patience.stopped() ? "cut short" : "whole";
        };
    }

    private void runAll() {
        while (!waiting.isEmpty()) {
            waiting.remove().run();
        }
    }

    @Test
    void whatIsThereIsNotWorkedOutAgain() {
        Patience patience = patience();
        ahead.begin(ONE, patience, work(patience));
        runAll();
        ahead.begin(ONE, patience, work(patience));
        ahead.wanted(ONE);
        assertEquals("whole", soon.<String>get(ONE, 0, work(patience)));
        runAll();
        assertEquals(1, worked);
    }

    @Test
    void whatIsGivenUpIsStoppedAndNotKept() {
        Patience patience = patience();
        ahead.begin(ONE, patience, work(patience));
        ahead.giveUp();
        runAll();
        assertTrue(patience.stopped());
        assertNull(soon.known(ONE), "cut short and still kept");
        assertThrows(Soon.NotYet.class, () -> soon.get(ONE, 0, work(patience())));
        runAll();
        assertEquals("whole", soon.known(ONE));
    }

    @Test
    void whatSomebodyWaitsForIsNotGivenUp() {
        Patience patience = patience();
        ahead.begin(ONE, patience, work(patience));
        ahead.wanted(ONE);
        ahead.giveUp();
        Patience other = patience();
        ahead.begin(TWO, other, work(other));
        assertFalse(patience.stopped());
        runAll();
        assertEquals("whole", soon.known(ONE));
        assertEquals("whole", soon.known(TWO));
    }

    @Test
    void theNextStandsInForTheOneBefore() {
        Patience patience = patience();
        ahead.begin(ONE, patience, work(patience));
        Patience other = patience();
        ahead.begin(TWO, other, work(other));
        assertTrue(patience.stopped());
        assertFalse(other.stopped());
        runAll();
        assertNull(soon.known(ONE));
        assertEquals("whole", soon.known(TWO));
    }

    @Test
    void whatIsDoneStaysWhenTheNextBegins() {
        Patience patience = patience();
        ahead.begin(ONE, patience, work(patience));
        runAll();
        ahead.giveUp();
        assertFalse(patience.stopped());
        assertEquals("whole", soon.known(ONE));
    }
}
