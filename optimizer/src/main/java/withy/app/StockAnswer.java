package withy.app;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.shop.Bookings;
import withy.shop.Change;
import withy.shop.Level;
import withy.shop.Movement;
import withy.shop.Piece;
import withy.shop.Shop;

/**
 * What {@code stock} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param remembered false where there is no memory yet and the lists' counts are shown
 * @param parts how parts stand: all, or the ones concerned
 * @param pieces single pieces, where one part was asked for
 * @param movements lines of the ledger: the new ones, or where asked for the last ones, newest first
 * @param readings scale readings, newest first, where one part was asked for
 * @param last the part's last booking, where one part was asked for and it can be taken back, or null
 * @param hits jobs that lost what was promised to them
 */
public record StockAnswer(
        int schema,
        boolean remembered,
        List<Line> parts,
        List<Piece> pieces,
        List<Movement> movements,
        List<Bookings.Reading> readings,
        Bookings.@Nullable Booking last,
        List<Change.Hit> hits) {
    private static final int MOST_LINES = 200;

    public StockAnswer {
        parts = List.copyOf(parts);
        pieces = List.copyOf(pieces);
        movements = List.copyOf(movements);
        readings = List.copyOf(readings);
        hits = List.copyOf(hits);
    }

    /**
     * One part.
     *
     * @param part catalogue id
     * @param name maker and model
     * @param kind word for its kind; empty where it is in no list any more
     * @param shelf pieces on the shelf, promised ones included
     * @param promised promised to jobs, on the shelf or on order
     * @param ordered on order, promised ones included
     * @param toOrder of these, orders still to be sent
     * @param missing promised pieces that a loss took away
     * @param free on the shelf and promised to nobody
     * @param freeDue on order and promised to nobody, by the day they are due
     */
    public record Line(
            String part,
            String name,
            String kind,
            int shelf,
            int promised,
            int ordered,
            int toOrder,
            int missing,
            int free,
            SortedMap<String, Integer> freeDue) {
        public Line {
            freeDue = Collections.unmodifiableSortedMap(new TreeMap<>(freeDue));
        }
    }

    /** All parts that are or were here. */
    public static StockAnswer all(Workshop workshop) {
        if (!Shop.exists(workshop.folder())) {
            List<Line> lines = new ArrayList<>();
            workshop.lists().byId().values().forEach(part -> {
                int pieces = part.facts().stock();
                Level level = new Level(part.id(), pieces, 0, 0, 0, 0, pieces, new TreeMap<>(), 0);
                lines.add(line(workshop, level));
            });
            return ofLists(lines);
        }
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            return of(workshop, shop.stock().levels(), List.of(), shop.stock().hits());
        }
    }

    /** One part with its pieces and its last movements. */
    public static StockAnswer one(Workshop workshop, String part) {
        if (!Shop.exists(workshop.folder())) {
            List<Line> lines = all(workshop).parts().stream()
                    .filter(line -> line.part().equals(part))
                    .toList();
            return ofLists(lines);
        }
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            List<Change.Hit> hits = shop.stock().hits().stream()
                    .filter(hit -> hit.part().equals(part))
                    .toList();
            return new StockAnswer(
                    Answer.SCHEMA,
                    true,
                    List.of(line(workshop, shop.stock().level(part))),
                    shop.stock().pieces(part),
                    shop.stock().ledger(part, MOST_LINES),
                    shop.bookings().readings(part, MOST_LINES),
                    shop.bookings().last(part),
                    hits);
        }
    }

    /** The last movements of all parts. */
    public static StockAnswer history(Workshop workshop) {
        if (!Shop.exists(workshop.folder())) {
            return ofLists(List.of());
        }
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            return of(
                    workshop,
                    List.of(),
                    shop.stock().ledger(null, MOST_LINES),
                    shop.stock().hits());
        }
    }

    /** What a command did. */
    public static StockAnswer of(Workshop workshop, Change change) {
        return of(workshop, change.levels(), change.movements(), change.hits());
    }

    /** What the lists say, where there is no memory yet. */
    private static StockAnswer ofLists(List<Line> lines) {
        return new StockAnswer(Answer.SCHEMA, false, lines, List.of(), List.of(), List.of(), null, List.of());
    }

    private static StockAnswer of(
            Workshop workshop, List<Level> levels, List<Movement> movements, List<Change.Hit> hits) {
        return new StockAnswer(
                Answer.SCHEMA,
                true,
                levels.stream().map(level -> line(workshop, level)).toList(),
                List.of(),
                movements,
                List.of(),
                null,
                hits);
    }

    static Line line(Workshop workshop, Level level) {
        var part = workshop.lists().find(level.part());
        return new Line(
                level.part(),
                workshop.name(level.part()),
                part == null ? "" : part.kind().word(),
                level.shelf(),
                level.promised(),
                level.ordered(),
                level.toOrder(),
                level.missing(),
                level.free(),
                level.freeDue());
    }
}
