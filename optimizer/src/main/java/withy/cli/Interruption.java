package withy.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Ctrl-C asks the command to stop and gives it time to print the best so far. Java ends with 130 by itself after an interrupt, once the work of
 * this hook is done.
 */
final class Interruption {
    private static final long PATIENCE_S = 20;

    private final AtomicBoolean asked = new AtomicBoolean();
    private final CountDownLatch printed = new CountDownLatch(1);

    /** Listens from now on. */
    void listen() {
        Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "interruption"));
    }

    /** True once the user wants it to stop. */
    boolean asked() {
        return asked.get();
    }

    /** Everything is printed: nothing to wait for. */
    void done() {
        printed.countDown();
    }

    private void stop() {
        asked.set(true);
        try {
            printed.await(PATIENCE_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
