package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import withy.catalog.NearWord;
import withy.rod.Build;
import withy.rod.Station;
import withy.shop.ShopFault;

/** Stations of a build as they are typed; {@code guides} stands for all guides. */
final class StationWords {
    private static final String GUIDES = "guides";

    private StationWords() {}

    /**
     * The stations that are meant.
     *
     * @throws ShopFault where nothing stands at one of them
     */
    static Set<Station> of(Build build, Set<String> words) {
        Set<Station> stations = new TreeSet<>();
        Set<String> known = new TreeSet<>();
        build.choices().keySet().forEach(station -> known.add(station.key()));
        known.add(Station.BLANK.key());
        for (String word : words) {
            if (word.equals(GUIDES)) {
                build.choices().keySet().stream().filter(s -> s.number() > 0).forEach(stations::add);
                continue;
            }
            Station station = Station.parse(word);
            if (station == null || !known.contains(word)) {
                throw ShopFault.refused(
                        word + ": nothing stands there; allowed are " + GUIDES + ", " + String.join(", ", known) + ".",
                        maybe(word, known));
            }
            stations.add(station);
        }
        return stations;
    }

    private static String maybe(String word, Set<String> known) {
        String small = word.toLowerCase(Locale.ROOT);
        List<String> near = new ArrayList<>();
        if (GUIDES.startsWith(small)) {
            near.add(GUIDES);
        } else {
            known.stream()
                    .filter(key -> key.toLowerCase(Locale.ROOT).contains(small))
                    .forEach(near::add);
        }
        String like = NearWord.to(word, known);
        if (near.isEmpty() && !like.isEmpty()) {
            near.add(like);
        }
        return near.isEmpty() ? "look at the parts of the build: withy job N." : String.join(" or ", near) + ".";
    }
}
