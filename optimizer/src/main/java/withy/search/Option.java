package withy.search;

import org.jspecify.annotations.Nullable;
import withy.catalog.Part;

/**
 * One possibility at one station of one layout: a part (or nothing) with what it adds, and its cost under the prices of the moment.
 *
 * @param <P> kind of part
 */
final class Option<P extends Part> {
    final @Nullable P part;
    final double fromMm;
    final double lengthMm;
    private final long massMg;
    private final long momentMgMm;
    private final long inertiaMgMm2;
    private final long costMilli;
    final long style;
    final long missed;
    long cost;

    Option(@Nullable P part, double fromMm, double lengthMm, Sums sums, long style, long missed) {
        this.part = part;
        this.fromMm = fromMm;
        this.lengthMm = lengthMm;
        this.massMg = sums.massMg();
        this.momentMgMm = sums.momentMgMm();
        this.inertiaMgMm2 = sums.inertiaMgMm2();
        this.costMilli = sums.costMilli();
        this.style = style;
        this.missed = missed;
    }

    void price(Linear k) {
        cost = cost(k);
    }

    /** Cost under some prices, which are not kept. */
    long cost(Linear k) {
        return k.of(massMg, momentMgMm, inertiaMgMm2, costMilli)
                - k.perStyleCenti() * style
                + k.perMilliStep() * missed;
    }

    /** What it adds. */
    Sums sums() {
        return new Sums(massMg, momentMgMm, inertiaMgMm2, costMilli);
    }

    /** The same to what else is there. */
    void addTo(Tally tally) {
        tally.add(massMg, momentMgMm, inertiaMgMm2, costMilli).looks(style, missed);
    }
}
