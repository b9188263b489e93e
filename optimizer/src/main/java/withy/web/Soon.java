package withy.web;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Answers that may take a while: each is worked out once on a thread of its own, whether somebody waits for it or not. */
final class Soon {
    /** Not there yet: the page says so and asks again. */
    static final class NotYet extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotYet() {
            super("not worked out yet", null, false, false);
        }
    }

    private final Executor workers;
    private final Recent<List<Object>, CompletableFuture<Object>> works;

    Soon(Executor workers, int most) {
        this.workers = workers;
        this.works = new Recent<>(most);
    }

    /**
     * The answer to a question, if it comes in time.
     *
     * @param key what it depends on
     * @throws NotYet where it does not come in time
     */
    @SuppressWarnings("unchecked")
    <T> T get(List<Object> key, long millis, Supplier<T> how) {
        CompletableFuture<Object> work = begin(key, how);
        try {
            return (T) work.get(millis, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            throw new NotYet();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new NotYet();
        } catch (ExecutionException e) {
            works.forget(key);
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /** Begins to work an answer out, if that is not so yet; never waits for it. */
    CompletableFuture<Object> begin(List<Object> key, Supplier<?> how) {
        return works.get(key, () -> CompletableFuture.supplyAsync(() -> (Object) how.get(), workers));
    }

    /** True where an answer is there or on its way. */
    boolean begun(List<Object> key) {
        return works.known(key) != null;
    }

    /** Lets go of an answer, whether it is there or on its way. */
    void forget(List<Object> key) {
        works.forget(key);
    }

    /** An answer that is there, or null; never waits. */
    @Nullable
    Object known(List<Object> key) {
        CompletableFuture<Object> work = works.known(key);
        return work == null || !work.isDone() || work.isCompletedExceptionally() ? null : work.join();
    }
}
