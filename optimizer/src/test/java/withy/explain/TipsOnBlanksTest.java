package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;
import withy.search.Candidates;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

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
                boolean goes = goes(tip, blank);
                assertEquals(goes, tips.go(query, forced, blank), tip.id() + " on " + blank.id());
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

    /** A tip-top that goes onto blanks for other rods alone is told to be impossible, but with one of these, asked for by name. */
    @Test
    void blanksForOtherRodsDoNotCount() throws IOException {
        Catalog wide = SampleCatalogs.wide();
        TipsOnBlanks onWide = new TipsOnBlanks(wide);
        Inquiry inquiry = new Inquiry(
                wide,
                Scenarios.brief("kayak-estuary", wide),
                Search::new,
                Watch.NONE,
                new QuantityText(UnitSystem.METRIC));
        Query any = Demands.without(inquiry, inquiry.query(), Demands.of(inquiry))
                .iterator()
                .next();
        Search search = new Search(wide);
        int impossible = 0;
        int possible = 0;
        int byName = 0;
        for (TipTop tip : wide.all(PartKind.TIP_TOP, TipTop.class)) {
            Query query = any.forcing(Set.of(tip.id()));
            Candidates open = search.candidates(query);
            boolean goes = open.of(PartKind.TIP_TOP).contains(tip)
                    && open.of(PartKind.BLANK).stream().anyMatch(blank -> goes(tip, (Blank) blank));
            assertEquals(!goes, Outright.impossible(wide, onWide, query), tip.id());
            impossible += goes ? 0 : 1;
            possible += goes ? 1 : 0;
            for (Blank blank : wide.all(PartKind.BLANK, Blank.class)) {
                Query named = any.forcing(Set.of(tip.id(), blank.id()));
                if (!open.of(PartKind.BLANK).contains(blank)
                        && goes(tip, blank)
                        && search.candidates(named).of(PartKind.TIP_TOP).contains(tip)
                        && search.candidates(named).of(PartKind.BLANK).contains(blank)) {
                    assertFalse(Outright.impossible(wide, onWide, named), tip.id() + " on " + blank.id());
                    byName++;
                }
            }
        }
        assertTrue(impossible > 0 && possible > 0, impossible + " impossible, " + possible + " possible");
        assertTrue(byName > 0, "a blank for other rods by name: " + byName);
    }

    private static boolean goes(TipTop tip, Blank blank) {
        long play = Math.round((tip.tubeMm() - blank.tipOdMm()) * 100);
        return play > 0 && play <= 40;
    }
}
