package withy.benchmarks;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.explain.Inquiry;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.oracle.Enumeration;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.Search;

/**
 * A piece of a catalogue small enough to enumerate and still with a choice of looks: the parts of the best build, of the best under each objective
 * alone, and of the best without what is seen of these, added one build after the other as long as there are not too many builds. The reel stays
 * where rank 1 has it, grips may only be cut a little.
 *
 * @param catalog the parts
 * @param query the question
 * @param builds how many builds there are
 */
record Excerpt(Catalog catalog, Query query, long builds) {
    /** How much of a grip may be cut off, mm. */
    private static final double CUT_MM = 5;

    private static final Station[] SEEN = {Station.BLANK, Station.SEAT, Station.REAR_GRIP, Station.guide(1)};

    /** Null where there is no legal build, or already the first has too many beside it. */
    static @Nullable Excerpt of(Shop shop, Scenario scenario, long most) {
        Catalog all = littleCut(shop.catalog());
        Search search = new Search(all);
        Build first = best(search, scenario.query());
        if (first == null) {
            return null;
        }
        Query query = scenario.query().fixing(Map.of(), Set.of(), first.layout().reelFootMm());
        Excerpt excerpt = null;
        Set<String> ids =
                new TreeSet<>(Set.of(all.rates().houseFinish(), all.rates().houseAdhesive()));
        for (Build build : others(search, query, first)) {
            Set<String> more = new TreeSet<>(ids);
            more.add(build.layout().blankId());
            build.choices().values().forEach(choice -> more.add(choice.partId()));
            Excerpt larger = among(all, query, more);
            if (larger.builds() <= most) {
                ids = more;
                excerpt = larger;
            }
        }
        return excerpt;
    }

    private static Set<Build> others(Search search, Query query, Build first) {
        Set<Build> builds = new LinkedHashSet<>(List.of(first));
        for (Station station : SEEN) {
            String id = first.partAt(station);
            if (id != null) {
                add(builds, best(search, query.refusing(Set.of(id))));
            }
        }
        for (Objective objective : Objective.values()) {
            add(builds, best(search, query.withPriorities(Inquiry.only(objective))));
        }
        return builds;
    }

    private static void add(Set<Build> to, @Nullable Build build) {
        if (build != null) {
            to.add(build);
        }
    }

    private static @Nullable Build best(Search search, Query query) {
        return search.solve(query, new Cap(Cap.WARM_SECONDS).watch()).build();
    }

    private static Excerpt among(Catalog all, Query query, Set<String> ids) {
        List<Part> parts = new ArrayList<>(all.byId().values());
        parts.removeIf(part -> !ids.contains(part.id()));
        Catalog some = new Catalog(all.rates(), all.asOf(), "excerpt of " + all.hash(), parts);
        return new Excerpt(some, query, new Enumeration(some, query, true).count());
    }

    private static Catalog littleCut(Catalog catalog) {
        List<Part> parts = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            parts.add(
                    part instanceof Grip grip && grip.place() != Grip.Place.FULL
                            ? Changed.with(grip, "shortestMm", Math.max(grip.shortestMm(), grip.lengthMm() - CUT_MM))
                            : part);
        }
        return new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts);
    }
}
