package withy.app;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
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
    private static final Comparator<List<String>> BY_RULE_AND_CHECK =
            Comparator.comparing((List<String> key) -> key.get(0)).thenComparing(key -> key.get(1));

    /** Places that parts of a kind may be sold for. */
    private static final Map<PartKind, List<Station.Place>> PLACES = places();

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
    public Solver.Solution solveAlone(Query query, Watch watch) {
        return search.solveAlone(query, watch);
    }

    @Override
    public Solver.Solution any(Query query, Watch watch) {
        return search.any(query, watch);
    }

    @Override
    public boolean mayHold(Query query, Watch watch) {
        return search.mayHold(query, watch);
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
    public List<Proposal> offer(Query query, Watch watch, @Nullable Solution known, Consumer<Proposal> best) {
        return Offer.three(search, query, watch, known, best);
    }

    @Override
    public Map<Station.Place, Fit> fits(Query query) {
        Candidates candidates = search.candidates(query);
        Map<Station.Place, Integer> offered = new EnumMap<>(Station.Place.class);
        Map<Station.Place, Map<List<String>, Integer>> refused = new EnumMap<>(Station.Place.class);
        for (PartKind kind : PartKind.values()) {
            for (Part part : candidates.of(kind)) {
                places(part).forEach(place -> offered.merge(place, 1, Integer::sum));
            }
        }
        for (Refused one : candidates.refused()) {
            List<String> why = List.of(one.why().rule(), one.why().check());
            places(one.part())
                    .forEach(place -> refused.computeIfAbsent(place, any -> new TreeMap<>(BY_RULE_AND_CHECK))
                            .merge(why, 1, Integer::sum));
        }
        Map<Station.Place, Fit> fits = new EnumMap<>(Station.Place.class);
        for (Station.Place place : Station.Place.values()) {
            fits.put(place, new Fit(offered.getOrDefault(place, 0), refusals(refused.getOrDefault(place, Map.of()))));
        }
        return fits;
    }

    /** Places a part is sold for. */
    private static List<Station.Place> places(Part part) {
        return PLACES.getOrDefault(part.kind(), List.of()).stream()
                .filter(place -> Stations.soldFor(place, part))
                .toList();
    }

    private static List<Refusals> refusals(Map<List<String>, Integer> counts) {
        List<Refusals> list = new ArrayList<>();
        counts.forEach((key, count) -> list.add(new Refusals(key.get(0), key.get(1), count)));
        list.sort(Comparator.comparingInt(Refusals::parts).reversed());
        return list;
    }

    private static Map<PartKind, List<Station.Place>> places() {
        Map<PartKind, List<Station.Place>> places = new EnumMap<>(PartKind.class);
        for (PartKind kind : PartKind.values()) {
            places.put(
                    kind,
                    Arrays.stream(Station.Place.values())
                            .filter(place -> Stations.takes(place, kind))
                            .toList());
        }
        return places;
    }
}
