package withy.search;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Works questions that do not depend on each other, some at a time. Each has one answer, so that it does not matter which ends first. */
final class Workers {
    /** Threads that are used at most. */
    static final int MOST = 2;

    /** Kept a while for the next question; they never hold up the end of the program. */
    private static final ExecutorService BESIDE = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "withy-beside");
        thread.setDaemon(true);
        return thread;
    });

    private Workers() {}

    /** Has a question worked by another thread while the one that asks does something else. */
    static <T> Future<T> beside(Callable<T> question) {
        return BESIDE.submit(question);
    }

    /** The answer of another thread, waited for. */
    static <T> T answer(Future<T> asked) {
        try {
            return asked.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped before the question was answered");
        } catch (ExecutionException e) {
            throw new IllegalStateException("a question failed", e.getCause());
        }
    }

    /** All answers, in the order of the questions, by so many threads. */
    static <T> List<T> all(List<? extends Callable<T>> questions, int threads) {
        if (questions.size() < 2 || threads < 2) {
            return alone(questions);
        }
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        try {
            List<T> answers = new ArrayList<>();
            for (Future<T> answer : workers.invokeAll(questions)) {
                answers.add(answer(answer));
            }
            return answers;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped before the questions were answered");
        } finally {
            workers.shutdownNow();
        }
    }

    private static <T> List<T> alone(List<? extends Callable<T>> questions) {
        List<T> answers = new ArrayList<>();
        try {
            for (Callable<T> question : questions) {
                answers.add(question.call());
            }
        } catch (RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException("a question failed", e);
        }
        return answers;
    }
}
