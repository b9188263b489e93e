package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.ShopList;
import withy.shop.Change;
import withy.shop.Imports;
import withy.shop.Shop;

/**
 * What {@code stock --import} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param applied false for a look that changed nothing
 * @param backup name of the back-up made before it, or null
 * @param currency currency of the prices
 * @param rows sound rows of the list
 * @param changes what differs from the shop's memory
 * @param hits jobs that lost what was promised to them
 * @param faults rows that can't be taken over; with any of them nothing is
 */
public record ImportAnswer(
        int schema,
        boolean applied,
        @Nullable String backup,
        String currency,
        int rows,
        List<Difference> changes,
        List<Change.Hit> hits,
        List<CheckAnswer.Line> faults) {
    public ImportAnswer {
        changes = List.copyOf(changes);
        hits = List.copyOf(hits);
        faults = List.copyOf(faults);
    }

    /**
     * One part that differs.
     *
     * @param line line of the list
     * @param part catalogue id
     * @param name maker and model
     * @param shelfBefore pieces on the shelf so far; null where the list does not count it
     * @param shelfAfter pieces counted
     * @param priceBeforeMinor price so far, minor units; null where the list has none
     * @param priceAfterMinor price of the list
     */
    public record Difference(
            int line,
            String part,
            String name,
            @Nullable Integer shelfBefore,
            @Nullable Integer shelfAfter,
            @Nullable Long priceBeforeMinor,
            @Nullable Long priceAfterMinor) {}

    /** A look at what a list would change, or the change itself. */
    public static ImportAnswer run(Workshop workshop, ShopList.Reading list, boolean apply) {
        List<Difference> changes = new ArrayList<>();
        SortedMap<String, Integer> counts = new TreeMap<>();
        SortedMap<String, Long> prices = new TreeMap<>();
        Catalog seen = workshop.snapshot().catalog();
        SortedMap<String, Integer> shelf = new TreeMap<>();
        StockAnswer.all(workshop).parts().forEach(line -> shelf.put(line.part(), line.shelf()));
        for (ShopList.Entry entry : list.entries()) {
            Difference difference = difference(seen, shelf, entry);
            if (difference.shelfAfter() != null) {
                counts.put(entry.part(), difference.shelfAfter());
            }
            if (difference.priceAfterMinor() != null) {
                prices.put(entry.part(), difference.priceAfterMinor());
            }
            if (difference.shelfAfter() != null || difference.priceAfterMinor() != null) {
                changes.add(difference);
            }
        }
        boolean write = apply && list.faults().isEmpty() && !changes.isEmpty();
        Imports.Imported done = write ? applied(workshop, counts, prices) : null;
        return new ImportAnswer(
                Answer.SCHEMA,
                done != null,
                done == null ? null : done.backup(),
                seen.rates().currency(),
                list.entries().size(),
                changes,
                done == null ? List.of() : done.change().hits(),
                CheckAnswer.lines(list.faults()));
    }

    private static Imports.Imported applied(
            Workshop workshop, SortedMap<String, Integer> counts, SortedMap<String, Long> prices) {
        try (Shop shop = workshop.open()) {
            return shop.imports().apply(counts, prices);
        }
    }

    private static Difference difference(Catalog seen, SortedMap<String, Integer> shelf, ShopList.Entry entry) {
        Part part = seen.find(entry.part());
        if (part == null) {
            throw new IllegalStateException("a row for a part of no list: " + entry.part());
        }
        Integer held = shelf.get(entry.part());
        int before = held == null ? 0 : held;
        Integer counted = entry.counted();
        Long price = entry.priceMinor();
        boolean moves = counted != null && counted != before;
        boolean dearer = price != null && price != part.facts().priceMinor();
        return new Difference(
                entry.line(),
                part.id(),
                part.facts().name(),
                moves ? Integer.valueOf(before) : null,
                moves ? counted : null,
                dearer ? Long.valueOf(part.facts().priceMinor()) : null,
                dearer ? price : null);
    }
}
