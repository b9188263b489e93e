package withy.shop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.catalog.Catalog;
import withy.catalog.Part;

/** The shop's memory, {@code shop.db} beside the lists. */
public final class Shop implements AutoCloseable {
    /** Name of the file in the catalogue's folder. */
    public static final String FILE = "shop.db";

    private final Database database;
    private final LocalDate today;

    private Shop(Database database, LocalDate today) {
        this.database = database;
        this.today = today;
    }

    /** Where a folder's memory lies. */
    public static Path file(Path folder) {
        return folder.resolve(FILE);
    }

    /** True where a folder has one. */
    public static boolean exists(Path folder) {
        return Files.isRegularFile(file(folder));
    }

    /** Opens a folder's memory to read; it must be there. An older one is brought up to date first. */
    public static Shop reading(Path folder, LocalDate today) {
        Database database = Database.reading(file(folder));
        try {
            Migrations.refuseNewer(database);
            if (Migrations.version(database) == Migrations.NEWEST) {
                return new Shop(database, today);
            }
        } catch (ShopFault fault) {
            database.close();
            throw fault;
        }
        database.close();
        return writing(folder, today);
    }

    /** Opens a folder's memory to write; it must be there. Before an older one is brought up to date it is backed up. */
    public static Shop writing(Path folder, LocalDate today) {
        Database database = Database.open(file(folder));
        try {
            Migrations.refuseNewer(database);
            int version = Migrations.version(database);
            if (version > 0 && version < Migrations.NEWEST) {
                Backups.automatic(database, "before-version-" + Migrations.NEWEST);
            }
            Migrations.upTo(database, Migrations.NEWEST);
            return new Shop(database, today);
        } catch (ShopFault fault) {
            database.close();
            throw fault;
        }
    }

    /** Opens it to write; where there is none yet, begins one with the counts of the lists. */
    public static Shop beginning(Path folder, Catalog lists, LocalDate today) {
        Shop shop = writing(folder, today);
        try {
            shop.begin(lists);
            return shop;
        } catch (ShopFault fault) {
            shop.close();
            throw fault;
        }
    }

    private void begin(Catalog lists) {
        database.write(sql -> {
            if (sql.number("SELECT count(*) FROM batch") == 0) {
                Ledger ledger = new Ledger(sql, today.toString(), "first count");
                for (Part part : lists.byId().values()) {
                    Stock.count(ledger, part.id(), part.facts().stock(), "as the lists say");
                }
            }
            return sql;
        });
    }

    /** Pieces and their movements. */
    public Stock stock() {
        return new Stock(database, today);
    }

    /** What was booked by hand, with the way back. */
    public Bookings bookings() {
        return new Bookings(database, today);
    }

    /** Scale readings. */
    public Scale scale() {
        return new Scale(database, today);
    }

    /** Jobs and promises. */
    public Jobs jobs() {
        return new Jobs(database, today);
    }

    /** Counts and prices from lists, with undo. */
    public Imports imports() {
        return new Imports(database, today);
    }

    /** Lists and memory as of one moment, in one read. */
    public Snapshot snapshot(Catalog lists) {
        return database.read(sql -> Snapshot.of(lists, held(sql), JobRows.finished(sql)));
    }

    private static SortedMap<String, Snapshot.Held> held(Sql sql) throws SQLException {
        Map<String, Integer> free = new TreeMap<>();
        Map<String, SortedMap<String, Integer>> due = new TreeMap<>();
        sql.rows(
                row -> {
                    String part = row.getString(1);
                    if (row.getString(2).equals("shelf")) {
                        return free.merge(part, row.getInt(4), Integer::sum);
                    }
                    return due.computeIfAbsent(part, p -> new TreeMap<>())
                            .merge(row.getString(3), row.getInt(4), Integer::sum);
                },
                """
                SELECT part, state, due_day, count(*) FROM piece
                WHERE state IN ('shelf', 'ordered') AND id NOT IN (SELECT piece FROM promise WHERE piece IS NOT NULL)
                GROUP BY part, state, due_day""");
        SortedMap<String, Weights> weights = Scale.weights(sql);
        SortedMap<String, Snapshot.Price> prices = Imports.prices(sql);
        SortedMap<String, Snapshot.Held> held = new TreeMap<>();
        for (String part : sql.rows(row -> row.getString(1), "SELECT part FROM part")) {
            Integer pieces = free.get(part);
            SortedMap<String, Integer> days = due.get(part);
            held.put(
                    part,
                    new Snapshot.Held(
                            pieces == null ? 0 : pieces,
                            days == null ? new TreeMap<>() : days,
                            weights.get(part),
                            prices.get(part)));
        }
        return held;
    }

    @Override
    public void close() {
        database.close();
    }
}
