package withy.app;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import withy.app.Reasons.AskedLine;
import withy.explain.Conflict.Asked;
import withy.explain.FirstTooMuch;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.explain.Neighbours;

/**
 * Whether anything fits a brief still, and how much at least.
 *
 * @param atLeast the best build and those that differ from it in one part, as far as they are legal; 0 where there is none
 * @param tooMuch where there is none, the first wish that leaves none; null where none is to blame
 * @param interrupted true where it was stopped before its end: then 0 says nothing
 */
public record Fitting(int atLeast, @Nullable AskedLine tooMuch, boolean interrupted) {
    /**
     * Of an inquiry.
     *
     * @param turn when a wish was said, by its field of the brief
     */
    public static Fitting of(Inquiry inquiry, Comparator<String> turn) {
        Found best = inquiry.first();
        if (best != null) {
            return new Fitting(Neighbours.of(inquiry, best), null, inquiry.stopped());
        }
        Asked first = inquiry.stopped() ? null : FirstTooMuch.of(inquiry, turn);
        return new Fitting(0, first == null ? null : Reasons.asked(first), inquiry.stopped());
    }
}
