package withy.web;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What is likely to be asked next, worked out while the builds are being read: one thing at a time, and given up as soon as other builds are looked for.
 * Once somebody asks for it, it is an answer like any other. May be used by several threads.
 */
final class Beforehand {
    private final Soon soon;
    private @Nullable Work work;

    Beforehand(Soon soon) {
        this.soon = soon;
    }

    private record Work(List<Object> key, Patience patience) {}

    /**
     * Begins, unless it is known or on its way already.
     *
     * @param key what the answer depends on, as it will be asked for
     * @param patience what stops it
     */
    synchronized void begin(List<Object> key, Patience patience, Supplier<?> how) {
        if (!soon.begun(key)) {
            giveUp();
            work = new Work(key, patience);
            soon.begin(key, how);
        }
    }

    /** Somebody waits for an answer: if it is this one, it is not given up any more. */
    synchronized void wanted(List<Object> key) {
        if (work != null && work.key().equals(key)) {
            work = null;
        }
    }

    /** The processor is needed for something else; what was cut short is not kept. */
    synchronized void giveUp() {
        Work now = work;
        work = null;
        if (now != null && soon.known(now.key()) == null) {
            now.patience().stop();
            soon.forget(now.key());
        }
    }
}
