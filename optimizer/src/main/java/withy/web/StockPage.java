package withy.web;

import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import withy.app.OnScale;
import withy.app.StockAnswer;
import withy.app.Workshop;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Phrases;
import withy.shop.Bookings;
import withy.shop.Movement;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.shop.Stock;
import withy.units.Dates;
import withy.web.BriefView.Option;
import withy.web.ShopView.PartView;
import withy.web.ShopView.StockLine;
import withy.web.ShopView.StockView;

/** What is on the shelf, and what happened to it. */
final class StockPage {
    private static final int MOST_LINES = 60;
    private static final int MOST_LEDGER = 12;

    /** Fields of the form. */
    private static final String PIECES = "pieces";

    private static final String DUE = "due";

    private final Pages pages;

    StockPage(Pages pages) {
        this.pages = pages;
    }

    void all(Context ctx) {
        String query = Pages.asked(ctx, "q");
        String kind = Pages.asked(ctx, "kind");
        ByWords words = new ByWords(query);
        List<StockLine> found = new ArrayList<>();
        for (StockAnswer.Line line : StockAnswer.all(pages.bench().workshop()).parts()) {
            if ((kind.isEmpty() || kind.equals(line.kind())) && words.in(line.name(), line.part())) {
                found.add(line(line));
            }
        }
        List<Option> kinds = new ArrayList<>();
        for (PartKind one : PartKind.values()) {
            kinds.add(new Option(
                    one.word(), Phrases.sentence(one.word()), one.word().equals(kind)));
        }
        int shown = Math.min(MOST_LINES, found.size());
        pages.html(
                ctx,
                "stock",
                new StockView(
                        pages.frame(Words.say("way.stock"), "stock", null),
                        query,
                        kind,
                        kinds,
                        found.subList(0, shown),
                        found.size() - shown,
                        Shop.exists(pages.bench().workshop().folder()),
                        BackupPage.last(pages.bench().workshop()),
                        BackupPage.folder(pages.bench().workshop())));
    }

    private static StockLine line(StockAnswer.Line line) {
        return new StockLine(
                line.part(),
                line.name(),
                line.kind(),
                line.free(),
                line.shelf(),
                line.promised(),
                line.ordered(),
                line.missing());
    }

    void one(Context ctx) {
        one(ctx, pages.part(ctx), Slip.back(ctx));
    }

    /** A part with what was typed about it and can't be booked. */
    void one(Context ctx, Part part, Slip slip) {
        Workshop workshop = pages.bench().workshop();
        StockAnswer answer = StockAnswer.one(workshop, part.id());
        Part known = pages.bench().memory().of(workshop).catalog().find(part.id());
        Integer lead = part.facts().leadDays();
        pages.html(
                ctx,
                "part",
                new PartView(
                        pages.frame(part.facts().name(), "stock", null),
                        line(answer.parts().get(0)),
                        pages.bench()
                                .units()
                                .fineMass((known == null ? part : known).facts().weightG()),
                        pages.bench()
                                .money((known == null ? part : known).facts().priceMinor()),
                        lead == null ? "" : workshop.day().plusDays(lead).toString(),
                        OnScale.of(workshop, part.id(), null).readings(),
                        answer.pieces().stream().map(this::piece).toList(),
                        answer.movements().stream()
                                .limit(MOST_LEDGER)
                                .map(StockPage::moved)
                                .toList(),
                        answer.readings().stream()
                                .limit(MOST_LEDGER)
                                .map(this::reading)
                                .toList(),
                        TakeBack.of(answer.last(), pages.bench().units()),
                        slip));
    }

    private String reading(Bookings.Reading one) {
        String told = Words.say(
                "stock.reading", one.day(), one.number(), pages.bench().units().fineMass(one.weightG()));
        return one.takenBack() ? told + ", " + Words.say("moved.back") : told;
    }

    /** A line of the ledger: what happened, how many went where, for which job, and the note. */
    private static String moved(Movement line) {
        List<String> told = new ArrayList<>();
        add(told, "moved.shelf", line.shelf());
        add(told, "moved.promised", line.promised());
        add(told, "moved.ordered", line.ordered());
        Long job = line.job();
        if (job != null) {
            told.add(Words.say("piece.job", job));
        }
        if (!line.note().isEmpty()) {
            told.add(line.note());
        }
        String what = line.day() + "  " + Phrases.of("text.stock.reason." + line.reason());
        if (line.takenBack()) {
            told.add(Words.say("moved.back"));
        }
        return told.isEmpty() ? what : what + ": " + String.join(", ", told);
    }

    static void add(List<String> told, String key, int pieces) {
        if (pieces != 0) {
            told.add(Words.say(key, (pieces > 0 ? "+" : "−") + Math.abs(pieces)));
        }
    }

    private String piece(withy.shop.Piece piece) {
        Double weight = piece.weightG();
        Long job = piece.job();
        return piece.name() + " · " + Words.say("piece." + piece.state())
                + (weight == null ? "" : " · " + pages.bench().units().fineMass(weight))
                + (job == null ? "" : " · " + Words.say("piece.job", job));
    }

    void book(Context ctx) {
        Part part = pages.part(ctx);
        String what = Pages.told(ctx, "do");
        if (what.equals(TakeBack.DO)) {
            TakeBack.act(pages, ctx, part);
            return;
        }
        try {
            pages.once(ctx, () -> {
                booked(ctx, part, what);
                return (what.equals("out") ? "/out/" : "/stock/") + part.id();
            });
        } catch (Slip.Fault fault) {
            ctx.status(422);
            one(ctx, part, Slip.of(ctx, fault));
        }
    }

    private void booked(Context ctx, Part part, String what) {
        LocalDate day = pages.bench().workshop().day();
        LocalDate due = what.equals("order") ? due(ctx, day) : day;
        int pieces = what.equals("out") ? 0 : number(ctx, what.equals("count") ? 0 : 1);
        try (Shop shop = pages.bench().workshop().open()) {
            booked(shop.stock(), part.id(), what, pieces, due);
        } catch (ShopFault fault) {
            throw Slip.of(fault, PIECES, part);
        }
    }

    private static void booked(Stock stock, String part, String what, int pieces, LocalDate due) {
        switch (what) {
            case "out" -> stock.count(part, 0, Words.say("stock.out.note"));
            case "count" -> stock.count(part, pieces, "");
            case "receive" -> stock.receive(part, pieces, "");
            case "broken" -> stock.broken(part, pieces, "");
            case "order" -> stock.order(part, pieces, due, "");
            default -> throw new Refusal(422, Words.say("change.unknown", what));
        }
    }

    /** What is ordered comes today or later. */
    private static LocalDate due(Context ctx, LocalDate today) {
        LocalDate due = Slip.read(
                ctx, DUE, today.toString(), told -> Dates.byHand(told, today).date());
        if (due.isBefore(today)) {
            throw new Slip.Fault(DUE, Words.say("slip.past", due, today));
        }
        return due;
    }

    private static int number(Context ctx, int least) {
        String told = Slip.read(ctx, PIECES, "3", String::strip);
        if (!told.matches("\\d{1,5}")) {
            throw new Slip.Fault(PIECES, Words.say("slip.pieces", told));
        }
        int pieces = Integer.parseInt(told);
        if (pieces < least) {
            throw new Slip.Fault(PIECES, Words.say("slip.nought"));
        }
        return pieces;
    }
}
