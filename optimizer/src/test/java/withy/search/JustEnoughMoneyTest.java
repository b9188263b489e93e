package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief.Handle;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;

/** Where money hardly suffices and any build will do, the cheapest of the first layout that has one is it: none is walked past all its dearer ones. */
class JustEnoughMoneyTest {
    private static final String BLANK = "ferrowick-estuary-236-2-nop21";
    private static final String CHECK = "dunholme-reach-check-nickel-nop259-9p5";
    private static final double SHORTEST_MM = 150;
    private static final double LONGEST_MM = 450;

    /** A check that goes on only beyond the reach, where the money is nearly spent. */
    @Test
    void theCheapestIsFoundAtOnce() throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        BriefDraft draft = new BriefDraft(Scenarios.brief("pier-mackerel-garfish", catalog));
        draft.reach(SHORTEST_MM, LONGEST_MM).handle(any -> new Handle(null, null, null, null, null, null, true));
        Query query = Query.of(draft.brief(), Rulebook.standard().anyHand()).forcing(Set.of(BLANK, CHECK));
        Solution solution = new Search(catalog).any(query, Watch.NONE);
        assertNotNull(solution.build());
        assertEquals(1, solution.layoutsOpened());
    }
}
