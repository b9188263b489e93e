package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.brief.BriefFault;
import withy.brief.BriefText;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.NearWord;
import withy.catalog.Part;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;

/**
 * Reads a build file: an entry of {@code builds} in an answer, of which layout and parts count and the rest is left aside. Every fault comes in
 * one list with its line and column; a build that merely breaks rules is no fault.
 */
public final class BuildReader {
    private static final int MOST_PARTS = 60;
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final Catalog catalog;
    private final BriefText text;
    private final BuildNotes notes;

    private BuildReader(Catalog catalog, BriefText text) {
        this.catalog = catalog;
        this.text = text;
        this.notes = new BuildNotes(text);
    }

    /**
     * What came of reading a build.
     *
     * @param build the build, or null where there is a fault
     * @param faults all faults in the order of the text
     */
    public record Reading(@Nullable Build build, List<BriefFault> faults) {
        public Reading {
            faults = List.copyOf(faults);
        }
    }

    /** A build of our own writing; only its layout and parts are looked at. */
    public static Build written(BuildSheet sheet, Catalog catalog) {
        ObjectNode tree = MAPPER.createObjectNode();
        tree.set("layout", MAPPER.valueToTree(sheet.layout()));
        tree.set("parts", MAPPER.valueToTree(sheet.parts()));
        Build build = new BuildReader(catalog, new BriefText(tree, Map.of()))
                .reading()
                .build();
        if (build == null) {
            throw new OurFault("a build that was written can't be read");
        }
        return build;
    }

    /** Reads a text against the catalogue. */
    public static Reading read(String json, Catalog catalog) {
        if (json.isBlank()) {
            return new Reading(
                    null,
                    List.of(new BriefFault(
                            "", 1, 1, "nothing", "a build with layout and parts", "Maybe the file was saved empty.")));
        }
        try {
            return new BuildReader(catalog, BriefText.read(json)).reading();
        } catch (BriefText.Unreadable e) {
            return new Reading(null, List.of(e.fault().in("build")));
        }
    }

    private Reading reading() {
        JsonNode root = text.tree();
        if (!root.isObject()) {
            notes.fault("", root, "a JSON object", "Maybe the outer braces are missing.");
            return reading(null);
        }
        if (root.has("builds")) {
            notes.fault(
                    "builds", "several builds", "one build", "Maybe copy one entry of builds into a file of its own.");
            return reading(null);
        }
        JsonNode schema = root.path("schema");
        if (!schema.isMissingNode() && schema.intValue() != Answer.SCHEMA) {
            String maybe =
                    "Maybe a newer withy wrote it: a version that knows build schema " + schema.asText() + " reads it.";
            notes.fault("schema", schema, "the number " + Answer.SCHEMA, maybe);
            return reading(null);
        }
        return reading(build(root));
    }

    private Reading reading(@Nullable Build build) {
        return new Reading(notes.isEmpty() ? build : null, notes.faults());
    }

    private @Nullable Build build(JsonNode root) {
        JsonNode layout = root.path("layout");
        if (!layout.isObject()) {
            notes.fault(
                    "layout",
                    layout,
                    "an object with reelFootMm, handle and guideCount",
                    "Maybe copy it from an answer.");
        }
        known(layout, "layout", "reelFootMm", "handle", "guideCount");
        Integer guides = whole(layout, "guideCount", Station.MOST_GUIDES);
        HandleForm form = form(layout);
        SortedMap<Station, Part> parts = new TreeMap<>();
        SortedMap<Station, Choice> choices = new TreeMap<>();
        parts(root, guides, form, parts, choices);
        Part blank = parts.get(Station.BLANK);
        if (blank == null && notes.isEmpty()) {
            notes.fault(
                    "parts",
                    "no blank",
                    "a part at the station blank",
                    "Maybe add {\"station\": \"blank\", \"part\": …}.");
        }
        int longest = blank instanceof Blank b ? (int) b.lengthMm() : 6000;
        Integer foot = whole(layout, "reelFootMm", longest);
        needsSeat(choices);
        if (foot == null || guides == null || form == null || blank == null) {
            return null;
        }
        choices.remove(Station.BLANK);
        return new Build(new Layout(blank.id(), foot, form, guides), choices);
    }

    private void parts(
            JsonNode root,
            @Nullable Integer guides,
            @Nullable HandleForm form,
            SortedMap<Station, Part> parts,
            SortedMap<Station, Choice> choices) {
        JsonNode list = root.path("parts");
        if (!list.isArray() || list.size() > MOST_PARTS) {
            notes.fault(
                    "parts",
                    list,
                    "a list in square brackets of at most " + MOST_PARTS,
                    "Maybe copy it from an answer.");
            return;
        }
        for (int i = 0; i < list.size(); i++) {
            String path = "parts[" + i + "]";
            BuildLine line = new BuildLine(list.get(i), path, catalog, notes);
            Station station = line.station(guides);
            Part part = line.part();
            if (station == null || part == null) {
                continue;
            }
            if (!Stations.takes(station.place(), part.kind())) {
                notes.fault(
                        path + ".part",
                        list.get(i).path("part"),
                        "a part that goes at " + station.key() + ", not a "
                                + part.kind().word(),
                        "Maybe the stations of two parts are swapped.");
            } else if (parts.putIfAbsent(station, part) != null) {
                notes.fault(
                        path + ".station",
                        list.get(i).path("station"),
                        "each station once",
                        "Maybe the line was copied.");
            } else {
                choices.put(station, new Choice(part.id(), line.cut(station, form, part)));
            }
        }
    }

    private void needsSeat(SortedMap<Station, Choice> choices) {
        boolean loose = choices.containsKey(Station.HOOD) || choices.containsKey(Station.SEAT_ARBORS);
        if (loose && !choices.containsKey(Station.SEAT) && notes.isEmpty()) {
            notes.fault(
                    "parts",
                    "no seat",
                    "a part at the station seat under hood and arbors",
                    "Maybe the seat's line is missing.");
        }
    }

    private @Nullable HandleForm form(JsonNode layout) {
        String word = layout.path("handle").asText("");
        if (word.equals("split") || word.equals("full")) {
            return word.equals("split") ? HandleForm.SPLIT : HandleForm.FULL;
        }
        if (layout.isObject()) {
            notes.fault("layout.handle", layout.path("handle"), "split or full", "Maybe copy it from an answer.");
        }
        return null;
    }

    private @Nullable Integer whole(JsonNode layout, String key, int most) {
        JsonNode value = layout.path(key);
        if (value.isNumber()
                && value.doubleValue() == Math.rint(value.doubleValue())
                && value.doubleValue() >= 1
                && value.doubleValue() <= most) {
            return (int) value.doubleValue();
        }
        if (layout.isObject()) {
            notes.fault(
                    "layout." + key,
                    value,
                    "a whole number, 1 to " + most,
                    "Maybe a digit is missing or one too many.");
        }
        return null;
    }

    private void known(JsonNode node, String path, String... keys) {
        TreeSet<String> known = new TreeSet<>(List.of(keys));
        for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!known.contains(name)) {
                String near = NearWord.to(name, known);
                notes.fault(
                        path + "." + name,
                        "unknown key \"" + name + "\"",
                        "only " + String.join(", ", known),
                        near.isEmpty() ? "Maybe drop it." : "Maybe \"" + near + "\" was meant.");
            }
        }
    }
}
