package withy.app;

import java.util.Locale;
import withy.catalog.Adhesive;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Finish;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Hood;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;
import withy.catalog.TipTop;
import withy.catalog.WrapThread;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** What a builder picks a part by, in one line. */
final class PartText {
    private PartText() {}

    static String about(Part part, QuantityText units) {
        return switch (part.kind()) {
            case BLANK -> blank((Blank) part, units);
            case REEL_SEAT -> seat((ReelSeat) part, units);
            case HOOD -> Phrases.of("about.hood", ((Hood) part).family(), ((Hood) part).size());
            case ARBOR -> {
                Arbor arbor = (Arbor) part;
                yield Phrases.of(
                        "about.arbor",
                        units.thickness(arbor.odMm()),
                        units.thickness(arbor.idMm()),
                        units.partLength(arbor.lengthMm()));
            }
            case GRIP -> grip((Grip) part, units);
            case BUTT_CAP -> {
                ButtCap cap = (ButtCap) part;
                yield Phrases.of("about.cap", units.thickness(cap.innerMm()), units.thickness(cap.outerMm()));
            }
            case CHECK -> {
                Check check = (Check) part;
                yield Phrases.of(
                        check.soft() ? "about.softCheck" : "about.check",
                        units.thickness(check.innerMm()),
                        units.thickness(check.outerMm()));
            }
            case GUIDE -> guide((Guide) part, units);
            case TIP_TOP -> {
                TipTop tipTop = (TipTop) part;
                yield Phrases.of("about.tipTop", units.tubeSize(tipTop.tubeMm()), plain(tipTop.ringSize()));
            }
            case KEEPER -> Phrases.of("about.keeper", ((Keeper) part).feet());
            case THREAD -> {
                WrapThread thread = (WrapThread) part;
                yield Phrases.of(
                        "about.thread",
                        thread.letter(),
                        units.thickness(thread.diameterMm()),
                        plain(thread.metresPerSpool()));
            }
            case FINISH -> Phrases.of("about.pack", plain(((Finish) part).packMl()));
            case ADHESIVE -> Phrases.of("about.pack", plain(((Adhesive) part).packMl()));
            case DECAL -> {
                Decal decal = (Decal) part;
                yield Phrases.of("about.decal", units.partLength(decal.widthMm()), units.partLength(decal.heightMm()));
            }
        };
    }

    private static String blank(Blank blank, QuantityText units) {
        Double ownMin = blank.ownLureMinG();
        Double ownMax = blank.ownLureMaxG();
        return Phrases.of(
                "about.blank",
                units.rodLength(blank.lengthMm()),
                blank.sections(),
                units.lureMass(ownMin == null ? blank.lureMinG() : ownMin),
                units.lureMass(ownMax == null ? blank.lureMaxG() : ownMax),
                blank.action().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }

    private static String seat(ReelSeat seat, QuantityText units) {
        return Phrases.of(
                "about.seat",
                Phrases.of(seat.casting() ? "about.casting" : "about.spinning"),
                seat.size(),
                units.thickness(seat.boreMm()),
                Phrases.of(seat.movingHood() == SeatEnd.FRONT ? "about.front" : "about.rear"));
    }

    private static String grip(Grip grip, QuantityText units) {
        return Phrases.of(
                "about.grip",
                grip.place().name().toLowerCase(Locale.ROOT),
                units.partLength(grip.lengthMm()),
                units.partLength(grip.shortestMm()),
                units.thickness(grip.boreMm()),
                units.thickness(grip.reamMaxMm()));
    }

    private static String guide(Guide guide, QuantityText units) {
        return Phrases.of(
                guide.feet() == 1 ? "about.guide.one" : "about.guide.two",
                plain(guide.ringSize()),
                units.thickness(guide.ringIdMm()),
                guide.ringMaterial().word().replace('-', ' '),
                guide.frameFinish());
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : String.format(Locale.ROOT, "%.1f", value);
    }
}
