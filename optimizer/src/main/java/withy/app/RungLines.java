package withy.app;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.app.OutAnswer.RungLine;
import withy.app.OutAnswer.Standing;
import withy.app.OutAnswer.Swap;
import withy.app.OutDesk.Event;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.explain.Phrases;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.search.ChangeLadder.Rung;
import withy.shop.Need;
import withy.shop.Snapshot;

/** Writes down the rungs of one job beside its agreed rod. */
final class RungLines {
    private final Workshop workshop;
    private final Catalog catalog;
    private final Brief brief;
    private final Rod agreed;
    private final Snapshot snapshot;
    private final Map<String, Integer> held;
    private final Event event;

    RungLines(
            Workshop workshop,
            Catalog catalog,
            Brief brief,
            Rod agreed,
            Snapshot snapshot,
            Map<String, Integer> held,
            Event event) {
        this.workshop = workshop;
        this.catalog = catalog;
        this.brief = brief;
        this.agreed = agreed;
        this.snapshot = snapshot;
        this.held = held;
        this.event = event;
    }

    RungLine line(Rung rung, Build build) {
        Rod rod = Rod.measure(catalog, brief, build);
        Standing then = Standing.of(rod);
        Standing before = Standing.of(agreed);
        LocalDate ready = ready(rod);
        return new RungLine(
                rung.most(),
                rung.changed(),
                then,
                Sheets.rounded(then.weightG() - before.weightG(), 3),
                Sheets.rounded(then.balanceMm() - before.balanceMm(), 2),
                then.priceMinor() - before.priceMinor(),
                Sheets.rounded(Scoring.steps(rung.score() - score(agreed)), 4),
                ready == null ? null : ready.toString(),
                daysLate(ready, brief.wantedBy()),
                rung.proven(),
                swaps(agreed.build(), build),
                BuildFile.of(build));
    }

    private long score(Rod rod) {
        Scoring scoring = Scoring.of(brief, catalog.rates());
        return scoring.score(ObjectiveVector.of(rod, new Style(catalog, brief), new NiceWishes(brief)));
    }

    private @Nullable LocalDate ready(Rod rod) {
        LocalDate ready = workshop.day();
        for (Need need : Agreed.needs(rod)) {
            Integer own = held.get(need.part());
            LocalDate day = snapshot.delivered(need.part(), need.pieces() - (own == null ? 0 : own), workshop.day());
            if (day == null) {
                return null;
            }
            ready = day.isAfter(ready) ? day : ready;
        }
        return ready;
    }

    private List<Swap> swaps(Build from, Build to) {
        Map<List<@Nullable String>, List<String>> places = new LinkedHashMap<>();
        Set<Station> stations = new TreeSet<>(from.choices().keySet());
        stations.addAll(to.choices().keySet());
        stations.add(Station.BLANK);
        for (Station station : stations) {
            String old = from.partAt(station);
            String now = to.partAt(station);
            if (!Objects.equals(old, now)) {
                places.computeIfAbsent(Arrays.asList(old, now), key -> new ArrayList<>())
                        .add(station.key());
            }
        }
        List<Swap> swaps = new ArrayList<>();
        places.forEach((pair, keys) -> {
            String old = pair.get(0);
            String now = pair.get(1);
            swaps.add(new Swap(
                    keys,
                    old,
                    now,
                    old == null ? null : workshop.name(old),
                    now == null ? null : workshop.name(now),
                    why(old, now)));
        });
        return swaps;
    }

    private String why(@Nullable String old, @Nullable String now) {
        if (old != null && old.equals(event.part())) {
            return Phrases.of(event.priceMinor() == null ? "text.out.why.gone" : "text.out.why.dearer");
        }
        return Phrases.of(
                old == null ? "text.out.why.added" : now == null ? "text.out.why.dropped" : "text.out.why.goes");
    }

    /** Days from the day wanted to a day; 0 in time, or where either is not known. */
    static long daysLate(@Nullable LocalDate day, @Nullable LocalDate wanted) {
        return day == null || wanted == null ? 0 : Math.max(0, ChronoUnit.DAYS.between(wanted, day));
    }
}
