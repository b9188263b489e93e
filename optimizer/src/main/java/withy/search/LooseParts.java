package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.ChangeLadder.Situation;

/** The parts of a build that may still change, and the sets of them that are asked together. */
final class LooseParts {
    /** Neighbours asked together before one by one. */
    private static final int BLOCK = 4;

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
    record Unit(String name, Set<Station> stations, boolean must) {}

    /** Every part that may be another or none as far as it is not glued, and every empty station but guides. */
    static LooseParts of(Situation situation, Replacements replacements) {
        Build current = situation.current();
        Map<String, Set<Station>> groups = new LinkedHashMap<>();
        for (Station station : Replacements.stations()) {
            String id = current.partAt(station);
            if (id == null && station.number() == 0) {
                groups.put("empty " + station.key(), Set.of(station));
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

    /**
     * Supersets that together hold every set of exactly so many units with all units that must change among them: all that must, and as many
     * blocks of neighbours as there are units left to choose.
     */
    List<List<Unit>> blocks(int size) {
        List<Unit> must = units.stream().filter(Unit::must).toList();
        List<Unit> may = units.stream().filter(unit -> !unit.must()).toList();
        int left = Math.min(size - must.size(), may.size());
        if (left < 0) {
            return List.of();
        }
        if (left <= 1) {
            return sets(units, must.size() + left);
        }
        List<List<Unit>> blocks = new ArrayList<>();
        for (int from = 0; from < may.size(); from += BLOCK) {
            blocks.add(may.subList(from, Math.min(from + BLOCK, may.size())));
        }
        List<List<Unit>> wide = new ArrayList<>();
        join(wide, new ArrayList<>(must), blocks, 0, Math.min(left, blocks.size()));
        return wide;
    }

    private static void join(List<List<Unit>> wide, List<Unit> soFar, List<List<Unit>> blocks, int from, int left) {
        if (left == 0) {
            wide.add(List.copyOf(soFar));
            return;
        }
        for (int i = from; i + left <= blocks.size(); i++) {
            List<Unit> more = new ArrayList<>(soFar);
            more.addAll(blocks.get(i));
            join(wide, more, blocks, i + 1, left - 1);
        }
    }

    /** Sets of exactly so many of these units that hold every unit that must change. */
    static List<List<Unit>> sets(List<Unit> of, int size) {
        List<Unit> must = of.stream().filter(Unit::must).toList();
        List<Unit> may = of.stream().filter(unit -> !unit.must()).toList();
        List<List<Unit>> sets = new ArrayList<>();
        if (size >= must.size()) {
            grow(sets, new ArrayList<>(must), may, 0, Math.min(size, of.size()));
        }
        return sets;
    }

    private static void grow(List<List<Unit>> sets, List<Unit> soFar, List<Unit> may, int from, int size) {
        if (soFar.size() == size) {
            sets.add(List.copyOf(soFar));
            return;
        }
        for (int i = from; i < may.size(); i++) {
            soFar.add(may.get(i));
            grow(sets, soFar, may, i + 1, size);
            soFar.remove(soFar.size() - 1);
        }
    }
}
