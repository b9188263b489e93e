package withy.explain;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Finding.Outcome;
import withy.objectives.Solver.Query;
import withy.rules.Protocol;
import withy.rules.Rule;
import withy.rules.Rulebook;
import withy.rules.Verdict;

/** Why no legal build holds certain parts: the fewest rules that would have to give way, and what each measures. */
final class Refused {
    private static final String STOCK = "stock";

    private final Inquiry inquiry;
    private final Set<String> parts;
    private final Query forced;

    Refused(Inquiry inquiry, Set<String> parts) {
        this.inquiry = inquiry;
        this.parts = parts;
        this.forced = inquiry.query().forcing(parts);
    }

    Finding finding(@Nullable Found first) {
        List<String> crowd = crowd();
        if (!crowd.isEmpty()) {
            String sentence = Phrases.of("whynot.crowded", Phrases.list(crowd));
            return finding(Outcome.BREAKS_RULE, sentence, first, null, null, List.of(), List.of(), List.of("handle"));
        }
        List<Breach> own = own();
        Set<String> dropped = dropped(own);
        Found opponent = inquiry.best(forced.withRulebook(without(dropped)));
        List<Breach> breaches = breaches(own, opponent, dropped);
        if (breaches.isEmpty()) {
            String sentence = Phrases.of("whynot.nowhere", inquiry.names(parts));
            return finding(
                    Outcome.BREAKS_RULE, sentence, first, opponent, null, List.of(), List.of(), List.copyOf(dropped));
        }
        Breach main = breaches.stream()
                .filter(b -> !b.verdict().rule().equals(STOCK))
                .findFirst()
                .orElse(breaches.get(0));
        List<Breach> also = breaches.stream().filter(b -> b != main).toList();
        if (main.verdict().rule().equals(STOCK)) {
            return finding(Outcome.NOT_IN_STOCK, stock(main), first, opponent, main, also, List.of(), List.of(STOCK));
        }
        List<Conflict.Asked> forcing = forcing();
        return finding(
                Outcome.BREAKS_RULE, broken(main, forcing), first, opponent, main, also, forcing, rules(breaches));
    }

    private static List<String> rules(List<Breach> breaches) {
        return breaches.stream().map(b -> b.verdict().rule()).distinct().toList();
    }

    /** Parts that contend for one place. */
    private List<String> crowd() {
        Set<String> places = new TreeSet<>();
        for (String id : parts) {
            Part part = Objects.requireNonNull(inquiry.catalog().find(id));
            boolean several = part.kind() == PartKind.GUIDE || part.kind() == PartKind.CHECK;
            String place = part instanceof Grip grip && grip.place() != Grip.Place.FULL
                    ? grip.place().name()
                    : part instanceof Grip
                            ? Grip.Place.REAR.name()
                            : part.kind().name();
            if (!several && !places.add(place)) {
                return parts.stream().map(inquiry::name).toList();
            }
        }
        return List.of();
    }

    /** What the brief alone has against the parts. */
    private List<Breach> own() {
        List<Breach> list = new ArrayList<>();
        for (String id : parts) {
            Protocol protocol = new Protocol();
            Part part = Objects.requireNonNull(inquiry.catalog().find(id));
            Rulebook.standard().onCandidate(inquiry.brief(), inquiry.catalog(), part, protocol);
            for (Verdict verdict : protocol.verdicts(Rulebook.standard())) {
                if (!verdict.outcome().legal()) {
                    list.add(Breach.of(verdict, inquiry.catalog()));
                }
            }
        }
        return list;
    }

    /** The fewest rules that have to give way: what the brief alone has against the parts, and as few as can be of the others. */
    private Set<String> dropped(List<Breach> own) {
        Set<String> needed = new LinkedHashSet<>();
        own.forEach(breach -> needed.add(breach.verdict().rule()));
        if (possible(needed)) {
            return needed;
        }
        List<String> others = Rulebook.standard().rules().stream()
                .map(Rule::code)
                .filter(code -> !needed.contains(code))
                .toList();
        String enough = enough(needed, others);
        if (enough != null) {
            Set<String> more = new LinkedHashSet<>(needed);
            more.add(enough);
            return more;
        }
        Set<String> all = new LinkedHashSet<>(needed);
        all.addAll(others);
        if (!possible(all)) {
            return all;
        }
        for (String code : others) {
            Set<String> fewer = new LinkedHashSet<>(all);
            fewer.remove(code);
            if (possible(fewer)) {
                all.remove(code);
            }
        }
        return all;
    }

    /** The first rule that is enough by itself, or null: rules that are not enough together are not asked about one by one. */
    private @Nullable String enough(Set<String> needed, List<String> codes) {
        Set<String> more = new LinkedHashSet<>(needed);
        more.addAll(codes);
        if (codes.isEmpty() || !possible(more)) {
            return null;
        }
        if (codes.size() == 1) {
            return codes.get(0);
        }
        String left = enough(needed, codes.subList(0, codes.size() / 2));
        return left == null ? enough(needed, codes.subList(codes.size() / 2, codes.size())) : left;
    }

    private boolean possible(Set<String> dropped) {
        return inquiry.possible(forced.withRulebook(without(dropped)));
    }

    private Rulebook without(Set<String> dropped) {
        return inquiry.without(dropped);
    }

    /** In the order of the rules: what the brief has against the parts themselves, else what the nearest build breaks. */
    private List<Breach> breaches(List<Breach> own, @Nullable Found opponent, Set<String> dropped) {
        List<Breach> list = new ArrayList<>(own);
        for (String rule : dropped) {
            boolean told = own.stream().anyMatch(b -> b.verdict().rule().equals(rule));
            Breach breach = told || opponent == null ? null : Breach.first(opponent.rod(), rule);
            if (breach != null && breach.verdict().rule().equals(rule)) {
                list.add(breach);
            }
        }
        return list;
    }

    private List<Conflict.Asked> forcing() {
        List<Demand> demands = Demands.of(inquiry);
        Conflicts conflicts = new Conflicts(inquiry, forced, demands);
        if (!conflicts.possibleKeeping(Set.of())) {
            return List.of();
        }
        List<List<Demand>> sets = conflicts.find(1).sets();
        return sets.isEmpty()
                ? List.of()
                : sets.get(0).stream().map(Conflict.Asked::of).toList();
    }

    private String broken(Breach main, List<Conflict.Asked> forcing) {
        List<String> words = forcing.stream().map(Conflict.Asked::words).toList();
        return forcing.isEmpty()
                ? Phrases.of("whynot.breaks.alone", inquiry.names(parts), main.sentence())
                : Phrases.of("whynot.breaks", inquiry.names(parts), main.sentence(), Phrases.list(words));
    }

    private String stock(Breach breach) {
        String id = breach.verdict().parts().get(0);
        Part part = Objects.requireNonNull(inquiry.catalog().find(id));
        long needed = Math.round(breach.verdict().measured());
        long free = Math.round(breach.verdict().limit());
        Integer days = part.facts().leadDays();
        boolean owned = inquiry.brief().owned().contains(id);
        String name = part.facts().name();
        LocalDate wanted = inquiry.brief().wantedBy();
        if (days == null || owned || wanted == null) {
            return Phrases.of("whynot.stock.never", name, needed, free);
        }
        LocalDate comes = inquiry.catalog().asOf().plusDays(days);
        return Phrases.of("whynot.stock.late", name, needed, free, comes, wanted);
    }

    private Finding finding(
            Outcome outcome,
            String sentence,
            @Nullable Found first,
            @Nullable Found opponent,
            @Nullable Breach breach,
            List<Breach> also,
            List<Conflict.Asked> forcing,
            List<String> rules) {
        Set<Ground> grounds = new LinkedHashSet<>();
        parts.forEach(id -> grounds.add(Ground.fact(id)));
        if (breach != null) {
            breach.verdict().parts().forEach(id -> grounds.add(Ground.fact(id)));
        }
        rules.forEach(code -> grounds.add(Ground.rule(code)));
        forcing.forEach(asked -> grounds.add(Ground.wish(asked.field())));
        return new Finding(
                parts,
                outcome,
                sentence,
                first,
                opponent,
                breach,
                also,
                forcing,
                List.of(),
                List.of(),
                null,
                List.of(),
                List.copyOf(grounds));
    }
}
