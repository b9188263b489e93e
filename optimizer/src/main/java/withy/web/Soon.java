package withy.web;

import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withy.web.Growing.SoFar;
import withy.web.Growing.Work;

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
    private final Recent<List<Object>, Growing<Object>> works;

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
    <T> T get(List<Object> key, long millis, Supplier<T> how) {
        SoFar<T> known = soFar(key, Look.WHOLE, millis, soFar -> how.get());
        if (!known.whole()) {
            throw new NotYet();
        }
        return known.answer();
    }

    /**
     * The answer as far as it is known as soon as it has grown beyond a stage, or is whole, or after a while.
     *
     * @throws NotYet where nothing is known by then
     */
    @SuppressWarnings("unchecked")
    <T> SoFar<T> soFar(List<Object> key, int seen, long millis, Work<T> how) {
        Growing<Object> work = works.get(key, () -> begun((Work<Object>) how));
        try {
            SoFar<Object> known = work.beyond(seen, millis);
            if (known == null) {
                throw new NotYet();
            }
            return (SoFar<T>) known;
        } catch (NotYet e) {
            throw e;
        } catch (RuntimeException e) {
            works.forget(key);
            throw e;
        }
    }

    /** Begins to work an answer out; false where that was done before. */
    boolean beginAnew(List<Object> key, Work<Object> how) {
        boolean[] anew = {false};
        works.get(key, () -> {
            anew[0] = true;
            return begun(how);
        });
        return anew[0];
    }

    private Growing<Object> begun(Work<Object> how) {
        Growing<Object> growing = new Growing<>();
        workers.execute(() -> growing.work(how));
        return growing;
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
        Growing<Object> work = works.known(key);
        return work == null ? null : work.whole();
    }
}
