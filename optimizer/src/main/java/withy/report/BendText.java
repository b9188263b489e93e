package withy.report;

import static withy.report.BendWords.degrees;
import static withy.report.BendWords.hertz;
import static withy.report.BendWords.number;

import withy.app.BendAnswer;
import withy.app.MachineSheet;
import withy.app.MachineSheet.Line;
import withy.app.MachineSheet.LoadDrop;
import withy.app.OddsSheet;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** The answer of {@code bend} for a terminal of 80 columns. */
public final class BendText {
    private static final Page.Column[] LOADS = {
        new Page.Column(26, false), new Page.Column(20, true), new Page.Column(20, true)
    };
    private static final Page.Column[] COSTS = {
        new Page.Column(26, false), new Page.Column(16, true), new Page.Column(16, true), new Page.Column(18, true)
    };

    private final Page page = new Page();
    private final BendAnswer answer;
    private final MachineSheet machine;
    private final QuantityText units;

    private BendText(BendAnswer answer, QuantityText units) {
        this.answer = answer;
        this.machine = answer.machine();
        this.units = units;
    }

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(BendAnswer answer, QuantityText units) {
        return new BendText(answer, units).text();
    }

    private String text() {
        page.paragraph("", Phrases.of("bend.title", answer.name()));
        page.paragraph(
                "",
                Phrases.of(
                        "bend.lead",
                        units.mass(answer.weightG()),
                        units.partLength(machine.outline().handleFrontMm())));
        stiffness();
        hung();
        LineText line = new LineText(page, machine, units);
        line.write(Phrases.of("bend.line.working"), machine.working());
        Line test = machine.staticTest();
        if (test != null) {
            line.write(Phrases.of("bend.line.static"), test);
        }
        quickness();
        new TrainText(page, answer.train(), units).write();
        new WrapText(page, machine.wraps(), units).write();
        new HandleText(page, machine.handle(), units).write();
        odds();
        AnswerText.list(page, "text.cautions", answer.cautions());
        return page.toString();
    }

    private void odds() {
        OddsSheet odds = answer.odds();
        if (odds != null) {
            page.heading(Phrases.of("bend.odds"));
            page.paragraph(
                    "",
                    Phrases.of(
                            odds.differenceG() < 0 ? "bend.odds.lighter" : "bend.odds.heavier",
                            odds.against(),
                            units.mass(Math.abs(odds.differenceG())),
                            units.mass(odds.spreadG()),
                            number(100 * odds.probabilityLighter(), 0)));
        }
    }

    private void stiffness() {
        MachineSheet.Stiffness stiffness = machine.stiffness();
        Double modulus = stiffness.modulusMpa();
        page.heading(Phrases.of("bend.stiffness"));
        page.paragraph(
                "",
                Phrases.of("bend.stiffness." + stiffness.source(), modulus == null ? "" : number(modulus / 1000, 0)));
        if (stiffness.doubt() != null) {
            page.paragraph("", Phrases.of("bend.stiffness.doubt", stiffness.doubt()));
        }
    }

    private void hung() {
        MachineSheet.Hung hung = machine.hung();
        page.gap().row(LOADS, Phrases.of("bend.hung"), Phrases.of("bend.hung.drop"), Phrases.of("bend.hung.tip"));
        page.rule();
        for (LoadDrop load : hung.curve()) {
            Double drop = load.dropMm();
            Double tip = load.tipDeg();
            page.row(
                    LOADS,
                    load.loadG() > 0 ? units.mass(load.loadG()) : Phrases.of("bend.hung.nothing"),
                    drop == null ? "–" : length(drop),
                    tip == null ? "–" : degrees(tip));
        }
        Double third = hung.thirdG();
        Double action = hung.actionAngleDeg();
        page.paragraph(
                "",
                third == null || action == null
                        ? Phrases.of("bend.hung.noThird", String.valueOf(hung.doubt()))
                        : Phrases.of(
                                "bend.hung.third", units.mass(third), length(hung.thirdDropMm()), degrees(action)));
    }

    private void quickness() {
        MachineSheet.Quick quick = machine.quickness();
        page.heading(Phrases.of("bend.quick"));
        Double blank = quick.blankHz();
        Double finished = quick.finishedHz();
        Double tip = quick.tipHertzPerGram();
        if (blank == null || finished == null || tip == null) {
            page.paragraph("", Phrases.of("bend.quick.doubt", String.valueOf(quick.doubt())));
            return;
        }
        page.paragraph("", Phrases.of("bend.quick.lead", hertz(blank), hertz(finished)));
        page.paragraph("", Phrases.of("bend.quick.tip", hertz(tip)));
        page.gap()
                .row(
                        COSTS,
                        Phrases.of("bend.quick.what"),
                        Phrases.of("bend.quick.mass"),
                        Phrases.of("bend.quick.slower"),
                        Phrases.of("bend.quick.perGram"));
        page.rule();
        for (MachineSheet.GroupCost group : quick.groups()) {
            page.row(
                    COSTS,
                    Phrases.of("bend.group." + group.what()),
                    units.fineMass(group.massG()),
                    hertz(group.hertz()),
                    "");
        }
        for (MachineSheet.GuideCost guide : quick.guides()) {
            page.row(
                    COSTS,
                    "  " + Phrases.station(guide.station()),
                    units.fineMass(guide.massG()),
                    hertz(guide.hertz()),
                    hertz(guide.hertzPerGram()));
        }
    }

    private String length(double mm) {
        return units.partLength(Math.rint(mm));
    }
}
