package withy.explain;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.Build;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Refusal;
import withy.rules.Rule;
import withy.rules.Rulebook;

/**
 * Which rules must give way so that parts no legal build holds can be built in: together they are enough, and none of them can be kept. A build that
 * holds the parts says by what it breaks which rules are enough; each of them is then asked about.
 */
final class Yielding {
    private final PartsIn in;
    private final Inquiry inquiry;

    Yielding(PartsIn in) {
        this.in = in;
        this.inquiry = in.inquiry();
    }

    /**
     * What was found.
     *
     * @param rules the rules, in the order of the book
     * @param build a build with the parts that breaks just these: the best rod with the parts put in where that is one; else one as near to the best
     *     rod as was found, or any where each rule refuses the parts outright, so that nothing is measured on it; null where nothing holds the parts even
     *     without any rule
     */
    record Least(Set<String> rules, @Nullable Found build) {}

    /**
     * Finds them.
     *
     * @param own rules that refuse the parts outright
     */
    Least least(Set<String> own) {
        Found first = inquiry.first();
        Found put = putIn();
        Found holds = put != null ? put : in.any(own);
        Set<String> needed = new TreeSet<>(own);
        if (holds == null && first == null) {
            for (Set<String> way : refusingBlanks()) {
                Set<String> rules = new TreeSet<>(own);
                rules.addAll(way);
                if (holds == null) {
                    holds = in.any(rules);
                    needed = rules;
                }
            }
        }
        if (holds == null) {
            needed = own;
            Set<String> all = codes();
            holds = in.any(all);
            if (holds == null) {
                return new Least(all, null);
            }
            holds = first == null ? holds : Nearer.of(inquiry, first, holds, in.parts(), all);
        }
        Found last = fewest(own, needed, holds);
        Set<String> rules = broken(own, last);
        boolean measured = last != put && !own.containsAll(rules);
        return new Least(rules, measured && first != null ? Nearer.of(inquiry, first, last, in.parts(), rules) : last);
    }

    /**
     * Rules that may have to give way for a blank to stand at all, whatever else is built: where some refuse every blank there is all of these, else each for which alone some blank is refused,
     * the last of the book first. Where they are enough none of them can be kept.
     */
    private List<Set<String>> refusingBlanks() {
        Set<String> every = codes();
        Set<String> alone = new TreeSet<>();
        Refusal refusal = new Refusal();
        for (Blank blank : inquiry.catalog().all(PartKind.BLANK, Blank.class)) {
            Set<String> refusing = new LinkedHashSet<>();
            for (Rule rule : Rulebook.standard().rules()) {
                rule.onCandidate(inquiry.brief(), inquiry.catalog(), blank, refusal.reset());
                if (refusal.refused()) {
                    refusing.add(rule.code());
                }
            }
            every.retainAll(refusing);
            if (refusing.size() == 1) {
                alone.addAll(refusing);
            }
        }
        List<Set<String>> ways = new ArrayList<>();
        for (String code : codes()) {
            if (every.isEmpty() && alone.contains(code)) {
                ways.add(0, Set.of(code));
            }
        }
        return every.isEmpty() ? ways : List.of(every);
    }

    /**
     * A build that breaks the rules that refuse outright and as few others as must be, from one that may break more.
     *
     * @param needed rules known to be among them
     */
    private Found fewest(Set<String> own, Set<String> needed, Found holds) {
        Found last = holds;
        Set<String> rules = broken(own, holds);
        for (String code : List.copyOf(rules)) {
            if (rules.contains(code) && !needed.contains(code)) {
                Set<String> fewer = new LinkedHashSet<>(rules);
                fewer.remove(code);
                Found other = in.any(fewer);
                if (other != null) {
                    last = other;
                    rules = broken(own, other);
                }
            }
        }
        return last;
    }

    private static Set<String> codes() {
        Set<String> codes = new LinkedHashSet<>();
        Rulebook.standard().rules().stream().map(Rule::code).forEach(codes::add);
        return codes;
    }

    private static Set<String> broken(Set<String> own, Found found) {
        Set<String> broken = new TreeSet<>(own);
        Judge.judge(found.rod(), Rulebook.standard()).stream()
                .filter(verdict -> !verdict.outcome().legal())
                .forEach(verdict -> broken.add(verdict.rule()));
        Set<String> ordered = codes();
        ordered.retainAll(broken);
        return ordered;
    }

    /** The best rod with the parts where parts of their kinds are, or null where one has no such place. */
    private @Nullable Found putIn() {
        Found now = inquiry.first();
        for (String id : in.parts()) {
            Part part = inquiry.catalog().find(id);
            now = now == null || part == null || now.build().holds(Set.of(id)) ? now : with(now.build(), part);
        }
        return now != null && now.build().holds(in.parts()) ? now : null;
    }

    private @Nullable Found with(Build build, Part part) {
        Found least = null;
        int fewest = Integer.MAX_VALUE;
        for (Station station : places(build)) {
            Found found = new Swaps(inquiry, build, station).nearest(part);
            int broken =
                    found == null ? Integer.MAX_VALUE : broken(Set.of(), found).size();
            if (broken < fewest) {
                fewest = broken;
                least = found;
            }
        }
        return least;
    }

    private static List<Station> places(Build build) {
        Set<Station> places = new TreeSet<>(build.choices().keySet());
        places.addAll(List.of(
                Station.BLANK,
                Station.BUTT_CAP,
                Station.REAR_CHECK,
                Station.HOOD,
                Station.SEAT_ARBORS,
                Station.FORE_CHECK,
                Station.FORE_GRIP,
                Station.WINDING_CHECK,
                Station.KEEPER,
                Station.DECAL));
        return new ArrayList<>(places);
    }
}
