package withy.search;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.rod.Station;

/**
 * Lays out every blank of a ground under every placing of forced and refused parts that allows it. The placings asked for last are kept, and always those that say nothing: what
 * they have in common ({@link Shared}) is worked out once. Not for several threads at once.
 */
final class Sites {
    /** Placings kept besides those that say nothing. */
    private static final int MOST_KEPT = 3;

    private final Ground ground;
    private final Shared shared = new Shared();
    private final Map<String, Spacings> spacings = new HashMap<>();
    private final ArrayDeque<Laid> laid = new ArrayDeque<>();

    Sites(Ground ground) {
        this.ground = ground;
    }

    private record Laid(List<Stations> placings, List<Site> sites) {
        boolean freely() {
            return placings.stream().allMatch(Stations::none);
        }
    }

    /** The sites under some placings. */
    List<Site> under(List<Stations> placings) {
        for (Iterator<Laid> all = laid.iterator(); all.hasNext(); ) {
            Laid one = all.next();
            if (one.placings.equals(placings)) {
                all.remove();
                laid.addFirst(one);
                return one.sites;
            }
        }
        shared.tidy();
        Laid now = new Laid(placings, now(placings));
        laid.addFirst(now);
        if (laid.stream().filter(one -> !one.freely()).count() > MOST_KEPT) {
            List<Laid> bound = laid.stream().filter(one -> !one.freely()).toList();
            laid.remove(bound.get(bound.size() - 1));
        }
        return now.sites;
    }

    private List<Site> now(List<Stations> placings) {
        Map<Stations, Function<HandleForm, Shelf>> shelves = new HashMap<>();
        List<Site> all = new ArrayList<>();
        for (Blank blank : ground.blanks) {
            Spacings where = spacings.computeIfAbsent(blank.id(), id -> new Spacings(ground, ground.shape(blank)));
            for (Stations placing : placings) {
                if (placing.allows(Station.BLANK, blank)) {
                    Function<HandleForm, Shelf> ready = shelves.computeIfAbsent(placing.ofHandle(), this::shelves);
                    all.add(new Site(ground, where, placing, ready, shared));
                }
            }
        }
        return all;
    }

    private Function<HandleForm, Shelf> shelves(Stations handle) {
        Map<HandleForm, Shelf> made = new EnumMap<>(HandleForm.class);
        return form ->
                made.computeIfAbsent(form, any -> shared.shelf(handle, form, () -> new Shelf(ground, handle, form)));
    }
}
