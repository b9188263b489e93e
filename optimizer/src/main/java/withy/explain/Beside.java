package withy.explain;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
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

    /**
     * The one to tell: the first that no other part beside the given ones mends, else the first; of an open butt last, and where a cap mends that, whatever
     * else is broken and cannot be mended goes before it.
     *
     * @param own breaches of one rule by the given parts themselves, or all of them where none is
     * @param all all of that rule
     */
    Breach telling(List<Breach> own, List<Breach> all) {
        List<Breach> first =
                own.stream().sorted(Comparator.comparing(Beside::openButt)).toList();
        boolean onlyOpen = own.stream().allMatch(Beside::openButt);
        if (all.size() == 1 || own.size() == 1 && !onlyOpen) {
            return first.get(0);
        }
        return Stream.concat(first.stream(), onlyOpen ? all.stream() : Stream.of())
                .filter(breach -> stays(breach.verdict()))
                .findFirst()
                .orElse(first.get(0));
    }

    private static boolean openButt(Breach breach) {
        return breach.verdict().check().equals(OPEN_BUTT);
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
