package withy.search;

import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.rod.Share;

/**
 * One possibility at one station of one layout: a part (or nothing) with what it adds, and its cost under the prices of the moment.
 *
 * @param <P> kind of part
 */
final class Option<P extends Part> {
    final @Nullable P part;
    final double fromMm;
    final double lengthMm;
    final Share share;
    final long style;
    final long missed;
    long cost;

    Option(@Nullable P part, double fromMm, double lengthMm, Share share, long style, long missed) {
        this.part = part;
        this.fromMm = fromMm;
        this.lengthMm = lengthMm;
        this.share = share;
        this.style = style;
        this.missed = missed;
    }

    void price(Linear k) {
        cost = cost(k);
    }

    /** Cost under some prices, which are not kept. */
    long cost(Linear k) {
        return k.of(share, style, missed);
    }
}
