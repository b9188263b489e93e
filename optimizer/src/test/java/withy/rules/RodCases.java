package withy.rules;

import static withy.rules.Cases.after;
import static withy.rules.Cases.brief;
import static withy.rules.Cases.part;

import java.util.List;
import java.util.function.Consumer;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Action;
import withy.catalog.Blank;
import withy.catalog.FerruleKind;
import withy.catalog.Grip;
import withy.catalog.Material;
import withy.catalog.RingMaterial;
import withy.catalog.RodType;
import withy.fixture.Fixtures;
import withy.rod.Station;

/**
 * Cases of the rules about how parts fit the blank and each other. Limits are the handbook's and the trade table's, common practice without a
 * published source. The blank is 12 − 0.003 x mm thick along the handle: 12.00 at the butt, 11.61 under the rear grip (130), 11.43 under the seat
 * (190), 11.13 at the winding check (290).
 */
final class RodCases {
    private static final Consumer<Fixtures> ARBOR =
            f -> f.put(Station.SEAT_ARBORS, "arbor").part("seat", "boreMm", 17.01);
    private static final Consumer<Fixtures> NO_ROOM = f -> f.fullHandle().layout("reelFootMm", 50);
    private static final Consumer<Fixtures> SOFT_CHECK = f -> f.part("check", "soft", true);
    private static final Consumer<Fixtures> SOFT_CAP = f -> f.part("cap", "soft", true);
    private static final Consumer<Fixtures> SURF = f -> f.brief("rodType", RodType.SURF_SPINNING);
    private static final Consumer<Fixtures> FORE_GRIP = f -> f.put(Station.FORE_GRIP, "fore-grip");
    private static final Consumer<Fixtures> RECESSED =
            FORE_GRIP.andThen(f -> f.part("fore-grip", "recessFamily", "m24"));

    private RodCases() {}

    static void seatAndGrip(Cases c) {
        c.rule("seat-on-blank")
                .always("bore", "gap")
                .number("bore", part("seat", "boreMm"), 12.6, 11.43, 11.42)
                .number("gap", after(ARBOR, part("seat", "boreMm")), 20, 23.43, 23.45)
                .number("arbor-missing", part("seat", "boreMm"), 12.6, 13.41, 13.43)
                .not("arbor-missing", ARBOR)
                .number("arbor-needless", after(ARBOR, part("seat", "boreMm")), 15, 12.93, 12.91)
                .not("arbor-needless", Cases::legal)
                .number("arbor-outer", after(ARBOR, part("arbor", "odMm")), 20, 16.81, 16.80)
                .not("arbor-outer", Cases::legal)
                .number("arbor-bore", after(ARBOR, part("arbor", "idMm")), 11, 11.63, 11.64)
                .not("arbor-bore", Cases::legal)
                // trimmed to 16.86, reamed to 11.58
                .number("arbor-wall", after(ARBOR, part("arbor", "minWallMm")), 1.5, 2.64, 2.65)
                .not("arbor-wall", Cases::legal);
        c.rule("grip-on-blank")
                .number("ream", part("rear-grip", "reamMaxMm"), 14, 11.81, 11.80)
                .not("ream", NO_ROOM)
                .number("wall", part("rear-grip", "rearOdMm"), 24, 19.81, 19.79)
                .number("wall", after(f -> foam(f), part("rear-grip", "rearOdMm")), 24, 17.03, 17.01)
                .not("wall", NO_ROOM)
                .number("loose", part("rear-grip", "boreMm"), 10, 13.11, 13.13)
                .not("loose", NO_ROOM);
    }

    /** An EVA grip whose bore, 9, is tighter than 0.85 × 11.61 and is reamed to 0.95 × 11.61 = 11.03. */
    private static void foam(Fixtures f) {
        f.part("rear-grip", "facts.material", Material.EVA).part("rear-grip", "boreMm", 9);
    }

    static void rings(Cases c) {
        c.rule("ring-fit")
                .number("check-tight", part("check", "innerMm"), 11.4, 11.13, 11.12)
                .not("check-tight", SOFT_CHECK)
                .number("check-loose", part("check", "innerMm"), 11.4, 11.63, 11.64)
                .not("check-loose", SOFT_CHECK)
                .number("soft-check-tight", after(SOFT_CHECK, part("check", "innerMm")), 10, 8.3475, 8.33)
                .not("soft-check-tight", Cases::legal)
                .number("soft-check-loose", after(SOFT_CHECK, part("check", "innerMm")), 10, 11.13, 11.15)
                .not("soft-check-loose", Cases::legal)
                .number("cap-tight", part("cap", "innerMm"), 12.5, 12, 11.99)
                .not("cap-tight", SOFT_CAP)
                .number("cap-loose", part("cap", "innerMm"), 12.5, 13.5, 13.51)
                .not("cap-loose", SOFT_CAP)
                .number("soft-cap-tight", after(SOFT_CAP, part("cap", "innerMm")), 11, 10.2, 10.18)
                .not("soft-cap-tight", Cases::legal)
                .number("soft-cap-loose", after(SOFT_CAP, part("cap", "innerMm")), 11, 12, 12.02)
                .not("soft-cap-loose", Cases::legal)
                .number("step", part("cap", "outerMm"), 26, 28, 28.01)
                .number("step", part("rear-grip", "frontOdMm"), 24, 22, 21.99)
                .not("step", Cases::legal)
                .number("step-at-ring", part("check", "outerMm"), 19, 18, 17.99)
                .not("step-at-ring", f -> f.empty(Station.WINDING_CHECK))
                .always("edge")
                .flag("edge", Cases::legal, f -> f.part("butt-grip", "frontFinished", false))
                .add("edge", Cases.Kind.BROKEN, f -> f.part("rear-grip", "rearFinished", false))
                .add("edge", Cases.Kind.BROKEN, f -> f.empty(Station.WINDING_CHECK))
                .flag("edge", f -> bareSeat(f), FORE_GRIP.andThen(f -> bareForeGrip(f)));
        c.rule("tip-top")
                .always("tube-tight", "tube-loose", "snug", "thread-layer", "present")
                .number("tube-tight", part("tip-top", "tubeMm"), 1.9, 1.81, 1.80)
                .number("tube-loose", part("tip-top", "tubeMm"), 1.9, 2.2, 2.21)
                .soft("snug", part("tip-top", "tubeMm"), 1.9, 1.82, 1.81)
                .soft("thick-glue", part("tip-top", "tubeMm"), 1.9, 1.95, 1.96)
                .not("thick-glue", f -> f.part("tip-top", "tubeMm", 2.1))
                .soft("thread-layer", part("tip-top", "tubeMm"), 1.9, 2.05, 2.06)
                .flag("present", Cases::legal, f -> f.empty(Station.TIP_TOP));
    }

    private static void bareSeat(Fixtures f) {
        f.empty(Station.WINDING_CHECK).part("seat", "frontFinished", true);
    }

    private static void bareForeGrip(Fixtures f) {
        f.empty(Station.WINDING_CHECK).part("fore-grip", "frontFinished", false);
    }

    static void handleWishes(Cases c) {
        Consumer<Fixtures> split = f -> f.brief("handle.form", new Wish<>(HandleForm.SPLIT, true, 1));
        Consumer<Fixtures> fast = f -> f.brief("handle.action", new Wish<>(Action.FAST, true, 1));
        Consumer<Fixtures> foreGrip = f -> f.brief("handle.foreGrip", new Wish<>(true, true, 1));
        Consumer<Fixtures> keeper = f -> f.brief("handle.keeper", new Wish<>(true, true, 1));
        Consumer<Fixtures> trigger = f -> f.casting().brief("handle.trigger", new Wish<>(true, true, 1));
        c.rule("handle")
                .flag("form-wish", split, split.andThen(Fixtures::fullHandle))
                .not("form-wish", Cases::legal)
                .flag("action-wish", fast, fast.andThen(f -> f.part("blank", "action", Action.SLOW)))
                .not("action-wish", f -> f.brief("handle.action", new Wish<>(Action.SLOW, false, 1)))
                .flag("trigger-wish", trigger.andThen(f -> f.part("seat", "trigger", true)), trigger)
                .not("trigger-wish", f -> f.brief("handle.trigger", new Wish<>(true, true, 1)))
                .not("trigger-wish", Fixtures::casting)
                .flag("fore-grip-wish", foreGrip.andThen(FORE_GRIP), foreGrip)
                .not("fore-grip-wish", Cases::legal)
                .flag("keeper-wish", keeper.andThen(f -> f.put(Station.KEEPER, "keeper")), keeper)
                .not("keeper-wish", Cases::legal);
    }

    static void handle(Cases c) {
        c.rule("handle")
                .always("grip-place", "grip-shortest", "grip-longest", "seat-behind-butt", "butt-closed", "butt-once")
                .always("reach-shortest", "reach-longest", "bare-blank")
                // palm 80: 21–24, half a millimetre either way
                .number("barrel-thin", part("seat", "barrelOdMm"), 22, 20.5, 20.49)
                .not("barrel-thin", SURF)
                .number("barrel-thick", part("seat", "barrelOdMm"), 22, 24.5, 24.51)
                .not("barrel-thick", SURF)
                .flag("grip-place", Cases::legal, f -> f.part("rear-grip", "place", Grip.Place.FORE))
                .flag(
                        "grip-place",
                        Fixtures::fullHandle,
                        f -> f.fullHandle().part("full-grip", "place", Grip.Place.REAR))
                .number("grip-shortest", RodCases::cutRear, 40, 20, 15)
                .number("grip-longest", RodCases::cutRear, 40, 60, 65)
                .flag("cut-grid", f -> cutRear(f, 40.0), f -> cutRear(f, 42.0))
                .not("cut-grid", Cases::legal)
                .not("cut-grid", f -> f.fullHandle().part("seat", "footCentreMm", 51))
                .number("seat-behind-butt", RodCases::footAt, 240, 50, 49)
                .flag("butt-closed", Cases::legal, f -> f.empty(Station.BUTT_CAP))
                .flag(
                        "butt-once",
                        f -> f.part("butt-grip", "rearClosed", true).empty(Station.BUTT_CAP),
                        f -> f.part("butt-grip", "rearClosed", true))
                .number("reach-shortest", brief("reachMinMm"), 220, 245, 245.01)
                .number("reach-longest", brief("reachMaxMm"), 255, 245, 244.99)
                .flag("one-material", Cases::legal, f -> f.part("rear-grip", "facts.material", Material.WOOD))
                .add(
                        "one-material",
                        Cases.Kind.BROKEN,
                        FORE_GRIP.andThen(f -> f.part("fore-grip", "facts.material", Material.WOOD)))
                .not("one-material", f -> f.brief("handle.mixedGrips", true))
                .flag("recess-family", RECESSED, RECESSED.andThen(f -> f.part("seat", "recessFamily", "")))
                .not("recess-family", FORE_GRIP)
                .flag("recess-beside", RECESSED, RECESSED.andThen(f -> f.put(Station.FORE_CHECK, "check")))
                .not("recess-beside", FORE_GRIP)
                // rear grip from 130
                .number("bare-blank", part("butt-grip", "lengthMm"), 80, 100, 100.01);
    }

    static void whole(Cases c) {
        c.rule("handle")
                .always("seat-present", "rear-grip-present", "adhesive")
                .flag("seat-present", Cases::legal, f -> f.empty(Station.SEAT))
                .flag("rear-grip-present", Cases::legal, f -> f.empty(Station.REAR_GRIP))
                .flag("butt-grip-present", Cases::legal, f -> f.empty(Station.BUTT_GRIP))
                .not("butt-grip-present", Fixtures::fullHandle)
                .flag(
                        "butt-grip-absent",
                        Fixtures::fullHandle,
                        f -> f.fullHandle().put(Station.BUTT_GRIP, "butt-grip"))
                .not("butt-grip-absent", Cases::legal)
                .flag("adhesive", Cases::legal, f -> f.empty(Station.ADHESIVE))
                // first guide at 715, handle to 294
                .number("stripper-clear", part("guide-20", "footLengthMm"), 12, 421, 421.01)
                .not("stripper-clear", f -> f.empty(Station.guide(1)))
                // first joint from 1020, inscription from 354
                .number(
                        "ferrule-clear",
                        after(f -> f.put(Station.DECAL, "decal"), part("decal", "widthMm")),
                        60,
                        666,
                        666.01)
                // keeper at 319
                .number(
                        "ferrule-clear",
                        after(f -> f.put(Station.KEEPER, "keeper"), part("keeper", "footLengthMm")),
                        6,
                        701,
                        701.01)
                .not("ferrule-clear", f -> onePiece(f));
    }

    static void train(Cases c) {
        c.rule("guide-train")
                .always("spacing", "growth", "ring-order", "frame-finish", "ring-material", "tip-ring", "tip-finish")
                .always("tip-ring-material", "filled", "thread", "finish")
                .flag("high-frame", Fixtures::casting, f -> f.casting().part("guide-20", "highFrame", true))
                .not("high-frame", Cases::legal)
                .number("count", (f, n) -> f.layout("guideCount", n), 8, 7, 6)
                .not("count", RodCases::byClearance)
                .number("clearance", after(RodCases::rubbing, brief("dragKg")), 3, 3.795, 4)
                .add("clearance", Cases.Kind.UNKNOWN, f -> byClearance(f.part("blank", "thirdTestG", 1.0)))
                .not("clearance", Cases::legal)
                .number("turn", RodCases::six, 9, 8.0827, 7.5)
                .not("turn", RodCases::byClearance)
                .add("spare", Cases.Kind.KEPT, RodCases::byClearance)
                .add("spare", Cases.Kind.LIMIT, RodCases::byClearance)
                .add("spare", Cases.Kind.WARNED, f -> byClearance(f.layout("guideCount", 9.0)))
                .not("spare", Cases::legal)
                .flag("spacing", Cases::legal, f -> f.layout("guideCount", 15))
                // on a spool of 56.7 mm the second of ten guides would stand on the joint, and the stripper cannot
                // follow it
                .soft("growth", RodCases::ten, 53, 56.3843, 56.7)
                .number("stripper-ring", part("guide-20", "ringIdMm"), 16.2, 13.5, 13.4)
                .not("stripper-ring", Fixtures::casting)
                .number("casting-stripper", after(Fixtures::casting, part("guide-20", "ringSize")), 20, 8, 7)
                .not("casting-stripper", Cases::legal)
                .soft("stripper-small", part("guide-20", "ringIdMm"), 16.2, 15.75, 15.7)
                .not("stripper-small", Fixtures::casting)
                // the line passes 31.09 from the axis there, the blank is 9.33 thick
                .soft("stripper-height", part("guide-20", "heightMm"), 28, 36.43, 36.45)
                .not("stripper-height", Fixtures::casting)
                .number("ring-order", part("guide-6", "ringSize"), 6, 10, 10.1)
                .number("reducer", part("guide-10", "ringSize"), 10, 8, 7.9)
                // the third guide after the second, too: size 10 before it
                .number("reducer", part("guide-6", "ringSize"), 6, 4, 3.9)
                .not("reducer", Cases::legal)
                .flag("frame-finish", Cases::legal, f -> f.part("guide-6", "frameFinish", "black"))
                .flag("ring-material", Cases::legal, f -> f.part("guide-6", "ringMaterial", RingMaterial.ALUMINA))
                .number("tip-ring", part("tip-top", "ringSize"), 5, 6, 7)
                .flag("tip-finish", Cases::legal, f -> f.part("tip-top", "frameFinish", "black"))
                .flag("tip-ring-material", Cases::legal, f -> f.part("tip-top", "ringMaterial", RingMaterial.ALUMINA))
                .add("filled", Cases.Kind.KEPT, Cases::legal)
                .add("filled", Cases.Kind.LIMIT, Cases::legal)
                .add("filled", Cases.Kind.BROKEN, f -> f.empty(Station.guide(5)))
                .flag("thread", Cases::legal, f -> f.empty(Station.THREAD))
                .flag("finish", Cases::legal, f -> f.empty(Station.FINISH));
    }

    private static void byClearance(Fixtures f) {
        f.brief("guidesByClearance", true);
    }

    /** Line above the blank, which it nears as the pull grows; the pull that makes it touch was found by halving. */
    private static void rubbing(Fixtures f) {
        byClearance(f.casting());
    }

    /** One guide fewer than usual; the thicker the blank in its middle, the more evenly it turns the line. Its diameter at the limit was found by halving. */
    private static void six(Fixtures f, Double middleOdMm) {
        f.layout("guideCount", 6.0).brief("reel.lipDiameterMm", 70.0);
        byClearance(f);
        f.part(
                "blank",
                "stations",
                List.of(
                        new Blank.OdStation(0, 12),
                        new Blank.OdStation(500, 10.5),
                        new Blank.OdStation(1050, middleOdMm),
                        new Blank.OdStation(2100, 1.8)));
    }

    /** Many guides, the reel far from the butt; the spool at the limit was found by halving. */
    private static void ten(Fixtures f, Double lipMm) {
        f.layout("guideCount", 10.0).layout("reelFootMm", 280.0).brief("reel.lipDiameterMm", lipMm);
    }

    private static void cutRear(Fixtures f, Double cutMm) {
        f.put(Station.REAR_GRIP, "rear-grip", cutMm);
    }

    private static void footAt(Fixtures f, Double mm) {
        f.layout("reelFootMm", mm);
    }

    private static void onePiece(Fixtures f) {
        f.part("blank", "sectionLengthsMm", List.of(2100.0))
                .part("blank", "ferruleKind", FerruleKind.NONE)
                .part("blank", "ferruleOverlapMm", 0);
    }
}
