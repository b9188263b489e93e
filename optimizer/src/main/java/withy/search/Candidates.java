package withy.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.Solver.Query;
import withy.rules.Refusal;

/**
 * The catalogue fitted to a brief: what each kind still offers, in content order, and why the rest was refused. Only what brief and part decide
 * alone; places come later.
 *
 * @param offered parts by kind
 * @param refused parts taken out, each with the rule that refused it
 */
public record Candidates(Map<PartKind, List<Part>> offered, List<Refused> refused) {

    /** Asks the rules of every part. Blanks not sold for the rod's type, threads of other
     * letters than the shop's, and other finish and adhesive than the house's are left out too, unless asked for. */
    public static Candidates of(Catalog catalog, Query query) {
        Map<PartKind, List<Part>> offered = new EnumMap<>(PartKind.class);
        List<Refused> refused = new ArrayList<>();
        Refusal refusal = new Refusal();
        for (PartKind kind : PartKind.values()) {
            Set<Part> kept = Collections.newSetFromMap(new IdentityHashMap<>());
            for (Part part : catalog.all(kind)) {
                query.rulebook().onCandidate(query.brief(), catalog, part, refusal.reset());
                if (refusal.refused()) {
                    refused.add(new Refused(part, refusal.verdict()));
                } else if (!query.refused().contains(part.id()) && usual(catalog, query, part)) {
                    kept.add(part);
                }
            }
            offered.put(
                    kind,
                    catalog.inContentOrder(kind).stream().filter(kept::contains).toList());
        }
        return new Candidates(offered, List.copyOf(refused));
    }

    /** Ids of all parts still offered. */
    Set<String> ids() {
        Set<String> all = new HashSet<>();
        offered.values().forEach(list -> list.forEach(part -> all.add(part.id())));
        return all;
    }

    /** Parts of a kind still offered. */
    public List<Part> of(PartKind kind) {
        List<Part> list = offered.get(kind);
        return list == null ? List.of() : list;
    }

    /** Parts of a kind still offered, as their own type. */
    <P extends Part> List<P> of(PartKind kind, Class<P> type) {
        return of(kind).stream().map(type::cast).toList();
    }

    private static boolean usual(Catalog catalog, Query query, Part part) {
        return wanted(query, part.id())
                || catalog.rates().usual(part, query.brief().rodType());
    }

    private static boolean wanted(Query query, String id) {
        return query.forced().contains(id)
                || query.fixed().values().stream().anyMatch(c -> c.partId().equals(id))
                || query.brief().insisted().stream().anyMatch(w -> w.partId().equals(id));
    }
}
