package withy.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.Solver;
import withy.rod.Station;
import withy.search.Candidates;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Refused;
import withy.search.Search;

/** The program's own search. */
public final class SearchChooser implements Chooser {
    private final Search search;

    /** Over one reading of the shop. */
    public SearchChooser(Catalog catalog) {
        this.search = new Search(catalog);
    }

    @Override
    public Solver.Solution solve(Query query, Watch watch) {
        return search.solve(query, watch);
    }

    @Override
    public Solver.Solution any(Query query, Watch watch) {
        return search.any(query, watch);
    }

    @Override
    public List<Proposal> offer(Query query, Watch watch) {
        return Offer.three(search, query, watch);
    }

    @Override
    public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> best) {
        return Offer.three(search, query, watch, best);
    }

    @Override
    public Map<Station.Place, Fit> fits(Query query) {
        Candidates candidates = search.candidates(query);
        Map<Station.Place, Fit> fits = new EnumMap<>(Station.Place.class);
        for (Station.Place place : Station.Place.values()) {
            fits.put(place, new Fit(offered(candidates, place), refusals(candidates, place)));
        }
        return fits;
    }

    private static int offered(Candidates candidates, Station.Place place) {
        int count = 0;
        for (PartKind kind : PartKind.values()) {
            for (Part part : candidates.of(kind)) {
                count += Stations.soldFor(place, part) ? 1 : 0;
            }
        }
        return count;
    }

    private static List<Refusals> refusals(Candidates candidates, Station.Place place) {
        Map<List<String>, Integer> counts = new TreeMap<>(
                Comparator.comparing((List<String> key) -> key.get(0)).thenComparing(key -> key.get(1)));
        for (Refused refused : candidates.refused()) {
            if (Stations.soldFor(place, refused.part())) {
                counts.merge(List.of(refused.why().rule(), refused.why().check()), 1, Integer::sum);
            }
        }
        List<Refusals> list = new ArrayList<>();
        counts.forEach((key, count) -> list.add(new Refusals(key.get(0), key.get(1), count)));
        list.sort(Comparator.comparingInt(Refusals::parts).reversed());
        return list;
    }
}
