package withy.rod;

import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.SeatEnd;
import withy.catalog.TipTop;
import withy.mechanics.ArborRings;
import withy.mechanics.Frustum;
import withy.mechanics.MassSum;

/**
 * What each part adds to the rod at its place. The one place where a part's mass as fitted, its moment, its inertia and its cost are worked out:
 * the measured rod and the search add up the same shares.
 */
public final class Fitter {
    /** Keeper's place ahead of the handle, mm; common practice. */
    public static final double KEEPER_AHEAD_MM = 25;

    /** Inscription's place ahead of the handle, mm; common practice. */
    public static final double DECAL_AHEAD_MM = 60;

    /** Length a butt cap is glued over, mm. ASSUMED. */
    private static final double GLUED_CAP_MM = 12;

    /** Width of one tape ring, mm; common practice 6–8. */
    public static final double TAPE_RING_MM = 7;

    private final Setting setting;
    private final Consumables with;
    private final Tariff tariff;
    private final Wraps wraps;
    private final double glueFilmMm;
    private final double glueDensity;

    /** Parts go on this layout with these consumables. */
    public Fitter(Setting setting, Consumables with, Tariff tariff) {
        this.setting = setting;
        this.with = with;
        this.tariff = tariff;
        this.wraps = new Wraps(setting, with);
        this.glueFilmMm = setting.catalog().rates().adhesiveFilmMm();
        this.glueDensity = with.adhesive().densityGMl();
    }

    /** The consumables it works with. */
    public Consumables with() {
        return with;
    }

    /** The blank itself, with the wraps of its ferrules. */
    public Share blank() {
        ShareSum sum = sum().part(setting.shape().mass(), setting.blank().massMg());
        for (Wraps.Place joint : Wraps.atJoints(setting.shape())) {
            sum.wrap(wraps.at(joint));
        }
        long labour = tariff.everyRodMilli(setting.shape().joints().size());
        return sum.cost(tariff.partMilli(setting.blank(), 1), labour).share();
    }

    /** Butt cap: behind the blank. */
    public Share cap(ButtCap cap) {
        double x = -cap.addedMm() / 2;
        double glued = Math.min(GLUED_CAP_MM, setting.footMm());
        return sum().part(MassSum.point(cap.massMg() / 1000.0, x), cap.massMg())
                .glue(glueG(setting.odAt(0), glued), glued / 2)
                .cost(tariff.partMilli(cap, 1), work(cap))
                .share();
    }

    /**
     * A grip cut to a length at a place: outer shape as sold between its end diameters, bore reamed to the blank, density from its weight as
     * sold.
     */
    public Share grip(Grip grip, double fromMm, double lengthMm) {
        GripFit fit = GripFit.of(grip, setting.profile(), fromMm, lengthMm);
        MassSum mass = fit.mass(grip, fromMm, lengthMm);
        ShareSum sum = sum().part(mass, Math.round(mass.massG() * 1000))
                .glue(glueG(setting.odAt(fromMm + lengthMm / 2), lengthMm), fromMm + lengthMm / 2);
        if (fit.tapeGapMm() > 0) {
            double od = setting.odAt(fromMm + lengthMm / 2);
            double tapeMm = ArborRings.count(lengthMm, setting.brief().durabilityClass()) * TAPE_RING_MM;
            sum.tape(tapeG(od + 2 * fit.tapeGapMm(), od, tapeMm), fromMm + lengthMm / 2);
        }
        return sum.cost(tariff.partMilli(grip, 1), work(grip)).share();
    }

    /** Winding check or trim ring. */
    public Share check(Check check, double fromMm) {
        double x = fromMm + check.widthMm() / 2;
        return sum().part(MassSum.point(check.massMg() / 1000.0, x), check.massMg())
                .glue(glueG(setting.odAt(x), check.widthMm()), x)
                .cost(tariff.partMilli(check, 1), work(check))
                .share();
    }

    /** Seat without hood and arbors; its own moving hood taken off where another is fitted. */
    public Share seat(SeatSet set) {
        long mg = set.seat().massMg()
                - (set.hood() != null ? Math.round(set.seat().movingHoodG() * 1000) : 0);
        double middle = (set.fromMm() + set.toMm()) / 2;
        ShareSum sum = sum().part(MassSum.bar(mg / 1000.0, middle, set.seat().lengthMm()), mg);
        SeatGap gap = SeatGap.of(set, setting);
        switch (gap.filling()) {
            case GLUE, TOO_TIGHT -> sum.glue(glueG(gap.blankMm(), set.seat().lengthMm()), middle);
            case TAPE_RINGS -> {
                double tapeMm = SeatGap.TAPE_RINGS * TAPE_RING_MM;
                sum.tape(tapeG(set.seat().boreMm(), gap.blankMm(), tapeMm), middle)
                        .glue(glueG(set.seat().boreMm(), tapeMm), middle);
            }
            case ARBORS, TOO_WIDE ->
                sum.glue(glueG(set.seat().boreMm(), gap.ringsMm()) + glueG(gap.blankMm(), gap.ringsMm()), middle);
        }
        return sum.cost(tariff.partMilli(set.seat(), 1), work(set.seat())).share();
    }

    /** The moving hood fitted instead of the seat's own, or nothing. */
    public Share hood(SeatSet set) {
        if (set.hood() == null) {
            return Share.NONE;
        }
        double x = set.seat().movingHood() == SeatEnd.REAR ? set.fromMm() : set.toMm();
        return sum().part(
                        MassSum.point(set.hood().massMg() / 1000.0, x),
                        set.hood().massMg())
                .cost(tariff.partMilli(set.hood(), 1), 0)
                .share();
    }

    /** Arbors between seat and blank, or nothing. */
    public Share arbors(SeatSet set) {
        Arbor arbor = set.arbor();
        if (arbor == null) {
            return Share.NONE;
        }
        SeatGap gap = SeatGap.of(set, setting);
        double middle = (set.fromMm() + set.toMm()) / 2;
        double outer = gap.arborOuterMm();
        double inner = Math.min(outer, gap.arborInnerMm());
        double massG = Frustum.tube(gap.ringsMm(), outer, inner).massG(arbor.densityGMm3() * 1000);
        double half = (set.seat().lengthMm() - SeatGap.RING_MM) / 2;
        long mg = Math.round(massG * 1000);
        // rings stand at both ends (and the middle): spread of equal masses over the seat
        double own = massG * half * half * (gap.rings() == 3 ? 2.0 / 3 : 1);
        return sum().part(MassSum.piece(massG, middle, own), mg)
                .cost(tariff.partMilli(arbor, gap.pieces(arbor)), 0)
                .share();
    }

    /** Hook keeper ahead of the handle's front end. */
    public Share keeper(Keeper keeper, double handleFrontMm) {
        double x = handleFrontMm + KEEPER_AHEAD_MM;
        ShareSum sum = sum().part(MassSum.point(keeper.massMg() / 1000.0, x), keeper.massMg());
        for (int foot = 0; foot < keeper.feet(); foot++) {
            sum.wrap(wraps.foot(x, keeper.footLengthMm(), false));
        }
        return sum.cost(tariff.partMilli(keeper, 1), work(keeper)).share();
    }

    /** The same without the thread and finish that hold it. */
    public Share keeperAlone(Keeper keeper, double handleFrontMm) {
        double x = handleFrontMm + KEEPER_AHEAD_MM;
        return sum().part(MassSum.point(keeper.massMg() / 1000.0, x), keeper.massMg())
                .cost(tariff.partMilli(keeper, 1), work(keeper))
                .share();
    }

    /** Guide {@code number} (1 = stripper) with its wraps. */
    public Share guide(Guide guide, int number) {
        long mg = guide.massMg();
        double x = setting.guideMm(number);
        Share piece = new Share(
                mg,
                0,
                0,
                0,
                0,
                momentMgMm(mg, x),
                inertiaMgMm2(mg, x),
                tariff.partMilli(guide, 1),
                0,
                work(guide),
                0,
                0);
        return piece.plus(guideWraps(guide.feet(), guide.footLengthMm(), number));
    }

    /** Thread and finish on the feet of guide {@code number}; the same for all guides with such feet. */
    public Share guideWraps(int feet, double footLengthMm, int number) {
        boolean under = setting.brief().durabilityClass() >= Labour.UNDERWRAP_CLASS;
        Wraps.Wrap wrap = wraps.foot(setting.guideMm(number), footLengthMm, under);
        ShareSum sum = sum();
        for (int foot = 0; foot < feet; foot++) {
            sum.wrap(wrap);
        }
        return sum.share();
    }

    /** Moment of a point mass about the reel foot, mg·mm. */
    public long momentMgMm(long massMg, double xMm) {
        return Math.round(massMg * (xMm - setting.footMm()));
    }

    /** Inertia of a point mass about the hand, mg·mm². */
    public long inertiaMgMm2(long massMg, double xMm) {
        return Math.round(massMg * (xMm - setting.handMm()) * (xMm - setting.handMm()));
    }

    /** Tip-top, glued on, with the short wrap that dresses its tube. */
    public Share tipTop(TipTop tipTop) {
        ShareSum alone = sum().part(
                        MassSum.point(tipTop.massMg() / 1000.0, setting.blank().lengthMm()), tipTop.massMg())
                .cost(tariff.partMilli(tipTop, 1), work(tipTop));
        return dressTube(alone, tipTop.tubeDepthMm()).share();
    }

    /** Glue, thread and finish of a tip-top; the same for all with a tube so deep. */
    public Share tubeDressing(double tubeDepthMm) {
        return dressTube(sum(), tubeDepthMm).share();
    }

    private ShareSum dressTube(ShareSum tipTop, double tubeDepthMm) {
        double tip = setting.blank().lengthMm();
        return tipTop.glue(glueG(setting.blank().tipOdMm(), tubeDepthMm), tip - tubeDepthMm / 2)
                .wrap(wraps.tipTop(tip - tubeDepthMm));
    }

    /** Inscription ahead of the handle. */
    public Share decal(Decal decal, double handleFrontMm) {
        double x = handleFrontMm + DECAL_AHEAD_MM + decal.widthMm() / 2;
        return sum().part(MassSum.point(decal.massMg() / 1000.0, x), decal.massMg())
                .coat(wraps.coatUl(x, decal.widthMm()), x)
                .cost(tariff.partMilli(decal, 1), work(decal))
                .share();
    }

    private ShareSum sum() {
        return new ShareSum(setting, with, tariff);
    }

    private double glueG(double diameterMm, double lengthMm) {
        return ArborRings.adhesiveMassG(diameterMm, lengthMm, glueFilmMm, glueDensity);
    }

    private double tapeG(double outerMm, double innerMm, double lengthMm) {
        return Frustum.tube(lengthMm, outerMm, Math.min(outerMm, innerMm))
                .massG(setting.catalog().rates().tapeDensityGMm3() * 1000);
    }

    private long work(Part part) {
        return tariff.workMilli(part);
    }
}
