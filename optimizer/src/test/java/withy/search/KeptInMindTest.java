package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rules.Rulebook;

/** What is worked out is kept for the next question as far as there is memory: of few parts much, of very many little. */
class KeptInMindTest {
    private static final long GIB = 1L << 30;
    private static final Linear FIRST = new Linear(1, 0, 0, 1, 1, 1, 0);

    @Test
    void priceListsAreKeptByTheirSize() throws IOException {
        Catalog catalog = SampleCatalogs.bench();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief("kayak-estuary", catalog), Rulebook.standard()));
        Site site = task.sites().get(0);
        Shelf shelf = site.shelf(HandleForm.SPLIT);
        PriceLists plenty = new PriceLists(shelf, 2 * GIB);
        PriceLists scarce = new PriceLists(shelf, 1);
        PriceList kept = plenty.under(FIRST);
        PriceList let = scarce.under(FIRST);
        for (int perMg = 2; perMg <= 20; perMg++) {
            plenty.under(FIRST); // asked for again and again it stays
            Linear k = new Linear(perMg, 0, 0, 1, 1, 1, 0);
            for (PriceLists lists : List.of(plenty, scarce)) {
                PriceList list = lists.under(k);
                list.on(site.shape());
                assertSame(list, lists.under(k.plus(new Linear(0, 0, 0, 0, 0, 0, perMg))), "whatever every build adds");
            }
        }

        assertEquals(12, plenty.size());
        assertEquals(1, scarce.size(), "what is being worked with is kept all the same");
        assertSame(kept, plenty.under(FIRST));
        assertNotSame(let, scarce.under(FIRST));
    }

    @Test
    void standsAreHeldByHowManyPartsThereAre() {
        assertEquals(71, held(20_000, 2 * GIB));
        assertEquals(954, held(1_500, 2 * GIB));
        assertEquals(35, held(20_000, GIB));
        assertEquals(1_000, held(375, GIB));
    }

    private static int held(int parts, long memory) {
        LastStands last = new LastStands(parts, memory);
        for (int i = 0; i < 1_000; i++) {
            last.hold(new ArrayList<>());
        }
        return last.size();
    }
}
