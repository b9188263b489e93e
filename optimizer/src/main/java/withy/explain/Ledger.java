package withy.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.catalog.Part;
import withy.explain.Swaps.Swap;
import withy.explain.TradeOffs.TradeOff;
import withy.rod.Station;

/** Every lighter part of every station of a build, with why it was not taken. */
public final class Ledger {
    /** What a hand feels, from some difference on. */
    private static final Set<Objective> FELT = Set.of(Objective.BALANCE, Objective.SWING_WEIGHT);

    private Ledger() {}

    /**
     * One lighter part.
     *
     * @param station where
     * @param part its id, or empty where the station would be left empty
     * @param name its name
     * @param savesG what the rod would weigh less with it, g; NaN where the brief alone refuses the part
     * @param partSavesG what the part itself weighs less, g
     * @param breach the rule it breaks, everything else staying as it is; null where it is legal
     * @param found the rod with it where it is legal, or which breaks the rule; null where the brief alone refuses it
     * @param tradeOffs that rod against the build, all six objectives; empty where it is not legal
     * @param sentence why it was not taken
     */
    public record Line(
            Station station,
            String part,
            String name,
            double savesG,
            double partSavesG,
            @Nullable Breach breach,
            @Nullable Found found,
            List<TradeOff> tradeOffs,
            String sentence) {
        public Line {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }

    /** From butt to tip; at each station legal ones first, what saves most first. */
    public static List<Line> of(Inquiry inquiry, Found build) {
        List<Line> lines = new ArrayList<>();
        TreeSet<Station> stations = new TreeSet<>(build.build().choices().keySet());
        stations.add(Station.BLANK);
        for (Station station : stations) {
            if (inquiry.stopped()) {
                break;
            }
            List<Line> here = new ArrayList<>();
            for (Swap swap : lighter(inquiry, build, station)) {
                here.add(line(inquiry, build, station, swap));
            }
            here.sort(Comparator.comparing((Line line) -> line.breach() != null)
                    .thenComparingDouble(line -> -line.partSavesG())
                    .thenComparing(Line::part));
            lines.addAll(here);
        }
        return lines;
    }

    private static List<Swap> lighter(Inquiry inquiry, Found build, Station station) {
        Swaps swaps = new Swaps(inquiry, build.build(), station);
        Part now = Objects.requireNonNull(build.rod().partAt(station));
        List<Part> lighter = swaps.parts().stream()
                .filter(part -> part.massMg() < now.massMg() && !part.id().equals(now.id()))
                .toList();
        return swaps.of(lighter).stream()
                .filter(swap -> !swap.legal() || saves(build, swap) > 0)
                .toList();
    }

    private static Line line(Inquiry inquiry, Found build, Station station, Swap swap) {
        Part part = Objects.requireNonNull(swap.part());
        Part now = Objects.requireNonNull(build.rod().partAt(station));
        Found found = swap.found();
        double saves = saves(build, swap);
        List<TradeOff> tradeOffs = found == null || swap.breach() != null
                ? List.of()
                : TradeOffs.between(found.side(0), build.side(1), inquiry.units());
        String sentence = swap.breach() != null
                ? swap.breach().sentence()
                : Unusual.added(inquiry, part, lighter(inquiry, build, found, tradeOffs));
        double partSaves = (now.massMg() - part.massMg()) / 1000.0;
        return new Line(
                station, part.id(), part.facts().name(), saves, partSaves, swap.breach(), found, tradeOffs, sentence);
    }

    private static double saves(Found build, Swap swap) {
        Found found = swap.found();
        return found == null
                ? Double.NaN
                : (build.vector().weightMg() - found.vector().weightMg()) / 1000.0;
    }

    /** Of a lighter rod: where the weight saved would be told as nought, that is said first. */
    static String lighter(Inquiry inquiry, Found build, @Nullable Found found, List<TradeOff> tradeOffs) {
        return noticed(inquiry, build, found, tradeOffs, hair(tradeOffs));
    }

    private static List<String> hair(List<TradeOff> tradeOffs) {
        return byAHair(tradeOffs) ? List.of(Phrases.of("ledger.hair")) : List.of();
    }

    /** True where the weight that a lighter rod saves would be told as nought. */
    static boolean byAHair(List<TradeOff> tradeOffs) {
        return tradeOffs.stream().anyMatch(t -> t.objective() == Objective.WEIGHT && t.same());
    }

    /** What is worse with it, what is better, in the customer's order. */
    static String costs(Inquiry inquiry, Found build, @Nullable Found found, List<TradeOff> tradeOffs) {
        return costs(inquiry, build, found, tradeOffs, List.of());
    }

    /**
     * The same as lists of parts and of lighter rods tell it: of balance and swing only what is noticed. Nearly every part moves them by some figure, and a
     * list of such figures hides those that count.
     */
    static String noticed(Inquiry inquiry, Found build, @Nullable Found found, List<TradeOff> tradeOffs) {
        return noticed(inquiry, build, found, tradeOffs, List.of());
    }

    private static String noticed(
            Inquiry inquiry, Found build, @Nullable Found found, List<TradeOff> tradeOffs, List<String> first) {
        Predicate<TradeOff> felt = t -> t.noticeable() || !FELT.contains(t.objective());
        List<TradeOff> told = tradeOffs.stream().filter(felt).toList();
        boolean unsaid = tradeOffs.stream().anyMatch(felt.negate().and(t -> !t.same()));
        return costs(inquiry, build, found, told, first, unsaid ? "ledger.alike" : "whynot.same");
    }

    private static String costs(
            Inquiry inquiry, Found build, @Nullable Found found, List<TradeOff> tradeOffs, List<String> first) {
        return costs(inquiry, build, found, tradeOffs, first, "whynot.same");
    }

    private static String costs(
            Inquiry inquiry,
            Found build,
            @Nullable Found found,
            List<TradeOff> tradeOffs,
            List<String> first,
            String none) {
        List<TradeOff> ranked = new ArrayList<>(tradeOffs);
        ranked.removeIf(TradeOff::same);
        ranked.sort(Comparator.comparingDouble(t -> -inquiry.brief().priority(t.objective())));
        List<String> worse = new ArrayList<>();
        List<String> better = new ArrayList<>(first);
        ranked.forEach(t -> (t.better() ? better : worse).add(t.plain()));
        if (found != null) {
            worse.addAll(Missed.losses(Missed.of(found.rod(), build.rod())));
            better.addAll(Missed.with(Missed.of(build.rod(), found.rod())));
        }
        if (worse.isEmpty() && better.isEmpty()) {
            return Phrases.of(none);
        }
        String key = worse.isEmpty() ? "ledger.better" : better.isEmpty() ? "ledger.worse" : "ledger.both";
        return Phrases.of(key, Phrases.list(better), Phrases.list(worse));
    }
}
