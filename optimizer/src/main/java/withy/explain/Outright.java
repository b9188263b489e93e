package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief.PartWish;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.objectives.Solver.Query;
import withy.rules.Protocol;
import withy.rules.Refusal;
import withy.rules.Rule;
import withy.rules.Rulebook;
import withy.rules.Verdict;

/** What rules say of a part when only brief and part are looked at: no build with such a part is legal, so nothing needs to be searched. */
final class Outright {
    private Outright() {}

    /** True where a part that must be in, or every blank the shop has for such a rod, is refused whatever rod is built, or a tip-top goes onto none of the blanks left. */
    static boolean impossible(Catalog catalog, TipsOnBlanks tips, Query query) {
        Refusal refusal = new Refusal();
        for (String id : needed(query)) {
            Part part = catalog.find(id);
            if (part != null) {
                query.rulebook().onCandidate(query.brief(), catalog, part, refusal.reset());
                if (refusal.refused()) {
                    return true;
                }
            }
        }
        List<TipTop> forced = tips.forced(query);
        for (Blank blank : catalog.all(PartKind.BLANK, Blank.class)) {
            query.rulebook().onCandidate(query.brief(), catalog, blank, refusal.reset());
            if (!refusal.refused() && usual(catalog, query, blank) && tips.go(query, forced, blank)) {
                return false;
            }
        }
        return true;
    }

    /** Blanks for other rods are left out unless they are asked for. */
    private static boolean usual(Catalog catalog, Query query, Blank blank) {
        return catalog.rates().usual(blank, query.brief().rodType())
                || query.forced().contains(blank.id())
                || query.fixed().values().stream()
                        .anyMatch(choice -> choice.partId().equals(blank.id()))
                || query.brief().insisted().stream()
                        .anyMatch(wish -> wish.partId().equals(blank.id()));
    }

    private static Set<String> needed(Query query) {
        Set<String> needed = new TreeSet<>(query.forced());
        if (query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("must"))) {
            query.brief().insisted().stream().filter(PartWish::hard).forEach(wish -> needed.add(wish.partId()));
        }
        return needed;
    }

    /**
     * What brief and part alone break.
     *
     * @param part the part
     * @param breach the rule and what it measures
     */
    record Own(Part part, Breach breach) {}

    /** All of that, part by part. */
    static List<Own> own(Inquiry inquiry, Set<String> parts) {
        List<Own> list = new ArrayList<>();
        for (String id : parts) {
            Protocol protocol = new Protocol();
            Part part = Objects.requireNonNull(inquiry.catalog().find(id));
            Rulebook.standard().onCandidate(inquiry.brief(), inquiry.catalog(), part, protocol);
            for (Verdict verdict : protocol.verdicts(Rulebook.standard())) {
                if (!verdict.outcome().legal()) {
                    list.add(new Own(part, Breach.of(verdict, inquiry)));
                }
            }
        }
        return list;
    }

    /** True where a rule of a question's book refuses a part outright for what it was refused for. */
    static boolean refuses(Catalog catalog, Query query, Verdict broken, Part part) {
        Protocol protocol = new Protocol();
        for (Rule rule : query.rulebook().rules()) {
            if (rule.code().equals(broken.rule())) {
                protocol.rule(rule.code());
                rule.onCandidate(query.brief(), catalog, part, protocol);
            }
        }
        return protocol.verdicts(query.rulebook()).stream()
                .anyMatch(said ->
                        said.check().equals(broken.check()) && !said.outcome().legal());
    }

    /** Wishes which alone make a rule refuse a part for what it was refused for, none of them to be spared; empty where it is refused for that whatever is wished. */
    static List<Demand> asking(Inquiry inquiry, Verdict broken, Part part, List<Demand> demands) {
        List<Demand> kept = new ArrayList<>(demands);
        List<Demand> dropped = new ArrayList<>();
        for (Demand demand : demands) {
            List<Demand> more = new ArrayList<>(dropped);
            more.add(demand);
            boolean still = Demands.without(inquiry, inquiry.query(), more).stream()
                    .allMatch(query -> refuses(inquiry.catalog(), query, broken, part));
            if (still) {
                dropped = more;
                kept.remove(demand);
            }
        }
        return kept;
    }
}
