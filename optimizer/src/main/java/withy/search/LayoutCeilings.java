package withy.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.rod.Balance;
import withy.search.Prices.Kind;

/** Whether the ceilings of a question can be kept in a layout, and what a walk past its builds must look at to keep them; found once. */
final class LayoutCeilings {
    private final Task task;
    private final List<TwoCeilings.Edge> edges = new ArrayList<>();
    private final Map<Kind, Optional<ObjectiveVector>> leasts = new EnumMap<>(Kind.class);
    private List<TwoCeilings.Edge> hard = List.of();
    private TwoCeilings.@Nullable Edge ruling;
    private @Nullable Boolean kept;

    LayoutCeilings(Task task) {
        this.task = task;
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
     * False where some sum cannot be brought under its ceiling here whatever is chosen, or two cannot both.
     *
     * @param met a build here that breaks some
     * @param builds those of the layout
     */
    boolean mayBeKept(Task.Measured met, TwoCeilings.Builds builds) {
        Boolean known = kept;
        if (known == null) {
            known = mayBeKeptNow(met, builds);
            kept = known;
        }
        return known;
    }

    private boolean mayBeKeptNow(Task.Measured met, TwoCeilings.Builds builds) {
        ObjectiveVector v = met.vector();
        for (Kind kind : Kind.values()) {
            if (Prices.exceeds(v, task.bounds, kind)
                    && !builds.any(Prices.only(kind), Prices.ceiling(task.bounds, kind))) {
                return false;
            }
        }
        long ceiling = task.bounds.outsideMgMm();
        boolean balanced = (met.aheadMgMm() <= ceiling || builds.any(ahead(), ceiling))
                && (met.behindMgMm() <= ceiling || builds.any(behind(), ceiling));
        return balanced && pairsMayBeKept(builds);
    }

    /** False where two sums can't both be brought under their ceilings here. */
    private boolean pairsMayBeKept(TwoCeilings.Builds builds) {
        for (TwoCeilings.Edge edge : hard) {
            if (!builds.any(edge.k(), edge.most())) {
                ruling = edge;
                return false;
            }
        }
        Kind[] kinds = Kind.values();
        for (int i = 0; i < kinds.length; i++) {
            for (int j = i + 1; j < kinds.length; j++) {
                if (Prices.bounded(task.bounds, kinds[i]) && Prices.bounded(task.bounds, kinds[j])) {
                    TwoCeilings.Edge edge = new TwoCeilings(task.bounds, kinds[i], kinds[j])
                            .edge(builds, least(kinds[i], builds), least(kinds[j], builds));
                    if (edge != null && edge.rulesOut()) {
                        ruling = edge;
                        return false;
                    }
                    if (edge != null) {
                        edges.add(edge);
                    }
                }
            }
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
