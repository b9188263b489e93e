package withy.rod;

import withy.catalog.PartFacts;
import withy.catalog.PartKind;

/** Works a rod's figures out of its sums. */
final class FiguresOf {
    private static final double KGM2_PER_MGMM2 = 1e-12;

    private FiguresOf() {}

    static Figures rod(Rod rod) {
        Share total = rod.total();
        Balance balance = rod.balance();
        Setting setting = rod.setting();
        double armMm = setting.footMm() - setting.handMm();
        double tipHeavy = (balance.momentMgMm() + balance.massMg() * armMm) * Balance.NMM_PER_MGMM;
        double toButt = setting.footMm() + balance.farMm();
        double counterweight = Math.max(0, balance.aheadMgMm()) / toButt / 1000;
        double cap = added(rod, Station.BUTT_CAP);
        double tip = added(rod, Station.TIP_TOP);
        return new Figures(
                total.massMg() / 1000.0,
                toleranceG(rod),
                tipHeavy,
                balance.pointMm(),
                total.inertiaMgMm2() * KGM2_PER_MGMM2,
                balance.outsideMgMm() * Balance.NMM_PER_MGMM,
                counterweight,
                Lengths.finishedMm(setting.blank(), tip, cap),
                Lengths.packedMm(setting.blank(), tip, cap),
                setting.footMm() + cap,
                rod.tariff().priceMinor(rod.costMilli()));
    }

    private static double added(Rod rod, Station station) {
        Placed placed = rod.placed().get(station);
        return placed == null ? 0 : placed.lengthMm();
    }

    /** Root of the sum of squares; pieces of one model share a catalogue error, so their tolerances add first. */
    private static double toleranceG(Rod rod) {
        java.util.SortedMap<String, Double> byModel = new java.util.TreeMap<>();
        rod.placed().values().forEach(p -> byModel.merge(p.part().id(), pieceG(rod, p), Double::sum));
        double workmanship = rod.setting().catalog().rates().workmanshipToleranceG();
        double squares = workmanship * workmanship;
        for (double tolerance : byModel.values()) {
            squares += tolerance * tolerance;
        }
        return Math.sqrt(squares);
    }

    /** ± of one piece as fitted. */
    static double pieceG(Rod rod, Placed p) {
        PartFacts facts = p.part().facts();
        Share share = rod.shares().get(p.station());
        boolean fitted = p.part().kind() == PartKind.GRIP || p.part().kind() == PartKind.ARBOR;
        double share01 = fitted && share != null && facts.massMg() > 0 ? (double) share.partMg() / facts.massMg() : 1;
        return facts.weightTolG() * share01;
    }
}
