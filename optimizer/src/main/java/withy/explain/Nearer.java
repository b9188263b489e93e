package withy.explain;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/**
 * A build that breaks rules brought nearer to the best rod: place by place it takes what the best rod has there, as long as it keeps the parts that
 * must be in and breaks no other rule. What is then broken is the parts' own doing, not that of a neighbour picked at random.
 */
final class Nearer {
    private static final List<Station.Place> GUIDES = List.of(Station.Place.GUIDE, Station.Place.TIP_TOP);

    /** What is taken at once: a part there may go only with its neighbours. */
    private static final List<List<Station.Place>> TOGETHER = List.of(
            GUIDES,
            List.of(Station.Place.SEAT, Station.Place.HOOD, Station.Place.SEAT_ARBORS),
            List.of(Station.Place.BUTT_CAP, Station.Place.BUTT_GRIP, Station.Place.REAR_GRIP, Station.Place.REAR_CHECK),
            List.of(Station.Place.FORE_GRIP, Station.Place.FORE_CHECK, Station.Place.WINDING_CHECK));

    private final Build best;
    private final Set<String> parts;
    private final Predicate<Build> keeps;
    private Build now;

    private Nearer(Build best, Build now, Set<String> parts, Predicate<Build> keeps) {
        this.best = best;
        this.now = now;
        this.parts = parts;
        this.keeps = keeps;
    }

    /**
     * The nearer build.
     *
     * @param first the best rod
     * @param build holds the parts
     * @param parts stay in
     * @param broken rules it may break
     */
    static Found of(Inquiry inquiry, Found first, Found build, Set<String> parts, Set<String> broken) {
        Rulebook kept = inquiry.rulebooks().without(broken);
        Predicate<Build> keeps = next -> Judge.legal(inquiry.measured(next).rod(), kept);
        Build nearer = of(first.build(), build.build(), parts, keeps);
        return nearer.equals(build.build()) ? build : inquiry.measured(nearer);
    }

    /**
     * The same where something else must be kept.
     *
     * @param best the best rod
     * @param build holds the parts and keeps what must be kept
     * @param parts stay in
     * @param keeps true of what keeps it
     */
    static Build of(Build best, Build build, Set<String> parts, Predicate<Build> keeps) {
        Nearer nearer = new Nearer(best, build, parts, keeps);
        nearer.layout();
        TOGETHER.forEach(nearer::take);
        Build before;
        do {
            before = nearer.now;
            nearer.each();
        } while (nearer.now != before);
        return nearer.now;
    }

    /** The best rod's blank, reel and guides. */
    private void layout() {
        Build next = new Build(best.layout(), now.choices());
        for (Station station : allStations()) {
            next = GUIDES.contains(station.place()) ? with(next, station) : next;
        }
        take(next);
    }

    private void take(List<Station.Place> places) {
        Build next = now;
        for (Station station : stations()) {
            next = places.contains(station.place()) ? with(next, station) : next;
        }
        take(next);
    }

    private void each() {
        for (Station station : stations()) {
            take(with(now, station));
        }
    }

    private List<Station> allStations() {
        Set<Station> stations = new LinkedHashSet<>(now.choices().keySet());
        stations.addAll(best.choices().keySet());
        return new ArrayList<>(stations);
    }

    /** Guides only where there are as many. */
    private List<Station> stations() {
        boolean guides = now.layout().guideCount() == best.layout().guideCount();
        return allStations().stream()
                .filter(station -> guides || station.place() != Station.Place.GUIDE)
                .toList();
    }

    private Build with(Build build, Station station) {
        Choice choice = best.choices().get(station);
        return choice == null ? build.without(station) : build.with(station, choice);
    }

    private void take(Build next) {
        if (!next.equals(now) && next.holds(parts) && keeps.test(next)) {
            now = next;
        }
    }
}
