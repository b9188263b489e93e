package withy.search.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;

/** Tries every build of a problem, one after the other. */
final class Enumeration {
    private final Problem problem;
    private long tried;
    private long best = Long.MAX_VALUE;

    private Enumeration(Problem problem) {
        this.problem = problem;
    }

    /** Least score of a legal build; {@link Long#MAX_VALUE} where there is none. */
    static Enumeration of(Problem problem) {
        Enumeration all = new Enumeration(problem);
        for (Layout layout : problem.layouts()) {
            all.fill(layout, 0, new TreeMap<>());
        }
        return all;
    }

    long best() {
        return best;
    }

    long tried() {
        return tried;
    }

    private void fill(Layout layout, int at, SortedMap<Station, Choice> chosen) {
        if (at == problem.slots().size()) {
            measure(new Build(layout, chosen));
            return;
        }
        Slot slot = problem.slots().get(at);
        for (Choice choice : options(layout, slot)) {
            if (choice != null) {
                chosen.put(slot.station(), choice);
            }
            fill(layout, at + 1, chosen);
            chosen.remove(slot.station());
        }
    }

    /** A station that is given has its one choice; every other may be empty too. Guides beyond the count have no place. */
    private static List<@Nullable Choice> options(Layout layout, Slot slot) {
        List<@Nullable Choice> options = new ArrayList<>();
        if (slot.station().number() <= layout.guideCount()) {
            options.addAll(slot.choices());
        }
        if (!slot.given() || options.isEmpty()) {
            options.add(null);
        }
        return options;
    }

    private void measure(Build build) {
        tried++;
        Rod rod = Rod.measure(problem.catalog(), problem.brief(), build);
        if (Judge.legal(rod, problem.rules())) {
            ObjectiveVector vector = ObjectiveVector.of(rod, problem.style(), problem.wishes());
            best = Math.min(best, problem.scoring().score(vector));
        }
    }
}
