package withy.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.BuildSheet.VerdictLine;
import withy.app.Reasons.BuildLine;

/**
 * What {@code whynot --station} answers: every part of one station's drawer; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was made from
 * @param brief the brief with nothing left open
 * @param station where
 * @param build the build it is the station of
 * @param parts legal ones first, best first; then the refused ones by rule
 * @param interrupted true where the work was stopped before its end
 */
public record DrawerAnswer(
        int schema,
        String catalogHash,
        ObjectNode brief,
        String station,
        BuildLine build,
        List<DrawerLine> parts,
        boolean interrupted) {
    public DrawerAnswer {
        parts = List.copyOf(parts);
    }

    /**
     * One part.
     *
     * @param part id, or empty where the station would be left empty
     * @param name maker and model, or a word for leaving it empty
     * @param here true for what is there now
     * @param breaks the rule it breaks; null where it is legal
     * @param build the build with it; null where the brief alone refuses it
     * @param tradeOffs that build against this one; empty where it is not legal, or what is there now
     * @param sentence what it would do, or the failing rule
     */
    public record DrawerLine(
            String part,
            String name,
            boolean here,
            @Nullable VerdictLine breaks,
            @Nullable BuildFile build,
            List<TradeOffLine> tradeOffs,
            String sentence) {
        public DrawerLine {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }
}
