package withy.explain;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.explain.Curve.Point;
import withy.explain.TradeOffs.TradeOff;

/**
 * Whether the best rod could be lighter.
 *
 * @param first the best rod for the brief
 * @param lightest the lightest legal rod there is; of equally light ones the best
 * @param tradeOffs the lightest against the best, all six objectives
 * @param sentence what the lightest gives up
 * @param ledger lighter parts station by station
 * @param curve the best rod at each weight
 */
public record Lighter(
        Found first,
        Found lightest,
        List<TradeOff> tradeOffs,
        String sentence,
        List<Ledger.Line> ledger,
        List<Point> curve) {
    public Lighter {
        tradeOffs = List.copyOf(tradeOffs);
        ledger = List.copyOf(ledger);
        curve = List.copyOf(curve);
    }

    /** Of the brief; null where nothing can be built. */
    public static @Nullable Lighter of(Inquiry inquiry, Consumer<Point> told) {
        return of(inquiry, told, soFar -> {});
    }

    /**
     * The same, told on the way as far as it is known.
     *
     * @param soFar first without curve and ledger, then without the ledger
     */
    public static @Nullable Lighter of(Inquiry inquiry, Consumer<Point> told, Consumer<Lighter> soFar) {
        Found first = inquiry.first();
        Found lightest = first == null ? null : lightest(inquiry);
        if (first == null || lightest == null) {
            return null;
        }
        List<TradeOff> tradeOffs = TradeOffs.between(lightest.side(0), first.side(1), inquiry.units());
        boolean same = lightest.vector().weightMg() == first.vector().weightMg();
        String sentence = same
                ? Phrases.of(
                        "lighter.same",
                        inquiry.units().mass(first.rod().figures().weightG()))
                : Phrases.of(
                        "lighter.lightest",
                        inquiry.units().mass(lightest.rod().figures().weightG()),
                        Ledger.lighter(inquiry, first, lightest, tradeOffs));
        soFar.accept(new Lighter(first, lightest, tradeOffs, sentence, List.of(), List.of()));
        List<Point> curve = Curve.of(inquiry, first, lightest, told);
        soFar.accept(new Lighter(first, lightest, tradeOffs, sentence, List.of(), curve));
        List<Ledger.Line> ledger = Ledger.of(inquiry, first);
        return new Lighter(first, lightest, tradeOffs, sentence, ledger, curve);
    }

    /** What weighs least is asked first, then what is best of that weight. */
    private static @Nullable Found lightest(Inquiry inquiry) {
        Found found = inquiry.best(inquiry.query().withPriorities(Inquiry.only(Objective.WEIGHT)));
        if (found == null || inquiry.stopped()) {
            return found;
        }
        long weight = found.vector().weightMg();
        Found best = inquiry.best(inquiry.query().under(Map.of(Objective.WEIGHT, weight)));
        return best == null ? found : best;
    }
}
