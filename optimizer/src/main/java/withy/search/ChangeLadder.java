package withy.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;

/**
 * Chooses a rod again with least disturbance: the best legal build in which nothing, one part, two parts, three parts are other than they were.
 *
 * <p>A part counts as changed once, however many stations it stood at (five equal runners are one part), when any of them has another part or
 * none; a station that was empty counts when it is filled. Guides may become fewer, never more. Where the reel sits and where a grip is cut may
 * follow, unless something is glued.
 *
 * <p>Every set of parts that may change is asked by itself, with all else given; so each rung is as proven as its questions.
 */
public final class ChangeLadder {
    /** Neighbours asked together before one by one. */
    private static final int BLOCK = 4;

    private final Situation situation;
    private final Watch watch;
    private final List<Unit> units;
    private final Map<PartKind, List<Part>> offered;
    private final Map<String, Search> searches = new LinkedHashMap<>();

    private ChangeLadder(Situation situation, Watch watch) {
        this.situation = situation;
        this.watch = watch;
        Candidates candidates = Candidates.of(situation.catalog(), situation.query());
        Map<PartKind, List<Part>> kinds = new TreeMap<>();
        for (PartKind kind : PartKind.values()) {
            kinds.put(kind, candidates.of(kind));
        }
        this.offered = kinds;
        this.units = units();
    }

    /**
     * What is to be chosen again.
     *
     * @param catalog what this rod can have now
     * @param query its question; what it says of stations and of the reel foot is replaced
     * @param current the build as it was agreed
     * @param locked stations that are glued or wrapped and stay
     * @param lost parts of the build of which there are too few now
     */
    public record Situation(Catalog catalog, Query query, Build current, Set<Station> locked, Set<String> lost) {
        public Situation {
            locked = Collections.unmodifiableSet(new TreeSet<>(locked));
            lost = Collections.unmodifiableSet(new TreeSet<>(lost));
        }
    }

    /**
     * One rung.
     *
     * @param most parts that may be changed
     * @param build the best build, or null where there is none
     * @param objectives its objectives, or null
     * @param score its score by the brief; {@link Long#MAX_VALUE} without a build
     * @param changed parts changed
     * @param proven true where no build with so few changes is better
     */
    public record Rung(
            int most,
            @Nullable Build build,
            @Nullable ObjectiveVector objectives,
            long score,
            int changed,
            boolean proven) {}

    /** Stations that change together. */
    private record Unit(String name, Set<Station> stations, boolean must) {}

    /** Rungs from nothing changed to {@code most} parts changed. */
    public static List<Rung> climb(Situation situation, int most, Watch watch) {
        return new ChangeLadder(situation, watch).climb(most);
    }

    /** How many parts of a build are other than in the one before. */
    public static int distance(Build before, Build after) {
        Set<String> changed = new TreeSet<>();
        int filled = 0;
        for (Station station : stations(before, after)) {
            String old = before.partAt(station);
            String now = after.partAt(station);
            if (old != null && !old.equals(now)) {
                changed.add(old);
            } else if (old == null && now != null) {
                filled++;
            }
        }
        return changed.size() + filled;
    }

    private static Set<Station> stations(Build one, Build other) {
        Set<Station> all = new TreeSet<>(one.choices().keySet());
        all.addAll(other.choices().keySet());
        all.add(Station.BLANK);
        return all;
    }

    private List<Rung> climb(int most) {
        List<Rung> rungs = new ArrayList<>();
        Rung best = new Rung(0, null, null, Long.MAX_VALUE, 0, true);
        for (int size = 0; size <= most; size++) {
            best = new Rung(size, best.build(), best.objectives(), best.score(), best.changed(), best.proven());
            for (List<Unit> wide : blocks(size)) {
                best = within(wide, best, size);
                if (watch.interrupted().getAsBoolean()) {
                    rungs.add(new Rung(size, best.build(), best.objectives(), best.score(), best.changed(), false));
                    return rungs;
                }
            }
            rungs.add(best);
        }
        return rungs;
    }

    /** Asks many units at once first: where even all of them together give nothing better, no few of them do. */
    private Rung within(List<Unit> wide, Rung best, int size) {
        if (wide.size() <= size) {
            return better(best, wide, size);
        }
        Solution relaxed = solve(wide, best);
        Build build = relaxed.build();
        if (build == null && relaxed.proven()) {
            return best;
        }
        if (build != null && relaxed.proven() && distance(situation.current(), build) <= size) {
            return new Rung(
                    size,
                    build,
                    relaxed.objectives(),
                    relaxed.score(),
                    distance(situation.current(), build),
                    best.proven());
        }
        Rung better = best;
        for (List<Unit> set : sets(wide, size)) {
            better = better(better, set, size);
        }
        return better;
    }

    private Rung better(Rung best, List<Unit> set, int size) {
        Solution found = solve(set, best);
        Build build = found.build();
        boolean proven = best.proven() && found.proven();
        return build == null || found.score() >= best.score()
                ? new Rung(size, best.build(), best.objectives(), best.score(), best.changed(), proven)
                : new Rung(
                        size, build, found.objectives(), found.score(), distance(situation.current(), build), proven);
    }

    /** The best build with these units free and all else as it was; none where it is no better than one with as few changes. */
    private Solution solve(List<Unit> set, Rung best) {
        Set<Station> free = new HashSet<>();
        set.forEach(unit -> free.addAll(unit.stations()));
        Build current = situation.current();
        boolean glued = !situation.locked().isEmpty();
        SortedMap<Station, Choice> fixed = new TreeMap<>();
        Set<Station> empty = new TreeSet<>();
        if (!free.contains(Station.BLANK)) {
            fixed.put(Station.BLANK, Choice.of(current.layout().blankId()));
        }
        for (Station station : all()) {
            Choice choice = current.choices().get(station);
            if (free.contains(station)) {
                continue;
            }
            if (choice == null) {
                empty.add(station);
            } else {
                boolean kept = situation.locked().contains(station);
                fixed.put(station, kept ? choice : Choice.of(choice.partId()));
            }
        }
        Query query =
                situation.query().fixing(fixed, empty, glued ? current.layout().reelFootMm() : null);
        Search search = search(free, fixed);
        return best.build() == null ? search.solve(query, watch) : search.below(best.score(), query, watch);
    }

    /** A catalogue of what stays and what may take the place of the rest: the answer is the same, the question much smaller. */
    private Search search(Set<Station> free, Map<Station, Choice> fixed) {
        Set<PartKind> kinds = new TreeSet<>();
        free.forEach(station -> kinds.add(kind(station)));
        Set<String> ids = new TreeSet<>();
        fixed.values().forEach(choice -> ids.add(choice.partId()));
        // A butt grip that stays means a split handle, which no full grip goes with.
        boolean split = fixed.containsKey(Station.BUTT_GRIP);
        for (PartKind kind : kinds) {
            for (Part part : offers(kind)) {
                if (!(split && part instanceof Grip grip && grip.place() == Grip.Place.FULL)) {
                    ids.add(part.id());
                }
            }
        }
        ids.add(situation.catalog().rates().houseFinish());
        ids.add(situation.catalog().rates().houseAdhesive());
        return searches.computeIfAbsent(
                String.join(" ", ids), key -> new Search(situation.catalog().only(ids)));
    }

    private List<Unit> units() {
        Build current = situation.current();
        Map<String, Set<Station>> groups = new LinkedHashMap<>();
        for (Station station : all()) {
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
            if (!loose.isEmpty() && otherThan(name, loose)) {
                list.add(new Unit(name, loose, situation.lost().contains(name)));
            }
        });
        return list;
    }

    /** True where anything else could stand there, or nothing could. */
    private boolean otherThan(String name, Set<Station> stations) {
        for (Station station : stations) {
            boolean needed = station.equals(Station.BLANK);
            if (!needed
                    || offers(kind(station)).stream()
                            .anyMatch(part -> !part.id().equals(name))) {
                return true;
            }
        }
        return false;
    }

    /** All places a choice can stand at, guides up to the count there is. */
    private List<Station> all() {
        List<Station> all = new ArrayList<>();
        for (Station.Place place : Station.Place.values()) {
            if (place != Station.Place.GUIDE && place != Station.Place.BLANK) {
                all.add(new Station(place, 0));
            }
        }
        for (int number = 1; number <= Station.MOST_GUIDES; number++) {
            all.add(Station.guide(number));
        }
        return all;
    }

    private List<Part> offers(PartKind kind) {
        List<Part> parts = offered.get(kind);
        return parts == null ? List.of() : parts;
    }

    /**
     * Supersets that together hold every set of exactly so many units with all units that must change among them: all that must, and as many
     * blocks of neighbours as there are units left to choose.
     */
    private List<List<Unit>> blocks(int size) {
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
    private static List<List<Unit>> sets(List<Unit> of, int size) {
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

    private static PartKind kind(Station station) {
        return switch (station.place()) {
            case BUTT_CAP -> PartKind.BUTT_CAP;
            case BUTT_GRIP, REAR_GRIP, FORE_GRIP -> PartKind.GRIP;
            case REAR_CHECK, FORE_CHECK, WINDING_CHECK -> PartKind.CHECK;
            case SEAT -> PartKind.REEL_SEAT;
            case HOOD -> PartKind.HOOD;
            case SEAT_ARBORS -> PartKind.ARBOR;
            case KEEPER -> PartKind.KEEPER;
            case GUIDE -> PartKind.GUIDE;
            case TIP_TOP -> PartKind.TIP_TOP;
            case THREAD -> PartKind.THREAD;
            case FINISH -> PartKind.FINISH;
            case ADHESIVE -> PartKind.ADHESIVE;
            case DECAL -> PartKind.DECAL;
            case BLANK -> PartKind.BLANK;
        };
    }
}
