package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.explain.TradeOffs.Side;
import withy.rod.Rod;
import withy.rod.Station;

/** What builds that stand side by side are called by: where a few words are the same for some of them, what is seen to differ is told besides. */
final class BuildNames {
    /** What is seen of a rod beside blank, handle and grip, told only as far as it takes. */
    private static final List<Function<Rod, String>> SEEN =
            List.of(BuildNames::seat, BuildNames::guides, BuildNames::frame);

    private BuildNames() {}

    /** One name a build, in their order. */
    static List<String> of(List<Side> builds) {
        List<String> names = new ArrayList<>(
                builds.stream().map(one -> Sheets.name(one.rod())).toList());
        for (Function<Rod, String> seen : SEEN) {
            List<String> before = List.copyOf(names);
            List<String> words =
                    builds.stream().map(one -> seen.apply(one.rod())).toList();
            for (int i = 0; i < names.size(); i++) {
                if (another(before, words, i)) {
                    names.set(i, before.get(i) + words.get(i));
                }
            }
        }
        return names;
    }

    /** True where a build has the same name as another that is seen to differ. */
    private static boolean another(List<String> names, List<String> words, int one) {
        return IntStream.range(0, names.size())
                .anyMatch(i ->
                        names.get(i).equals(names.get(one)) && !words.get(i).equals(words.get(one)));
    }

    private static String seat(Rod rod) {
        Part seat = rod.partAt(Station.SEAT);
        return seat == null ? "" : Phrases.of("build.and", seat.facts().name());
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
