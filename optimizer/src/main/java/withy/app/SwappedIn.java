package withy.app;

import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.explain.Drawer;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.rod.Build;
import withy.rod.Station;

/**
 * What a part would do in a build that is known, with all else as it is: soon told, while the best rod with it is looked for.
 *
 * @param station where it would stand; empty where the brief alone refuses it
 * @param instead name of the part that is there
 * @param sentence what it would do, or the rule it breaks
 * @param legal false where it breaks a rule, which other parts around it may keep unless the brief alone refuses it
 */
public record SwappedIn(String station, String instead, String sentence, boolean legal) {
    /** Of a part; null where it is in the build or has no place there. */
    public static @Nullable SwappedIn of(Inquiry inquiry, Build build, Part part) {
        Found there = inquiry.measured(build);
        SwappedIn broken = null;
        for (Map.Entry<Station, Build.Choice> at : build.choices().entrySet()) {
            Part now = inquiry.catalog().find(at.getValue().partId());
            if (now == null || now.kind() != part.kind()) {
                continue;
            }
            if (now.id().equals(part.id())) {
                return null;
            }
            Station station = at.getKey();
            for (Drawer.Line line :
                    Drawer.of(inquiry, there, station, Set.of(part.id())).lines()) {
                if (!line.part().equals(part.id())) {
                    continue;
                }
                SwappedIn in = new SwappedIn(
                        line.found() == null ? "" : station.key(),
                        now.facts().name(),
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
}
