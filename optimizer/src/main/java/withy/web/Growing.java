package withy.web;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * An answer that is told as far as it is known: each stage holds what the one before held. It is worked out whether somebody waits for it or not.
 * May be used by several threads.
 */
final class Growing<T> {
    /** Works an answer out and tells it as far as it is known on the way. */
    @FunctionalInterface
    interface Work<T> {
        T answer(Consumer<T> soFar);
    }

    /**
     * An answer as far as it is known.
     *
     * @param stage how often it has grown
     * @param whole true where nothing more comes
     */
    record SoFar<T>(T answer, int stage, boolean whole) {}

    private @Nullable T latest;
    private @Nullable Throwable fault;
    private int stage;
    private boolean ended;

    /** Works it out on the thread that calls. */
    void work(Work<T> work) {
        try {
            grown(work.answer(soFar -> grown(soFar, false)), true);
        } catch (RuntimeException | Error e) {
            failed(e);
        }
    }

    private synchronized void grown(T answer, boolean whole) {
        latest = answer;
        stage++;
        ended = whole;
        notifyAll();
    }

    private synchronized void failed(Throwable e) {
        fault = e;
        ended = true;
        notifyAll();
    }

    /**
     * Waits until it has grown beyond a stage, or is whole, or so long; null where nothing is known by then.
     *
     * @throws RuntimeException what went wrong with it
     */
    synchronized @Nullable SoFar<T> beyond(int seen, long millis) {
        long end = System.nanoTime() + millis * 1_000_000;
        try {
            for (long left = millis;
                    !ended && stage <= seen && left > 0;
                    left = (end - System.nanoTime()) / 1_000_000) {
                wait(left);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (fault instanceof RuntimeException wrong) {
            throw wrong;
        }
        if (fault != null) {
            throw new IllegalStateException(fault);
        }
        return latest == null ? null : new SoFar<>(latest, stage, ended);
    }

    /** The whole where it is there, else null; never waits. */
    synchronized @Nullable T whole() {
        return ended && fault == null ? latest : null;
    }
}
