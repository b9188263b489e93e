package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongPredicate;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.fixture.Fixtures;

/** Where something turns, by trying every step; grids and words by hand. */
class TurningTest {
    private static final int MOST = 24;

    /** Steps asked are among those there are. */
    private static LongPredicate from(long threshold, List<Long> asked) {
        return step -> {
            asked.add(step);
            return step >= threshold;
        };
    }

    @Test
    void theFirstStepThatHolds() {
        for (long most = 0; most <= MOST; most++) {
            for (long threshold = 1; threshold <= most + 1; threshold++) {
                List<Long> asked = new ArrayList<>();
                long expected = threshold <= most ? threshold : -1;
                assertEquals(expected, Turning.first(most, from(threshold, asked)), threshold + " of " + most);
                long last = most;
                assertTrue(asked.stream().allMatch(step -> step >= 1 && step <= last), "asked " + asked);
                assertTrue(asked.size() <= 7, "asked " + asked);
            }
        }
    }

    @Test
    void theFirstStepThatHoldsFromAGuessOn() {
        for (long most = 1; most <= MOST; most++) {
            for (long guess = 1; guess <= most; guess++) {
                for (long threshold = 1; threshold <= most + 1; threshold++) {
                    List<Long> asked = new ArrayList<>();
                    long expected = threshold <= most ? threshold : -1;
                    String told = threshold + " of " + most + " from " + guess;
                    assertEquals(expected, Turning.firstFrom(guess, most, from(threshold, asked)), told);
                    long last = most;
                    assertTrue(asked.stream().allMatch(step -> step >= 1 && step <= last), told + ": asked " + asked);
                    assertEquals(guess, asked.get(0), told);
                }
            }
        }
    }

    /** A right guess takes two questions, a step that is far off few. */
    @Test
    void aGoodGuessSavesQuestions() {
        List<Long> asked = new ArrayList<>();
        Turning.firstFrom(500, 10_000, from(500, asked));
        assertEquals(List.of(500L, 499L), asked);
        asked.clear();
        Turning.firstFrom(10, 10_000, from(9_000, asked));
        assertEquals(List.of(10L, 20L, 60L, 220L, 860L, 3_420L, 10_000L), asked.subList(0, 7));
        asked.clear();
        Turning.firstFrom(1, 10_000, from(1, asked));
        assertEquals(List.of(1L), asked);
    }

    /** What holds and then fails again is told at some place where it turns. */
    @Test
    void aTurnIsATurnWhateverComesAfter() {
        LongPredicate twice = step -> step >= 3 && step <= 7 || step >= 15;
        for (long guess = 1; guess <= 20; guess++) {
            long step = Turning.firstFrom(guess, 20, twice);
            assertTrue(twice.test(step) && !twice.test(step - 1), "from " + guess + " to " + step);
        }
    }

    @Test
    void tenthsAsTold() {
        assertEquals(0.3, Turning.tenth(0.1 + 0.2));
        assertEquals(-0.4, Turning.tenth(-0.44));
        assertEquals("3", Turning.number(3.0000001));
        assertEquals("2.5", Turning.number(2.5));
        assertEquals("0.1", Turning.number(0.05));
        assertEquals("-2", Turning.number(-2.0));
    }

    private static Dial dial(double now, double far, double grid) {
        return new Dial("x", now, far, grid, (draft, mm) -> draft.packed(mm), Double::toString, "mm");
    }

    /** Up from 1,203 by tens to 1,250: 1,210 first; down to 1,187.5: 1,200, 1,190, then the end. */
    @Test
    void dialsKeepToTheirGrid() {
        Dial up = dial(1203, 1250, 10);
        assertEquals(5, up.steps());
        assertEquals(List.of(1203.0, 1210.0, 1220.0, 1230.0, 1240.0, 1250.0, 1250.0), values(up, 7));
        Dial down = dial(1203, 1187.5, 10);
        assertEquals(2, down.steps());
        assertEquals(List.of(1203.0, 1200.0, 1187.5), values(down, 3));
        Dial on = dial(1200, 1170, 10);
        assertEquals(3, on.steps());
        assertEquals(List.of(1200.0, 1190.0, 1180.0, 1170.0), values(on, 4));
        Dial tenths = dial(0.3, 0.7, 0.1);
        assertEquals(4, tenths.steps());
        assertEquals(0.4, tenths.at(1), 1e-12);
        assertEquals(0, dial(5, 5, 1).steps());
        Brief brief = Fixtures.legal().theBrief();
        assertEquals(1234.0, up.turned(brief, 1234).packedMaxMm());
        assertEquals(1200.0, brief.packedMaxMm());
    }

    private static List<Double> values(Dial dial, int many) {
        List<Double> values = new ArrayList<>();
        for (int step = 0; step < many; step++) {
            values.add(dial.at(step));
        }
        return values;
    }

    @Test
    void wordsAreJoinedAsInSpeech() {
        assertEquals("", Phrases.list(List.of()));
        assertEquals("cork", Phrases.list(List.of("cork")));
        assertEquals("cork and foam", Phrases.list(List.of("cork", "foam")));
        assertEquals("cork, foam and wood", Phrases.list(List.of("cork", "foam", "wood")));
        assertEquals("3 g heavier", Phrases.of("tradeOff.weight.more", "3 g"));
        assertEquals("two to four pieces", Phrases.of("demand.pieces", "two", "four"));
        assertThrows(IllegalStateException.class, () -> Phrases.of("no.such.words"));
        assertEquals("Émile waits", Phrases.sentence("émile waits"));
        assertEquals("X", Phrases.sentence("x"));
    }

    @Test
    void stationsAsABuilderSaysThem() {
        assertEquals(Phrases.of("station.buttGrip"), Phrases.station("buttGrip"));
        assertFalse(Phrases.station("guide-3").contains("-"), Phrases.station("guide-3"));
        assertTrue(Phrases.station("guide-3").endsWith("3"), Phrases.station("guide-3"));
        assertEquals(Phrases.station("guide-4"), Phrases.stations("guide-4", "guide-4"));
        assertEquals("guides 4 to 6", Phrases.stations("guide-4", "guide-6"));
    }

    @Test
    void keysOfAnswers() {
        assertEquals("breaksRule", Finding.Outcome.BREAKS_RULE.key());
        assertEquals("priority", Flip.Kind.PRIORITY.key());
    }
}
