package withy.explain;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.explain.TradeOffs.TradeOff;

/**
 * Why a part, or parts together, are not in the best build: exactly one outcome.
 *
 * @param parts what was asked about
 * @param outcome which of the answers
 * @param sentence told as on the phone
 * @param first the best build for the brief, or null where nothing can be built
 * @param opponent the best legal build with the parts in; where there is none, one that breaks no more rules than it must: the best build with the
 *     parts put in where that is one, else one as near to it as was found, or any where brief and parts alone decide all that is broken
 * @param breach the rule that is broken, where one is
 * @param alsoBroken further rules that would have to give way at once
 * @param forcedBy the fewest wishes for which that rule is broken whatever else is wished; empty where it is broken without any
 * @param tradeOffs the opponent against the best build, all six objectives; empty where there is no such pair
 * @param missed nice wishes the opponent misses and the best build meets
 * @param met nice wishes the opponent meets and the best build misses
 * @param better where dominated: a build at least as good in everything and better in something
 * @param flips what would have to change for the parts to win
 * @param grounds what it rests on
 */
public record Finding(
        Set<String> parts,
        Outcome outcome,
        String sentence,
        @Nullable Found first,
        @Nullable Found opponent,
        @Nullable Breach breach,
        List<Breach> alsoBroken,
        List<Conflict.Asked> forcedBy,
        List<TradeOff> tradeOffs,
        List<Missed> missed,
        List<Missed> met,
        @Nullable Found better,
        List<Flip> flips,
        List<Evidence> grounds) {

    public Finding {
        parts = Set.copyOf(parts);
        alsoBroken = List.copyOf(alsoBroken);
        forcedBy = List.copyOf(forcedBy);
        tradeOffs = List.copyOf(tradeOffs);
        missed = List.copyOf(missed);
        met = List.copyOf(met);
        flips = List.copyOf(flips);
        grounds = List.copyOf(grounds);
    }

    /** The answers there are. */
    public enum Outcome {
        /** It is in the best build. */
        CHOSEN("chosen"),
        /** A rule is broken whatever is built with it. */
        BREAKS_RULE("breaksRule"),
        /** It is not at hand in time. */
        NOT_IN_STOCK("notInStock"),
        /** A legal build with it exists and nobody would notice the difference. */
        EQUAL("equal"),
        /** Legal and noticeably better, but the shop leaves it out unless it is asked for. */
        UNUSUAL("unusual"),
        /** Another build is at least as good in everything and better in something. */
        DOMINATED("dominated"),
        /** Legal, but it costs more of what counts than it gains. */
        LOSES("loses");

        private final String key;

        Outcome(String key) {
            this.key = key;
        }

        /** Name in answers. */
        public String key() {
            return key;
        }
    }

    Finding with(List<Flip> found) {
        return new Finding(
                parts,
                outcome,
                sentence,
                first,
                opponent,
                breach,
                alsoBroken,
                forcedBy,
                tradeOffs,
                missed,
                met,
                better,
                found,
                grounds);
    }
}
