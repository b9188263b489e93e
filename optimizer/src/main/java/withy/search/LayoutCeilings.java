package withy.search;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.rod.Balance;
import withy.rod.Consumables;
import withy.search.Prices.Kind;

/** Whether the ceilings of a question can be kept in a layout, and what a walk past its builds must look at to keep them; found once. */
final class LayoutCeilings {
    private final Task task;
    private final Set<Consumables> threads;
    private final int leastClass;
    private final List<TwoCeilings.Edge> edges = new ArrayList<>();
    private final Map<Kind, Optional<ObjectiveVector>> leasts = new EnumMap<>(Kind.class);
    private List<TwoCeilings.Edge> hard = List.of();
    private TwoCeilings.@Nullable Edge ruling;
    private final Set<TwoCeilings.Pair> looked = new HashSet<>();
    /** Of each ceiling by itself and two that were hard to keep elsewhere. */
    private @Nullable Boolean kept;
    /** Of any two. */
    private @Nullable Boolean pairsKept;

    /**
     * @param threads threads of the builds that are looked at
     * @param leastClass class that every load-bearing part of theirs has at least
     */
    LayoutCeilings(Task task, Collection<Consumables> threads, int leastClass) {
        this.task = task;
        this.threads = Set.copyOf(threads);
        this.leastClass = leastClass;
    }

    /** True where what was found holds of the builds with other threads and of another class, too: where more of them may keep the ceilings, or none of fewer. */
    boolean holdsFor(Collection<Consumables> others, int otherClass) {
        boolean fewer = otherClass >= leastClass && threads.containsAll(others);
        boolean more = otherClass <= leastClass && Set.copyOf(others).containsAll(threads);
        boolean none = Boolean.FALSE.equals(kept) || Boolean.FALSE.equals(pairsKept);
        return kept == null ? fewer && more : none ? fewer : more;
    }

    /** Prices that are looked at first, because two ceilings could not be kept together under them elsewhere. */
    void hard(List<TwoCeilings.Edge> elsewhere) {
        hard = elsewhere;
    }

    /** The prices under which no build here keeps two ceilings, or null. */
    TwoCeilings.@Nullable Edge ruling() {
        return ruling;
    }

    /** Where two ceilings were found hard to keep together, the prices that show it. */
    List<TwoCeilings.Edge> edges() {
        return edges;
    }

    /** Every ceiling by itself. */
    List<Walk.Test> tests() {
        List<Walk.Test> tests = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            if (Prices.bounded(task.bounds, kind)) {
                tests.add(new Walk.Test(Prices.only(kind), Prices.ceiling(task.bounds, kind) + 1));
            }
        }
        long outside = task.bounds.outsideMgMm();
        if (outside != Long.MAX_VALUE) {
            tests.add(new Walk.Test(ahead(), outside + 1));
            tests.add(new Walk.Test(behind(), outside + 1));
        }
        return tests;
    }

    /**
     * Several ceilings together, each in steps: a build that keeps them keeps their sum, which parts that keep each by themselves may not.
     *
     * @param step what a step of each costs
     */
    List<Walk.Test> together(Scoring step) {
        List<Walk.Test> each = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            if (Prices.bounded(task.bounds, kind)) {
                each.add(times(
                        new Walk.Test(Prices.only(kind), Prices.ceiling(task.bounds, kind)), Prices.scale(step, kind)));
            }
        }
        List<Walk.Test> together = new ArrayList<>();
        for (int some = 1; some < 1 << each.size(); some++) {
            Walk.Test sum = null;
            for (int i = 0; i < each.size(); i++) {
                if ((some & 1 << i) != 0) {
                    sum = sum == null ? each.get(i) : plus(sum, each.get(i));
                }
            }
            if (sum != null && Integer.bitCount(some) > 1) {
                together.add(sum);
            }
        }
        return together.stream()
                .map(test -> new Walk.Test(test.k(), test.under() + 1))
                .toList();
    }

    private static Walk.Test times(Walk.Test test, long n) {
        return new Walk.Test(test.k().times(n), test.under() * n);
    }

    private static Walk.Test plus(Walk.Test one, Walk.Test other) {
        return new Walk.Test(one.k().plus(other.k()), one.under() + other.under());
    }

    /**
     * False where some sum cannot be brought under its ceiling here whatever is chosen, or two that were hard to keep together elsewhere cannot both.
     *
     * @param met a build here that breaks some
     * @param builds those of the layout
     */
    boolean mayBeKept(Task.Measured met, TwoCeilings.Builds builds) {
        Boolean known = kept;
        if (known == null) {
            known = eachMayBeKept(met, builds) && hardMayBeKept(builds);
            kept = known;
        }
        return known;
    }

    /** False where two sums can't both be brought under their ceilings here. */
    boolean pairsMayBeKept(TwoCeilings.Builds builds) {
        Boolean known = pairsKept;
        if (known == null) {
            known = allPairsMayBeKept(builds);
            pairsKept = known;
        }
        return known;
    }

    private boolean eachMayBeKept(Task.Measured met, TwoCeilings.Builds builds) {
        ObjectiveVector v = met.vector();
        for (Kind kind : Kind.values()) {
            if (Prices.exceeds(v, task.bounds, kind)
                    && !builds.any(Prices.only(kind), Prices.ceiling(task.bounds, kind))) {
                return false;
            }
        }
        long ceiling = task.bounds.outsideMgMm();
        return (met.aheadMgMm() <= ceiling || builds.any(ahead(), ceiling))
                && (met.behindMgMm() <= ceiling || builds.any(behind(), ceiling));
    }

    private boolean hardMayBeKept(TwoCeilings.Builds builds) {
        for (TwoCeilings.Edge edge : hard) {
            if (!builds.any(edge.k(), edge.most())) {
                ruling = edge;
                return false;
            }
        }
        return hard.stream().allMatch(edge -> mayBeKept(edge.of(), builds));
    }

    private boolean allPairsMayBeKept(TwoCeilings.Builds builds) {
        Kind[] kinds = Kind.values();
        for (int i = 0; i < kinds.length; i++) {
            for (int j = i + 1; j < kinds.length; j++) {
                if (!mayBeKept(new TwoCeilings.Pair(kinds[i], kinds[j]), builds)) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean mayBeKept(TwoCeilings.Pair pair, TwoCeilings.Builds builds) {
        Kind one = pair.one();
        Kind other = pair.other();
        if (!Prices.bounded(task.bounds, one) || !Prices.bounded(task.bounds, other) || !looked.add(pair)) {
            return true;
        }
        TwoCeilings.Edge edge =
                new TwoCeilings(task.bounds, one, other).edge(builds, least(one, builds), least(other, builds));
        if (edge != null && edge.rulesOut()) {
            ruling = edge;
            return false;
        }
        if (edge != null) {
            edges.add(edge);
        }
        return true;
    }

    /** The build that has least of a sum, or null; asked once. */
    private @Nullable ObjectiveVector least(Kind kind, TwoCeilings.Builds builds) {
        return leasts.computeIfAbsent(kind, one -> Optional.ofNullable(builds.least(one)))
                .orElse(null);
    }

    /** Prices under which a build costs its moment ahead of the zone's far edge. */
    private Linear ahead() {
        Balance reel = Balance.of(task.brief, 0, 0);
        return new Linear(-reel.farMm(), 1, 0, 0, 0, 0, reel.aheadMgMm());
    }

    /** The same of its moment behind the zone's near edge. */
    private Linear behind() {
        Balance reel = Balance.of(task.brief, 0, 0);
        return new Linear(reel.nearMm(), -1, 0, 0, 0, 0, reel.behindMgMm());
    }
}
