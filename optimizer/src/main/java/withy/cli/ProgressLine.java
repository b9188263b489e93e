package withy.cli;

import java.io.PrintWriter;
import java.util.Currency;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import withy.app.Progress;
import withy.units.Money;
import withy.units.QuantityText;

/** Says on standard error how far the work is: first after a second, then after twice the time before. */
final class ProgressLine implements Progress {
    private static final long SECOND_NS = 1_000_000_000L;

    private final PrintWriter err;
    private final QuantityText units;
    private final Currency currency;
    private final BooleanSupplier interrupted;
    private final LongSupplier nanos;
    private final long startNs;
    private long nextNs = SECOND_NS;
    private @Nullable String best;

    ProgressLine(PrintWriter err, QuantityText units, Currency currency, Surroundings surroundings) {
        this.err = err;
        this.units = units;
        this.currency = currency;
        this.interrupted = surroundings.interrupted();
        this.nanos = surroundings.nanos();
        this.startNs = nanos.getAsLong();
    }

    @Override
    public synchronized boolean stopped() {
        long passed = nanos.getAsLong() - startNs;
        if (passed >= nextNs) {
            String soFar = best == null ? ". Ctrl-C ends it." : ": best so far " + best + ". Ctrl-C shows it.";
            err.println("Looking for " + passed / SECOND_NS + " s" + soFar);
            err.flush();
            nextNs = passed * 2;
        }
        return interrupted.getAsBoolean();
    }

    @Override
    public synchronized void better(double weightG, long priceMinor) {
        best = units.mass(weightG) + ", " + Money.print(priceMinor, currency);
    }
}
