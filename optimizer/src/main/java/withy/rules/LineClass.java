package withy.rules;

import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;

/**
 * The tackle breaks before the blank: the weakest of main line and leader, less its knot, is within the blank's rated line strength; a braid
 * with a weaker leader as fuse may itself be up to {@value #FUSED_BRAID} times the rating.
 *
 * <p>Where both line and blank carry gauge numbers the main line is judged by gauge against gauge instead of by its strength. Lines below the
 * rated minimum are warned of. The shares are common practice.
 */
final class LineClass implements Rule {
    /** What a knot leaves of a line's strength. Common practice. */
    static final double KNOT_SHARE = 0.8;

    static final double FUSED_BRAID = 1.5;

    @Override
    public String code() {
        return "line-class";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (!(part instanceof Blank blank)) {
            return;
        }
        Brief.MainLine line = brief.line();
        Brief.Leader leader = brief.leader();
        boolean fused = leader != null && leader.strengthKg() < line.strengthKg();
        double weakest = leader != null && fused ? leader.strengthKg() : line.strengthKg();
        boolean byGauge = gauges(line, blank, bench);
        if (fused || !byGauge) {
            bench.atMost("weakest", weakest * KNOT_SHARE, blank.lineMaxKg(), Unit.KG, blank.id());
            bench.warnBelow("light-line", weakest * KNOT_SHARE, blank.lineMinKg(), Unit.KG, blank.id());
        } else {
            bench.notApplicable("weakest");
            bench.notApplicable("light-line");
        }
        if (fused && !byGauge && line.kind() == Brief.LineKind.BRAID) {
            bench.atMost("main-line", line.strengthKg(), FUSED_BRAID * blank.lineMaxKg(), Unit.KG, blank.id());
        } else {
            bench.notApplicable("main-line");
        }
    }

    /** Gauge against gauge; false where one of the two is not told. */
    private static boolean gauges(Brief.MainLine line, Blank blank, Bench bench) {
        Double gauge = line.gauge();
        Double max = blank.gaugeMax();
        Double min = blank.gaugeMin();
        if (gauge == null || max == null) {
            bench.notApplicable("gauge");
            bench.notApplicable("light-gauge");
            return false;
        }
        bench.atMost("gauge", gauge, max, Unit.GAUGE, blank.id());
        if (min == null) {
            bench.notApplicable("light-gauge");
        } else {
            bench.warnBelow("light-gauge", gauge, min, Unit.GAUGE, blank.id());
        }
        return true;
    }
}
