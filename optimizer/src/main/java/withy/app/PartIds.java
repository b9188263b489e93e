package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.BriefFault;
import withy.catalog.Catalog;
import withy.catalog.NearWord;

/** Part ids that the catalogue does not know, with the one that was most likely meant. */
public final class PartIds {
    /** Fewer letters stand in nearly every id. */
    private static final int LEAST_LETTERS = 4;

    private static final int MOST_TOLD = 3;

    private PartIds() {}

    /** Every unknown id a brief names. */
    public static List<BriefFault> unknown(Brief brief, Catalog catalog) {
        List<BriefFault> faults = new ArrayList<>();
        for (PartWish wish : brief.insisted()) {
            check("insisted", wish.partId(), catalog, faults);
        }
        for (String id : brief.owned()) {
            check("owned", id, catalog, faults);
        }
        for (PartWish wish : brief.refused()) {
            check("refused", wish.partId(), catalog, faults);
        }
        return faults;
    }

    /** Those of a list that the catalogue does not know. */
    public static List<BriefFault> unknown(String where, List<String> ids, Catalog catalog) {
        List<BriefFault> faults = new ArrayList<>();
        ids.forEach(id -> check(where, id, catalog, faults));
        return faults;
    }

    /** A guess at the id that was meant. */
    public static String maybe(String id, Catalog catalog) {
        List<String> holding = id.length() < LEAST_LETTERS
                ? List.of()
                : catalog.byId().keySet().stream()
                        .filter(other -> other.contains(id.toLowerCase(Locale.ROOT)))
                        .toList();
        if (holding.size() > 1) {
            String more = holding.size() > MOST_TOLD ? " or one of " + (holding.size() - MOST_TOLD) + " more" : "";
            return "Maybe one of these: " + String.join(", ", holding.subList(0, Math.min(MOST_TOLD, holding.size())))
                    + more + ".";
        }
        String near = holding.isEmpty() ? NearWord.to(id, catalog.byId().keySet()) : holding.get(0);
        return near.isEmpty()
                ? "Maybe look it up: withy parts DIR lists every id."
                : "Maybe \"" + near + "\" was meant.";
    }

    private static void check(String path, String id, Catalog catalog, List<BriefFault> faults) {
        if (catalog.find(id) == null) {
            faults.add(new BriefFault(path, 0, 0, id, "an id of the catalogue", maybe(id, catalog)));
        }
    }
}
