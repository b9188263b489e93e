package withy.search;

import java.util.HashMap;
import java.util.Map;
import withy.catalog.Check;
import withy.rod.Station;

/** What the checks of a shelf are worth at a station on any blank and under any prices but for their weight. Not for several threads at once. */
final class CheckWorth {
    private final Shelf shelf;
    private final Map<Station, At> at = new HashMap<>();

    CheckWorth(Shelf shelf) {
        this.shelf = shelf;
    }

    /**
     * By the check's place on the shelf.
     *
     * @param allowed false where it may not stand there
     * @param milli price of part and work
     * @param styleCenti hundredths of a style point
     * @param milliSteps thousandths of a wished step that are missed
     */
    record At(boolean[] allowed, long[] milli, long[] styleCenti, long[] milliSteps) {}

    At at(Station station) {
        return at.computeIfAbsent(station, this::now);
    }

    private At now(Station station) {
        Ground ground = shelf.ground;
        int checks = shelf.checks.length;
        At worth = new At(new boolean[checks], new long[checks], new long[checks], new long[checks]);
        for (int i = 0; i < checks; i++) {
            Check check = shelf.checks[i];
            worth.allowed[i] = shelf.stations.allows(station, check);
            if (worth.allowed[i]) {
                worth.milli[i] = ground.tariff.partMilli(check, 1) + ground.tariff.workMilli(check);
                worth.styleCenti[i] = ground.style.part(ground.blanks.get(0), shelf.form, station, check, 1);
                worth.milliSteps[i] = ground.wishes.part(station, check, 1);
            }
        }
        return worth;
    }
}
