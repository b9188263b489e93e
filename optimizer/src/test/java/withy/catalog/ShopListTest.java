package withy.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.sample.SampleCatalogs;

/** A count or a price list as it is kept: what is taken of it, and each fault by the column the list has. */
class ShopListTest {
    private static final Catalog LISTS = SampleCatalogs.bench();
    private static final String PART = LISTS.all(PartKind.GRIP).get(0).id();
    private static final String OTHER = LISTS.all(PartKind.GRIP).get(1).id();

    @TempDir
    Path folder;

    private ShopList.Reading read(String text) throws IOException {
        return ShopList.read(Files.writeString(folder.resolve("list.csv"), text), LISTS);
    }

    private String fault(String text) throws IOException {
        List<Fault> faults = read(text).faults();
        assertEquals(1, faults.size(), faults.toString());
        return faults.get(0).message();
    }

    @Test
    void whatIsCountedAndWhatItCostsIsTaken() throws IOException {
        ShopList.Reading reading = read("Part,Count,Price,Note\n" + PART + ",10000,10000.00,x\n" + OTHER + ",0,0,\n");
        assertEquals(List.of(), reading.faults());
        assertEquals(
                List.of(new ShopList.Entry(2, PART, 10_000, 1_000_000L), new ShopList.Entry(3, OTHER, 0, 0L)),
                reading.entries());
        assertEquals(List.of(), read("id,count\n" + PART + ",\n").entries());
    }

    @Test
    void faultsNameTheColumnOfTheList() throws IOException {
        assertEquals(
                "list.csv line 2, Count: \"1.5\" is no count. Allowed: a whole number 0 to 10000.\n"
                        + "Maybe a letter slipped in.",
                fault("Part,Count\n" + PART + ",1.5\n"));
        assertEquals(
                "list.csv line 2, Count: \"-3\" is no count. Allowed: a whole number 0 to 10000.\n"
                        + "Maybe the minus sign is a slip.",
                fault("Part,Count\n" + PART + ",-3\n"));
        assertEquals(
                "list.csv line 2, Count: \"10001\" is no count. Allowed: a whole number 0 to 10000.\n"
                        + "Maybe a letter slipped in.",
                fault("Part,Count\n" + PART + ",10001\n"));
        assertEquals(
                "list.csv line 2, Price: \"1.005\" is finer than the smallest coin. Allowed: an amount 0 to 10000 EUR of at"
                        + " most 2 decimals, without the currency's sign.\nMaybe it is a price for several.",
                fault("Part,Price\n" + PART + ",1.005\n"));
        assertEquals(
                "list.csv line 2, Price: \"10000.01\" is no price. Allowed: an amount 0 to 10000 EUR of at most 2"
                        + " decimals, without the currency's sign.\nMaybe a letter or a sign slipped in.",
                fault("Part,Price\n" + PART + ",10000.01\n"));
        assertEquals(
                "list.csv line 3, Part: \"" + PART + "\" stands on line 2 already. Allowed: each part once.\n"
                        + "Maybe add the two counts up.",
                fault("Part,Count\n" + PART + ",1\n" + PART + ",2\n"));
        assertEquals(
                "list.csv line 2, Part: \"" + PART + "x\" is no part of the lists. Allowed: an id of the catalogue.\n"
                        + "Maybe \"" + PART + "\" was meant.",
                fault("Part,Count\n" + PART + "x,1\n"));
        assertEquals(
                "list.csv line 1, counted: \"id, much\" lacks a column. Allowed: a column id, and one of counted and price, or"
                        + " both.\nMaybe the row of column names is missing.",
                fault("id,much\n" + PART + ",1\n"));
    }
}
