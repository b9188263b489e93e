package withy.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.ImportAnswer;
import withy.app.StockAnswer;
import withy.app.Workshop;
import withy.catalog.Part;
import withy.catalog.ShopList;
import withy.report.StockText;
import withy.shop.Change;
import withy.shop.Shop;
import withy.shop.Stock;
import withy.units.Dates;
import withy.units.UnitsFault;

@Command(
        name = "stock",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy stock                                   what is here and what is free%n"
                + "  withy stock PART                              its pieces and its movements%n"
                + "  withy stock PART --count 4                    four are on the shelf%n"
                + "  withy stock PART --receive 6                  six came in%n"
                + "  withy stock PART --order 6 --due 2026-12-10   six are on their way%n"
                + "  withy stock PART#7 --broken                   that very piece broke%n"
                + "  withy stock PART --undo                       take its last booking back%n"
                + "  withy stock --import count.xlsx               what a list would change%n"
                + "  withy stock --import count.xlsx --apply       and take it over%n"
                + "  withy stock --undo                            take the last import back%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Shows and books pieces. The first booking begins shop.db beside the lists, with their counts;"
                + " from then on it counts, and the lists are never written.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class StockCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "PART",
            description = "Id of a part, or PART#7 for one piece of it.")
    private @Nullable String part;

    @ArgGroup
    private @Nullable Booking booking;

    @Option(names = "--due", paramLabel = "DATE", description = "Day an order is due, such as 2026-12-10.")
    private @Nullable String due;

    @Option(names = "--note", paramLabel = "TEXT", defaultValue = "", description = "Kept with the booking.")
    private String note = "";

    @Option(names = "--apply", description = "With --import: take it over.")
    private boolean apply;

    @Mixin
    private CatalogOptions catalogs;

    @Option(names = "--json", description = "Print the answer as JSON; withy schema describes it.")
    private boolean json;

    /** What to book; one at a time. */
    static final class Booking {
        @Option(names = "--count", paramLabel = "N", description = "So many are on the shelf.")
        private @Nullable Integer count;

        @Option(names = "--receive", paramLabel = "N", description = "So many came in.")
        private @Nullable Integer receive;

        @Option(
                names = "--order",
                paramLabel = "N",
                description = "So many were ordered; due after its lead time unless --due says when.")
        private @Nullable Integer order;

        @Option(names = "--cancel", paramLabel = "N", description = "So many of an order were given up.")
        private @Nullable Integer cancel;

        @Option(
                names = "--broken",
                paramLabel = "N",
                arity = "0..1",
                fallbackValue = "1",
                description = "So many broke; 1 if no number is told.")
        private @Nullable Integer broken;

        @Option(names = "--return", paramLabel = "N", description = "So many went back to the supplier.")
        private @Nullable Integer returned;

        @Option(names = "--use", paramLabel = "N", description = "So many were used outside the jobs.")
        private @Nullable Integer used;

        @Option(
                names = "--import",
                paramLabel = "FILE",
                description = "Count or price list, CSV or XLSX, with columns id and counted or price.")
        private @Nullable String list;

        @Option(names = "--undo", description = "Take the part's last booking back; without a part, the last import.")
        private boolean undo;

        @Option(names = "--history", description = "The last movements of all parts.")
        private boolean history;

        private boolean ofOnePart() {
            return list == null && !undo && !history;
        }
    }

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    StockCommand() {}

    @Override
    public Integer call() {
        Workshop workshop =
                catalogs.workshop(main.surroundings(), spec.commandLine().getErr());
        Booking asked = booking;
        if (asked != null && asked.list != null) {
            return imported(workshop, asked.list);
        }
        StockAnswer answer = asked == null ? shown(workshop) : booked(workshop, asked);
        boolean undone = asked != null && asked.undo;
        String text = json
                ? AnswerJson.write(answer)
                : undone ? StockText.undone(answer, part == null) : StockText.of(answer);
        Answering.print(text, spec.commandLine().getOut());
        return Exit.FINE;
    }

    private StockAnswer shown(Workshop workshop) {
        return part == null
                ? StockAnswer.all(workshop)
                : StockAnswer.one(workshop, PartName.of(part, workshop).id());
    }

    private StockAnswer booked(Workshop workshop, Booking asked) {
        if (asked.history) {
            return StockAnswer.history(workshop);
        }
        PartName named = asked.ofOnePart() || part != null ? named(workshop) : null;
        LocalDate day = asked.order == null ? null : due(workshop, named);
        try (Shop shop = workshop.open()) {
            Change change = named == null ? shop.imports().undo() : change(shop, asked, named, day);
            return StockAnswer.of(workshop, change);
        }
    }

    private PartName named(Workshop workshop) {
        if (part == null) {
            throw new Stop(Exit.USAGE, "No part is named.", "Maybe type: withy stock PART --count 4.");
        }
        return PartName.of(part, workshop);
    }

    private Change change(Shop shop, Booking asked, PartName named, @Nullable LocalDate day) {
        Stock stock = shop.stock();
        String id = named.id();
        Integer number = named.number();
        if (number != null && asked.undo) {
            throw new Stop(
                    Exit.USAGE,
                    named + ": the last booking of a part is taken back, not of one piece.",
                    "Maybe leave the #" + number + " out.");
        }
        if (number != null && asked.broken == null) {
            throw new Stop(
                    Exit.USAGE,
                    named + ": only --broken is booked piece by piece.",
                    "Maybe leave the #" + number + " out.");
        }
        if (asked.undo) {
            return shop.bookings().takeBack(id);
        }
        if (asked.count != null) {
            return stock.count(id, asked.count, note);
        } else if (asked.receive != null) {
            return stock.receive(id, asked.receive, note);
        } else if (asked.order != null && day != null) {
            return stock.order(id, asked.order, day, note);
        } else if (asked.cancel != null) {
            return stock.cancel(id, asked.cancel, note);
        } else if (asked.returned != null) {
            return stock.returned(id, asked.returned, note);
        } else if (asked.used != null) {
            return stock.used(id, asked.used, note);
        }
        int pieces = asked.broken == null ? 1 : asked.broken;
        return number == null ? stock.broken(id, pieces, note) : stock.brokenPiece(id, number, note);
    }

    /** The day told, or what the list's lead time makes of today. */
    private LocalDate due(Workshop workshop, @Nullable PartName named) {
        if (due != null) {
            try {
                return Dates.byHand(due, workshop.day()).date();
            } catch (UnitsFault e) {
                throw new Stop(Exit.USAGE, "--due " + due + ": allowed is " + e.allowed() + ".", e.maybe());
            }
        }
        Part ordered = named == null ? null : workshop.lists().find(named.id());
        Integer days = ordered == null ? null : ordered.facts().leadDays();
        if (days == null) {
            throw new Stop(
                    Exit.USAGE,
                    "The lists have no lead time for " + part + ".",
                    "Maybe add --due DATE, the day it is expected.");
        }
        return workshop.day().plusDays(days);
    }

    private int imported(Workshop workshop, String name) {
        ImportAnswer answer;
        try {
            ShopList.Reading list = ShopList.read(Path.of(name), workshop.lists());
            answer = ImportAnswer.run(workshop, list, apply);
        } catch (IOException e) {
            throw Texts.unreadable("the list " + name, e);
        }
        Answering.print(
                json ? AnswerJson.write(answer) : StockText.of(answer),
                spec.commandLine().getOut());
        return answer.faults().isEmpty() ? Exit.FINE : Exit.BAD_DATA;
    }
}
