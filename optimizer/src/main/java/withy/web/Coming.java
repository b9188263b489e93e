package withy.web;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;

/** An answer on its way: the best build as soon as it is known, the whole later. It is worked out whether somebody waits for it or not. */
final class Coming {
    private final CompletableFuture<Answer> first = new CompletableFuture<>();
    private final CompletableFuture<Answer> whole = new CompletableFuture<>();

    /**
     * Begins.
     *
     * @param how works it out, and tells the best build when that is known
     */
    Coming(Executor workers, Function<Consumer<Answer>, Answer> how) {
        workers.execute(() -> {
            try {
                whole.complete(how.apply(first::complete));
            } catch (RuntimeException | Error e) {
                whole.completeExceptionally(e);
            }
        });
    }

    /** The whole, however long it takes; throws what went wrong with it. */
    Answer whole() {
        try {
            return whole.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw e;
        }
    }

    /** The whole if it comes in time, else null; throws what went wrong with it. */
    @Nullable
    Answer within(long millis) {
        try {
            whole.get(millis, TimeUnit.MILLISECONDS);
            return whole();
        } catch (ExecutionException e) {
            return whole();
        } catch (TimeoutException e) {
            return null;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return null;
        }
    }

    /** Waits until the best build is known, or the whole, or that long. */
    void begun(long millis) {
        try {
            CompletableFuture.anyOf(first, whole).get(millis, TimeUnit.MILLISECONDS);
        } catch (ExecutionException | TimeoutException e) {
            // who asks for the whole is told
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The answer with the best build alone, or null while that is not known. */
    @Nullable
    Answer first() {
        return first.getNow(null);
    }

    /** As far as it is known: the whole, cut short or not, else the best build alone; null while that is not known. */
    @Nullable
    Answer known() {
        return whole.isDone() && !failed() ? whole() : first();
    }

    /** True where it ended in a fault. */
    boolean failed() {
        return whole.isCompletedExceptionally();
    }

    /** The whole where it is there and was not cut short. */
    boolean finished() {
        return whole.isDone() && !failed() && !whole().interrupted();
    }
}
