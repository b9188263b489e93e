package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.NearWord;
import withy.catalog.Part;
import withy.rod.Station;

/**
 * One line of the parts of a build file: a station, the part at it and how long it is cut.
 *
 * @param line the line's tree
 * @param path where it stands in the file
 * @param notes takes its faults
 */
record BuildLine(JsonNode line, String path, Catalog catalog, BuildNotes notes) {
    @Nullable
    Station station(@Nullable Integer guides) {
        String key = line.path("station").asText("");
        Station station = Station.parse(key);
        if (station == null) {
            TreeSet<String> keys = new TreeSet<>();
            for (Station.Place place : Station.Place.values()) {
                keys.add(place == Station.Place.GUIDE ? "guide-1" : new Station(place, 0).key());
            }
            String near = NearWord.to(key, keys);
            notes.fault(
                    path + ".station",
                    line.path("station"),
                    "one of " + String.join(", ", keys) + " … guide-" + Station.MOST_GUIDES,
                    near.isEmpty() ? "Maybe copy the names from an answer." : "Maybe \"" + near + "\" was meant.");
            return null;
        }
        if (guides != null && station.number() > guides) {
            notes.fault(
                    path + ".station",
                    line.path("station"),
                    "guide-1 to guide-" + guides + ", as layout.guideCount says",
                    "Maybe guideCount is too small.");
            return null;
        }
        return station;
    }

    @Nullable
    Part part() {
        String id = line.path("part").asText("");
        Part part = catalog.find(id);
        if (part == null) {
            notes.fault(path + ".part", line.path("part"), "an id of the catalogue", PartIds.maybe(id, catalog));
        }
        return part;
    }

    /** Only grips that are not full-length are cut to a length; a length equal to the grip's own means not cut. */
    double cut(Station station, @Nullable HandleForm form, Part part) {
        JsonNode length = line.path("lengthMm");
        boolean follows = form == HandleForm.FULL && station.equals(Station.REAR_GRIP);
        if (!(part instanceof Grip grip) || follows || length.isMissingNode() || length.isNull()) {
            return 0;
        }
        double mm = length.doubleValue();
        if (!length.isNumber() || mm <= 0 || mm > grip.lengthMm()) {
            notes.fault(
                    path + ".lengthMm",
                    length,
                    "above 0 up to the grip's own " + grip.lengthMm() + " mm",
                    "Maybe leave it out for a grip that is not cut.");
            return 0;
        }
        return mm == grip.lengthMm() ? 0 : mm;
    }
}
