package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.ChangeLadder.Situation;

/** The parts of a build that may still change, and the sets of them that are asked together. */
final class LooseParts {
    private static final String EMPTY = "empty ";

    private final List<Unit> units;

    private LooseParts(List<Unit> units) {
        this.units = units;
    }

    /**
     * Stations that change together.
     *
     * @param name the part that stands there, or which station is empty
     * @param stations stations that are not glued
     * @param must true where the part is lost
     */
    record Unit(String name, Set<Station> stations, boolean must) {
        /** True where the part stands at the only station that takes it, so that without it the station has another or none. */
        boolean alone() {
            Station station = stations.iterator().next();
            return !name.startsWith(EMPTY)
                    && switch (station.place()) {
                        case REAR_CHECK, FORE_CHECK, WINDING_CHECK, GUIDE, FINISH, ADHESIVE -> false;
                        default -> true;
                    };
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Unit unit && unit.name.equals(name);
        }

        @Override
        public int hashCode() {
            return name.hashCode();
        }
    }

    /** Every part that may be another or none as far as it is not glued, and every empty station but guides. */
    static LooseParts of(Situation situation, Replacements replacements) {
        Build current = situation.current();
        Map<String, Set<Station>> groups = new LinkedHashMap<>();
        for (Station station : Replacements.stations()) {
            String id = current.partAt(station);
            if (id == null && station.number() == 0) {
                groups.put(EMPTY + station.key(), Set.of(station));
            } else if (id != null) {
                groups.computeIfAbsent(id, part -> new TreeSet<>()).add(station);
            }
        }
        groups.computeIfAbsent(current.layout().blankId(), part -> new TreeSet<>())
                .add(Station.BLANK);
        List<Unit> list = new ArrayList<>();
        groups.forEach((name, stations) -> {
            Set<Station> loose = new TreeSet<>(stations);
            loose.removeAll(situation.locked());
            if (!situation.locked().isEmpty()) {
                loose.remove(Station.BLANK);
            }
            if (!loose.isEmpty() && otherThan(name, loose, replacements)) {
                list.add(new Unit(name, loose, situation.lost().contains(name)));
            }
        });
        return new LooseParts(list);
    }

    /** True where anything else could stand there, or nothing could. */
    private static boolean otherThan(String name, Set<Station> stations, Replacements replacements) {
        for (Station station : stations) {
            boolean needed = station.equals(Station.BLANK);
            if (!needed
                    || replacements.at(station).stream()
                            .anyMatch(part -> !part.id().equals(name))) {
                return true;
            }
        }
        return false;
    }

    /** All of them. */
    Set<Unit> all() {
        return new LinkedHashSet<>(units);
    }

    /** Those that must change. */
    Set<Unit> must() {
        Set<Unit> must = new LinkedHashSet<>();
        units.stream().filter(Unit::must).forEach(must::add);
        return must;
    }

    /** The blank first, since with it given a question is much smaller; then from butt to tip. */
    List<Unit> ordered(Set<Unit> some) {
        List<Unit> ordered = new ArrayList<>(units);
        ordered.retainAll(some);
        ordered.sort(Comparator.comparing(unit -> !unit.stations().contains(Station.BLANK)));
        return ordered;
    }

    /** Blank and tip-top: with the blank given a question is small, and few other blanks take the tip-top that was there. */
    List<Unit> tellingFirst() {
        List<Unit> first = new ArrayList<>();
        for (Station station : List.of(Station.BLANK, Station.TIP_TOP)) {
            units.stream().filter(unit -> unit.stations().contains(station)).forEach(first::add);
        }
        return first;
    }

    /** True where the blank is among them though it is not lost. */
    boolean withBlank(Set<Unit> some) {
        return some.stream().anyMatch(unit -> !unit.must() && unit.stations().contains(Station.BLANK));
    }

    /** Sets of exactly so many of these that hold every one that is counted already. */
    static List<Set<Unit>> sets(Set<Unit> of, Set<Unit> counted, int size) {
        List<Unit> may = new ArrayList<>(of);
        may.removeAll(counted);
        List<Set<Unit>> sets = new ArrayList<>();
        grow(sets, new ArrayList<>(counted), may, 0, Math.min(size, of.size()));
        return sets;
    }

    private static void grow(List<Set<Unit>> sets, List<Unit> soFar, List<Unit> may, int from, int size) {
        if (soFar.size() == size) {
            sets.add(new LinkedHashSet<>(soFar));
            return;
        }
        for (int i = from; i < may.size(); i++) {
            soFar.add(may.get(i));
            grow(sets, soFar, may, i + 1, size);
            soFar.remove(soFar.size() - 1);
        }
    }
}
