package withy.explain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withy.objectives.Solver.Query;

/**
 * Smallest sets of wishes that cannot be kept together. One set is found by dividing (U. Junker, QUICKXPLAIN, AAAI 2004), the others by asking
 * again without one wish of each set found (the hitting-set tree of R. Reiter, Artificial Intelligence 32, 1987).
 */
final class Conflicts {
    /** Sets that are looked for before the answer says there are more. */
    static final int MOST = 6;

    /** Ways to break the sets found that are followed before the answer says there may be more. */
    private static final int MOST_WAYS = 60;

    private final Inquiry inquiry;
    private final Query question;
    private final List<Demand> demands;
    private final Map<Set<Integer>, Boolean> known = new HashMap<>();

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
        for (Map.Entry<Set<Integer>, Boolean> before : known.entrySet()) {
            if (before.getValue()
                    ? dropped.containsAll(before.getKey())
                    : before.getKey().containsAll(dropped)) {
                return before.getValue();
            }
        }
        List<Demand> list = dropped.stream().map(demands::get).toList();
        boolean possible = inquiry.possible(Demands.without(inquiry, question, list));
        known.put(Set.copyOf(dropped), possible);
        return possible;
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

    /** One smallest set among the wishes that are not dropped. */
    private Set<Integer> one(Set<Integer> dropped) {
        List<Integer> candidates = new ArrayList<>(rest(dropped));
        // often the first wish alone, the rod's length, is the whole set
        boolean first = candidates.size() > 1 && !possibleKeeping(Set.of(candidates.get(0)));
        return first ? Set.of(candidates.get(0)) : new TreeSet<>(divide(Set.of(), false, candidates));
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

    private static Set<Integer> union(Set<Integer> some, Iterable<Integer> more) {
        Set<Integer> union = new TreeSet<>(some);
        more.forEach(union::add);
        return union;
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
