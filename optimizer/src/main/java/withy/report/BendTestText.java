package withy.report;

import static withy.report.BendWords.number;

import withy.app.BendTestAnswer;
import withy.app.MachineSheet;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** The answer of {@code bendtest} for a terminal of 80 columns. */
public final class BendTestText {
    private static final Page.Column[] READINGS = {
        new Page.Column(20, false), new Page.Column(18, true), new Page.Column(18, true), new Page.Column(18, true)
    };
    private static final Page.Column[] ALONG = {
        new Page.Column(20, false), new Page.Column(18, true), new Page.Column(18, true)
    };

    private BendTestText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(BendTestAnswer answer, QuantityText units) {
        Page page = new Page();
        page.paragraph("", Phrases.of("bendtest.title", answer.name()));
        page.paragraph("", Phrases.of("bendtest.held", units.partLength(answer.heldMm())));
        page.paragraph("", Phrases.of("bendtest.from." + answer.dropFrom()));
        if (answer.points().isEmpty()) {
            readings(page, answer, units);
        } else {
            points(page, answer, units);
        }
        page.paragraph("", Phrases.of("bendtest.rms", units.partLength(Math.rint(answer.rmsMm() * 10) / 10)));
        page.gap()
                .paragraph(
                        "",
                        Phrases.of(
                                answer.exponentFitted() ? "bendtest.law" : "bendtest.lawTaken",
                                number(answer.exponent(), 2)));
        page.paragraph(
                "", Phrases.of("bendtest.third", units.mass(answer.thirdTestG()), number(answer.actionAngleDeg(), 0)));
        Double listed = answer.catalogThirdTestG();
        if (listed != null) {
            page.paragraph("", Phrases.of("bendtest.listed", units.mass(listed)));
        }
        page.paragraph("", Phrases.of("bendtest.droop", units.partLength(Math.rint(answer.droopMm()))));
        along(page, answer, units);
        return page.toString();
    }

    private static void readings(Page page, BendTestAnswer answer, QuantityText units) {
        page.gap()
                .row(
                        READINGS,
                        Phrases.of("bendtest.load"),
                        Phrases.of("bendtest.measured"),
                        Phrases.of("bendtest.fitted"),
                        Phrases.of("bendtest.off"));
        page.rule();
        for (BendTestAnswer.Reading reading : answer.readings()) {
            page.row(
                    READINGS,
                    units.mass(reading.loadG()),
                    units.partLength(reading.dropMm()),
                    units.partLength(Math.rint(reading.fittedMm() * 10) / 10),
                    units.partLength(Math.rint(reading.residualMm() * 10) / 10));
        }
    }

    private static void points(Page page, BendTestAnswer answer, QuantityText units) {
        page.gap()
                .row(
                        READINGS,
                        "",
                        Phrases.of("bendtest.ahead"),
                        Phrases.of("bendtest.down"),
                        Phrases.of("bendtest.off"));
        page.rule();
        int number = 0;
        for (BendTestAnswer.Traced point : answer.points()) {
            page.row(
                    READINGS,
                    Phrases.of("bendtest.point", ++number),
                    units.partLength(point.aheadMm()),
                    units.partLength(point.downMm()),
                    units.partLength(Math.rint(point.residualMm() * 10) / 10));
        }
    }

    private static void along(Page page, BendTestAnswer answer, QuantityText units) {
        page.gap()
                .row(
                        ALONG,
                        Phrases.of("bendtest.place"),
                        Phrases.of("bendtest.diameter"),
                        Phrases.of("bendtest.stiffness"));
        page.rule();
        for (MachineSheet.StiffnessAt at : answer.along()) {
            page.row(
                    ALONG,
                    units.partLength(at.xMm()),
                    units.thickness(at.odMm()),
                    number(at.eiNmm2() / 1e6, 3) + " N·m²");
        }
    }
}
