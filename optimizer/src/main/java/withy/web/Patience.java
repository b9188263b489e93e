package withy.web;

import java.util.function.LongSupplier;
import withy.app.Progress;

/** Stops a long search after a while: who stands at the bench wants the best so far rather than wait for a proof. */
final class Patience implements Progress {
    private final LongSupplier millis;
    private final long end;
    private volatile boolean stopped;

    Patience(LongSupplier millis, int seconds) {
        this.millis = millis;
        this.end = millis.getAsLong() + seconds * 1000L;
    }

    @Override
    public boolean stopped() {
        stopped |= millis.getAsLong() > end;
        return stopped;
    }

    /** Stops it now. */
    void stop() {
        stopped = true;
    }

    @Override
    public void better(double weightG, long priceMinor) {
        // the page shows the end only
    }
}
