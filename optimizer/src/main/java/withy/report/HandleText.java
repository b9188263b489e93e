package withy.report;

import static withy.report.BendWords.number;

import withy.app.HandSheet;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** Hand, reels and counterweights for a terminal of 80 columns. */
final class HandleText {
    private static final Page.Column[] BALANCE = {
        new Page.Column(30, false), new Page.Column(20, true), new Page.Column(14, true), new Page.Column(12, true)
    };

    private final Page page;
    private final HandSheet handle;
    private final QuantityText units;

    HandleText(Page page, HandSheet handle, QuantityText units) {
        this.page = page;
        this.handle = handle;
        this.units = units;
    }

    void write() {
        page.heading(Phrases.of("bend.handle"));
        page.paragraph(
                "",
                Phrases.of(
                        "bend.handle.reach",
                        units.partLength(handle.reachMm()),
                        units.partLength(handle.wantedMinMm()),
                        units.partLength(handle.wantedMaxMm())));
        Double least = handle.forearmMinMm();
        Double most = handle.forearmMaxMm();
        Double women = handle.womenPercent();
        Double men = handle.menPercent();
        if (least != null && most != null && women != null && men != null) {
            page.paragraph(
                    "",
                    Phrases.of(
                            "bend.handle.forearm",
                            units.partLength(least),
                            units.partLength(most),
                            number(women, 0),
                            number(men, 0)));
        }
        barrel();
        balance();
    }

    private void barrel() {
        Double barrel = handle.barrelMm();
        Double thin = handle.barrelMinMm();
        Double thick = handle.barrelMaxMm();
        if (barrel != null && thin != null && thick != null) {
            page.paragraph(
                    "",
                    Phrases.of(
                            "bend.handle.barrel",
                            units.partLength(barrel),
                            units.partLength(handle.palmMm()),
                            units.partLength(thin),
                            units.partLength(thick)));
        }
    }

    private void balance() {
        page.gap()
                .row(
                        BALANCE,
                        Phrases.of("bend.balance"),
                        Phrases.of("bend.balance.point"),
                        Phrases.of("bend.balance.tipHeavy"),
                        Phrases.of("bend.balance.cure"));
        page.rule();
        for (HandSheet.ReelBalance reel : handle.reels()) {
            page.row(
                    BALANCE,
                    Phrases.of(
                            reel.name().isEmpty() ? "bend.balance.brief" : "bend.balance.reel",
                            units.mass(reel.massG()),
                            reel.name()),
                    point(reel.balanceMm()),
                    units.moment(reel.tipHeavyNmm()),
                    reel.zoneGrams() > 0
                            ? units.mass(reel.zoneGrams())
                            : Phrases.of(reel.zoneGrams() < 0 ? "bend.balance.buttHeavy" : "text.inside"));
        }
        for (HandSheet.Counterweight weight : handle.counterweights()) {
            page.row(
                    BALANCE,
                    Phrases.of("bend.balance.weight", units.mass(weight.grams())),
                    point(weight.balanceMm()),
                    units.moment(weight.tipHeavyNmm()),
                    "");
            page.paragraph(
                    "    ",
                    Phrases.of(
                            "bend.balance.swing",
                            units.inertia(weight.swingWeightKgM2()),
                            units.fineMass(weight.tipGrams())));
        }
    }

    private String point(double mm) {
        String key = mm < 0 ? "text.behind" : "text.ahead";
        return Phrases.of(key, units.partLength(Math.rint(Math.abs(mm))));
    }
}
