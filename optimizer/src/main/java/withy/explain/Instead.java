package withy.explain;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/**
 * A build that differs from another only where that has the one part that is asked about: what beats the part there is told most plainly so, and without
 * a search. Another seat brings its hood and arbors, another hood its seat. Not for blanks, which bring more than themselves.
 */
final class Instead {
    private Instead() {}

    /** The one with the best score among those that will do, or null. */
    static @Nullable Found of(Inquiry inquiry, Found build, Set<String> parts, Predicate<Found> willDo) {
        Found best = null;
        for (Station station : stations(inquiry, build.build(), parts)) {
            for (Build other : new Swaps(inquiry, build.build(), station).others()) {
                Found found = other.holds(parts) ? null : inquiry.measured(other);
                if (found != null
                        && willDo.test(found)
                        && betters(inquiry, found, best)
                        && Judge.legal(found.rod(), Rulebook.standard())) {
                    best = found;
                }
            }
        }
        return best;
    }

    /** Stations filled otherwise: where the part is, and of a hood also where its seat is. */
    private static Set<Station> stations(Inquiry inquiry, Build build, Set<String> parts) {
        Set<Station> stations = new LinkedHashSet<>();
        for (Map.Entry<Station, Choice> filled : build.choices().entrySet()) {
            Part part = inquiry.catalog().find(filled.getValue().partId());
            if (part != null && parts.equals(Set.of(part.id()))) {
                stations.addAll(
                        part.kind() == PartKind.HOOD
                                ? List.of(filled.getKey(), Station.SEAT)
                                : List.of(filled.getKey()));
            }
        }
        return stations;
    }

    private static boolean betters(Inquiry inquiry, Found one, @Nullable Found best) {
        return best == null || inquiry.score(one.vector()) < inquiry.score(best.vector());
    }
}
