package withy.rules;

import withy.catalog.Arbor;
import withy.mechanics.ArborRings;
import withy.rod.SeatGap;
import withy.rod.SeatSet;
import withy.rod.Setting;

/**
 * The seat goes over the blank's thick end under it, and the gap left is filled as its width asks: glue or tape when narrow, an arbor from
 * {@link ArborRings#TAPE_UP_TO_MM} mm, never more than {@link ArborRings#LARGEST_GAP_MM} mm.
 *
 * <p>An arbor fills the seat's bore, goes over the blank, keeps its least wall, and has no place in a gap under {@value #ARBOR_FROM_MM} mm. Trade
 * table, common practice.
 */
final class SeatOnBlank implements Rule {
    /** Narrowest radial gap an arbor fits into, mm (trade table: 0.75–1.0 tape or thin graphite). */
    static final double ARBOR_FROM_MM = 0.75;

    /** Most that an arbor may be smaller than the bore, or its bore wider than the blank, mm (trade table). */
    static final double ARBOR_PLAY_MM = 0.2;

    @Override
    public String code() {
        return "seat-on-blank";
    }

    @Override
    public void onSeat(Setting setting, SeatSet set, Bench bench) {
        SeatGap gap = SeatGap.of(set, setting);
        String seatId = set.seat().id();
        bench.atLeast(
                "bore",
                set.seat().boreMm(),
                gap.thickMm(),
                Unit.MM,
                seatId,
                setting.blank().id());
        bench.atMost(
                "gap",
                gap.radialMm(),
                ArborRings.LARGEST_GAP_MM,
                Unit.MM,
                seatId,
                setting.blank().id());
        Arbor arbor = set.arbor();
        if (arbor == null) {
            bench.atMost("arbor-missing", gap.radialMm(), justUnder(ArborRings.TAPE_UP_TO_MM), Unit.MM, seatId);
            bench.notApplicable("arbor-needless");
            bench.notApplicable("arbor-outer");
            bench.notApplicable("arbor-bore");
            bench.notApplicable("arbor-wall");
            return;
        }
        bench.notApplicable("arbor-missing");
        bench.atLeast("arbor-needless", gap.radialMm(), ARBOR_FROM_MM, Unit.MM, arbor.id(), seatId);
        bench.atLeast("arbor-outer", arbor.odMm(), set.seat().boreMm() - ARBOR_PLAY_MM, Unit.MM, arbor.id(), seatId);
        bench.atMost(
                "arbor-bore",
                arbor.idMm(),
                gap.thickMm() + ARBOR_PLAY_MM,
                Unit.MM,
                arbor.id(),
                setting.blank().id());
        double outer = Math.min(arbor.odMm(), gap.arborOuterMm());
        double inner = Math.max(arbor.idMm(), gap.arborInnerMm());
        bench.atLeast("arbor-wall", (outer - inner) / 2, arbor.minWallMm(), Unit.MM, arbor.id(), seatId);
    }

    /** The largest value on the grid of limits that is still below. */
    private static double justUnder(double mm) {
        return mm - 0.01;
    }
}
