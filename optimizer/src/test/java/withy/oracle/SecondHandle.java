package withy.oracle;

import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.ReelSeat;
import withy.catalog.RodType;
import withy.catalog.SeatEnd;

/** The handle's rules a second time: seat on blank, grips on blank, rings and neighbours, and the handle as a whole (handbook, 9 to 11, 13). */
final class SecondHandle {
    private final SecondRod rod;
    private final Brief brief;

    final Set<String> broken = new TreeSet<>();

    SecondHandle(SecondRod rod) {
        this.rod = rod;
        this.brief = rod.brief;
        whole();
        seat();
        grip(rod.buttGrip, "buttGrip", 0, rod.buttGripLength);
        grip(rod.rearGrip, "rearGrip", rod.rearGripFrom, rod.rearGripLength);
        grip(rod.foreGrip, "foreGrip", rod.foreGripFrom, rod.foreGripLength);
        ring(rod.rearCheck, rod.rearCheckFrom);
        ring(rod.foreCheck, rod.foreCheckFrom);
        ring(rod.windingCheck, rod.windingCheckFrom);
        cap();
        neighbours();
        front();
        clear();
    }

    private void breaks(boolean isBroken, String check) {
        if (isBroken) {
            broken.add(check);
        }
    }

    private static long mm(double value) {
        return SecondRules.mm(value);
    }

    private void whole() {
        Brief.Handle wishes = brief.handle();
        breaks(SecondRules.refuses(wishes.action(), rod.blank.action()), "handle.action-wish");
        breaks(SecondRules.refuses(wishes.form(), rod.build.layout().form()), "handle.form-wish");
        breaks(SecondRules.refuses(wishes.foreGrip(), rod.foreGrip != null), "handle.fore-grip-wish");
        breaks(SecondRules.refuses(wishes.keeper(), rod.keeper != null), "handle.keeper-wish");
        breaks(rod.seat == null, "handle.seat-present");
        breaks(rod.rearGrip == null, "handle.rear-grip-present");
        breaks(rod.split && rod.buttGrip == null, "handle.butt-grip-present");
        breaks(!rod.split && rod.buttGrip != null, "handle.butt-grip-absent");
        breaks(!rod.at.containsKey("adhesive"), "handle.adhesive");
        Grip first = rod.split ? rod.buttGrip : rod.rearGrip;
        boolean closed = first != null && first.rearClosed();
        breaks(!closed && rod.cap == null, "handle.butt-closed");
        breaks(closed && rod.cap != null, "handle.butt-once");
        double reach = rod.foot + (rod.cap == null ? 0 : rod.cap.addedMm());
        breaks(mm(reach) < mm(brief.reachMinMm()), "handle.reach-shortest");
        breaks(mm(reach) > mm(brief.reachMaxMm()), "handle.reach-longest");
        if (rod.split && rod.buttGrip != null && rod.rearGrip != null) {
            breaks(mm(rod.rearGripFrom - rod.buttGripLength) < 3000, "handle.bare-blank");
            breaks(mixed(rod.buttGrip, rod.rearGrip), "handle.one-material");
        }
        if (rod.foreGrip != null && rod.rearGrip != null) {
            breaks(mixed(rod.rearGrip, rod.foreGrip), "handle.one-material");
        }
    }

    private boolean mixed(Grip one, Grip other) {
        return !brief.handle().mixedGrips()
                && one.facts().material() != other.facts().material();
    }

    private void seat() {
        ReelSeat seat = rod.seat;
        if (seat == null) {
            return;
        }
        if (brief.rodType() != RodType.SURF_SPINNING) {
            double palm = brief.palmMm();
            double thin = palm <= 75 ? 20 : palm <= 85 ? 21 : palm <= 95 ? 22 : 24;
            double thick = palm <= 75 ? 22 : palm <= 85 ? 24 : palm <= 95 ? 25 : 28;
            breaks(mm(seat.barrelOdMm()) < mm(thin - 0.5), "handle.barrel-thin");
            breaks(mm(seat.barrelOdMm()) > mm(thick + 0.5), "handle.barrel-thick");
        }
        boolean casting = brief.rodType() == RodType.CASTING;
        breaks(casting && SecondRules.refuses(brief.handle().trigger(), seat.trigger()), "handle.trigger-wish");
        breaks(mm(rod.seatFrom) < 0, "handle.seat-behind-butt");
        double gap = rod.seatGap(seat);
        double thick = rod.thickest(rod.seatFrom, rod.seatTo);
        breaks(mm(seat.boreMm()) < mm(thick), "seat-on-blank.bore");
        breaks(mm(gap) > 600, "seat-on-blank.gap");
        if (rod.arbor == null) {
            breaks(mm(gap) >= 100, "seat-on-blank.arbor-missing");
            return;
        }
        breaks(mm(gap) < 75, "seat-on-blank.arbor-needless");
        breaks(mm(rod.arbor.odMm()) < mm(seat.boreMm() - 0.2), "seat-on-blank.arbor-outer");
        breaks(mm(rod.arbor.idMm()) > mm(thick + 0.2), "seat-on-blank.arbor-bore");
        double outer = Math.min(rod.arbor.odMm(), seat.boreMm() - 0.15);
        double inner = Math.max(rod.arbor.idMm(), thick + 0.15);
        breaks(mm((outer - inner) / 2) < mm(rod.arbor.minWallMm()), "seat-on-blank.arbor-wall");
    }

    private void grip(@Nullable Grip grip, String station, double from, double length) {
        if (grip == null) {
            return;
        }
        boolean full = rod.build.layout().form() == HandleForm.FULL && station.equals("rearGrip");
        Grip.Place place = switch (station) {
            case "buttGrip" -> Grip.Place.BUTT;
            case "foreGrip" -> Grip.Place.FORE;
            default -> full ? Grip.Place.FULL : Grip.Place.REAR;
        };
        breaks(grip.place() != place, "handle.grip-place");
        breaks(mm(length) < mm(grip.shortestMm()), "handle.grip-shortest");
        breaks(mm(length) > mm(grip.lengthMm()), "handle.grip-longest");
        breaks(!full && mm(length) != mm(grip.lengthMm()) && mm(length) % 500 != 0, "handle.cut-grid");
        if (length <= 0) {
            return;
        }
        double[] bores = rod.bores(grip, from, length);
        breaks(mm(Math.max(bores[0], bores[1])) > mm(grip.reamMaxMm()), "grip-on-blank.ream");
        double wall = Math.min(
                Math.min(grip.rearOdMm() - bores[0], grip.frontOdMm() - bores[1]),
                grip.midOdMm() - (bores[0] + bores[1]) / 2);
        breaks(mm(wall / 2) < (SecondRod.foam(grip) ? 300 : 400), "grip-on-blank.wall");
        breaks(mm(rod.loose(grip, from, length)) > 75, "grip-on-blank.loose");
    }

    private void ring(@Nullable Check check, double from) {
        if (check == null) {
            return;
        }
        double blank = rod.od(from);
        if (check.soft()) {
            breaks(Math.round(1000 * check.innerMm() / blank) < 750, "ring-fit.soft-check-tight");
            breaks(Math.round(1000 * check.innerMm() / blank) > 1000, "ring-fit.soft-check-loose");
        } else {
            breaks(mm(check.innerMm() - blank) < 0, "ring-fit.check-tight");
            breaks(mm(check.innerMm() - blank) > 50, "ring-fit.check-loose");
        }
    }

    private void cap() {
        if (rod.cap == null) {
            return;
        }
        double blank = rod.od(0);
        double inner = rod.cap.innerMm();
        if (rod.cap.soft()) {
            breaks(Math.round(1000 * inner / blank) < 850, "ring-fit.soft-cap-tight");
            breaks(Math.round(1000 * inner / blank) > 1000, "ring-fit.soft-cap-loose");
        } else {
            breaks(mm(inner - blank) < 0, "ring-fit.cap-tight");
            breaks(mm(inner - blank) > 150, "ring-fit.cap-loose");
        }
    }

    private void meet(double one, double other, boolean atRing) {
        long step = mm(Math.abs(one - other));
        breaks(!atRing && step > 200, "ring-fit.step");
        breaks(atRing && step > 400, "ring-fit.step-at-ring");
    }

    private void neighbours() {
        Grip first = rod.split ? rod.buttGrip : rod.rearGrip;
        if (rod.cap != null && first != null) {
            meet(rod.cap.outerMm(), first.rearOdMm(), false);
        }
        if (rod.split) {
            breaks(rod.buttGrip != null && !rod.buttGrip.frontFinished(), "ring-fit.edge");
            breaks(rod.rearGrip != null && !rod.rearGrip.rearFinished(), "ring-fit.edge");
        }
        ReelSeat seat = rod.seat;
        if (seat == null) {
            return;
        }
        double rear = face(SeatEnd.REAR, seat.rearOdMm());
        if (rod.rearCheck != null) {
            meet(rod.rearCheck.outerMm(), rear, true);
            if (rod.rearGrip != null) {
                meet(rod.rearGrip.frontOdMm(), rod.rearCheck.outerMm(), true);
            }
        } else if (rod.rearGrip != null) {
            meet(rod.rearGrip.frontOdMm(), rear, false);
        }
    }

    private double face(SeatEnd end, double own) {
        boolean hooded = rod.hood != null && Objects.requireNonNull(rod.seat).movingHood() == end;
        return hooded ? Objects.requireNonNull(rod.hood).faceOdMm() : own;
    }

    private void front() {
        double od = 0;
        boolean finished = true;
        boolean ring = false;
        boolean any = false;
        if (rod.seat != null) {
            od = face(SeatEnd.FRONT, rod.seat.frontOdMm());
            finished = rod.seat.frontFinished();
            any = true;
        }
        if (rod.foreCheck != null) {
            if (rod.seat != null) {
                meet(od, rod.foreCheck.outerMm(), true);
            }
            od = rod.foreCheck.outerMm();
            finished = true;
            ring = true;
            any = true;
        }
        if (rod.foreGrip != null) {
            if (rod.seat != null) {
                meet(od, rod.foreGrip.rearOdMm(), ring);
                boolean recessed = !rod.foreGrip.recessFamily().isEmpty();
                boolean fits = rod.foreGrip.recessFamily().equals(rod.seat.recessFamily());
                breaks(recessed && !fits, "handle.recess-family");
                breaks(recessed && ring, "handle.recess-beside");
            }
            od = rod.foreGrip.frontOdMm();
            finished = rod.foreGrip.frontFinished();
            ring = false;
            any = true;
        }
        if (any && rod.windingCheck != null) {
            meet(od, rod.windingCheck.outerMm(), true);
        }
        breaks(any && !finished && rod.windingCheck == null, "ring-fit.edge");
    }

    private void clear() {
        double foremost = rod.front;
        if (rod.keeper != null) {
            foremost = Math.max(foremost, rod.front + 25 + rod.keeper.footLengthMm());
        }
        if (rod.decal != null) {
            foremost = Math.max(foremost, rod.front + 60 + rod.decal.widthMm());
        }
        Guide stripper = rod.guide(1);
        if (stripper != null) {
            breaks(mm(rod.guideX[0] - stripper.footLengthMm() - foremost) < 0, "handle.stripper-clear");
        }
        if (!rod.joints.isEmpty()) {
            breaks(mm(rod.joints.get(0)[0] - foremost) < 0, "handle.ferrule-clear");
        }
    }
}
