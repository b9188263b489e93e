package withy.explain;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import withy.rod.Build;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Verdict;

/**
 * What of a broken rule is the doing of parts that must be in, and what only that of a part beside them: an open butt that a cap closes says nothing
 * against the grip there, a grip that is too long for the handle does.
 */
final class Beside {
    /** Where another part may mend what one of the handle breaks. */
    private static final Set<Station> HANDLE = Set.of(
            Station.BUTT_CAP,
            Station.BUTT_GRIP,
            Station.REAR_GRIP,
            Station.REAR_CHECK,
            Station.FORE_CHECK,
            Station.FORE_GRIP,
            Station.WINDING_CHECK);

    /** The check of whether anything closes the butt. */
    private static final String OPEN_BUTT = "butt-closed";

    private final Inquiry inquiry;
    private final Found found;
    private final Set<String> parts;
    private final Rulebook kept;

    /**
     * @param found breaks rules
     * @param parts stay in
     * @param broken rules that may be broken
     */
    Beside(Inquiry inquiry, Found found, Set<String> parts, Set<String> broken) {
        this.inquiry = inquiry;
        this.found = found;
        this.parts = parts;
        this.kept = inquiry.rulebooks().without(broken);
    }

    /** The first of some breaches, all of one rule, that no other part beside the given ones mends; the first where each can be mended. Of an open butt last. */
    Breach staying(List<Breach> breaches) {
        if (breaches.size() == 1) {
            return breaches.get(0);
        }
        List<Breach> telling = breaches.stream()
                .sorted(Comparator.comparing(breach -> breach.verdict().check().equals(OPEN_BUTT)))
                .toList();
        return telling.stream()
                .filter(breach -> stays(breach.verdict()))
                .findFirst()
                .orElse(telling.get(0));
    }

    /** False where some part at a place that has to do with it mends it, with no rule broken that may not be. */
    private boolean stays(Verdict verdict) {
        return places(verdict).stream().noneMatch(place -> mends(place, verdict));
    }

    /** A cap may be left out; any other place that is left empty mends nothing. */
    private boolean mends(Station place, Verdict verdict) {
        return new Swaps(inquiry, found.build(), place)
                .others().stream()
                        .filter(other -> other.holds(parts))
                        .filter(other -> place.equals(Station.BUTT_CAP) || other.partAt(place) != null)
                        .anyMatch(other -> mends(other, verdict));
    }

    private boolean mends(Build other, Verdict verdict) {
        Found swapped = inquiry.measured(other);
        return Judge.legal(swapped.rod(), kept)
                && Judge.broken(swapped.rod(), Rulebook.standard()).stream().noneMatch(one -> same(one, verdict));
    }

    private static boolean same(Verdict one, Verdict other) {
        return one.rule().equals(other.rule()) && one.check().equals(other.check());
    }

    /** Where the parts of the handle stand that are told of, and the butt end where that is open. */
    private Set<Station> places(Verdict verdict) {
        Set<Station> places = new LinkedHashSet<>();
        found.build().choices().forEach((station, choice) -> {
            if (HANDLE.contains(station) && verdict.parts().contains(choice.partId())) {
                places.add(station);
            }
        });
        if (verdict.check().equals(OPEN_BUTT)) {
            places.add(Station.BUTT_CAP);
        }
        return places;
    }
}
