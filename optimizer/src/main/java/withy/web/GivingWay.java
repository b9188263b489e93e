package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import withy.brief.Brief;
import withy.brief.BriefWriter;

/** A brief as typed with the change of a repair in it: only what must give way is said otherwise, all else stays as it was typed. */
final class GivingWay {
    /** Ways to say the same, by the key under which a brief is written out. */
    private static final Map<String, List<String>> TWINS = Map.ofEntries(
            Map.entry("lengthMm", List.of("length")),
            Map.entry("packedMaxMm", List.of("packedMax")),
            Map.entry("reachMm", List.of("reach")),
            Map.entry("largestFishKg", List.of("largestFish")),
            Map.entry("dragKg", List.of("drag")),
            Map.entry("budgetMinor", List.of("budget")),
            Map.entry("corrosionClass", List.of("water")),
            Map.entry("wantedBy", List.of("wantedInDays")),
            Map.entry("lightestG", List.of("lightest")),
            Map.entry("usualG", List.of("usual")),
            Map.entry("heaviestG", List.of("heaviest")),
            Map.entry("palmMm", List.of("palm", "size")));

    /** What hangs together and is said anew as a whole. */
    private static final Set<String> WHOLE = Set.of("line", "leader", "reel", "insisted", "refused", "owned");

    private GivingWay() {}

    /**
     * The typed brief changed.
     *
     * @param typed as typed
     * @param now how it reads
     * @param wanted how it should read
     */
    static ObjectNode of(ObjectNode typed, Brief now, Brief wanted) {
        ObjectNode brief = typed.deepCopy();
        ObjectNode before = BriefWriter.write(now);
        ObjectNode after = BriefWriter.write(wanted);
        before.remove("defaultsUsed");
        after.remove("defaultsUsed");
        patch(brief, before, after);
        return brief;
    }

    private static void patch(ObjectNode brief, ObjectNode before, ObjectNode after) {
        for (Iterator<Map.Entry<String, JsonNode>> fields = after.fields(); fields.hasNext(); ) {
            Map.Entry<String, JsonNode> field = fields.next();
            String key = field.getKey();
            JsonNode said = field.getValue();
            JsonNode was = before.path(key);
            if (said.equals(was)) {
                continue;
            }
            boolean parts = said instanceof ObjectNode
                    && was instanceof ObjectNode
                    && !WHOLE.contains(key)
                    && !TWINS.containsKey(key)
                    && !key.equals("pieces");
            if (parts) {
                ObjectNode in = brief.path(key) instanceof ObjectNode there ? there : brief.putObject(key);
                patch(in, (ObjectNode) was, (ObjectNode) said);
                continue;
            }
            brief.remove(TWINS.getOrDefault(key, List.of()));
            if (said.isNull() && !key.equals("leader")) {
                brief.remove(key);
            } else {
                brief.set(key, said.deepCopy());
            }
        }
        for (Iterator<String> keys = before.fieldNames(); keys.hasNext(); ) {
            String key = keys.next();
            if (!after.has(key)) {
                brief.remove(key);
            }
        }
    }
}
