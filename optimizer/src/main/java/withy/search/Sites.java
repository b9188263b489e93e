package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.rod.Station;

/** Lays out every blank under every placing of the forced parts that allows it. Placings that differ in guides only share what lies ready for the handle. */
final class Sites {
    private final Ground ground;
    private final Map<Shelved, Shelf> shelves = new HashMap<>();

    Sites(Ground ground) {
        this.ground = ground;
    }

    private record Shelved(Stations handle, HandleForm form) {}

    List<Site> all() {
        List<Stations> handles =
                ground.alternatives.stream().map(Stations::ofHandle).toList();
        List<Site> all = new ArrayList<>();
        for (Blank blank : ground.blanks) {
            Spacings spacings = new Spacings(ground, ground.shape(blank));
            for (int a = 0; a < handles.size(); a++) {
                Stations placing = ground.alternatives.get(a);
                Stations handle = handles.get(a);
                if (placing.allows(Station.BLANK, blank)) {
                    all.add(new Site(ground, spacings, placing, form -> {
                        return shelves.computeIfAbsent(
                                new Shelved(handle, form), any -> new Shelf(ground, handle, form));
                    }));
                }
            }
        }
        return all;
    }
}
