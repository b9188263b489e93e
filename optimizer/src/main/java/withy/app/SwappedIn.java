package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Drawer;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.rod.Build;
import withy.rod.Station;

/**
 * What a part would do in a build that is known, with all else as it is: soon told, while the best rod with it is looked for.
 *
 * @param station where it would stand; empty where the brief alone refuses it
 * @param instead name of the part that is there; empty where nothing is
 * @param sentence what it would do, or the rule it breaks
 * @param legal false where it breaks a rule, which other parts around it may keep unless the brief alone refuses it
 */
public record SwappedIn(String station, String instead, String sentence, boolean legal) {
    /** Places a rod may do without a part at, and what goes there. */
    private static final Map<Station, PartKind> MAYBE_EMPTY = new TreeMap<>(Map.of(
            Station.BUTT_GRIP, PartKind.GRIP,
            Station.FORE_GRIP, PartKind.GRIP,
            Station.REAR_CHECK, PartKind.CHECK,
            Station.FORE_CHECK, PartKind.CHECK,
            Station.WINDING_CHECK, PartKind.CHECK,
            Station.KEEPER, PartKind.KEEPER,
            Station.SEAT_ARBORS, PartKind.ARBOR,
            Station.DECAL, PartKind.DECAL));

    /**
     * Of a part; null where it is in the build, has no place there, or is a blank that the brief does not refuse: no other part stays in its place on another
     * blank.
     */
    public static @Nullable SwappedIn of(Inquiry inquiry, Build build, Part part) {
        Found there = inquiry.measured(build);
        if (build.holds(Set.of(part.id()))) {
            return null;
        }
        SwappedIn broken = null;
        for (Station station : stations(inquiry, build, part)) {
            // of a blank only what the brief alone refuses: all else is a search
            Set<String> looked = station.equals(Station.BLANK) ? Set.of() : Set.of(part.id());
            for (Drawer.Line line : Drawer.of(inquiry, there, station, looked).lines()) {
                if (!line.part().equals(part.id())) {
                    continue;
                }
                SwappedIn in = new SwappedIn(
                        line.found() == null ? "" : station.key(),
                        name(inquiry, build.partAt(station)),
                        line.sentence(),
                        line.breach() == null);
                if (in.legal()) {
                    return in;
                }
                broken = broken == null ? in : broken;
            }
        }
        return broken;
    }

    private static String name(Inquiry inquiry, @Nullable String part) {
        return part == null
                ? ""
                : Objects.requireNonNull(inquiry.catalog().find(part)).facts().name();
    }

    /** Where parts of its kind are, then where one may be. */
    private static List<Station> stations(Inquiry inquiry, Build build, Part part) {
        List<Station> stations = new ArrayList<>();
        build.choices().forEach((station, choice) -> {
            Part now = inquiry.catalog().find(choice.partId());
            if (now != null && now.kind() == part.kind()) {
                stations.add(station);
            }
        });
        MAYBE_EMPTY.forEach((station, kind) -> {
            if (kind == part.kind() && build.partAt(station) == null) {
                stations.add(station);
            }
        });
        if (part.kind() == PartKind.BLANK) {
            stations.add(Station.BLANK);
        }
        return stations;
    }
}
