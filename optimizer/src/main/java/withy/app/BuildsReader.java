package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.BriefFault;
import withy.brief.BriefText;
import withy.catalog.Catalog;
import withy.rod.Build;

/** Reads the builds of a whole answer of {@code propose}, or one build. */
public final class BuildsReader {
    private BuildsReader() {}

    /**
     * What came of it.
     *
     * @param builds in the order of the text; empty where there is a fault
     * @param faults all faults
     * @param catalogHash of the catalogue the answer was made from; empty where the text does not tell
     */
    public record Reading(List<Build> builds, List<BriefFault> faults, String catalogHash) {
        public Reading {
            builds = List.copyOf(builds);
            faults = List.copyOf(faults);
        }
    }

    /** The brief that a whole answer brings along, or null where the text is one build, or none. */
    public static @Nullable String brief(String json) {
        try {
            JsonNode brief = BriefText.read(json).tree().path("brief");
            return brief.isObject() ? brief.toString() : null;
        } catch (BriefText.Unreadable e) {
            return null;
        }
    }

    /** Reads a text against the catalogue. */
    public static Reading read(String json, Catalog catalog) {
        List<String> texts = new ArrayList<>();
        String hash = "";
        try {
            JsonNode tree = BriefText.read(json).tree();
            if (tree.path("builds").isArray() && !tree.path("builds").isEmpty()) {
                tree.path("builds").forEach(build -> texts.add(build.toString()));
                hash = tree.path("catalogHash").asText("");
            }
        } catch (BriefText.Unreadable e) {
            return new Reading(List.of(), List.of(e.fault().in("offer")), "");
        }
        List<Build> builds = new ArrayList<>();
        List<BriefFault> faults = new ArrayList<>();
        for (String text : texts.isEmpty() ? List.of(json) : texts) {
            BuildReader.Reading one = BuildReader.read(text, catalog);
            Build build = one.build();
            if (build == null) {
                faults.addAll(one.faults());
            } else {
                builds.add(build);
            }
        }
        return new Reading(faults.isEmpty() ? builds : List.of(), faults, hash);
    }
}
