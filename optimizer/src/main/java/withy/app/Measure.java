package withy.app;

import java.util.ArrayList;
import java.util.List;
import withy.app.Offers.Weighed;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.rod.Build;
import withy.rules.Rulebook;
import withy.search.Proposal;
import withy.units.QuantityText;

/** The builder's own pick of parts, measured and judged by the same rules, beside the best proposal. */
public final class Measure {
    private Measure() {}

    /** Answers for one build. */
    public static MeasureAnswer run(
            Catalog catalog, Brief brief, Build build, Chooser chooser, QuantityText units, Progress progress) {
        Query query = Query.of(brief, Rulebook.standard());
        Offers offers = new Offers(catalog, brief, query.rulebook(), units);
        Weighed own = offers.own(build);
        List<Weighed> both = new ArrayList<>(List.of(own));
        Solution best = chooser.solve(query, Propose.watch(catalog, brief, progress));
        if (best.build() != null && best.objectives() != null) {
            long gap = best.score() - best.bound();
            both.add(offers.proposed(new Proposal(
                    1, best.build(), best.objectives(), best.score(), best.bound(), gap, best.proven(), null)));
        }
        List<BuildSheet> sheets = offers.compared(both);
        return new MeasureAnswer(
                Answer.SCHEMA,
                catalog.hash(),
                BriefWriter.write(brief),
                brief.defaultsUsed(),
                Verdicts.legal(own.sheet().verdicts()),
                sheets.get(0),
                sheets.size() > 1 ? sheets.get(1) : null,
                Cautions.of(List.of(own.side().rod())),
                progress.stopped());
    }
}
