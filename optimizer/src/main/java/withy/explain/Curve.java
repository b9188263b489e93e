package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.explain.TradeOffs.TradeOff;

/** The best rod at each total weight, from the best for the brief down to the lightest there is: what each further gram costs. */
public final class Curve {
    /** Points at most between the two ends. */
    static final int MOST_POINTS = 12;

    private Curve() {}

    /**
     * One point.
     *
     * @param mostG the weight that was allowed, g
     * @param found the best rod within it
     * @param tradeOffs against the point before it; empty of the first
     * @param sentence what the step from the point before costs; empty of the first
     */
    public record Point(double mostG, Found found, List<TradeOff> tradeOffs, String sentence) {
        public Point {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }

    /**
     * Heaviest first. Steps are the least difference in weight worth noticing, or wider where there would be too many.
     *
     * @param first the best for the brief
     * @param lightest the lightest legal rod
     * @param told each point as it is found
     */
    public static List<Point> of(Inquiry inquiry, Found first, Found lightest, Consumer<Point> told) {
        List<Point> points = new ArrayList<>();
        long from = first.vector().weightMg();
        long to = lightest.vector().weightMg();
        long noticed = Math.round(inquiry.brief().step(Objective.WEIGHT) * 1000);
        long step = Math.max(noticed, (from - to + MOST_POINTS - 1) / MOST_POINTS);
        add(points, point(inquiry, null, from, first), told);
        Found before = first;
        for (long most = from - step; most > to && !inquiry.stopped(); most -= step) {
            if (before.vector().weightMg() > most) {
                Found found = inquiry.best(inquiry.query().under(Map.of(Objective.WEIGHT, most)));
                if (found != null) {
                    add(points, point(inquiry, before, most, found), told);
                    before = found;
                }
            }
        }
        if (before.vector().weightMg() > to && !inquiry.stopped()) {
            Found last = inquiry.best(inquiry.query().under(Map.of(Objective.WEIGHT, to)));
            add(points, point(inquiry, before, to, last == null ? lightest : last), told);
        }
        return points;
    }

    private static void add(List<Point> points, Point point, Consumer<Point> told) {
        points.add(point);
        told.accept(point);
    }

    private static Point point(Inquiry inquiry, @Nullable Found before, long mostMg, Found found) {
        if (before == null) {
            return new Point(mostMg / 1000.0, found, List.of(), "");
        }
        List<TradeOff> tradeOffs = TradeOffs.between(found.side(0), before.side(1), inquiry.units());
        if (Ledger.byAHair(tradeOffs)) {
            String sentence = Ledger.lighter(inquiry, before, found, tradeOffs);
            return new Point(mostMg / 1000.0, found, tradeOffs, sentence);
        }
        String saved = inquiry.units()
                .massBetween(
                        before.rod().figures().weightG(), found.rod().figures().weightG());
        List<TradeOff> others = tradeOffs.stream()
                .filter(t -> t.objective() != Objective.WEIGHT)
                .toList();
        String sentence = next(saved, Ledger.noticed(inquiry, before, found, others));
        return new Point(mostMg / 1000.0, found, tradeOffs, sentence);
    }

    /** What the next few grams cost. */
    static String next(String saved, String costs) {
        if (costs.equals(Phrases.of("ledger.alike"))) {
            return Phrases.of("curve.free.felt", saved);
        }
        return costs.equals(Phrases.of("whynot.same"))
                ? Phrases.of("curve.free", saved)
                : Phrases.of("curve.next", saved, costs);
    }
}
