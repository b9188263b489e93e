package withy.explain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Reel;
import withy.objectives.Solver.Query;
import withy.rod.Build;

/**
 * Smallest sets of wishes that cannot be kept together. One set is guessed from what the builds that were found break, else found by dividing (U. Junker, QUICKXPLAIN, AAAI 2004), the others
 * by asking again without one wish of each set found (the hitting-set tree of R. Reiter, Artificial Intelligence 32, 1987). Guessed or divided it is the same set: what is left
 * where each wish is left out, the last first, without which there is still nothing to be built; whatever else a guess leaves out may be left out there, too, since nothing can be built
 * with the guess.
 */
final class Conflicts {
    /** Sets that are looked for before the answer says there are more. */
    static final int MOST = 6;

    /** Ways to break the sets found that are followed before the answer says there may be more. */
    private static final int MOST_WAYS = 60;

    /** Sets guessed from the builds known before one is found by dividing, which takes more questions but never very many. */
    private static final int MOST_GUESSES = 12;

    private final Inquiry inquiry;
    private final Query question;
    private final List<Demand> demands;
    private final Map<Set<Integer>, Boolean> known = new HashMap<>();
    private boolean met;

    /**
     * @param inquiry to ask
     * @param question what else is asked: parts that must be in, perhaps
     * @param demands the wishes
     */
    Conflicts(Inquiry inquiry, Query question, List<Demand> demands) {
        this.inquiry = inquiry;
        this.question = question;
        this.demands = demands;
    }

    /**
     * What was found.
     *
     * @param sets smallest first
     * @param all true where there are no others
     */
    record Sets(List<List<Demand>> sets, boolean all) {}

    /** True where something can be built once these are given up. */
    boolean possibleWithout(Set<Integer> dropped) {
        return possibleWithout(dropped, true);
    }

    /** The same; where there is little hope that something can be built that is asked in the order that is soonest at an end then. */
    private boolean possibleWithout(Set<Integer> dropped, boolean hopeful) {
        Boolean before = told(dropped);
        if (before != null) {
            return before;
        }
        Build build = inquiry.several().any(questions(dropped), hopeful);
        if (build == null) {
            known.put(Set.copyOf(dropped), false);
        } else {
            found(build, dropped);
        }
        return build != null;
    }

    /** What is known of giving these up; null where nothing is. */
    private @Nullable Boolean told(Set<Integer> dropped) {
        for (Map.Entry<Set<Integer>, Boolean> before : known.entrySet()) {
            if (before.getValue()
                    ? dropped.containsAll(before.getKey())
                    : before.getKey().containsAll(dropped)) {
                return before.getValue();
            }
        }
        return null;
    }

    /** What a build breaks of the wishes it was found without; the nearer it is to the best rod the fewer. */
    private void found(Build build, Set<Integer> dropped) {
        Found first = inquiry.first();
        // one of them is enough to keep: what does not answer it seldom answers another
        Query one = inquiry.several().answeredBy(build, questions(dropped)).stream()
                .findFirst()
                .orElse(null);
        Build nearer = first == null || one == null
                ? build
                : Nearer.of(
                        first.build(),
                        build,
                        question.forced(),
                        next -> inquiry.several().answered(next, Set.of(one)));
        known.put(breaks(nearer, dropped), true);
    }

    /**
     * True where something can be built once all are given up. First it is asked with only what the reel, the hand and the handle ask given up, then with the foremost of all kept: the fewer a
     * build breaks the more it tells of the sets.
     */
    boolean possibleAtAll() {
        return possibleWithout(ofTheHandle())
                || !demands.isEmpty() && possibleKeeping(Set.of(0))
                || possibleWithout(rest(Set.of()), false);
    }

    private Set<Integer> ofTheHandle() {
        Set<Integer> some = new TreeSet<>();
        for (int i = 0; i < demands.size(); i++) {
            if (HandleDemands.areOfTheHandle(demands.get(i).key())) {
                some.add(i);
            }
        }
        return some;
    }

    /** True where something can be built if only these are kept. */
    boolean possibleKeeping(Set<Integer> kept) {
        return possibleWithout(rest(kept));
    }

    Set<Integer> rest(Set<Integer> some) {
        Set<Integer> rest = new TreeSet<>();
        for (int i = 0; i < demands.size(); i++) {
            if (!some.contains(i)) {
                rest.add(i);
            }
        }
        return rest;
    }

    /** All there are, up to a number. To be asked only where something can be built without any wish and nothing with all. */
    Sets find(int most) {
        Set<Set<Integer>> sets = new LinkedHashSet<>();
        ArrayDeque<Set<Integer>> open = new ArrayDeque<>(List.of(Set.of()));
        Set<Set<Integer>> seen = new LinkedHashSet<>();
        boolean all = true;
        while (!open.isEmpty()) {
            Set<Integer> dropped = open.removeFirst();
            if (!seen.add(dropped)) {
                continue;
            }
            if (sets.size() >= most || seen.size() > MOST_WAYS || inquiry.stopped()) {
                all = false;
                break;
            }
            Set<Integer> set = disjoint(sets, dropped);
            if (set.isEmpty() && !possibleWithout(dropped)) {
                set = one(dropped);
                sets.add(set);
            }
            for (int wish : set) {
                Set<Integer> more = new TreeSet<>(dropped);
                more.add(wish);
                open.addLast(more);
            }
        }
        List<List<Demand>> found = new ArrayList<>();
        sets.forEach(set -> found.add(set.stream().map(demands::get).toList()));
        found.sort(Comparator.comparingInt(List::size));
        return new Sets(found, all);
    }

    private static Set<Integer> disjoint(Set<Set<Integer>> sets, Set<Integer> dropped) {
        for (Set<Integer> set : sets) {
            if (set.stream().noneMatch(dropped::contains)) {
                return set;
            }
        }
        return Set.of();
    }

    /**
     * The smallest set among the wishes that are not dropped of which the last are spared first. Every build that is known breaks some of them: what hits all of these is
     * asked about, until nothing can be built with it. Dividing comes to the same set.
     */
    private Set<Integer> one(Set<Integer> dropped) {
        Set<Integer> kept = rest(dropped);
        for (int guess = 0; guess < MOST_GUESSES; guess++) {
            Set<Integer> set = hitting(kept);
            Set<Integer> others = union(dropped, brokenSoFar());
            others.removeAll(set);
            boolean spared = met && possibleWithout(others);
            if (!spared && !possibleWithout(rest(set), set.size() < 2)) {
                return set;
            }
        }
        return new TreeSet<>(divide(Set.of(), false, new ArrayList<>(kept)));
    }

    private Set<Integer> divide(Set<Integer> background, boolean grown, List<Integer> candidates) {
        if (grown && !possibleKeeping(background)) {
            return Set.of();
        }
        if (candidates.size() == 1) {
            return new TreeSet<>(candidates);
        }
        int foremost = candidates.get(0);
        if (grown && candidates.size() > 2 && foremost == 0 && !possibleKeeping(union(background, Set.of(foremost)))) {
            return Set.of(foremost); // dividing would come to the same
        }
        int half = candidates.size() / 2;
        List<Integer> left = candidates.subList(0, half);
        List<Integer> right = candidates.subList(half, candidates.size());
        Set<Integer> ofRight = divide(union(background, left), true, right);
        Set<Integer> ofLeft = divide(union(background, ofRight), !ofRight.isEmpty(), left);
        return union(ofLeft, ofRight);
    }

    /** Wishes that some build known breaks. */
    private Set<Integer> brokenSoFar() {
        Set<Integer> broken = new TreeSet<>();
        known.forEach((wishes, possible) -> broken.addAll(possible ? wishes : Set.of()));
        return broken;
    }

    private static Set<Integer> union(Set<Integer> some, Iterable<Integer> more) {
        Set<Integer> union = new TreeSet<>(some);
        more.forEach(union::add);
        return union;
    }

    /** What of the wishes that are kept is needed so that every build known breaks one; of the last as few as can be. */
    private Set<Integer> hitting(Set<Integer> kept) {
        TreeSet<Integer> needed = new TreeSet<>(kept);
        for (int wish : new TreeSet<>(kept).descendingSet()) {
            needed.remove(wish);
            boolean hits = known.entrySet().stream()
                    .filter(Map.Entry::getValue)
                    .noneMatch(broken -> Collections.disjoint(broken.getKey(), needed));
            if (!hits) {
                needed.add(wish);
            }
        }
        return needed;
    }

    /** Takes note of a build that may keep the question once some wishes are given up. */
    void met(Build build) {
        Set<Integer> all = rest(Set.of());
        if (inquiry.several().answered(build, questions(all))) {
            known.put(breaks(build, all), true);
            met = true;
        }
    }

    /** What a build really breaks of wishes that it was found without. */
    private Set<Integer> breaks(Build build, Set<Integer> dropped) {
        Set<Reel> reels = new LinkedHashSet<>(); // with another it answers nothing that asks more either
        inquiry.several()
                .answeredBy(build, questions(dropped))
                .forEach(query -> reels.add(query.brief().reel()));
        Set<Integer> broken = new TreeSet<>(dropped);
        for (int wish : dropped) {
            broken.remove(wish);
            Set<Query> questions = questions(broken);
            questions.removeIf(query -> !reels.contains(query.brief().reel()));
            if (!inquiry.several().answered(build, questions)) {
                broken.add(wish);
            }
        }
        return broken;
    }

    private Set<Query> questions(Set<Integer> dropped) {
        return Demands.without(
                inquiry, question, dropped.stream().map(demands::get).toList());
    }

    /** Re-checked: impossible as a whole, possible without any one. */
    boolean holds(List<Demand> set) {
        Set<Integer> kept = new TreeSet<>();
        set.forEach(demand -> kept.add(demands.indexOf(demand)));
        if (possibleKeeping(kept)) {
            return false;
        }
        for (int wish : kept) {
            Set<Integer> without = new TreeSet<>(kept);
            without.remove(wish);
            if (!possibleKeeping(without)) {
                return false;
            }
        }
        return true;
    }
}
