package withy.app;

import java.nio.file.Path;
import java.time.LocalDate;
import withy.catalog.Catalog;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.shop.Snapshot;

/**
 * A shop's folder: its lists as read on a day, and its memory beside them, if there is one.
 *
 * @param folder the folder
 * @param lists the lists
 * @param day the day it is
 */
public record Workshop(Path folder, Catalog lists, LocalDate day) {

    /** Lists and memory as of now, in one read. */
    public Snapshot snapshot() {
        if (!Shop.exists(folder)) {
            return Snapshot.of(lists);
        }
        try (Shop shop = Shop.reading(folder, day)) {
            return shop.snapshot(lists);
        }
    }

    /** Opens the memory to read of a job; refuses where nothing was booked, so that there are no jobs. */
    Shop reading(long job) {
        if (!Shop.exists(folder)) {
            throw ShopFault.refused(
                    "There is no job " + job + ": nothing was booked in " + folder + " yet.",
                    "begin one: withy job --new brief.json.");
        }
        return Shop.reading(folder, day);
    }

    /** Opens the memory to write; begins one where there is none. */
    public Shop open() {
        return Shop.beginning(folder, lists, day);
    }

    /** Name of a part, or its id where it is in no list any more. */
    public String name(String part) {
        var known = lists.find(part);
        return known == null ? part : known.facts().name();
    }
}
