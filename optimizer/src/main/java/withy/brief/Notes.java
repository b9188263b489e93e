package withy.brief;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import withy.brief.BriefFault.Notation;

/** What is noted while one brief is read: faults, defaults taken, and which keys each object was asked for. */
final class Notes {
    private final Map<String, BriefText.Place> places;
    private final List<BriefFault> faults = new ArrayList<>();
    private final List<String> defaults = new ArrayList<>();
    private final Map<String, SortedSet<String>> asked = new TreeMap<>();

    Notes(Map<String, BriefText.Place> places) {
        this.places = places;
    }

    /** Notes a fault at a path; what is missing is placed at the object it is missing from. */
    void fault(String path, String value, String plain, String maybe, Notation... notation) {
        BriefText.Place place = BriefText.Place.NONE;
        for (String at = path; place.line() == 0 && !places.isEmpty(); at = parent(at)) {
            place = places.getOrDefault(at, BriefText.Place.NONE);
            if (at.isEmpty()) {
                break;
            }
        }
        faults.add(new BriefFault(path, place.line(), place.column(), value, plain, maybe, Set.of(notation)));
    }

    /** Notes that a default was taken. */
    void taken(Default which, Object... facts) {
        defaults.add(which.sentence(facts));
    }

    /** Notes a sentence about a default made elsewhere. */
    void taken(String sentence) {
        defaults.add(sentence);
    }

    void asked(String path, String key) {
        asked.computeIfAbsent(path, p -> new TreeSet<>()).add(key);
    }

    /** Keys asked for so far by the path of their object, list numbers left out. */
    Map<String, SortedSet<String>> asked() {
        return Collections.unmodifiableMap(asked);
    }

    /** In the order of the text. */
    List<BriefFault> faults() {
        List<BriefFault> sorted = new ArrayList<>(faults);
        sorted.sort(Comparator.comparingInt(BriefFault::line).thenComparingInt(BriefFault::column));
        return sorted;
    }

    List<String> defaults() {
        return List.copyOf(defaults);
    }

    private static String parent(String path) {
        int dot = Math.max(path.lastIndexOf('.'), path.lastIndexOf('['));
        return dot < 0 ? "" : path.substring(0, dot);
    }
}
