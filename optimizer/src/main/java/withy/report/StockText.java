package withy.report;

import java.util.Currency;
import java.util.List;
import java.util.Map;
import withy.app.CheckAnswer;
import withy.app.ImportAnswer;
import withy.app.StockAnswer;
import withy.explain.Phrases;
import withy.shop.Bookings;
import withy.shop.Change;
import withy.shop.Movement;
import withy.shop.Piece;
import withy.units.Money;

/** The answers of {@code stock} for a terminal of 80 columns. */
public final class StockText {
    private static final Page.Column[] LEVELS = {
        new Page.Column(50, false),
        new Page.Column(5, true),
        new Page.Column(8, true),
        new Page.Column(6, true),
        new Page.Column(6, true)
    };
    private static final Page.Column[] LINES = {
        new Page.Column(10, false),
        new Page.Column(11, false),
        new Page.Column(5, true),
        new Page.Column(8, true),
        new Page.Column(6, true),
        new Page.Column(34, false)
    };

    private StockText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(StockAnswer answer) {
        Page page = new Page();
        if (!answer.remembered()) {
            page.paragraph("", Phrases.of("text.stock.listsOnly"));
        }
        levels(page, answer.parts());
        pieces(page, answer.pieces());
        movements(page, answer.movements(), answer.parts().size() != 1);
        readings(page, answer.readings());
        hits(page, answer.hits());
        return page.toString();
    }

    /** The same after the last import, or a part's last booking, was taken back, whether it had moved pieces or only prices and weights. */
    public static String undone(StockAnswer answer, boolean anImport) {
        Page page = new Page().paragraph("", Phrases.of(anImport ? "text.import.undone" : "text.stock.undone"));
        return page + (answer.movements().isEmpty() ? "" : of(answer));
    }

    private static void levels(Page page, List<StockAnswer.Line> parts) {
        if (parts.isEmpty()) {
            return;
        }
        page.row(
                LEVELS,
                "",
                Phrases.of("text.stock.shelf"),
                Phrases.of("text.stock.promised"),
                Phrases.of("text.stock.order"),
                Phrases.of("text.stock.free"));
        page.rule();
        for (StockAnswer.Line line : parts) {
            page.row(
                    LEVELS,
                    line.name(),
                    Integer.toString(line.shelf()),
                    number(line.promised()),
                    number(line.ordered()),
                    Integer.toString(line.free()));
            page.paragraph("    ", line.part());
            for (Map.Entry<String, Integer> due : line.freeDue().entrySet()) {
                page.paragraph("    ", Phrases.of("text.stock.due", due.getValue(), due.getKey()));
            }
            if (line.toOrder() > 0) {
                page.paragraph("    ", Phrases.of("text.stock.toOrder", line.toOrder()));
            }
        }
    }

    private static void pieces(Page page, List<Piece> pieces) {
        if (pieces.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.stock.pieces"));
        for (Piece piece : pieces) {
            Long job = piece.job();
            Double grams = piece.weightG();
            String due = piece.due();
            String where = piece.ordered() && due != null
                    ? Phrases.of("text.stock.state.ordered", due)
                    : Phrases.of("text.stock.state." + piece.state());
            page.paragraph(
                    "#" + piece.number() + "  ",
                    where
                            + (grams == null ? "" : Phrases.of("text.stock.weighed", grams))
                            + (job == null ? "" : Phrases.of("text.stock.ofJob", job)));
        }
    }

    private static void movements(Page page, List<Movement> movements, boolean named) {
        if (movements.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.stock.movements"));
        page.row(
                LINES,
                "",
                "",
                Phrases.of("text.stock.shelf"),
                Phrases.of("text.stock.promised"),
                Phrases.of("text.stock.order"),
                "");
        for (Movement line : movements) {
            Long job = line.job();
            String about = (((named ? line.part() + " " : "") + line.note()).strip()
                            + (job == null ? "" : Phrases.of("text.stock.ofJob", job))
                            + (line.takenBack() ? Phrases.of("text.stock.takenBack") : ""))
                    .replaceFirst("^, ", "");
            page.row(
                    LINES,
                    line.day(),
                    Phrases.of("text.stock.reason." + line.reason()),
                    signed(line.shelf()),
                    signed(line.promised()),
                    signed(line.ordered()),
                    about);
        }
    }

    private static void readings(Page page, List<Bookings.Reading> readings) {
        if (readings.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.stock.readings"));
        for (Bookings.Reading one : readings) {
            page.paragraph(
                    "",
                    Phrases.of("text.stock.reading", one.day(), one.number(), one.weightG())
                            + (one.takenBack() ? Phrases.of("text.stock.takenBack") : ""));
        }
    }

    static void hits(Page page, List<Change.Hit> hits) {
        if (hits.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.stock.hits"));
        for (Change.Hit hit : hits) {
            page.paragraph("· ", Phrases.of("text.stock.hit", hit.job(), hit.name(), hit.pieces(), hit.part()));
        }
    }

    /** Text of an import, lines ended by {@code \n}. */
    public static String of(ImportAnswer answer) {
        Page page = new Page();
        Currency currency = Currency.getInstance(answer.currency());
        page.paragraph(
                "",
                Phrases.of("text.import.rows", answer.rows(), answer.changes().size()));
        for (ImportAnswer.Difference change : answer.changes()) {
            page.paragraph("· ", change.name() + " (" + change.part() + ")");
            Integer shelf = change.shelfBefore();
            Integer counted = change.shelfAfter();
            if (shelf != null && counted != null) {
                page.paragraph("    ", Phrases.of("text.import.count", shelf, counted));
            }
            Long before = change.priceBeforeMinor();
            Long after = change.priceAfterMinor();
            if (before != null && after != null) {
                page.paragraph(
                        "    ",
                        Phrases.of("text.import.price", Money.print(before, currency), Money.print(after, currency)));
            }
        }
        faults(page, answer.faults());
        String backup = answer.backup();
        String unapplied = answer.changes().isEmpty() ? "same" : "looked";
        String end = answer.applied() ? "applied" : answer.faults().isEmpty() ? unapplied : "refused";
        page.gap().paragraph("", Phrases.of("text.import." + end, backup == null ? "" : backup));
        hits(page, answer.hits());
        return page.toString();
    }

    private static void faults(Page page, List<CheckAnswer.Line> faults) {
        if (faults.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.check.faults", faults.size()));
        for (CheckAnswer.Line fault : faults) {
            String lead = "· ";
            for (String sentence : fault.message().split("\n", -1)) {
                page.paragraph(lead, sentence);
                lead = "  ";
            }
        }
    }

    private static String number(int pieces) {
        return pieces == 0 ? "" : Integer.toString(pieces);
    }

    private static String signed(int pieces) {
        return pieces == 0 ? "" : pieces > 0 ? "+" + pieces : Integer.toString(pieces);
    }
}
