package withy.web;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import withy.app.Workshop;
import withy.catalog.Catalog;
import withy.shop.Shop;
import withy.shop.Snapshot;

/** The shop's memory as pages read it: once, until something was booked here or by another program. */
final class Memory {
    /** Readings kept: of today, and of what just passed by. */
    private static final int MOST = 2;

    private final Recent<List<Object>, Reading> readings = new Recent<>(MOST);
    private final AtomicLong booked = new AtomicLong();

    /**
     * One reading.
     *
     * @param snapshot lists and memory
     * @param catalog the parts with what is free today
     */
    record Reading(Snapshot snapshot, Catalog catalog) {
        static Reading of(Workshop workshop) {
            Snapshot snapshot = workshop.snapshot();
            return new Reading(snapshot, snapshot.catalog());
        }
    }

    Reading of(Workshop workshop) {
        // what is written while it is read has another state, and is read again
        return readings.get(state(workshop), () -> Reading.of(workshop));
    }

    /** Something may have been booked here: files written twice in one tick of their clock look alike. */
    void booked() {
        booked.incrementAndGet();
    }

    /** Equal as long as lists, day and memory are the same. */
    List<Object> state(Workshop workshop) {
        List<Object> state = new ArrayList<>(List.of(workshop.lists().hash(), workshop.day(), booked.get()));
        Path file = Shop.file(workshop.folder());
        for (String end : List.of("", "-wal")) {
            File one = new File(file + end);
            state.add(one.length());
            state.add(one.lastModified());
        }
        return state;
    }
}
