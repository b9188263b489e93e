package withy.explain;

import java.util.ArrayList;
import java.util.List;
import withy.explain.Swaps.Swap;
import withy.rod.Build;
import withy.rod.Station;

/** How many builds are legal around one: itself, and itself with one place filled otherwise, its blank kept. */
public final class Neighbours {
    private Neighbours() {}

    /** Their number, at least 1 for a legal build; fewer than there are where the question was stopped. */
    public static int of(Inquiry inquiry, Found found) {
        Build build = found.build();
        List<Station> places = new ArrayList<>(build.choices().keySet());
        int legal = 1;
        for (Station place : places) {
            if (inquiry.stopped()) {
                break;
            }
            legal += (int) new Swaps(inquiry, build, place)
                    .all().stream().filter(Swap::legal).count();
        }
        return legal;
    }
}
