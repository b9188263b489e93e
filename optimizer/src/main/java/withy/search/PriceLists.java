package withy.search;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/** The price lists of a shelf that were asked for last. Of very many parts on very many blanks few are kept: their numbers would fill the memory. */
final class PriceLists {
    private static final int MOST = 12;

    /** Memory there is for each number that may be kept, bytes; one that was looked at takes some 12 besides what it was worked out of. */
    private static final long BYTES_PER_NUMBER = 256;

    private final Shelf shelf;
    private final long mostNumbers;
    private final Map<Linear, PriceList> lists = new LinkedHashMap<>(16, 0.75f, true);

    /** Of a shelf, with what memory there is. */
    PriceLists(Shelf shelf) {
        this(shelf, Runtime.getRuntime().maxMemory());
    }

    PriceLists(Shelf shelf, long memory) {
        this.shelf = shelf;
        this.mostNumbers = memory / BYTES_PER_NUMBER;
    }

    /** The list under some prices. */
    PriceList under(Linear k) {
        Linear prices = k.withoutConstant();
        PriceList known = lists.get(prices);
        if (known == null) {
            known = new PriceList(shelf, prices);
            makeRoom();
            lists.put(prices, known);
        }
        return known;
    }

    private void makeRoom() {
        long numbers = 0;
        for (PriceList list : lists.values()) {
            numbers += list.numbers();
        }
        Iterator<PriceList> eldest = lists.values().iterator();
        while (lists.size() >= MOST || numbers > mostNumbers) {
            numbers -= eldest.next().numbers();
            eldest.remove();
        }
    }

    /** How many are kept. */
    int size() {
        return lists.size();
    }
}
