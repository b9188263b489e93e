package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.BuildSheet.VerdictLine;
import withy.app.Reasons.BuildLine;
import withy.app.Reasons.ImpossibleLines;

/**
 * What {@code lighter} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was made from
 * @param brief the brief with nothing left open
 * @param first the best build for the brief; null where nothing can be built
 * @param lightest the lightest legal build; null likewise
 * @param sentence what the lightest gives up; empty likewise
 * @param tradeOffs the lightest against the best, all six objectives
 * @param curve the best build at each weight, heaviest first
 * @param ledger lighter parts from butt to tip, with why they were not taken
 * @param impossible why nothing at all can be built; null where something can
 * @param interrupted true where the search was stopped before its end
 */
public record LighterAnswer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        @Nullable BuildLine first,
        @Nullable BuildLine lightest,
        String sentence,
        List<TradeOffLine> tradeOffs,
        List<PointLine> curve,
        List<PartLine> ledger,
        @Nullable ImpossibleLines impossible,
        boolean interrupted) {
    public LighterAnswer {
        tradeOffs = List.copyOf(tradeOffs);
        curve = List.copyOf(curve);
        ledger = List.copyOf(ledger);
    }

    /**
     * One point of the curve.
     *
     * @param mostG weight that was allowed, g
     * @param build the best build within it
     * @param tradeOffs against the point before; empty of the first
     * @param sentence what the step from the point before costs; empty of the first
     */
    public record PointLine(double mostG, BuildLine build, List<TradeOffLine> tradeOffs, String sentence) {
        public PointLine {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }

    /**
     * One lighter part.
     *
     * @param station where
     * @param now id of the part that is there
     * @param part id of the lighter part
     * @param name its maker and model
     * @param partSavesG what the part weighs less, g
     * @param rodSavesG what the rod weighs less with it, g; null where the brief alone refuses the part
     * @param breaks the rule it breaks; null where it is legal
     * @param build the rod with it; null where the brief alone refuses it
     * @param tradeOffs that rod against the best, all six objectives; empty where it is not legal
     * @param sentence why it was not taken
     */
    public record PartLine(
            String station,
            String now,
            String part,
            String name,
            double partSavesG,
            @Nullable Double rodSavesG,
            @Nullable VerdictLine breaks,
            @Nullable BuildFile build,
            List<TradeOffLine> tradeOffs,
            String sentence) {
        public PartLine {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }
}
