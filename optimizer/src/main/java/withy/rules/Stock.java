package withy.rules;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.rod.Placed;
import withy.rod.Rod;

/**
 * There are enough free pieces of every part, counted over all its stations, on the shelf or orderable by the date wanted; of a part the customer
 * brings there is one.
 *
 * <p>One piece is asked for with the part itself, so that a part that cannot be had is refused early; the whole rod is asked for the second piece
 * and further.
 */
final class Stock implements Rule {
    @Override
    public String code() {
        return "stock";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        ask("one-piece", 1, part, brief, catalog, bench);
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        SortedMap<String, Integer> pieces = new TreeMap<>();
        for (Placed placed : rod.placed().values()) {
            pieces.merge(placed.part().id(), rod.pieces(placed.station()), Integer::sum);
        }
        boolean several = false;
        for (Map.Entry<String, Integer> entry : pieces.entrySet()) {
            Part part = rod.setting().catalog().find(entry.getKey());
            if (part != null && entry.getValue() > 1) {
                several = true;
                ask(
                        "all-pieces",
                        entry.getValue(),
                        part,
                        rod.brief(),
                        rod.setting().catalog(),
                        bench);
            }
        }
        if (!several) {
            bench.notApplicable("all-pieces");
        }
    }

    private static void ask(String check, int pieces, Part part, Brief brief, Catalog catalog, Bench bench) {
        Supply supply = Supply.of(part, brief, catalog.asOf());
        if (supply.orderable()) {
            bench.notApplicable(check);
        } else {
            bench.atMost(check, pieces, supply.free(), Unit.COUNT, part.id());
        }
    }
}
