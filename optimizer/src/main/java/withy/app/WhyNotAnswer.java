package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.BuildSheet.VerdictLine;
import withy.app.Reasons.AskedLine;
import withy.app.Reasons.BuildLine;
import withy.app.Reasons.FlipLine;
import withy.app.Reasons.GroundLine;
import withy.app.Reasons.ImpossibleLines;

/**
 * What {@code whynot} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was made from
 * @param brief the brief with nothing left open
 * @param parts ids that were asked about
 * @param outcome chosen, breaksRule, notInStock, equal, dominated or loses
 * @param sentence the answer in words
 * @param first the best build for the brief; null where nothing can be built
 * @param opponent the best legal build with the parts in; where a rule is broken, one that breaks no more than it must
 * @param better a build at least as good in everything; null unless dominated
 * @param breaks rules broken, the one told first; empty unless a rule is broken or stock is short
 * @param forcedBy the fewest wishes for which the rule told first is broken; empty where it is broken without any
 * @param tradeOffs the opponent against the best build, all six objectives; empty where one of them is missing
 * @param misses nice wishes that only the best build meets
 * @param meets nice wishes that only the opponent meets
 * @param flips what would have to change
 * @param grounds what the answer rests on
 * @param impossible why nothing at all can be built; null where something can
 * @param interrupted true where the search was stopped before its end
 */
public record WhyNotAnswer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        List<String> parts,
        String outcome,
        String sentence,
        @Nullable BuildLine first,
        @Nullable BuildLine opponent,
        @Nullable BuildLine better,
        List<VerdictLine> breaks,
        List<AskedLine> forcedBy,
        List<TradeOffLine> tradeOffs,
        List<AskedLine> misses,
        List<AskedLine> meets,
        List<FlipLine> flips,
        List<GroundLine> grounds,
        @Nullable ImpossibleLines impossible,
        boolean interrupted) {
    public WhyNotAnswer {
        parts = List.copyOf(parts);
        breaks = List.copyOf(breaks);
        forcedBy = List.copyOf(forcedBy);
        tradeOffs = List.copyOf(tradeOffs);
        misses = List.copyOf(misses);
        meets = List.copyOf(meets);
        flips = List.copyOf(flips);
        grounds = List.copyOf(grounds);
    }
}
