package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import withy.app.StockAnswer;
import withy.app.Workshop;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Phrases;
import withy.shop.Shop;
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
                        found.size() - shown));
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
        Part part = pages.part(ctx);
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
                        answer.pieces().stream().map(this::piece).toList(),
                        answer.movements().stream()
                                .limit(MOST_LEDGER)
                                .map(m ->
                                        m.day() + "  " + m.reason() + (m.note().isEmpty() ? "" : ": " + m.note()))
                                .toList()));
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
        pages.once(ctx, () -> {
            try (Shop shop = pages.bench().workshop().open()) {
                booked(ctx, shop.stock(), part, what);
            }
            return (what.equals("out") ? "/out/" : "/stock/") + part.id();
        });
    }

    private static void booked(Context ctx, Stock stock, Part part, String what) {
        String id = part.id();
        switch (what) {
            case "out" -> stock.count(id, 0, Words.say("stock.out.note"));
            case "count" -> stock.count(id, number(ctx), "");
            case "receive" -> stock.receive(id, number(ctx), "");
            case "broken" -> stock.broken(id, number(ctx), "");
            case "order" -> stock.order(id, number(ctx), Dates.date(Pages.told(ctx, "due")), "");
            default -> throw new Refusal(422, Words.say("change.unknown", what));
        }
    }

    private static int number(Context ctx) {
        String told = Pages.told(ctx, "pieces").strip();
        if (!told.matches("\\d{1,5}")) {
            throw new Refusal(422, Words.say("page.number", told));
        }
        return Integer.parseInt(told);
    }
}
