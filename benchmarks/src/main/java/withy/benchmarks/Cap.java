package withy.benchmarks;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import withy.objectives.Solver.Watch;

/** Stops a solve that takes too long, and says that it did. */
final class Cap {
    /** Longest a solve may take, s. */
    static final int SECONDS = 20;

    /** Longest one run of a latency row may take, s: beyond it the row is told as more than that. */
    static final int WARM_SECONDS = 5;

    private final long endNanos;
    private final AtomicBoolean reached = new AtomicBoolean();

    Cap(int seconds) {
        this.endNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    }

    Watch watch() {
        return new Watch(this::over, (build, objectives, score) -> {});
    }

    /** True where the solve was told to stop. */
    boolean reached() {
        return reached.get();
    }

    private boolean over() {
        if (System.nanoTime() - endNanos < 0) {
            return false;
        }
        reached.set(true);
        return true;
    }
}
