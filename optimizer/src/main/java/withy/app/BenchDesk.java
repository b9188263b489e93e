package withy.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.app.BenchSheet.Fit;
import withy.app.BenchSheet.GuideLine;
import withy.app.BenchSheet.HandleLine;
import withy.app.BenchSheet.Mix;
import withy.app.BenchSheet.WideGap;
import withy.brief.Brief;
import withy.catalog.Adhesive;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Finish;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.explain.Phrases;
import withy.machine.WrapTable;
import withy.mechanics.ArborRings;
import withy.mechanics.GuideSpacing;
import withy.rod.BalanceTolerance;
import withy.rod.Build;
import withy.rod.GripFit;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatGap;
import withy.rod.SeatSet;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.units.QuantityText;

/** Writes down what the bench needs to know of one build; a build that breaks a rule gets no sheet. */
public final class BenchDesk {
    private static final int COATS = 2;

    private final Rod rod;

    private BenchDesk(Rod rod) {
        this.rod = rod;
    }

    /** The sheet of a legal build. */
    public static BenchSheet of(Catalog catalog, Brief brief, Build build, QuantityText units) {
        return of(catalog, brief, build, units, null);
    }

    /** The sheet of a job's accepted build, with its pieces and what the scale said of them. */
    public static BenchSheet of(JobRods.JobRod one, QuantityText units) {
        return of(one.catalog(), one.brief(), one.build(), units, BenchJob.of(one.file(), one.catalog()));
    }

    private static BenchSheet of(
            Catalog catalog, Brief brief, Build build, QuantityText units, BenchSheet.@Nullable Made made) {
        BuildSheet sheet = new Offers(catalog, brief, Rulebook.standard(), units)
                .own(build)
                .sheet();
        refuseIllegal(sheet);
        Rod rod = Rod.measure(catalog, brief, build);
        BenchDesk desk = new BenchDesk(rod);
        return new BenchSheet(
                Answer.SCHEMA,
                catalog.hash(),
                sheet,
                Outlines.of(rod),
                desk.handle(),
                desk.tipRingMm(),
                desk.guides(),
                desk.widestGap(),
                desk.bins(sheet),
                desk.mixes(),
                rod.setting().blank().lureMinG(),
                rod.setting().blank().lureMaxG(),
                Sheets.rounded(BalanceTolerance.bareMm(rod), 1),
                Sheets.rounded(BalanceTolerance.withReelMm(rod), 1),
                made,
                Cautions.atBench(List.of(rod)));
    }

    /** Paper of a build that breaks a rule would be believed. */
    static void refuseIllegal(BuildSheet sheet) {
        if (!Verdicts.legal(sheet.verdicts())) {
            throw new RefusedBuild(
                    Phrases.of("paper.illegal"),
                    sheet.verdicts().stream()
                            .filter(v -> v.outcome().equals(Verdicts.FAIL)
                                    || v.outcome().equals(Verdicts.UNKNOWN))
                            .map(BuildSheet.VerdictLine::sentence)
                            .toList());
        }
    }

    private List<HandleLine> handle() {
        List<HandleLine> lines = new ArrayList<>();
        for (Placed placed : rod.placed().values()) {
            switch (placed.station().place()) {
                case BUTT_CAP,
                        BUTT_GRIP,
                        REAR_GRIP,
                        REAR_CHECK,
                        SEAT,
                        HOOD,
                        FORE_CHECK,
                        FORE_GRIP,
                        WINDING_CHECK,
                        KEEPER,
                        DECAL,
                        TIP_TOP -> lines.add(line(placed));
                case SEAT_ARBORS, GUIDE, THREAD, FINISH, ADHESIVE, BLANK -> {
                    // arbors stand with the seat, guides and mixes in lists of their own
                }
            }
        }
        lines.sort(Comparator.comparingDouble(HandleLine::fromMm));
        return lines;
    }

    private HandleLine line(Placed placed) {
        Part part = placed.part();
        boolean cut = part instanceof Grip grip && grip.lengthMm() - placed.lengthMm() > 0.01;
        return new HandleLine(
                placed.station().key(),
                part.id(),
                part.facts().name(),
                part.facts().bin(),
                Sheets.rounded(placed.fromMm(), 2),
                Sheets.rounded(placed.toMm(), 2),
                cut ? ((Grip) part).lengthMm() : null,
                fit(placed));
    }

    private @Nullable Fit fit(Placed placed) {
        Part part = placed.part();
        if (part instanceof Grip grip) {
            return grip(grip, placed);
        }
        SeatSet seat = rod.seat();
        if (placed.station().equals(Station.SEAT) && seat != null) {
            return seat(SeatGap.of(seat, rod.setting()));
        }
        if (part instanceof Check check) {
            double od = rod.setting().odAt(placed.fromMm());
            return fit(
                    check.soft() ? "stretch" : "glue", od, check.innerMm(), check.innerMm(), check.innerMm() - od, 0);
        }
        if (part instanceof ButtCap cap) {
            double od = rod.setting().blank().buttOdMm();
            return fit(cap.soft() ? "stretch" : "glue", od, cap.innerMm(), cap.innerMm(), (cap.innerMm() - od) / 2, 0);
        }
        if (part instanceof TipTop tip) {
            double od = rod.setting().blank().tipOdMm();
            return fit("tube", od, tip.tubeMm(), tip.tubeMm(), tip.tubeMm() - od, 0);
        }
        return null;
    }

    private Fit grip(Grip grip, Placed placed) {
        GripFit fitted = GripFit.of(grip, rod.setting().profile(), placed.fromMm(), placed.lengthMm());
        boolean reamed = Math.max(fitted.boreRearMm(), fitted.boreFrontMm()) > grip.boreMm() + 0.005;
        String how = fitted.tapeGapMm() > 0 ? "tape" : reamed ? "ream" : GripFit.stretches(grip) ? "stretch" : "glue";
        return fit(how, fitted.thickMm(), fitted.boreRearMm(), fitted.boreFrontMm(), fitted.tapeGapMm(), 0);
    }

    private static Fit seat(SeatGap gap) {
        String how = gap.filling().name().toLowerCase(Locale.ROOT).replace('_', '-');
        int pieces = gap.filling() == ArborRings.Filling.TAPE_RINGS ? SeatGap.TAPE_RINGS : gap.rings();
        return fit(how, gap.thickMm(), gap.arborInnerMm(), gap.arborOuterMm(), gap.radialMm(), pieces);
    }

    private static Fit fit(String how, double blank, double rear, double front, double gap, int pieces) {
        return new Fit(
                how,
                Sheets.rounded(blank, 2),
                Sheets.rounded(rear, 2),
                Sheets.rounded(front, 2),
                Sheets.rounded(gap, 2),
                pieces);
    }

    /** The ring's outer edge is where the tip-top ends; its size is about its outer diameter. */
    private @Nullable Double tipRingMm() {
        Placed placed = rod.placed().get(Station.TIP_TOP);
        return placed != null && placed.part() instanceof TipTop tip
                ? Sheets.rounded(placed.toMm() - tip.ringSize() / 2, 2)
                : null;
    }

    private List<GuideLine> guides() {
        Double tip = tipRingMm();
        List<GuideLine> lines = new ArrayList<>();
        for (WrapTable.GuideWrap wrap : WrapTable.of(rod).guides()) {
            Placed placed = rod.placed().get(wrap.station());
            if (placed != null && placed.part() instanceof withy.catalog.Guide guide) {
                double x = placed.fromMm();
                lines.add(new GuideLine(
                        wrap.station().number(),
                        guide.id(),
                        guide.facts().name(),
                        guide.facts().bin(),
                        guide.ringSize(),
                        guide.feet(),
                        Sheets.rounded(x, 2),
                        tip == null ? null : Sheets.rounded(tip - x, 2),
                        fromFerrule(x),
                        Sheets.rounded(wrap.wrapMm(), 2),
                        Sheets.rounded(wrap.turns(), 1),
                        Sheets.rounded(wrap.underTurns(), 1)));
            }
        }
        return lines;
    }

    private @Nullable WideGap widestGap() {
        WideGap widest = null;
        for (int number = 1; number < rod.setting().guideCount(); number++) {
            double times = Sheets.rounded(rod.setting().growth(number), 2);
            if (times > (widest == null ? GuideSpacing.LARGEST_RATIO : widest.times())) {
                widest = new WideGap(number, times);
            }
        }
        return widest;
    }

    private @Nullable Double fromFerrule(double x) {
        return rod.setting().shape().joints().stream()
                .flatMap(joint -> Stream.of(joint.fromMm(), joint.toMm()))
                .min(Comparator.comparingDouble(end -> Math.abs(x - end)))
                .map(end -> Sheets.rounded(x - end, 2))
                .orElse(null);
    }

    private Map<String, String> bins(BuildSheet sheet) {
        Map<String, String> bins = new TreeMap<>();
        for (BuildSheet.PartLine line : sheet.parts()) {
            Part part = rod.setting().catalog().find(line.part());
            if (part != null && !part.facts().bin().isEmpty()) {
                bins.put(line.part(), part.facts().bin());
            }
        }
        return bins;
    }

    private List<Mix> mixes() {
        Finish finish = rod.with().finish();
        Adhesive adhesive = rod.with().adhesive();
        double coat = rod.tariff().finishMixedMl(rod.total().finishUl()) / COATS;
        double glue = rod.setting().catalog().rates().adhesiveMixMl();
        double finishParts = finish.resinParts() + finish.hardenerParts();
        double glueParts = adhesive.resinParts() + adhesive.hardenerParts();
        return List.of(
                new Mix(
                        "adhesive",
                        adhesive.facts().name(),
                        adhesive.facts().bin(),
                        1,
                        adhesive.resinParts(),
                        adhesive.hardenerParts(),
                        Sheets.rounded(glue * adhesive.resinParts() / glueParts, 2),
                        Sheets.rounded(glue * adhesive.hardenerParts() / glueParts, 2),
                        adhesive.potLifeMin(),
                        adhesive.cureHours()),
                new Mix(
                        "finish",
                        finish.facts().name(),
                        finish.facts().bin(),
                        COATS,
                        finish.resinParts(),
                        finish.hardenerParts(),
                        Sheets.rounded(coat * finish.resinParts() / finishParts, 2),
                        Sheets.rounded(coat * finish.hardenerParts() / finishParts, 2),
                        finish.potLifeMin(),
                        finish.recoatHours()));
    }
}
