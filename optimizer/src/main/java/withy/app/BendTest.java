package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.mechanics.BendCase;
import withy.mechanics.BendResult;
import withy.mechanics.BendUnderLoad;
import withy.mechanics.OneThirdDrop;
import withy.mechanics.StiffnessFit;
import withy.mechanics.StiffnessFit.DropFrom;
import withy.mechanics.StiffnessFit.Reading;
import withy.mechanics.StiffnessProfile;
import withy.mechanics.TraceFit;
import withy.rod.BlankShape;

/** A blank bent on the shop's own wall: what it was loaded with and how far it went, turned into its stiffness. */
public final class BendTest {
    /** Exponent of a thin wall of constant thickness, taken where the readings don't tell it. */
    private static final double THIN_WALL = 3;

    /** Fewest readings that tell the exponent. */
    private static final int TELLING = 3;

    /** Weight for a third of the length beyond which no blank of a rod is believed, g. ASSUMED. */
    private static final double STIFFEST_G = 20_000;

    private BendTest() {}

    /**
     * What was done.
     *
     * @param heldMm where it was held, level, mm from its butt
     * @param from where drops count from
     * @param readings weights and drops; empty for a trace
     * @param traceLoadG the weight under which points were traced, g
     * @param trace traced points; empty for readings
     */
    public record Question(
            double heldMm, DropFrom from, List<Reading> readings, double traceLoadG, List<TraceFit.Point> trace) {
        public Question {
            readings = List.copyOf(readings);
            trace = List.copyOf(trace);
        }
    }

    /**
     * What came of it.
     *
     * @param answer the fitted blank, or null
     * @param doubt why there is none, or null
     */
    public record Outcome(
            @Nullable BendTestAnswer answer, @Nullable String doubt) {}

    /** Fits a blank of the catalogue. */
    public static Outcome run(Catalog catalog, Blank blank, Question question) {
        BlankShape shape = BlankShape.of(blank);
        StiffnessFit.Wall wall =
                new StiffnessFit.Wall(shape.profile(), question.heldMm(), shape.tube(), question.from());
        return question.trace().isEmpty()
                ? readings(catalog, shape, wall, question)
                : trace(catalog, shape, wall, question);
    }

    private static Outcome readings(Catalog catalog, BlankShape shape, StiffnessFit.Wall wall, Question question) {
        List<Reading> told = question.readings();
        StiffnessFit.Outcome outcome = told.size() < TELLING
                ? StiffnessFit.scale(wall, THIN_WALL, told)
                : StiffnessFit.scaleAndExponent(wall, THIN_WALL, told);
        if (!(outcome instanceof StiffnessFit.Outcome.Fitted fitted)) {
            return new Outcome(null, ((StiffnessFit.Outcome.None) outcome).reason());
        }
        List<BendTestAnswer.Reading> lines = new ArrayList<>();
        for (int i = 0; i < told.size(); i++) {
            double residual = fitted.residualsMm().get(i);
            lines.add(new BendTestAnswer.Reading(
                    told.get(i).loadG(),
                    told.get(i).dropMm(),
                    Sheets.rounded(told.get(i).dropMm() + residual, 2),
                    Sheets.rounded(residual, 2)));
        }
        String from = question.from() == DropFrom.STRAIGHT_LINE ? "straight-line" : "own-droop";
        return answer(catalog, shape, question, from, lines, List.of(), fitted.rmsMm(), fitted.stiffness());
    }

    private static Outcome trace(Catalog catalog, BlankShape shape, StiffnessFit.Wall wall, Question question) {
        TraceFit.Outcome outcome = TraceFit.of(wall, question.traceLoadG(), THIN_WALL, question.trace());
        if (!(outcome instanceof TraceFit.Outcome.Fitted fitted)) {
            return new Outcome(null, ((TraceFit.Outcome.None) outcome).reason());
        }
        List<TraceFit.Point> told = question.trace();
        double scale = fitted.scaleMm();
        List<BendTestAnswer.Traced> points = new ArrayList<>();
        for (int i = 0; i < told.size(); i++) {
            points.add(new BendTestAnswer.Traced(
                    Sheets.rounded(scale * (told.get(i).ahead() - told.get(0).ahead()), 1),
                    Sheets.rounded(scale * (told.get(i).down() - told.get(0).down()), 1),
                    i == 0 ? 0 : Sheets.rounded(fitted.residualsMm().get(i - 1), 2)));
        }
        return answer(catalog, shape, question, "trace", List.of(), points, fitted.rmsMm(), fitted.stiffness());
    }

    private static Outcome answer(
            Catalog catalog,
            BlankShape shape,
            Question question,
            String from,
            List<BendTestAnswer.Reading> readings,
            List<BendTestAnswer.Traced> points,
            double rmsMm,
            StiffnessProfile.OfDiameter stiffness) {
        double butt = shape.profile().startMm();
        OneThirdDrop.Outcome third = OneThirdDrop.of(stiffness, butt, shape.tube(), List.of());
        OneThirdDrop.Outcome.Found found = third instanceof OneThirdDrop.Outcome.Found f ? f : null;
        if (found == null || found.weightG() > STIFFEST_G) {
            String why = third instanceof OneThirdDrop.Outcome.None none
                    ? none.reason()
                    : String.format(
                            Locale.ROOT,
                            "it would take more than %.0f kg to drop its tip by a third of its length.",
                            STIFFEST_G / 1000);
            return new Outcome(null, why);
        }
        BendResult droop = BendUnderLoad.solve(new BendCase(stiffness, question.heldMm(), 0, shape.tube(), List.of()));
        if (!(droop instanceof BendResult.Bent bent)) {
            return new Outcome(null, ((BendResult.NotConverged) droop).reason());
        }
        Blank blank = shape.blank();
        return new Outcome(
                new BendTestAnswer(
                        Answer.SCHEMA,
                        catalog.hash(),
                        blank.id(),
                        blank.facts().name(),
                        question.heldMm(),
                        from,
                        readings,
                        points,
                        Sheets.rounded(rmsMm, 2),
                        Sheets.rounded(stiffness.exponent(), 4),
                        !points.isEmpty() || readings.size() >= TELLING,
                        stiffness.scale(),
                        Sheets.rounded(bent.dropMm(), 1),
                        Sheets.rounded(found.weightG(), 1),
                        Sheets.rounded(found.actionAngleDeg(), 1),
                        blank.thirdTestG(),
                        Machines.along(stiffness, shape.profile())),
                null);
    }
}
