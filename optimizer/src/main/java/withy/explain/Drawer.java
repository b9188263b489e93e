package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.explain.Swaps.Swap;
import withy.explain.TradeOffs.TradeOff;
import withy.rod.Station;

/**
 * The drawer of one station of one build: every part made for it, ranked by what swapping it in would do.
 *
 * @param station where
 * @param build the build
 * @param lines legal ones first, best first; then the refused ones
 */
public record Drawer(Station station, Found build, List<Line> lines) {
    public Drawer {
        lines = List.copyOf(lines);
    }

    /**
     * One part.
     *
     * @param part its id, or empty where the station would be left empty
     * @param name its name, or a word for leaving it empty
     * @param here true for the part that is there now
     * @param breach the rule it breaks with all else as it is; null where it is legal
     * @param found the build with it; null where the brief alone refuses it
     * @param tradeOffs that build against this one, all six objectives; empty where it is not legal
     * @param sentence what it would do, or the failing rule
     */
    public record Line(
            String part,
            String name,
            boolean here,
            @Nullable Breach breach,
            @Nullable Found found,
            List<TradeOff> tradeOffs,
            String sentence) {
        public Line {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }

    /** Opens the drawer of a station, filled or empty. */
    public static Drawer of(Inquiry inquiry, Found build, Station station) {
        Swaps swaps = new Swaps(inquiry, build.build(), station);
        return of(inquiry, build, station, swaps, swaps.all());
    }

    /** Only what the brief alone refuses of it, and these parts of it. */
    public static Drawer of(Inquiry inquiry, Found build, Station station, Set<String> looked) {
        Swaps swaps = new Swaps(inquiry, build.build(), station);
        String now = build.build().partAt(station);
        List<Part> parts = swaps.parts().stream()
                .filter(part -> !part.id().equals(now) && (looked.contains(part.id()) || swaps.own(part) != null))
                .toList();
        return of(inquiry, build, station, swaps, swaps.of(parts));
    }

    private static Drawer of(Inquiry inquiry, Found build, Station station, Swaps swaps, List<Swap> others) {
        List<Swap> all = new ArrayList<>(others);
        Part now = build.rod().partAt(station);
        all.add(new Swap(now, build, Breach.first(build.rod(), inquiry.units())));
        all.sort(swaps.order());
        List<Line> lines = new ArrayList<>();
        for (Swap swap : all) {
            boolean here = swap.found() == build;
            lines.add(here ? here(inquiry, now, build) : line(inquiry, build, swap));
        }
        return new Drawer(station, build, lines);
    }

    private static Line here(Inquiry inquiry, @Nullable Part now, Found build) {
        return new Line(
                now == null ? "" : now.id(),
                now == null ? Phrases.of("drawer.empty") : now.facts().name(),
                true,
                Breach.first(build.rod(), inquiry.units()),
                build,
                List.of(),
                Phrases.of("drawer.here"));
    }

    private static Line line(Inquiry inquiry, Found build, Swap swap) {
        Part part = swap.part();
        Breach breach = swap.breach();
        Found found = swap.found();
        List<TradeOff> tradeOffs = found == null || breach != null
                ? List.of()
                : TradeOffs.between(found.side(0), build.side(1), inquiry.units());
        String sentence = breach != null
                ? breach.sentence()
                : Unusual.added(inquiry, part, Ledger.noticed(inquiry, build, found, tradeOffs));
        return new Line(
                part == null ? "" : part.id(),
                part == null ? Phrases.of("drawer.empty") : part.facts().name(),
                false,
                breach,
                found,
                tradeOffs,
                sentence);
    }
}
