package withy.explain;

import java.util.function.BiConsumer;
import java.util.function.DoubleFunction;
import withy.brief.Brief;
import withy.brief.BriefDraft;

/**
 * One number of a brief that can give way in one direction; the further it is turned, the more builds are legal.
 *
 * @param key name of the repair in the message file
 * @param now what the brief says
 * @param far as far as it is worth turning
 * @param grid steps it is told in
 * @param set says it otherwise
 * @param print a value or a difference in the reader's units
 * @param unit unit of the values
 */
record Dial(
        String key,
        double now,
        double far,
        double grid,
        BiConsumer<BriefDraft, Double> set,
        DoubleFunction<String> print,
        String unit) {

    /** Steps of the grid between now and as far as it goes. */
    long steps() {
        return (long) Math.ceil(Math.abs(far - now) / grid - 1e-9);
    }

    /** The value after so many steps, on the grid, never beyond {@code far}. */
    double at(long step) {
        if (step == 0) {
            return now;
        }
        if (step >= steps()) {
            return far;
        }
        return far > now ? (Math.floor(now / grid + 1e-9) + step) * grid : (Math.ceil(now / grid - 1e-9) - step) * grid;
    }

    Brief turned(Brief brief, double value) {
        BriefDraft draft = new BriefDraft(brief);
        set.accept(draft, value);
        return draft.brief();
    }
}
