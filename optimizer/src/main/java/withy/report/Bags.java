package withy.report;

import java.util.Iterator;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.BenchSheet.Bag;
import withy.app.BenchSheet.Made;

/** Deals a job's bags out to the stations in their order: of several equal pieces any will do, but each only once. */
final class Bags {
    private final Map<String, Iterator<Bag>> left = new TreeMap<>();

    Bags(@Nullable Made made) {
        if (made != null) {
            made.bags().forEach((part, all) -> left.put(part, all.iterator()));
        }
    }

    /** The next bag of a part, or null where none is left. */
    @Nullable
    Bag next(String part) {
        Iterator<Bag> bags = left.get(part);
        return bags != null && bags.hasNext() ? bags.next() : null;
    }
}
