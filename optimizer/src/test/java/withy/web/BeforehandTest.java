package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.junit.jupiter.api.Test;
import withy.web.Beforehand.Aside;

/** What is worked out before it is asked for: there when it is wanted, out of the way when something else is, and taken up again. */
class BeforehandTest {
    private static final List<Object> ONE = List.of("one");
    private static final List<Object> TWO = List.of("two");

    private final Queue<Runnable> waiting = new ArrayDeque<>();
    private final Soon soon = new Soon(waiting::add, 8);
    private final Beforehand ahead = new Beforehand(soon, () -> new Patience(() -> 0, 10));
    private final List<String> worked = new ArrayList<>();

    /** Tells whether it was cut short. */
    private Aside aside(List<Object> key, boolean usual) {
        return new Aside(key, usual, (patience, soFar) -> {
            String told = key.get(0) + (patience.stopped() ? " cut short" : " whole");
            worked.add(told);
            return told;
        });
    }

    private void runAll() {
        while (!waiting.isEmpty()) {
            waiting.remove().run();
        }
    }

    @Test
    void whatIsThereIsNotWorkedOutAgain() {
        ahead.begin(aside(ONE, false));
        runAll();
        ahead.begin(aside(ONE, false));
        ahead.wanted(ONE);
        assertEquals("one whole", soon.<String>get(ONE, 0, () -> "anew"));
        runAll();
        assertEquals(List.of("one whole"), worked);
    }

    @Test
    void whatIsInTheWayIsCutShortAndBegunAgainAfterwards() {
        ahead.begin(aside(ONE, false));
        ahead.makeWay();
        runAll();
        assertEquals(List.of("one cut short"), worked);
        assertNull(soon.known(ONE), "cut short and still kept");
        ahead.makeWay();
        ahead.goOn();
        runAll();
        assertEquals(1, worked.size(), "somebody waits still");
        ahead.goOn();
        runAll();
        assertEquals(List.of("one cut short", "one whole"), worked);
        assertEquals("one whole", soon.known(ONE));
    }

    @Test
    void whatIsNoLongerLikelyIsNotBegunAgain() {
        ahead.begin(aside(ONE, false));
        ahead.giveUp();
        runAll();
        assertEquals(List.of("one cut short"), worked);
        assertThrows(Soon.NotYet.class, () -> soon.get(ONE, 0, () -> "anew"));
        runAll();
        assertEquals("anew", soon.known(ONE));
    }

    @Test
    void whatSomebodyWaitsForIsNotCutShort() {
        ahead.begin(aside(ONE, false));
        ahead.wanted(ONE);
        ahead.makeWay();
        ahead.giveUp();
        ahead.begin(aside(TWO, false));
        runAll();
        assertEquals(List.of("one whole"), worked);
        ahead.goOn();
        runAll();
        assertEquals(List.of("one whole", "two whole"), worked);
    }

    @Test
    void theNextStandsInForTheOneBefore() {
        ahead.begin(aside(ONE, false));
        ahead.begin(aside(TWO, false));
        runAll();
        assertEquals(List.of("one cut short", "two whole"), worked);
        assertNull(soon.known(ONE));
    }

    @Test
    void whatIsUsualIsDoneOneAfterAnotherWhateverElseIsLookedFor() {
        ahead.begin(aside(ONE, true));
        ahead.begin(aside(TWO, true));
        assertEquals(1, waiting.size());
        ahead.giveUp();
        ahead.begin(aside(List.of("likely"), false));
        ahead.makeWay();
        runAll();
        ahead.goOn();
        runAll();
        assertEquals(List.of("one cut short", "likely whole", "one whole", "two whole"), worked);
    }

    @Test
    void whatWasAskedForMeanwhileIsNotWorkedOutTwice() {
        ahead.makeWay();
        ahead.begin(aside(ONE, false));
        assertThrows(Soon.NotYet.class, () -> soon.get(ONE, 0, () -> "asked"));
        runAll();
        ahead.goOn();
        ahead.begin(aside(TWO, false));
        runAll();
        assertEquals("asked", soon.known(ONE));
        assertEquals(List.of("two whole"), worked);
    }
}
