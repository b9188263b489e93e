package withy.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
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
 * @param lines offered builds first, then the others a few at a time as they were found, these by weight
 * @param asked how many priorities were tried
 * @param interrupted true where it was stopped before its end
 */
public record Around(List<Line> lines, int asked, boolean interrupted) {
    /** How much a favoured objective counts beside the sum of the brief's own priorities. */
    private static final double FAVOUR = 2;

    /** Pairs of objectives after which what was found is told. */
    private static final int FEW = 5;

    private static final Comparator<Offers.Weighed> BY_RANK_AND_WEIGHT = Comparator.comparingInt((Offers.Weighed one) ->
                    one.side().rank() == 0 ? Integer.MAX_VALUE : one.side().rank())
            .thenComparingDouble(one -> one.sheet().figures().weightG())
            .thenComparingLong(one -> one.sheet().figures().priceMinor());

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
     * @param soFar told of those builds alone before others are looked for, then a few at a time; no line comes to stand above one that was told
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
        soFar.accept(new Around(lines(List.of(all)), 0, false));
        return new Ways(offers, chooser, query, progress, all, soFar).all(ways(brief));
    }

    /** The ways in their order, as many at once as there are processors but one, which is left to whatever else is asked. What is found is told a few ways at a time, each time below what was told. */
    private static final class Ways {
        private final Offers offers;
        private final Chooser chooser;
        private final Query query;
        private final Progress progress;
        private final Consumer<Around> soFar;
        private final List<Map<ObjectiveVector, Offers.Weighed>> told = new ArrayList<>();
        private final Map<Integer, Solution> solved = new HashMap<>();
        private final AtomicInteger next = new AtomicInteger();
        private int settled;

        Ways(
                Offers offers,
                Chooser chooser,
                Query query,
                Progress progress,
                Map<ObjectiveVector, Offers.Weighed> offered,
                Consumer<Around> soFar) {
            this.offers = offers;
            this.chooser = chooser;
            this.query = query;
            this.progress = progress;
            this.soFar = soFar;
            told.add(offered);
            told.add(new LinkedHashMap<>());
        }

        Around all(List<Map<Objective, Double>> ways) {
            int hands = Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
            IntStream.range(0, Math.min(hands, ways.size())).parallel().forEach(any -> some(ways));
            for (int way = settled; way < ways.size(); way++) {
                // where it was stopped some ways before these were not looked at
                take(solved.get(way));
            }
            return new Around(lines(told), ways.size(), progress.stopped());
        }

        private void some(List<Map<Objective, Double>> ways) {
            Watch watch = new Watch(progress::stopped, (build, objectives, score) -> {});
            for (int way = next.getAndIncrement(); way < ways.size(); way = next.getAndIncrement()) {
                if (!progress.stopped()) {
                    found(way, chooser.solveAlone(query.withPriorities(ways.get(way)), watch), ways.size());
                }
            }
        }

        private void take(@Nullable Solution one) {
            Build build = one == null ? null : one.build();
            ObjectiveVector vector = one == null ? null : one.objectives();
            if (build != null && vector != null && told.stream().noneMatch(before -> before.containsKey(vector))) {
                told.get(told.size() - 1).put(vector, offers.own(build));
            }
        }

        private synchronized void found(int way, Solution solution, int ways) {
            solved.put(way, solution);
            for (Solution one = solved.get(settled); one != null; one = solved.get(settled)) {
                take(one);
                settled++;
                boolean favouredAll = settled >= Objective.values().length;
                if (favouredAll && settled < ways && (settled - Objective.values().length) % FEW == 0) {
                    soFar.accept(new Around(lines(told), settled, false));
                    told.add(new LinkedHashMap<>());
                }
            }
        }
    }

    /**
     * Those that no other is better than in everything; where a few words are the same for two of them, what is seen to differ is told besides.
     *
     * @param told what was told one after another
     */
    private static List<Line> lines(List<Map<ObjectiveVector, Offers.Weighed>> told) {
        Set<ObjectiveVector> all =
                told.stream().flatMap(some -> some.keySet().stream()).collect(Collectors.toSet());
        List<Offers.Weighed> shown = told.stream()
                .flatMap(some -> some.values().stream().sorted(BY_RANK_AND_WEIGHT))
                .filter(one -> one.side().rank() > 0 || undominated(one, all))
                .toList();
        List<String> names =
                BuildNames.of(shown.stream().map(Offers.Weighed::side).toList());
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < shown.size(); i++) {
            Offers.Weighed one = shown.get(i);
            lines.add(new Line(one.side().rank(), names.get(i), one.sheet().figures()));
        }
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
