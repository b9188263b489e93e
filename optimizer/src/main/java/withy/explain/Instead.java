package withy.explain;

import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Swaps.Swap;
import withy.rod.Build.Choice;
import withy.rod.Station;

/**
 * A build that differs from another in one station only, where that has the one part that is asked about: what beats the part there is told most plainly so, and
 * without a search. Not for seats and blanks, which bring more than themselves.
 */
final class Instead {
    private Instead() {}

    /** The one with the best score among those that will do, or null. */
    static @Nullable Found of(Inquiry inquiry, Found build, Set<String> parts, Predicate<Found> willDo) {
        Found best = null;
        for (Map.Entry<Station, Choice> filled : build.build().choices().entrySet()) {
            if (parts.size() == 1 && parts.contains(filled.getValue().partId()) && mayBeSwapped(inquiry, filled)) {
                for (Swap swap : new Swaps(inquiry, build.build(), filled.getKey()).all()) {
                    Found found = swap.legal() ? swap.found() : null;
                    if (found != null && willDo.test(found) && betters(inquiry, found, best)) {
                        best = found;
                    }
                }
            }
        }
        return best;
    }

    private static boolean mayBeSwapped(Inquiry inquiry, Map.Entry<Station, Choice> filled) {
        Part part = inquiry.catalog().find(filled.getValue().partId());
        return part != null && part.kind() != PartKind.REEL_SEAT && part.kind() != PartKind.BLANK;
    }

    private static boolean betters(Inquiry inquiry, Found one, @Nullable Found best) {
        return best == null || inquiry.score(one.vector()) < inquiry.score(best.vector());
    }
}
