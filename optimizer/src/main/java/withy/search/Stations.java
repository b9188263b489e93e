package withy.search;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.Solver.Query;
import withy.rod.Build.Choice;
import withy.rod.Station;

/**
 * What a question prescribes station by station. A forced part that could go to several stations makes one alternative each.
 *
 * @param given choices that are given
 * @param empty stations that stay empty
 * @param without parts that stand nowhere: the kind of each by its id
 */
record Stations(Map<Station, Choice> given, Set<Station> empty, Map<String, PartKind> without) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Stations that
                && given.equals(that.given)
                && empty.equals(that.empty)
                && without.equals(that.without);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * given.hashCode() + empty.hashCode()) + without.hashCode();
    }

    /** Kinds of which one part more or less changes nothing of what is worked out of the others. */
    private static final Set<PartKind> LOOSE =
            EnumSet.of(PartKind.BLANK, PartKind.REEL_SEAT, PartKind.GRIP, PartKind.GUIDE);

    private static final Set<PartKind> HANDLE = EnumSet.complementOf(
            EnumSet.of(PartKind.BLANK, PartKind.GUIDE, PartKind.TIP_TOP, PartKind.THREAD, PartKind.FINISH));
    private static final Set<PartKind> TRAIN =
            EnumSet.of(PartKind.GUIDE, PartKind.TIP_TOP, PartKind.THREAD, PartKind.FINISH, PartKind.ADHESIVE);

    /** Besides the guides. */
    private static final Set<Station> OF_TRAIN = Set.of(Station.TIP_TOP, Station.THREAD, Station.FINISH);

    /** Where checks lie. */
    static final Set<Station> CHECKS = Set.of(Station.REAR_CHECK, Station.FORE_CHECK, Station.WINDING_CHECK);

    /** True where a check is given. */
    boolean givenCheck() {
        return given.keySet().stream().anyMatch(CHECKS::contains);
    }

    /** Every way to place the forced parts; empty where one has no place. */
    static List<Stations> alternatives(Catalog catalog, Query query, Set<String> forced) {
        List<Stations> alternatives = new ArrayList<>();
        Set<String> loose = new TreeSet<>(query.refused());
        loose.removeIf(id -> !isLoose(catalog, id));
        alternatives.add(new Stations(query.fixed(), query.empty(), Map.of()).leavingOut(catalog, loose));
        for (String id : forced) {
            Part part = catalog.find(id);
            List<Stations> wider = new ArrayList<>();
            if (part != null) {
                for (Stations so : alternatives) {
                    so.placing(part, wider);
                }
            }
            alternatives = wider;
        }
        return alternatives;
    }

    /** True of a refused part without which a question may stand on the ground of one that does not refuse it. */
    static boolean isLoose(Catalog catalog, String id) {
        Part part = catalog.find(id);
        return part != null && LOOSE.contains(part.kind());
    }

    /** True where nothing is said. */
    boolean none() {
        return given.isEmpty() && empty.isEmpty() && without.isEmpty();
    }

    /** True where this part may stand at the station. */
    boolean allows(Station station, Part part) {
        if (!without.isEmpty() && without.containsKey(part.id())) {
            return false;
        }
        if (given.isEmpty() && empty.isEmpty()) {
            return true;
        }
        Choice choice = given.get(station);
        return choice != null ? choice.partId().equals(part.id()) : !empty.contains(station);
    }

    /** The same with these parts standing nowhere either. */
    Stations leavingOut(Catalog catalog, Set<String> ids) {
        if (ids.isEmpty()) {
            return this;
        }
        Map<String, PartKind> more = new TreeMap<>(without);
        for (String id : ids) {
            Part part = catalog.find(id);
            if (part != null) {
                more.put(id, part.kind());
            }
        }
        return new Stations(given, empty, more);
    }

    /** The same with nothing said of blank, guides, tip-top and their thread: what decides about the handle. */
    Stations ofHandle() {
        boolean saysMore = given.keySet().stream().anyMatch(Stations::ofTrain)
                || empty.stream().anyMatch(Stations::ofTrain)
                || !HANDLE.containsAll(without.values());
        return saysMore ? only(station -> !ofTrain(station), HANDLE) : this;
    }

    /** The same with only what is said of guides, tip-top and what holds them: what decides about the train. */
    Stations ofTrain() {
        return only(station -> ofTrain(station) || station.equals(Station.ADHESIVE), TRAIN);
    }

    private Stations only(Predicate<Station> kept, Set<PartKind> kinds) {
        Map<Station, Choice> rest = new TreeMap<>(given);
        rest.keySet().removeIf(kept.negate());
        Map<String, PartKind> still = new TreeMap<>(without);
        still.values().removeIf(kind -> !kinds.contains(kind));
        return new Stations(rest, empty.stream().filter(kept).collect(Collectors.toSet()), still);
    }

    private static boolean ofTrain(Station station) {
        return station.place() == Station.Place.GUIDE || OF_TRAIN.contains(station);
    }

    /** True where the station may be left empty (as far as the question goes). */
    boolean optional(Station station) {
        return !given.containsKey(station);
    }

    /** The cut a given grip must have, or 0 where it is free. */
    double cutMm(Station station) {
        Choice choice = given.get(station);
        return choice == null ? 0 : choice.cutMm();
    }

    /** True where something behind the seat is given. */
    boolean givenBehindSeat() {
        return given.containsKey(Station.REAR_CHECK)
                || given.containsKey(Station.REAR_GRIP)
                || given.containsKey(Station.BUTT_GRIP)
                || given.containsKey(Station.BUTT_CAP);
    }

    /** Highest guide number something is given for, 0 for none. */
    int lastGivenGuide() {
        int last = 0;
        for (Station station : given.keySet()) {
            last = Math.max(last, station.number());
        }
        return last;
    }

    private void placing(Part part, List<Stations> to) {
        for (Choice choice : given.values()) {
            if (choice.partId().equals(part.id())) {
                to.add(this);
                return;
            }
        }
        for (Station station : stationsOf(part)) {
            if (!given.containsKey(station) && !empty.contains(station)) {
                Map<Station, Choice> more = new TreeMap<>(given);
                more.put(station, Choice.of(part.id()));
                to.add(new Stations(more, empty, without));
            }
        }
    }

    private static List<Station> stationsOf(Part part) {
        return switch (part.kind()) {
            case BLANK -> List.of(Station.BLANK);
            case REEL_SEAT -> List.of(Station.SEAT);
            case HOOD -> List.of(Station.HOOD);
            case ARBOR -> List.of(Station.SEAT_ARBORS);
            case GRIP -> List.of(gripStation((Grip) part));
            case BUTT_CAP -> List.of(Station.BUTT_CAP);
            case CHECK -> List.of(Station.REAR_CHECK, Station.FORE_CHECK, Station.WINDING_CHECK);
            case GUIDE -> guides();
            case TIP_TOP -> List.of(Station.TIP_TOP);
            case KEEPER -> List.of(Station.KEEPER);
            case THREAD -> List.of(Station.THREAD);
            case FINISH -> List.of(Station.FINISH);
            case ADHESIVE -> List.of(Station.ADHESIVE);
            case DECAL -> List.of(Station.DECAL);
        };
    }

    private static Station gripStation(Grip grip) {
        return switch (grip.place()) {
            case BUTT -> Station.BUTT_GRIP;
            case FORE -> Station.FORE_GRIP;
            case REAR, FULL -> Station.REAR_GRIP;
        };
    }

    private static List<Station> guides() {
        List<Station> all = new ArrayList<>();
        for (int number = 1; number <= Station.MOST_GUIDES; number++) {
            all.add(Station.guide(number));
        }
        return all;
    }

    @Nullable
    Choice givenAt(Station station) {
        return given.get(station);
    }
}
