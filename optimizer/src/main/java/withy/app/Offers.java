package withy.app;

import java.util.ArrayList;
import java.util.List;
import withy.app.BuildSheet.ProofLine;
import withy.app.BuildSheet.Summary;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.BuildSheet.VerdictLine;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.explain.TradeOffs;
import withy.explain.TradeOffs.Side;
import withy.explain.TradeOffs.TradeOff;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Rulebook;
import withy.search.Proposal;
import withy.units.QuantityText;

/** Measures and judges builds for one brief anew, whoever found them, and compares them. */
final class Offers {
    private final Catalog catalog;
    private final Brief brief;
    private final Rulebook rules;
    private final QuantityText units;
    private final Style style;
    private final NiceWishes wishes;
    private final Scoring scoring;

    Offers(Catalog catalog, Brief brief, Rulebook rules, QuantityText units) {
        this.catalog = catalog;
        this.brief = brief;
        this.rules = rules;
        this.units = units;
        this.style = new Style(catalog, brief);
        this.wishes = new NiceWishes(brief);
        this.scoring = Scoring.of(brief, catalog.rates());
    }

    /**
     * A build with all that was found out about it.
     *
     * @param side measured
     * @param sheet written down
     */
    record Weighed(Side side, BuildSheet sheet) {}

    /** A build the search proposes; one that is not what the search says, or that breaks a rule, is our fault and never shown. */
    Weighed proposed(Proposal proposal) {
        Rod rod = Rod.measure(catalog, brief, proposal.build());
        ObjectiveVector objectives = ObjectiveVector.of(rod, style, wishes);
        List<VerdictLine> verdicts = Verdicts.of(rod, rules);
        if (!Verdicts.legal(verdicts)) {
            throw new OurFault("build " + proposal.rank() + " breaks a rule: " + firstFault(verdicts));
        }
        if (!objectives.equals(proposal.objectives())) {
            throw new OurFault("build " + proposal.rank() + " measures " + objectives + ", the search said "
                    + proposal.objectives());
        }
        ProofLine proof = new ProofLine(
                Sheets.rounded(Scoring.steps(proposal.bound()), 6),
                Sheets.rounded(Scoring.steps(proposal.gap()), 6),
                proposal.proven());
        long score = scoring.score(objectives);
        BuildSheet sheet = Sheets.of(proposal.rank(), rod, objectives, score, verdicts, proof, units);
        return new Weighed(new Side(proposal.rank(), rod, objectives), sheet);
    }

    /** A build of the builder's own, legal or not. */
    Weighed own(Build build) {
        return own(0, build);
    }

    /** A build told by its rank, legal or not, its proof unknown. */
    Weighed own(int rank, Build build) {
        Rod rod = Rod.measure(catalog, brief, build);
        ObjectiveVector objectives = ObjectiveVector.of(rod, style, wishes);
        List<VerdictLine> verdicts = Verdicts.of(rod, rules);
        BuildSheet sheet = Sheets.of(rank, rod, objectives, scoring.score(objectives), verdicts, null, units);
        return new Weighed(new Side(rank, rod, objectives), sheet);
    }

    /** Throws where a build breaks a rule; else its rod. */
    Rod legal(Build build, String what) {
        Rod rod = Rod.measure(catalog, brief, build);
        List<VerdictLine> verdicts = Verdicts.of(rod, rules);
        if (!Verdicts.legal(verdicts)) {
            throw new OurFault(what + " breaks a rule: " + firstFault(verdicts));
        }
        return rod;
    }

    /** Every build compared with every other and called by a name of its own. */
    List<BuildSheet> compared(List<Weighed> all) {
        List<BuildSheet> sheets = new ArrayList<>();
        List<String> names = BuildNames.of(all.stream().map(Weighed::side).toList());
        for (Weighed mine : all) {
            List<TradeOffLine> lines = new ArrayList<>();
            List<Summary> summaries = new ArrayList<>();
            for (Weighed other : all) {
                if (other != mine) {
                    List<TradeOff> tradeOffs = TradeOffs.between(mine.side(), other.side(), units);
                    tradeOffs.forEach(t -> lines.add(Reasons.tradeOff(t)));
                    summaries.add(new Summary(other.side().rank(), TradeOffs.gist(tradeOffs)));
                }
            }
            sheets.add(mine.sheet().compared(names.get(sheets.size()), lines, summaries));
        }
        return sheets;
    }

    private static String firstFault(List<VerdictLine> verdicts) {
        return verdicts.stream()
                .filter(v -> v.outcome().equals(Verdicts.FAIL) || v.outcome().equals(Verdicts.UNKNOWN))
                .map(v -> v.rule() + " " + v.check() + ", measured " + v.measured() + ", limit " + v.limit())
                .findFirst()
                .orElse("");
    }
}
