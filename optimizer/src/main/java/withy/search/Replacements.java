package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.search.ChangeLadder.Situation;

/** Parts that may take the place of others in a build, and the small searches that ask which should. */
final class Replacements {
    private final Catalog catalog;
    private final Candidates candidates;
    private final Map<String, Search> searches = new LinkedHashMap<>();

    private Replacements(Catalog catalog, Candidates candidates) {
        this.catalog = catalog;
        this.candidates = candidates;
    }

    static Replacements of(Situation situation) {
        return new Replacements(situation.catalog(), Candidates.of(situation.catalog(), situation.query()));
    }

    /** Parts that are offered for a station. */
    List<Part> at(Station station) {
        return candidates.of(kind(station));
    }

    /**
     * A search over what stays and what may take the place of the rest: the answer is the same as over the whole catalogue, the question much
     * smaller.
     *
     * @param gone parts that are to be replaced
     */
    Search search(Set<Station> free, Map<Station, Choice> fixed, Set<String> gone) {
        Set<PartKind> kinds = new TreeSet<>();
        free.forEach(station -> kinds.add(kind(station)));
        Set<String> ids = new TreeSet<>();
        fixed.values().forEach(choice -> ids.add(choice.partId()));
        // A butt grip that stays means a split handle, which no full grip goes with.
        boolean split = fixed.containsKey(Station.BUTT_GRIP);
        for (PartKind kind : kinds) {
            for (Part part : candidates.of(kind)) {
                if (!(split && part instanceof Grip grip && grip.place() == Grip.Place.FULL)) {
                    ids.add(part.id());
                }
            }
        }
        ids.removeAll(gone);
        ids.add(catalog.rates().houseFinish());
        ids.add(catalog.rates().houseAdhesive());
        return searches.computeIfAbsent(String.join(" ", ids), key -> new Search(catalog.only(ids)));
    }

    /** All places a choice can stand at, guides up to the most there can be, but the blank. */
    static List<Station> stations() {
        List<Station> all = new ArrayList<>();
        for (Station.Place place : Station.Place.values()) {
            if (place != Station.Place.GUIDE && place != Station.Place.BLANK) {
                all.add(new Station(place, 0));
            }
        }
        for (int number = 1; number <= Station.MOST_GUIDES; number++) {
            all.add(Station.guide(number));
        }
        return all;
    }

    private static PartKind kind(Station station) {
        return switch (station.place()) {
            case BUTT_CAP -> PartKind.BUTT_CAP;
            case BUTT_GRIP, REAR_GRIP, FORE_GRIP -> PartKind.GRIP;
            case REAR_CHECK, FORE_CHECK, WINDING_CHECK -> PartKind.CHECK;
            case SEAT -> PartKind.REEL_SEAT;
            case HOOD -> PartKind.HOOD;
            case SEAT_ARBORS -> PartKind.ARBOR;
            case KEEPER -> PartKind.KEEPER;
            case GUIDE -> PartKind.GUIDE;
            case TIP_TOP -> PartKind.TIP_TOP;
            case THREAD -> PartKind.THREAD;
            case FINISH -> PartKind.FINISH;
            case ADHESIVE -> PartKind.ADHESIVE;
            case DECAL -> PartKind.DECAL;
            case BLANK -> PartKind.BLANK;
        };
    }
}
