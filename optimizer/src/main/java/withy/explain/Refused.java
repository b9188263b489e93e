package withy.explain;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Finding.Outcome;
import withy.explain.Outright.Own;

/** Why no legal build holds certain parts: the fewest rules that would have to give way, and what each measures. */
final class Refused {
    private static final String STOCK = "stock";

    private final Inquiry inquiry;
    private final Set<String> parts;
    private final PartsIn in;

    Refused(PartsIn in) {
        this.in = in;
        this.inquiry = in.inquiry();
        this.parts = in.parts();
    }

    Finding finding(@Nullable Found first) {
        List<String> crowd = crowd();
        if (!crowd.isEmpty()) {
            String some = Phrases.list(crowd);
            String sentence = crowd.size() == parts.size()
                    ? Phrases.of("whynot.crowded", some)
                    : Phrases.of("whynot.crowded.some", inquiry.names(parts), some);
            return finding(Outcome.BREAKS_RULE, sentence, first, null, null, List.of(), List.of(), List.of("handle"));
        }
        List<Own> own = Outright.own(inquiry, parts);
        Set<String> outright = new TreeSet<>();
        own.forEach(one -> outright.add(one.breach().verdict().rule()));
        Yielding.Least least = new Yielding(in).least(outright);
        Set<String> dropped = least.rules();
        Found opponent = least.build();
        List<Breach> breaches = breaches(own, opponent, dropped);
        boolean onlyStock =
                breaches.stream().allMatch(breach -> breach.verdict().rule().equals(STOCK));
        if (breaches.isEmpty() || opponent == null && onlyStock) { // more on the shelf would not help
            String sentence = Phrases.counted(parts.size(), "whynot.nowhere", inquiry.names(parts));
            return finding(
                    Outcome.BREAKS_RULE, sentence, first, opponent, null, List.of(), List.of(), List.copyOf(dropped));
        }
        Breach main = main(breaches);
        List<Breach> also = breaches.stream().filter(b -> b != main).toList();
        if (main.verdict().rule().equals(STOCK)) {
            return finding(Outcome.NOT_IN_STOCK, stock(main), first, opponent, main, also, List.of(), List.of(STOCK));
        }
        List<Conflict.Asked> forcing = forcing(main, own, opponent, dropped);
        return finding(
                Outcome.BREAKS_RULE,
                broken(first, main, forcing),
                first,
                opponent,
                main,
                also,
                forcing,
                rules(breaches));
    }

    /** What brief and parts alone say, where that is what is told first: it needs no search. Null where it is not. */
    @Nullable
    Finding atOnce(@Nullable Found first) {
        List<Own> own = crowd().isEmpty() ? Outright.own(inquiry, parts) : List.of();
        List<Breach> breaches = own.stream().map(Own::breach).toList();
        Breach main = breaches.stream()
                .filter(breach -> !breach.verdict().rule().equals(STOCK) && names(breach))
                .findFirst()
                .orElse(null);
        if (main == null) {
            return null;
        }
        List<Breach> also = breaches.stream().filter(b -> b != main).toList();
        List<Conflict.Asked> forcing = forcing(main, own, null, Set.of());
        return finding(
                Outcome.BREAKS_RULE, broken(first, main, forcing), first, null, main, also, forcing, rules(breaches));
    }

    /** What is told first: what a rule has against the parts themselves before what it has against others, the shelf last. */
    private Breach main(List<Breach> breaches) {
        List<Breach> ruled =
                breaches.stream().filter(b -> !b.verdict().rule().equals(STOCK)).toList();
        return ruled.stream().filter(this::names).findFirst().orElse(ruled.isEmpty() ? breaches.get(0) : ruled.get(0));
    }

    private static List<String> rules(List<Breach> breaches) {
        return breaches.stream().map(b -> b.verdict().rule()).distinct().toList();
    }

    /** Parts that contend for one place. */
    private List<String> crowd() {
        Map<String, List<String>> places = new TreeMap<>();
        for (String id : parts) {
            Part part = Objects.requireNonNull(inquiry.catalog().find(id));
            boolean several = part.kind() == PartKind.GUIDE || part.kind() == PartKind.CHECK;
            String place = part instanceof Grip grip && grip.place() != Grip.Place.FULL
                    ? grip.place().name()
                    : part instanceof Grip
                            ? Grip.Place.REAR.name()
                            : part.kind().name();
            if (!several) {
                places.computeIfAbsent(place, any -> new ArrayList<>()).add(inquiry.name(id));
            }
        }
        return places.values().stream()
                .filter(names -> names.size() > 1)
                .findFirst()
                .orElse(List.of());
    }

    /** In the order of the rules: what the brief has against the parts themselves, else what the nearest build breaks. */
    private List<Breach> breaches(List<Own> own, @Nullable Found opponent, Set<String> dropped) {
        List<Breach> list = new ArrayList<>(own.stream().map(Own::breach).toList());
        for (String rule : dropped) {
            boolean told =
                    own.stream().anyMatch(one -> one.breach().verdict().rule().equals(rule));
            Breach breach = told || opponent == null ? null : broken(opponent, rule, dropped);
            if (breach != null) {
                list.add(breach);
            }
        }
        return list;
    }

    /** How a build breaks a rule, by the parts themselves where it does, and in a way that no other part beside them mends; null where it keeps it. */
    private @Nullable Breach broken(Found build, String rule, Set<String> dropped) {
        List<Breach> all = Breach.all(build.rod(), inquiry.units()).stream()
                .filter(breach -> breach.verdict().rule().equals(rule))
                .toList();
        List<Breach> own = all.stream().filter(this::names).toList();
        List<Breach> told = own.isEmpty() ? all : own;
        return told.isEmpty() ? null : new Beside(inquiry, build, parts, dropped).telling(told, all);
    }

    private boolean names(Breach breach) {
        return breach.verdict().parts().stream().anyMatch(parts::contains);
    }

    /** The wishes for which a rule is broken: of a part that is refused outright what the rule looks at, else those that it cannot be kept with. */
    private List<Conflict.Asked> forcing(Breach main, List<Own> own, @Nullable Found opponent, Set<String> dropped) {
        for (Own one : own) {
            if (one.breach() == main) {
                return asked(Outright.asking(inquiry, main.verdict(), one.part(), Demands.of(inquiry)));
            }
        }
        Set<String> others = new TreeSet<>(dropped);
        others.remove(main.verdict().rule());
        Conflicts conflicts = new Conflicts(inquiry, in.without(others), Demands.of(inquiry));
        if (opponent != null) {
            conflicts.met(opponent.build());
        }
        if (!conflicts.possibleAtAll()) {
            return List.of();
        }
        List<List<Demand>> sets = conflicts.find(1).sets();
        return sets.isEmpty() ? List.of() : asked(sets.get(0));
    }

    private static List<Conflict.Asked> asked(List<Demand> demands) {
        return demands.stream().map(Conflict.Asked::of).toList();
    }

    private String broken(@Nullable Found first, Breach main, List<Conflict.Asked> forcing) {
        List<String> words = forcing.stream().map(Conflict.Asked::words).toList();
        String names = inquiry.names(parts);
        String broken = told(names, main);
        if (first == null && !names(main)) {
            return Phrases.counted(parts.size(), "whynot.breaks.neither", names, broken);
        }
        if (forcing.isEmpty()) {
            return Phrases.counted(parts.size(), "whynot.breaks.alone", names, broken);
        }
        if (forcing.size() == 1 && SayTheWish.of(main.verdict(), forcing.get(0))) {
            return Phrases.counted(parts.size(), "whynot.breaks.said", names, broken);
        }
        String key = SayTheWish.isOne(main.verdict()) ? "whynot.breaks.asked" : "whynot.breaks";
        return Phrases.counted(parts.size(), key, names, broken, Phrases.list(words));
    }

    /** What is broken, with the part as "it" where it is first of all about the one part that is asked about. */
    private String told(String names, Breach main) {
        List<String> about = main.verdict().parts();
        boolean one = parts.size() == 1 && !about.isEmpty() && parts.contains(about.get(0));
        String clause = one ? Phrases.afterName(names, main.sentence()) : null;
        return clause == null ? main.sentence() : Phrases.sentence(clause);
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
        Set<Evidence> grounds = new LinkedHashSet<>();
        parts.forEach(id -> grounds.add(Evidence.fact(id)));
        if (breach != null) {
            breach.verdict().parts().forEach(id -> grounds.add(Evidence.fact(id)));
        }
        rules.forEach(code -> grounds.add(Evidence.rule(code)));
        forcing.forEach(asked -> grounds.add(Evidence.wish(asked.field())));
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
                List.of(),
                null,
                List.of(),
                List.copyOf(grounds));
    }
}
