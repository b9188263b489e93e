package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefOverrides;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;

/** An arbor that another beats is left out, but not where the customer insists on it: a wish and a question that names the part agree. */
class ArborChoiceTest {

    @ParameterizedTest
    @ValueSource(strings = {"beach-surf", "quay-squid-nice-wishes"})
    void anArborThatMustBeInIsLookedAt(String scenario) throws Exception {
        Catalog catalog = SampleCatalogs.bench();
        BriefContext context = new BriefContext(catalog.rates(), catalog.asOf());
        Brief brief = Scenarios.brief(scenario, catalog);
        int possible = 0;
        for (Part arbor : catalog.all(PartKind.ARBOR)) {
            BriefOverrides with =
                    new BriefOverrides(Map.of(), null, new TreeSet<>(Set.of(arbor.id())), new TreeSet<>());
            Query wished = Query.of(with.apply(brief, context), Rulebook.standard());
            Query named = Query.of(brief, Rulebook.standard()).forcing(Set.of(arbor.id()));
            Solution one = new Search(catalog).solve(wished, Watch.NONE);
            assertEquals(new Search(catalog).solve(named, Watch.NONE).score(), one.score(), arbor.id());
            possible += one.build() == null ? 0 : 1;
        }
        assertTrue(possible > 1, possible + " arbors go");
    }
}
