package withy.web;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Work that nobody waits for: what is likely to be asked next, and what is usually begun with. One thing at a time, and only while nobody waits for
 * anything else: what is under way then is cut short, not kept, and begun again afterwards. Once somebody asks for it, it is an answer like any other.
 * May be used by several threads.
 */
final class Beforehand {
    /**
     * One thing to do.
     *
     * @param key what the answer depends on, as it will be asked for
     * @param usual true for what is usually begun with, which stays to be done whatever else is looked for
     */
    record Aside(List<Object> key, boolean usual, How how) {}

    /** How it is done, as far as it goes until it is stopped. */
    @FunctionalInterface
    interface How {
        Object answer(Patience patience, Consumer<Object> soFar);
    }

    private final Soon soon;
    private final Supplier<Patience> patience;
    private final Deque<Aside> usual = new ArrayDeque<>();
    private @Nullable Aside likely;
    private @Nullable Running now;
    private int waitedFor;

    Beforehand(Soon soon, Supplier<Patience> patience) {
        this.soon = soon;
        this.patience = patience;
    }

    private static final class Running {
        private final Aside aside;
        private final Patience patience;
        private boolean asked;

        Running(Aside aside, Patience patience) {
            this.aside = aside;
            this.patience = patience;
        }
    }

    /** Begins when nobody waits for anything, unless it is known or on its way; what was likely before no longer is. */
    synchronized void begin(Aside aside) {
        if (aside.usual()) {
            usual.add(aside);
        } else if (!soon.begun(aside.key())) {
            giveUp();
            likely = aside;
        }
        next();
    }

    /** Somebody waits for an answer: if it is the one under way, it is not cut short any more. */
    synchronized void wanted(List<Object> key) {
        if (now != null && now.aside.key().equals(key)) {
            now.asked = true;
        }
    }

    /** Other builds are looked for: what was likely is no longer. */
    synchronized void giveUp() {
        likely = null;
        if (now != null && !now.aside.usual()) {
            cutShort();
            likely = null;
        }
    }

    /** Somebody waits for something that is worked out from here on. */
    synchronized void makeWay() {
        waitedFor++;
        cutShort();
    }

    /** That is there. */
    synchronized void goOn() {
        waitedFor--;
        next();
    }

    private void cutShort() {
        Running running = now;
        if (running == null || running.asked || soon.known(running.aside.key()) != null) {
            return;
        }
        now = null;
        running.patience.stop();
        soon.forget(running.aside.key());
        if (running.aside.usual()) {
            usual.addFirst(running.aside);
        } else {
            likely = running.aside;
        }
    }

    private void next() {
        while (waitedFor == 0 && now == null) {
            Aside aside = likely == null ? usual.poll() : likely;
            likely = null;
            if (aside == null) {
                return;
            }
            Running running = new Running(aside, patience.get());
            now = running;
            boolean begun = soon.beginAnew(aside.key(), soFar -> {
                try {
                    return aside.how().answer(running.patience, soFar);
                } finally {
                    ended(running);
                }
            });
            if (!begun) {
                now = null;
            }
        }
    }

    private synchronized void ended(Running running) {
        if (now == running) {
            now = null;
            next();
        }
    }
}
