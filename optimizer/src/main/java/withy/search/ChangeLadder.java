package withy.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.LadderQuestions.Case;
import withy.search.LooseParts.Unit;

/**
 * Chooses a rod again with least disturbance: the best legal build in which nothing, one part, two parts, three parts are other than they were.
 *
 * <p>A part counts as changed once, however many stations it stood at (five equal runners are one part), when any of them has another part or
 * none; a station that was empty counts when it is filled. Guides may become fewer, never more. Where the reel sits and where a grip is cut may
 * follow, unless something is glued.
 *
 * <p>With the blank it has, first every other part may change at once: where that gives nothing better, or something better with few changes, it
 * settles the matter. Else fewer and fewer may, down to single sets. With another blank few sets are left, which are asked one by one. So each rung is as
 * proven as its questions.
 */
public final class ChangeLadder {
    private final Situation situation;
    private final Watch watch;
    private final LooseParts loose;
    private final LadderQuestions questions;
    private Rung best = new Rung(0, null, null, Long.MAX_VALUE, 0, true);

    private ChangeLadder(Situation situation, Watch watch) {
        this.situation = situation;
        this.watch = watch;
        Replacements replacements = Replacements.of(situation);
        this.loose = LooseParts.of(situation, replacements);
        this.questions = new LadderQuestions(situation, replacements, watch);
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
        return climb(situation, most, watch, rung -> {});
    }

    /**
     * The same.
     *
     * @param told told each rung as soon as it is known
     */
    public static List<Rung> climb(Situation situation, int most, Watch watch, Consumer<Rung> told) {
        return new ChangeLadder(situation, watch).climb(most, false, told);
    }

    /** The same, but none beyond the first with a build: that which disturbs least. */
    public static List<Rung> fewest(Situation situation, int most, Watch watch) {
        return new ChangeLadder(situation, watch).climb(most, true, rung -> {});
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

    private List<Rung> climb(int most, boolean anyWillDo, Consumer<Rung> told) {
        List<Rung> rungs = new ArrayList<>();
        for (int size = 0; size <= most && !(anyWillDo && best.build() != null); size++) {
            best = new Rung(size, best.build(), best.objectives(), best.score(), best.changed(), best.proven());
            Set<Unit> must = loose.must();
            if (must.size() <= size) {
                climb(cases(loose.all(), must, loose.tellingFirst()));
            }
            boolean stopped = watch.interrupted().getAsBoolean();
            rungs.add(stopped ? unproven() : best);
            told.accept(rungs.get(rungs.size() - 1));
            if (stopped) {
                return rungs;
            }
        }
        return rungs;
    }

    private void climb(List<Case> cases) {
        if (best.build() != null) {
            questions.ahead(cases, best.score());
        }
        cases.forEach(one -> look(one.free(), one.counted()));
    }

    /**
     * Looks for a better build in which none but these parts change. Where the best of them changes too many, one of those it changes has to stay
     * in any other: the first, or the first changes and the second stays, and so on.
     *
     * @param counted parts of which it is settled that they change
     */
    private void look(Set<Unit> free, Set<Unit> counted) {
        boolean few = free.size() <= best.most();
        Solution found = questions.best(free, counted, best.score(), few && best.build() == null);
        Build build = found.build();
        boolean fits = build != null && distance(situation.current(), build) <= best.most();
        if (fits) {
            take(found);
        }
        if (few && !found.proven()) {
            best = unproven();
        }
        boolean settled = few || found.proven() && (fits || build == null);
        if (settled || watch.interrupted().getAsBoolean()) {
            return;
        }
        if (build == null || !found.proven()) {
            LooseParts.sets(free, counted, best.most()).forEach(set -> look(set, set));
            return;
        }
        cases(free, counted, loose.ordered(questions.changed(free, build)))
                .forEach(one -> look(one.free(), one.counted()));
    }

    /** The cases: the first of these stays; the first changes and the second stays; and so on; at last all of them change. */
    private List<Case> cases(Set<Unit> free, Set<Unit> counted, List<Unit> by) {
        List<Unit> some = new ArrayList<>(by);
        some.removeAll(counted);
        some.retainAll(free);
        int left = best.most() - counted.size();
        List<Case> cases = new ArrayList<>();
        for (int change = Math.min(left, some.size()); change >= 0; change--) {
            Set<Unit> others = new HashSet<>(free);
            if (change < some.size()) {
                others.remove(some.get(change));
            }
            Set<Unit> settled = new HashSet<>(counted);
            settled.addAll(some.subList(0, change));
            if (left - change == 1 && loose.withBlank(settled)) {
                LooseParts.sets(others, settled, best.most()).forEach(set -> cases.add(new Case(set, set)));
            } else {
                cases.add(new Case(left == change ? settled : others, settled));
            }
        }
        return cases;
    }

    private void take(Solution found) {
        Build build = found.build();
        if (build != null && found.score() < best.score()) {
            int changes = distance(situation.current(), build);
            best = new Rung(best.most(), build, found.objectives(), found.score(), changes, best.proven());
        }
    }

    private Rung unproven() {
        return new Rung(best.most(), best.build(), best.objectives(), best.score(), best.changed(), false);
    }
}
