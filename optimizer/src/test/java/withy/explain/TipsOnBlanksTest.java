package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rules.Rulebook;

/** Which tip-top goes onto which blank, against the handbook's rule 12 stated anew: 0 &lt; tube − tip ≤ 0.40 mm, in hundredths. */
class TipsOnBlanksTest {
    private final Catalog catalog = SampleCatalogs.bench();
    private final TipsOnBlanks tips = new TipsOnBlanks(catalog);

    private Query with(Rulebook rules, String id) throws IOException {
        return Query.of(Scenarios.brief("kayak-estuary", catalog), rules).forcing(Set.of(id));
    }

    @Test
    void everyTipOnEveryBlank() throws IOException {
        int on = 0;
        int off = 0;
        for (TipTop tip : catalog.all(PartKind.TIP_TOP, TipTop.class)) {
            Query query = with(Rulebook.standard(), tip.id());
            List<TipTop> forced = tips.forced(query);
            assertEquals(List.of(tip), forced);
            for (Blank blank : catalog.all(PartKind.BLANK, Blank.class)) {
                long play = Math.round((tip.tubeMm() - blank.tipOdMm()) * 100);
                boolean goes = play > 0 && play <= 40;
                assertEquals(goes, tips.go(query, forced, blank), tip.id() + " on " + blank.id() + ": " + play);
                on += goes ? 1 : 0;
                off += goes ? 0 : 1;
            }
        }
        assertTrue(on > 50 && off > 50, on + " go on, " + off + " do not");
    }

    /** Where their rule is left out any goes anywhere, and another kind of part is none of them. */
    @Test
    void noneToAskAbout() throws IOException {
        String tip = catalog.all(PartKind.TIP_TOP, TipTop.class).get(0).id();
        String blank = catalog.all(PartKind.BLANK, Blank.class).get(0).id();
        assertEquals(List.of(), tips.forced(with(Rulebook.standard().without("tip-top"), tip)));
        assertEquals(List.of(), tips.forced(with(Rulebook.standard(), blank)));
    }
}
