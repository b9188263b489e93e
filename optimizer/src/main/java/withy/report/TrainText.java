package withy.report;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.app.TrainSheet;
import withy.app.TrainSheet.Train;
import withy.app.TrainSheet.Want;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** Guide trains side by side for a terminal of 80 columns. */
final class TrainText {
    private static final Page.Column[] TRAINS = {
        new Page.Column(22, false),
        new Page.Column(14, true),
        new Page.Column(14, true),
        new Page.Column(14, true),
        new Page.Column(12, true)
    };
    private static final Page.Column[] PLACES = {
        new Page.Column(14, false),
        new Page.Column(15, true),
        new Page.Column(15, true),
        new Page.Column(14, true),
        new Page.Column(18, true)
    };

    private final Page page;
    private final TrainSheet sheet;
    private final QuantityText units;

    TrainText(Page page, TrainSheet sheet, QuantityText units) {
        this.page = page;
        this.sheet = sheet;
        this.units = units;
    }

    void write() {
        page.heading(Phrases.of("train.title"));
        page.paragraph("", Phrases.of("train.lead"));
        page.gap()
                .row(
                        TRAINS,
                        Phrases.of("train.what"),
                        Phrases.of("train.weight"),
                        Phrases.of("train.gap"),
                        Phrases.of("train.turn"),
                        Phrases.of("train.hertz"));
        page.rule();
        for (Train train : sheet.trains()) {
            page.row(
                    TRAINS,
                    name(train),
                    units.fineMass(train.guidesG()),
                    gap(train),
                    number(train.staticTurnDeg(), 1, "°"),
                    number(train.hertz(), 2, " Hz"));
        }
        for (Train train : sheet.trains()) {
            if (train.doubt() != null) {
                page.paragraph("", Phrases.of("train.doubt", name(train), train.doubt()));
            }
        }
        Double off = sheet.offReelDeg();
        if (off != null) {
            page.paragraph("", Phrases.of("train.offReel", number(off, 1, "")));
        }
        Boolean asGood = sheet.fewerIsAsGood();
        if (asGood != null) {
            page.paragraph("", Phrases.of(asGood ? "train.fewerGood" : "train.fewerBad"));
        }
        places();
    }

    private static String name(Train train) {
        return Phrases.of("train." + train.spacing(), train.count());
    }

    /** The smaller of both loads. */
    private String gap(Train train) {
        Double working = train.workingGapMm();
        Double test = train.staticGapMm();
        if (working == null || test == null) {
            return "–";
        }
        double least = Math.min(working, test);
        return least < 0 ? Phrases.of("train.touches") : units.partLength(Math.rint(least * 10) / 10);
    }

    private void places() {
        if (sheet.wants().isEmpty()) {
            return;
        }
        page.gap()
                .row(
                        PLACES,
                        Phrases.of("bend.ring"),
                        Phrases.of("train.fromTip"),
                        Phrases.of("train.fromFoot"),
                        Phrases.of("train.height"),
                        Phrases.of("train.ring"));
        page.rule();
        for (Want want : sheet.wants()) {
            Double height = want.heightMm();
            Double least = want.ringIdMinMm();
            Double most = want.ringIdMaxMm();
            page.row(
                    PLACES,
                    Phrases.of("bend.guide", want.number()),
                    units.partLength(Math.rint(want.fromTipMm())),
                    units.partLength(Math.rint(want.fromFootMm())),
                    height == null ? Phrases.of("train.any") : units.partLength(Math.rint(height)),
                    least == null || most == null
                            ? Phrases.of("train.runner")
                            : Phrases.of(
                                    "train.range",
                                    String.format(Locale.ROOT, "%.0f", least),
                                    units.partLength(Math.rint(most))));
        }
    }

    private static String number(@Nullable Double value, int decimals, String unit) {
        return value == null ? "–" : String.format(Locale.ROOT, "%." + decimals + "f", value) + unit;
    }
}
