package withy.report;

import static withy.report.BendWords.number;

import java.util.Locale;
import withy.app.MachineSheet;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** Thread and finish for a terminal of 80 columns. */
final class WrapText {
    private static final Page.Column[] WRAPS = {
        new Page.Column(14, false),
        new Page.Column(14, true),
        new Page.Column(14, true),
        new Page.Column(12, true),
        new Page.Column(10, true),
        new Page.Column(10, true)
    };
    private static final Page.Column[] THREADS = {
        new Page.Column(30, false),
        new Page.Column(10, true),
        new Page.Column(10, true),
        new Page.Column(12, true),
        new Page.Column(12, true)
    };

    private final Page page;
    private final MachineSheet.Wrapping wraps;
    private final QuantityText units;

    WrapText(Page page, MachineSheet.Wrapping wraps, QuantityText units) {
        this.page = page;
        this.wraps = wraps;
        this.units = units;
    }

    void write() {
        page.heading(Phrases.of("bend.wraps"));
        page.row(
                WRAPS,
                Phrases.of("bend.ring"),
                Phrases.of("bend.wraps.foot"),
                Phrases.of("bend.wraps.turns"),
                Phrases.of("bend.wraps.thread"),
                Phrases.of("bend.wraps.mass"),
                Phrases.of("bend.wraps.finish"));
        page.rule();
        for (MachineSheet.GuideWrap guide : wraps.guides()) {
            String turns = number(guide.turns(), 0);
            page.row(
                    WRAPS,
                    Phrases.station(guide.station()),
                    guide.feet() + " × " + units.partLength(guide.wrapMm()),
                    guide.underTurns() > 0 ? turns + " + " + number(guide.underTurns(), 0) : turns,
                    number(guide.amount().threadM(), 2) + " m",
                    number(guide.amount().threadG(), 3) + " g",
                    number(guide.amount().finishG(), 2) + " g");
        }
        MachineSheet.Amount all = wraps.total();
        page.row(
                WRAPS,
                Phrases.of("bend.wraps.all"),
                "",
                "",
                number(all.threadM(), 1) + " m",
                number(all.threadG(), 2) + " g",
                number(all.finishG(), 2) + " g");
        page.paragraph("", Phrases.of("bend.wraps.ml", number(all.finishMl(), 1)));
        threads();
    }

    private void threads() {
        page.gap()
                .row(
                        THREADS,
                        Phrases.of("bend.threads"),
                        Phrases.of("bend.wraps.thread"),
                        Phrases.of("bend.wraps.mass"),
                        Phrases.of("bend.wraps.finish"),
                        Phrases.of("bend.threads.rod"));
        page.rule();
        double own = wraps.threads().stream()
                .filter(MachineSheet.ThreadSize::own)
                .mapToDouble(MachineSheet.ThreadSize::weightG)
                .findFirst()
                .orElse(0);
        for (MachineSheet.ThreadSize thread : wraps.threads()) {
            page.row(
                    THREADS,
                    Phrases.of(
                            thread.own() ? "bend.threads.own" : "bend.threads.other",
                            thread.name(),
                            units.thickness(thread.diameterMm())),
                    number(thread.amount().threadM(), 1) + " m",
                    number(thread.amount().threadG(), 2) + " g",
                    number(thread.amount().finishG(), 2) + " g",
                    thread.own() ? "–" : String.format(Locale.ROOT, "%+.2f g", thread.weightG() - own));
        }
    }
}
