package withy.oracle;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Keeper;
import withy.catalog.Material;
import withy.catalog.Operation;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;

/** Every figure a second time: masses integrated numerically, money in decimals. Grams and millimetres. */
final class SecondFigures extends SecondSums {
    SecondFigures(SecondRod rod) {
        super(rod);
        blank();
        grips();
        rings();
        seat();
        ahead();
        train();
        mixed();
    }

    double finishedMm() {
        return rod.blank.lengthMm() + tipAdded() + capAdded();
    }

    double packedMm() {
        double longest = 0;
        int n = rod.blank.sections();
        for (int i = 0; i < n; i++) {
            double section = rod.blank.sectionLengthsMm().get(i);
            section += i == 0 ? capAdded() : 0;
            section += i == n - 1 ? tipAdded() : 0;
            longest = Math.max(longest, section);
        }
        return longest;
    }

    double reachMm() {
        return rod.foot + capAdded();
    }

    private double capAdded() {
        return rod.cap == null ? 0 : rod.cap.addedMm();
    }

    private double tipAdded() {
        return rod.tip == null ? 0 : rod.tip.addedMm();
    }

    private void blank() {
        Blank blank = rod.blank;
        double lumps = blank.ferruleExtraG() > 0 ? rod.joints.size() * blank.ferruleExtraG() : 0;
        double n = SecondTaper.exponent(rod, lumps);
        double m0 = SecondTaper.integral(blank, n, 0);
        double scale = (grams(blank) - lumps) / m0;
        double m1 = SecondTaper.integral(blank, n, 1) * scale;
        double m2 = SecondTaper.integral(blank, n, 2) * scale;
        mass += scale * m0;
        moment += m1;
        inertia += m2 - 2 * rod.hand * m1 + rod.hand * rod.hand * scale * m0;
        for (double[] joint : rod.joints) {
            if (blank.ferruleExtraG() > 0) {
                point(blank.ferruleExtraG(), (joint[0] + joint[1]) / 2);
            }
            wrap(joint[1] + 6, 12, false);
            wrap(joint[0] + 12.5, 25, false);
        }
        pay(blank, 1);
        tolerance(blank, 1);
        for (Operation operation : new Operation[] {
            Operation.INTAKE_AND_PLAN,
            Operation.FIND_AXIS_AND_MARK,
            Operation.GLUE_HANDLE,
            Operation.LAYOUT_AND_TEST,
            Operation.COAT_ONE,
            Operation.COAT_TWO,
            Operation.CLEAN_AND_WEIGH
        }) {
            work(operation, 1);
        }
        work(Operation.WRAP_FERRULE, rod.joints.size());
    }

    private void grips() {
        if (rod.cap != null) {
            point(grams(rod.cap), -rod.cap.addedMm() / 2);
            double glued = Math.min(12, rod.foot);
            glue(rod.od(0), glued, glued / 2);
            pay(rod.cap, 1);
            work(Operation.FIT_CAP, 1);
            tolerance(rod.cap, 1);
        }
        grip(rod.buttGrip, 0, rod.buttGripLength);
        grip(rod.rearGrip, rod.rearGripFrom, rod.rearGripLength);
        grip(rod.foreGrip, rod.foreGripFrom, rod.foreGripLength);
    }

    private void grip(@Nullable Grip grip, double from, double length) {
        if (grip == null || length <= 0) {
            return;
        }
        double[] bores = rod.bores(grip, from, length);
        double density = grams(grip)
                / (SecondGrip.half(grip, grip.lengthMm(), grip.boreMm(), grip.boreMm(), 0, z -> 1)
                        + SecondGrip.half(grip, grip.lengthMm(), grip.boreMm(), grip.boreMm(), 1, z -> 1));
        double m = 0;
        double s = 0;
        double j = 0;
        for (int part = 0; part < 2; part++) {
            m += density * SecondGrip.half(grip, length, bores[0], bores[1], part, z -> 1);
            s += density * SecondGrip.half(grip, length, bores[0], bores[1], part, z -> from + z);
            j += density * SecondGrip.half(grip, length, bores[0], bores[1], part, z -> sq(from + z - rod.hand));
            j += density * SecondGrip.across(grip, length, bores[0], bores[1], part);
        }
        mass += m;
        moment += s;
        inertia += j;
        double middle = from + length / 2;
        glue(rod.od(middle), length, middle);
        double gap = rod.loose(grip, from, length);
        if (gap > 0) {
            tape(rod.od(middle) + 2 * gap, rod.od(middle), rod.rings(length) * 7, middle);
        }
        pay(grip, 1);
        Material material = grip.facts().material();
        boolean moulded = material == Material.CARBON
                || material == Material.PLASTIC
                || material == Material.COMPOSITE
                || material == Material.CARBON_FILLED;
        work(
                SecondRod.foam(grip)
                        ? Operation.FIT_EVA_GRIP
                        : moulded ? Operation.FIT_CARBON_GRIP : Operation.FIT_CORK_GRIP,
                1);
        tolerance(grip, m / grams(grip));
    }

    private static double sq(double value) {
        return value * value;
    }

    private void rings() {
        ring(rod.rearCheck, rod.rearCheckFrom);
        ring(rod.foreCheck, rod.foreCheckFrom);
        ring(rod.windingCheck, rod.windingCheckFrom);
    }

    private void ring(withy.catalog.@Nullable Check check, double from) {
        if (check != null) {
            double x = from + check.widthMm() / 2;
            point(grams(check), x);
            glue(rod.od(x), check.widthMm(), x);
            pay(check, 1);
            work(Operation.FIT_CHECK, 1);
            tolerance(check, 1);
        }
    }

    private void seat() {
        ReelSeat seat = rod.seat;
        if (seat == null) {
            return;
        }
        double middle = (rod.seatFrom + rod.seatTo) / 2;
        double m = grams(seat) - (rod.hood == null ? 0 : seat.movingHoodG());
        own(m, middle, m * seat.lengthMm() * seat.lengthMm() / 12);
        double gap = rod.seatGap(seat);
        double ringsMm = rod.rings(seat.lengthMm()) * 25;
        if (gap <= 0.2) {
            glue(rod.od(middle), seat.lengthMm(), middle);
        } else if (gap < 1 && rod.arbor == null) {
            tape(seat.boreMm(), rod.od(middle), 28, middle);
            glue(seat.boreMm(), 28, middle);
        } else {
            glue(seat.boreMm(), ringsMm, middle);
            glue(rod.od(middle), ringsMm, middle);
        }
        if (rod.hood != null) {
            point(grams(rod.hood), seat.movingHood() == SeatEnd.REAR ? rod.seatFrom : rod.seatTo);
            pay(rod.hood, 1);
            tolerance(rod.hood, 1);
        }
        if (rod.arbor != null) {
            arbor(rod.arbor, seat, ringsMm, middle);
        }
        pay(seat, 1);
        work(Operation.FIT_ARBORS, 1);
        tolerance(seat, 1);
    }

    private void arbor(Arbor arbor, ReelSeat seat, double ringsMm, double middle) {
        double sold = Math.PI / 4 * (sq(arbor.odMm()) - sq(arbor.idMm())) * arbor.lengthMm();
        double outer = seat.boreMm() - 0.15;
        double inner = Math.min(outer, rod.thickest(rod.seatFrom, rod.seatTo) + 0.15);
        double m = grams(arbor) / sold * Math.PI / 4 * (sq(outer) - sq(inner)) * ringsMm;
        double lever = (seat.lengthMm() - 25) / 2;
        own(m, middle, m * lever * lever * (rod.rings(seat.lengthMm()) == 3 ? 2.0 / 3 : 1));
        pay(arbor, arborPieces(rod, arbor, seat));
        tolerance(arbor, m / grams(arbor));
    }

    static int arborPieces(SecondRod rod, Arbor arbor, ReelSeat seat) {
        int perPiece = Math.max(1, (int) (arbor.lengthMm() / 25));
        return (int) Math.ceil(rod.rings(seat.lengthMm()) / (double) perPiece);
    }

    private void ahead() {
        Keeper keeper = rod.keeper;
        if (keeper != null) {
            double x = rod.front + 25;
            point(grams(keeper), x);
            for (int foot = 0; foot < keeper.feet(); foot++) {
                wrap(x, keeper.footLengthMm() + 4, false);
            }
            pay(keeper, 1);
            work(Operation.WRAP_KEEPER, keeper.feet() > 0 ? 1 : 0);
            tolerance(keeper, 1);
        }
        if (rod.decal != null) {
            double x = rod.front + 60 + rod.decal.widthMm() / 2;
            point(grams(rod.decal), x);
            coat(film(rod.od(x), rod.decal.widthMm()), x);
            pay(rod.decal, 1);
            work(Operation.APPLY_DECAL, 1);
            tolerance(rod.decal, 1);
        }
    }

    private void train() {
        boolean under = rod.brief.durabilityClass() == 5;
        for (int number = 1; number <= rod.count; number++) {
            Guide guide = rod.guide(number);
            if (guide == null) {
                continue;
            }
            double x = rod.guideX[number - 1];
            point(grams(guide), x);
            for (int foot = 0; foot < guide.feet(); foot++) {
                wrap(x, guide.footLengthMm() + 4, false);
                if (under) {
                    wrap(x, guide.footLengthMm() + 8, true);
                }
            }
            pay(guide, 1);
            work(Operation.GRIND_FOOT, guide.feet());
            work(guide.feet() == 1 ? Operation.WRAP_SINGLE_FOOT : Operation.WRAP_DOUBLE_FOOT, 1);
            work(Operation.UNDERWRAP, under ? guide.feet() : 0);
            tolerance(guide, 1);
        }
        if (rod.tip != null) {
            double end = rod.blank.lengthMm();
            double depth = rod.tip.tubeDepthMm();
            point(grams(rod.tip), end);
            glue(rod.blank.tipOdMm(), depth, end - depth / 2);
            wrap(end - depth - 3, 6, false);
            pay(rod.tip, 1);
            work(Operation.FIT_TIP_TOP, 1);
            tolerance(rod.tip, 1);
        }
    }

    /** Sundries, glue mixed, and of each of two coats the smallest reliable mix or twice what stays on. */
    private void mixed() {
        cost = cost.add(BigDecimal.valueOf(rates.sundriesMinor()));
        if (!rod.brief.owned().contains(adhesive.id())) {
            double share = rates.adhesiveMixMl() / adhesive.packMl();
            cost = cost.add(BigDecimal.valueOf(share * adhesive.facts().priceMinor()));
        }
        if (!rod.brief.owned().contains(finish.id())) {
            double ml = 2 * Math.max(rates.finishMixMinMl(), 2 * finishMl / 2);
            cost = cost.add(
                    BigDecimal.valueOf(ml / finish.packMl() * finish.facts().priceMinor()));
        }
    }
}
