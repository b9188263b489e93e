package withy.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rules.Rulebook;
import withy.units.QuantityText;

/**
 * What else there is around an offer: the best builds under other priorities, none of them worse in everything than another. A sample, and said
 * to be one: each objective favoured, then each pair, from the brief's own priorities.
 *
 * @param lines offered builds first, then the others by weight
 * @param asked how many priorities were tried
 * @param interrupted true where it was stopped before its end
 */
public record Around(List<Line> lines, int asked, boolean interrupted) {
    /** How much a favoured objective counts beside the sum of the brief's own priorities. */
    private static final double FAVOUR = 2;

    public Around {
        lines = List.copyOf(lines);
    }

    /**
     * One build.
     *
     * @param rank its number in the offer, or 0
     * @param name a few words
     * @param figures what is drawn of it
     */
    public record Line(int rank, String name, BuildSheet.FigureLines figures) {}

    /**
     * Around the builds of an answer.
     *
     * @param soFar told of those builds alone before others are looked for, and again when each objective was favoured by itself
     */
    public static Around of(
            Catalog catalog,
            Brief brief,
            Chooser chooser,
            List<BuildSheet> offered,
            QuantityText units,
            Progress progress,
            Consumer<Around> soFar) {
        Query query = Query.of(brief, Rulebook.standard());
        Offers offers = new Offers(catalog, brief, query.rulebook(), units);
        Map<ObjectiveVector, Offers.Weighed> all = new LinkedHashMap<>();
        for (BuildSheet sheet : offered) {
            Build build = BuildReader.written(sheet, catalog);
            Offers.Weighed weighed = offers.own(sheet.rank(), build);
            all.put(weighed.side().objectives(), weighed);
        }
        Watch watch = new Watch(progress::stopped, (build, objectives, score) -> {});
        soFar.accept(new Around(lines(all), 0, false));
        List<Map<Objective, Double>> ways = ways(brief);
        for (int way = 0; way < ways.size(); way++) {
            if (way == Objective.values().length) {
                soFar.accept(new Around(lines(all), way, false));
            }
            Map<Objective, Double> priorities = ways.get(way);
            if (!progress.stopped()) {
                Solution solution = chooser.solve(query.withPriorities(priorities), watch);
                Build build = solution.build();
                ObjectiveVector found = solution.objectives();
                if (build != null && found != null) {
                    all.computeIfAbsent(found, any -> offers.own(build));
                }
            }
        }
        return new Around(lines(all), ways.size(), progress.stopped());
    }

    /** Those that no other is better than in everything; where a few words are the same for two of them, what is seen to differ is told besides. */
    private static List<Line> lines(Map<ObjectiveVector, Offers.Weighed> all) {
        List<Offers.Weighed> shown = all.values().stream()
                .filter(one -> one.side().rank() > 0 || undominated(one, all.keySet()))
                .toList();
        List<String> names =
                BuildNames.of(shown.stream().map(Offers.Weighed::side).toList());
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < shown.size(); i++) {
            Offers.Weighed one = shown.get(i);
            lines.add(new Line(one.side().rank(), names.get(i), one.sheet().figures()));
        }
        lines.sort(Comparator.comparingInt((Line line) -> line.rank() == 0 ? Integer.MAX_VALUE : line.rank())
                .thenComparingDouble(line -> line.figures().weightG())
                .thenComparingLong(line -> line.figures().priceMinor()));
        return lines;
    }

    private static boolean undominated(Offers.Weighed one, Set<ObjectiveVector> all) {
        return all.stream().noneMatch(other -> other.dominates(one.side().objectives()));
    }

    private static List<Map<Objective, Double>> ways(Brief brief) {
        double sum = brief.priorities().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        Objective[] objectives = Objective.values();
        List<Map<Objective, Double>> ways = new ArrayList<>();
        for (Objective one : objectives) {
            ways.add(favouring(brief, FAVOUR * sum, one));
        }
        for (int i = 0; i < objectives.length; i++) {
            for (int j = i + 1; j < objectives.length; j++) {
                ways.add(favouring(brief, FAVOUR * sum, objectives[i], objectives[j]));
            }
        }
        return ways;
    }

    private static Map<Objective, Double> favouring(Brief brief, double more, Objective... favoured) {
        Map<Objective, Double> way = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            way.put(objective, brief.priority(objective));
        }
        for (Objective objective : favoured) {
            way.merge(objective, more, Double::sum);
        }
        return way;
    }
}
