package withy.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.search.LooseParts.Unit;

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
    private final Situation situation;
    private final Watch watch;
    private final Replacements replacements;
    private final LooseParts loose;

    private ChangeLadder(Situation situation, Watch watch) {
        this.situation = situation;
        this.watch = watch;
        this.replacements = Replacements.of(situation);
        this.loose = LooseParts.of(situation, replacements);
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
            for (List<Unit> wide : loose.blocks(size)) {
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
        for (List<Unit> set : LooseParts.sets(wide, size)) {
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
        for (Station station : Replacements.stations()) {
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
        Search search = replacements.search(free, fixed);
        return best.build() == null ? search.solve(query, watch) : search.below(best.score(), query, watch);
    }
}
