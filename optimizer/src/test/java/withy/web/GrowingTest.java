package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import withy.web.Growing.SoFar;

/** An answer is shown as far as it is known, and asked for again beyond what was seen. */
class GrowingTest {
    private static final long LONG_MS = 20_000;

    @Test
    void eachStageIsToldAsSoonAsItIsThere() throws Exception {
        CountDownLatch first = new CountDownLatch(1);
        CountDownLatch second = new CountDownLatch(1);
        Growing<String> growing = new Growing<>();
        Thread worker = new Thread(() -> growing.work(soFar -> {
            ComingTest.Slow.await(first);
            soFar.accept("a");
            ComingTest.Slow.await(second);
            return "ab";
        }));
        worker.start();
        assertNull(growing.beyond(0, 1));
        first.countDown();
        assertEquals(new SoFar<>("a", 1, false), growing.beyond(0, LONG_MS));
        assertEquals(new SoFar<>("a", 1, false), growing.beyond(1, 1), "nothing new is there yet");
        assertEquals(new SoFar<>("a", 1, false), growing.beyond(Look.WHOLE, 1), "the whole does not come in time");
        assertNull(growing.whole());
        second.countDown();
        assertEquals(new SoFar<>("ab", 2, true), growing.beyond(1, LONG_MS));
        assertEquals(new SoFar<>("ab", 2, true), growing.beyond(Look.WHOLE, 1));
        assertEquals("ab", growing.whole());
        worker.join();
    }

    @Test
    void whatGoesWrongIsToldToWhoWaits() {
        Growing<String> growing = new Growing<>();
        growing.work(soFar -> {
            soFar.accept("a");
            throw new IllegalArgumentException("no");
        });
        assertThrows(IllegalArgumentException.class, () -> growing.beyond(0, 1));
        assertNull(growing.whole());
    }
}
