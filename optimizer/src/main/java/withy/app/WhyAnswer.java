package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.Reasons.AskedLine;
import withy.app.Reasons.BuildLine;
import withy.app.Reasons.ImpossibleLines;

/**
 * What {@code whynot} answers without a part: how firm the offer is; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was made from
 * @param brief the brief with nothing left open
 * @param builds the proposals, best first, each with its share of all weightings
 * @param swap the nearest change of one priority that swaps two ranks; null where none does
 * @param binding wishes without which a better build could be had
 * @param impossible why nothing at all can be built; null where something can
 * @param interrupted true where the search was stopped before its end
 */
public record WhyAnswer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        List<ShareLine> builds,
        @Nullable SwapLine swap,
        List<BindingLine> binding,
        @Nullable ImpossibleLines impossible,
        boolean interrupted) {
    public WhyAnswer {
        builds = List.copyOf(builds);
        binding = List.copyOf(binding);
    }

    /**
     * One proposal.
     *
     * @param rank 1 is the best for the brief
     * @param share of all ways to weigh the six objectives, how many put it first among the proposals, 0 to 1
     * @param build the build
     */
    public record ShareLine(int rank, double share, BuildLine build) {}

    /**
     * Two ranks that change places.
     *
     * @param rank the higher of the two
     * @param objective whose priority changes
     * @param now what it is
     * @param keeps nearest value with which they keep their places
     * @param swaps value with which they do not
     * @param sentence the same in words
     */
    public record SwapLine(int rank, String objective, double now, double keeps, double swaps, String sentence) {}

    /**
     * A wish that costs something.
     *
     * @param wish what is asked
     * @param build the best build without it, measured for the brief
     * @param tradeOffs that build against the best with it
     * @param sentence the same in words
     */
    public record BindingLine(AskedLine wish, BuildLine build, List<TradeOffLine> tradeOffs, String sentence) {
        public BindingLine {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }
}
