package withy.search.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import withy.rod.Rod;
import withy.rules.Bench;
import withy.rules.Rule;
import withy.rules.Rulebook;
import withy.rules.Unit;

/** No part stands at more than two stations: a rule that no chain of neighbours can decide. */
final class TwoStationsAtMost implements Rule {
    static final String CODE = "two-stations-at-most";

    static Rulebook added() {
        List<Rule> rules = new ArrayList<>(Rulebook.standard().rules());
        rules.add(new TwoStationsAtMost());
        return new Rulebook(rules);
    }

    @Override
    public String code() {
        return CODE;
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        TreeMap<String, Integer> stations = new TreeMap<>();
        rod.placed().values().forEach(placed -> stations.merge(placed.part().id(), 1, Integer::sum));
        stations.forEach((id, count) -> bench.atMost("stations", count, 2, Unit.COUNT, id, ""));
    }
}
