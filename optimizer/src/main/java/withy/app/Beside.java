package withy.app;

import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** A question that is worked while others are. */
final class Beside<T> {
    private final FutureTask<T> work;

    /** Begins at once. */
    Beside(Callable<T> question) {
        work = new FutureTask<>(question);
        Thread worker = new Thread(work, "beside");
        worker.setDaemon(true);
        worker.start();
    }

    /** Its answer; waits for it. */
    T answer() {
        try {
            return work.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped before the question was answered");
        } catch (ExecutionException e) {
            throw new IllegalStateException("a question failed", e.getCause());
        }
    }
}
