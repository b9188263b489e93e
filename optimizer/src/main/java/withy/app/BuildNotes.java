package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withy.brief.BriefFault;
import withy.brief.BriefText;

/** The faults of a build file, each at the place in the text that its path names, or the nearest one around it. */
final class BuildNotes {
    private final BriefText text;
    private final List<BriefFault> faults = new ArrayList<>();

    BuildNotes(BriefText text) {
        this.text = text;
    }

    /** In the order of the text. */
    List<BriefFault> faults() {
        List<BriefFault> sorted = new ArrayList<>(faults);
        sorted.sort(Comparator.comparingInt(BriefFault::line).thenComparingInt(BriefFault::column));
        return sorted;
    }

    boolean isEmpty() {
        return faults.isEmpty();
    }

    void fault(String path, JsonNode value, String allowed, String maybe) {
        fault(path, value.isMissingNode() ? "nothing" : value.toString(), allowed, maybe);
    }

    /** @param found what is there, in words */
    void fault(String path, String found, String allowed, String maybe) {
        BriefText.Place place = BriefText.Place.NONE;
        for (String at = path; place.line() == 0; at = parent(at)) {
            place = text.places().getOrDefault(at, BriefText.Place.NONE);
            if (at.isEmpty()) {
                break;
            }
        }
        faults.add(
                new BriefFault(path.isEmpty() ? "build" : path, place.line(), place.column(), found, allowed, maybe));
    }

    private static String parent(String path) {
        int dot = Math.max(path.lastIndexOf('.'), path.lastIndexOf('['));
        return dot < 0 ? "" : path.substring(0, dot);
    }
}
