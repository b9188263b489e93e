package withy.explain;

import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/**
 * A question that is worked once, by the thread that comes to it first.
 *
 * @param <A> its answer
 */
final class Once<A> {
    private final FutureTask<A> work;

    Once(Supplier<A> question) {
        this.work = new FutureTask<>(question::get);
    }

    /** Has another thread work two questions, one after the other. */
    static void beside(Once<?> one, Once<?> other) {
        ForkJoinPool.commonPool().execute(() -> {
            one.work.run();
            other.work.run();
        });
    }

    /** The answer: worked out now, or waited for where another thread is at it. */
    A answer() {
        work.run();
        try {
            return work.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped before the question was answered");
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e.getCause());
        }
    }
}
