package withy.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Finding.Outcome;
import withy.explain.TradeOffs.TradeOff;
import withy.objectives.Solver.Query;

/**
 * Why a part, or several together, are not in the best build. The opponent is the best legal build that contains them. Where nobody would notice
 * the difference that is the answer, even where the opponent is a hair worse in everything; then being dominated goes before losing.
 */
public final class WhyNot {
    /** The same of one part and of several. */
    private static final String CHOSEN = "whynot.chosen";

    private final Inquiry inquiry;
    private final Set<String> parts;

    private WhyNot(Inquiry inquiry, Set<String> parts) {
        this.inquiry = inquiry;
        this.parts = new TreeSet<>(parts);
    }

    /** Answers for parts of the catalogue, with what would have to change. */
    public static Finding of(Inquiry inquiry, Set<String> parts) {
        return of(inquiry, parts, reason -> {});
    }

    /**
     * The same; the reason is told as soon as it is known, before what would have to change is looked for. Of parts that the brief alone refuses only that is told
     * then: what else stands in their way comes with the answer.
     */
    public static Finding of(Inquiry inquiry, Set<String> parts, Consumer<Finding> reason) {
        Finding soon = atOnce(inquiry, parts);
        if (soon != null) {
            reason.accept(soon);
        }
        Finding finding = reason(inquiry, parts);
        if (soon == null) {
            reason.accept(finding);
        }
        return switch (finding.outcome()) {
            case CHOSEN, EQUAL, UNUSUAL -> finding;
            case DOMINATED, LOSES -> finding.with(Flips.of(inquiry, finding));
            case BREAKS_RULE, NOT_IN_STOCK -> finding.with(Flips.ofRefused(inquiry, finding));
        };
    }

    /** The best build with the parts against the best build, all six objectives; empty where there are not both. */
    public static List<TradeOff> beside(Inquiry inquiry, Set<String> parts) {
        Found first = inquiry.first();
        Found opponent = first == null ? null : inquiry.best(inquiry.query().forcing(parts));
        return first == null || opponent == null || first.build().holds(parts)
                ? List.of()
                : TradeOffs.between(opponent.side(0), first.side(1), inquiry.units());
    }

    /** What {@link #of} tells first: the outcome and the sentence of the whole answer. */
    public static Finding soonest(Inquiry inquiry, Set<String> parts) {
        Finding soon = atOnce(inquiry, parts);
        return soon == null ? reason(inquiry, parts) : soon;
    }

    /** What brief and parts alone say against them; null where they say nothing. */
    private static @Nullable Finding atOnce(Inquiry inquiry, Set<String> parts) {
        return new Refused(new PartsIn(inquiry, new TreeSet<>(parts))).atOnce(inquiry.first());
    }

    /** The same without looking for what would have to change. */
    public static Finding reason(Inquiry inquiry, Set<String> parts) {
        WhyNot whyNot = new WhyNot(inquiry, parts);
        Found first = inquiry.first();
        Found opponent = inquiry.best(whyNot.forced(inquiry.query()));
        if (opponent == null) {
            return new Refused(new PartsIn(inquiry, whyNot.parts)).finding(first);
        }
        if (first == null || first.build().holds(parts)) {
            return whyNot.chosen(first == null ? "whynot.only" : CHOSEN, opponent);
        }
        return whyNot.compared(first, opponent);
    }

    /** Nice wishes that the opponent misses and the best build meets, and the other way round. */
    private record Wishes(List<Missed> missed, List<Missed> met) {
        private static final Wishes ALIKE = new Wishes(List.of(), List.of());
    }

    private Query forced(Query query) {
        return query.forcing(parts);
    }

    /** In the best rod, which may be one that is only looked for with parts that are asked for by name. */
    private Finding chosen(String key, Found first) {
        String sentence = told(key);
        return finding(Outcome.CHOSEN, sentence, first, first, List.of(), Wishes.ALIKE, null);
    }

    private Finding compared(Found first, Found opponent) {
        List<TradeOff> tradeOffs = TradeOffs.between(opponent.side(0), first.side(1), inquiry.units());
        List<Missed> missed = Missed.of(opponent.rod(), first.rod());
        List<Missed> met = Missed.of(first.rod(), opponent.rod());
        Wishes wishes = new Wishes(missed, met);
        String names = inquiry.names(parts);
        boolean noticed =
                !missed.isEmpty() || !met.isEmpty() || tradeOffs.stream().anyMatch(TradeOff::noticeable);
        Part unusual = unusual();
        if (!noticed) {
            String equal = told(differing(tradeOffs).isEmpty() ? "whynot.equal.same" : "whynot.equal");
            String sentence = unusual == null ? equal : leftOut("whynot.equal.unusual", equal, unusual, "");
            return finding(Outcome.EQUAL, sentence, first, opponent, tradeOffs, wishes, null);
        }
        if (unusual != null && inquiry.score(opponent.vector()) < inquiry.score(first.vector())) {
            String costs = Ledger.costs(inquiry, first, opponent, tradeOffs);
            String sentence = leftOut("whynot.unusual", names, unusual, costs);
            return finding(Outcome.UNUSUAL, sentence, first, opponent, tradeOffs, wishes, null);
        }
        Beaten.Answer beaten = Beaten.of(inquiry, first, opponent, parts);
        Found better = beaten.by();
        if (better != null) {
            List<TradeOff> gains = TradeOffs.between(better.side(0), opponent.side(1), inquiry.units()).stream()
                    .filter(TradeOff::better)
                    .toList();
            List<Missed> unmet = Missed.of(opponent.rod(), better.rod());
            String sentence =
                    Phrases.of("whynot.dominated", names, instead(first, better, opponent), gained(gains, unmet));
            return finding(Outcome.DOMINATED, sentence, first, opponent, tradeOffs, wishes, better);
        }
        String losing = losing(names, tradeOffs, wishes);
        String sentence = beaten.open() ? Phrases.of("whynot.loses.open", losing) : losing;
        return finding(Outcome.LOSES, sentence, first, opponent, tradeOffs, wishes, null);
    }

    /** The first of the parts that the shop leaves out unless asked; null where there is none. */
    private @Nullable Part unusual() {
        return parts.stream()
                .map(id -> Objects.requireNonNull(inquiry.catalog().find(id)))
                .filter(part -> Unusual.instead(inquiry, part) != null)
                .findFirst()
                .orElse(null);
    }

    /** That a part is left out unless asked for, and what the shop takes instead; of several parts it is named. */
    private String leftOut(String key, String said, Part unusual, String costs) {
        String instead = Objects.requireNonNull(Unusual.instead(inquiry, unusual));
        return Phrases.counted(parts.size(), key, said, unusual.facts().name(), instead, costs);
    }

    /** A phrase about the parts by their names. */
    private String told(String key) {
        boolean one = parts.size() == 1 || key.equals(CHOSEN);
        return one ? Phrases.of(key, inquiry.names(parts)) : Phrases.counted(parts.size(), key, inquiry.names(parts));
    }

    /** What would be noticed, in the order of what the customer ranks first; where no loss would be, the small ones, which decide together. */
    private String losing(String names, List<TradeOff> tradeOffs, Wishes wishes) {
        List<TradeOff> ranked = new ArrayList<>(differing(tradeOffs));
        ranked.sort(Comparator.comparingDouble(t -> -inquiry.brief().priority(t.objective())));
        List<String> losses = new ArrayList<>();
        ranked.stream().filter(t -> !t.better() && t.noticeable()).forEach(t -> losses.add(t.plain()));
        losses.addAll(Missed.losses(wishes.missed, names));
        List<String> small = new ArrayList<>();
        ranked.stream().filter(t -> !t.better() && !t.noticeable()).forEach(t -> small.add(t.plain()));
        List<String> gains = new ArrayList<>();
        ranked.stream().filter(t -> t.better() && t.noticeable()).forEach(t -> gains.add(t.plain()));
        List<String> said = new ArrayList<>();
        if (!gains.isEmpty()) {
            said.add(Phrases.of("whynot.is", Phrases.list(gains)));
        }
        said.addAll(Missed.gains(wishes.met));
        if (losses.isEmpty() && !small.isEmpty()) {
            return Phrases.counted(parts.size(), "whynot.loses.small", names, Phrases.list(said), Phrases.list(small));
        }
        String key = said.isEmpty() ? "whynot.loses.only" : "whynot.loses";
        return Phrases.counted(parts.size(), key, names, Phrases.list(losses), Phrases.list(said));
    }

    private static List<TradeOff> differing(List<TradeOff> tradeOffs) {
        return tradeOffs.stream().filter(t -> !t.same()).toList();
    }

    /** What would be noticed; where nothing would be, the small things together. */
    private static String gained(List<TradeOff> gains, List<Missed> unmet) {
        List<String> words = new ArrayList<>();
        gains.stream().filter(TradeOff::noticeable).forEach(t -> words.add(t.plain()));
        words.addAll(Missed.gains(unmet));
        if (!words.isEmpty()) {
            return Phrases.list(words);
        }
        List<String> small = differing(gains).stream().map(TradeOff::plain).toList();
        return small.isEmpty()
                ? Phrases.of("whynot.hair")
                : Phrases.of(small.size() == 1 ? "whynot.small.one" : "whynot.small", Phrases.list(small));
    }

    /**
     * What the better build has in the place of what the opponent has, at most three parts; where it is more, or nothing that is of the kind of what is asked about, the best build or
     * the build's blank.
     */
    private String instead(Found first, Found better, Found opponent) {
        Set<String> other = new LinkedHashSet<>(better.build().partIds());
        other.removeAll(opponent.build().partIds());
        if (other.size() <= 3 && inThePlace(other)) {
            return Phrases.of("whynot.rodWith", inquiry.names(other));
        }
        if (better.build().equals(first.build())) {
            return Phrases.of("whynot.rodBest");
        }
        String blank = better.build().layout().blankId();
        boolean same = blank.equals(opponent.build().layout().blankId());
        return Phrases.of(same ? "whynot.rodOther" : "whynot.rodOn", inquiry.name(blank));
    }

    /** True where one of some parts is of the kind of one that is asked about; a hood comes with its seat. */
    private boolean inThePlace(Set<String> others) {
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        others.forEach(id -> kinds.add(kind(id)));
        return parts.stream()
                .map(this::kind)
                .anyMatch(kind -> kinds.contains(kind) || kind == PartKind.HOOD && kinds.contains(PartKind.REEL_SEAT));
    }

    private PartKind kind(String id) {
        return Objects.requireNonNull(inquiry.catalog().find(id)).kind();
    }

    private Finding finding(
            Outcome outcome,
            String sentence,
            Found first,
            Found opponent,
            List<TradeOff> tradeOffs,
            Wishes wishes,
            @Nullable Found better) {
        List<Evidence> grounds = new ArrayList<>();
        parts.forEach(id -> grounds.add(Evidence.fact(id)));
        if (outcome != Outcome.CHOSEN) {
            grounds.add(Evidence.wish("priorities"));
        }
        wishes.missed.forEach(wish -> grounds.add(Evidence.wish(wish.field())));
        wishes.met.forEach(wish -> grounds.add(Evidence.wish(wish.field())));
        return new Finding(
                parts,
                outcome,
                sentence,
                first,
                opponent,
                null,
                List.of(),
                List.of(),
                tradeOffs,
                wishes.missed,
                wishes.met,
                better,
                List.of(),
                grounds);
    }
}
