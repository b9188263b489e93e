package withy.app;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import withy.catalog.Guide;
import withy.explain.Phrases;
import withy.explain.TradeOffs.Side;
import withy.rod.Rod;
import withy.rod.Station;

/** What builds that stand side by side are called by: where a few words are the same for two of them, what is seen to differ is told besides. */
final class BuildNames {
    /** What is seen of a rod beside blank, handle and grip. */
    private static final List<Function<Rod, String>> SEEN =
            List.of(BuildNames::seat, BuildNames::guides, BuildNames::frame);

    private BuildNames() {}

    /** One name a build, in their order. */
    static List<String> of(List<Side> builds) {
        List<String> names = new ArrayList<>();
        for (Side one : builds) {
            String name = Sheets.name(one.rod());
            List<Side> same = builds.stream()
                    .filter(other -> Sheets.name(other.rod()).equals(name))
                    .toList();
            names.add(name + apart(one.rod(), same));
        }
        return names;
    }

    private static String apart(Rod rod, List<Side> same) {
        StringBuilder words = new StringBuilder();
        for (Function<Rod, String> seen : SEEN) {
            Set<String> each = new LinkedHashSet<>();
            same.forEach(other -> each.add(seen.apply(other.rod())));
            String own = seen.apply(rod);
            if (each.size() > 1 && !own.isEmpty()) {
                words.append(", ").append(own);
            }
        }
        return words.toString();
    }

    private static String seat(Rod rod) {
        var seat = rod.partAt(Station.SEAT);
        return seat == null ? "" : seat.facts().name();
    }

    private static String guides(Rod rod) {
        return rod.partAt(Station.guide(1)) instanceof Guide guide ? Phrases.of("build.guides", guide.family()) : "";
    }

    private static String frame(Rod rod) {
        return rod.partAt(Station.guide(1)) instanceof Guide guide
                ? Phrases.of("build.frame", guide.frameFinish())
                : "";
    }
}
