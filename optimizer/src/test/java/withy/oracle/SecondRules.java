package withy.oracle;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Landing;
import withy.brief.Brief.LineKind;
import withy.brief.Brief.Wish;
import withy.catalog.Guide;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.RodType;

/** The eighteen rules a second time, from the handbook: what a rod breaks, and what it is warned of, as {@code rule.check}. */
final class SecondRules {
    private final SecondRod rod;
    private final SecondFigures figures;
    private final Brief brief;

    /** Checks broken (or not known). */
    final Set<String> broken = new TreeSet<>();
    /** Soft sides missed. */
    final Set<String> warned = new TreeSet<>();
    /** The line comes so near its limits that rounding decides. */
    boolean unsure;

    SecondRules(SecondRod rod, SecondFigures figures) {
        this.rod = rod;
        this.figures = figures;
        this.brief = rod.brief;
        lure();
        line();
        length();
        durability();
        lift();
        rings();
        reel();
        tipTop();
        train();
        salt();
        budget();
        stock();
        must();
        SecondHandle handle = new SecondHandle(rod);
        broken.addAll(handle.broken);
    }

    static long mm(double value) {
        return Math.round(value * 100);
    }

    static long milli(double value) {
        return Math.round(value * 1000);
    }

    private void breaks(boolean broken, String check) {
        if (broken) {
            this.broken.add(check);
        }
    }

    private void warns(boolean missed, String check) {
        if (missed) {
            warned.add(check);
        }
    }

    private void lure() {
        Double ownMin = rod.blank.ownLureMinG();
        Double ownMax = rod.blank.ownLureMaxG();
        double min = ownMin == null ? rod.blank.lureMinG() : ownMin;
        double max = ownMax == null ? rod.blank.lureMaxG() : ownMax;
        breaks(milli(brief.lure().usualG()) < milli(min), "lure-range.usual");
        breaks(milli(brief.lure().heaviestG()) > milli(max), "lure-range.heaviest");
        warns(milli(brief.lure().lightestG()) < milli(0.7 * min), "lure-range.lightest");
    }

    private void line() {
        double main = brief.line().strengthKg();
        Brief.Leader leader = brief.leader();
        boolean fuse = leader != null && leader.strengthKg() < main;
        double weakest = leader == null ? main : Math.min(main, leader.strengthKg());
        Double gauge = brief.line().gauge();
        Double most = rod.blank.gaugeMax();
        Double least = rod.blank.gaugeMin();
        boolean gauges = gauge != null && most != null;
        if (gauges) {
            breaks(mm(gauge) > mm(most), "line-class.gauge");
            warns(least != null && mm(gauge) < mm(least), "line-class.light-gauge");
        }
        if (fuse || !gauges) {
            breaks(milli(weakest * 0.8) > milli(rod.blank.lineMaxKg()), "line-class.weakest");
            warns(milli(weakest * 0.8) < milli(rod.blank.lineMinKg()), "line-class.light-line");
        }
        boolean braid = brief.line().kind() == LineKind.BRAID;
        breaks(fuse && !gauges && braid && milli(main) > milli(1.5 * rod.blank.lineMaxKg()), "line-class.main-line");
    }

    private void length() {
        int pieces = rod.blank.sections();
        breaks(pieces < brief.piecesMin(), "length.fewest-pieces");
        breaks(pieces > brief.piecesMax(), "length.most-pieces");
        boolean bareTooLong = mm(rod.blank.lengthMm()) > mm(brief.lengthMaxMm());
        breaks(bareTooLong, "length.blank-longest");
        breaks(mm(figures.finishedMm()) < mm(brief.lengthMinMm()), "length.finished-shortest");
        breaks(!bareTooLong && mm(figures.finishedMm()) > mm(brief.lengthMaxMm()), "length.finished-longest");
        Double packed = brief.packedMaxMm();
        if (packed != null) {
            double section = rod.blank.sectionLengthsMm().stream()
                    .mapToDouble(Double::doubleValue)
                    .max()
                    .orElse(0);
            boolean bare = mm(section) > mm(packed);
            breaks(bare, "length.section-longest");
            breaks(!bare && mm(figures.packedMm()) > mm(packed), "length.packed");
        }
    }

    private List<Part> loadBearing() {
        return rod.placed().stream()
                .filter(part -> part.kind() == PartKind.BLANK
                        || part.kind() == PartKind.REEL_SEAT
                        || part.kind() == PartKind.HOOD
                        || part.kind() == PartKind.GUIDE
                        || part.kind() == PartKind.TIP_TOP)
                .toList();
    }

    int weakestClass() {
        return loadBearing().stream()
                .mapToInt(part -> part.facts().durabilityClass())
                .min()
                .orElse(0);
    }

    private void durability() {
        int asked = brief.durabilityClass();
        breaks(weakestClass() < asked, "durability.class");
        ReelSeat seat = rod.seat;
        if (seat != null) {
            breaks(asked == 5 && !seat.throughBlank(), "durability.through-blank");
            boolean locked = rod.hood == null ? seat.doubleLock() : rod.hood.doubleLock();
            breaks(asked >= 4 && !locked, "durability.double-lock");
        }
        for (int n = 1; n <= rod.count; n++) {
            Guide guide = rod.guide(n);
            if (guide != null && guide.feet() < 2) {
                breaks(n == 1 && asked >= 3, "durability.stripper-feet");
                breaks((n == 2 || n == 3) && asked >= 4, "durability.reducer-feet");
                breaks(n > 3 && asked >= 5, "durability.runner-feet");
            }
        }
    }

    private void lift() {
        if (brief.landing() != Landing.LIFTED) {
            return;
        }
        double load = brief.largestFishKg() * 1.5;
        Double rating = rod.blank.ownLiftKg() == null ? rod.blank.liftKg() : rod.blank.ownLiftKg();
        breaks(rating == null || milli(rating) < milli(load), "lift.rating");
        Brief.Leader leader = brief.leader();
        double strength = leader == null ? brief.line().strengthKg() : leader.strengthKg();
        breaks(milli(0.8 * strength) < milli(load), "lift.leader");
    }

    private void rings() {
        boolean braid = brief.line().kind() == LineKind.BRAID;
        double needed = knotRingMm();
        for (int n = 1; n <= rod.count; n++) {
            Guide guide = rod.guide(n);
            if (guide != null) {
                breaks(mm(guide.ringIdMm()) < mm(needed), "knot-clearance.ring");
                breaks(braid && !guide.braidOk(), "ring-for-line.braid");
                breaks(brief.rodType() == RodType.CASTING && guide.highFrame(), "guide-train.high-frame");
            }
        }
        if (rod.tip != null) {
            breaks(mm(rod.tip.ringIdMm()) < mm(needed), "knot-clearance.ring");
            breaks(braid && !rod.tip.braidOk(), "ring-for-line.braid");
        }
    }

    /** Upper bound of the knot by the trade table, times 1.5 (slim) or 2; 0 where it is not cast through the rings. */
    private double knotRingMm() {
        Brief.Leader leader = brief.leader();
        if (leader == null || !leader.castThroughRings()) {
            return 0;
        }
        double d = brief.line().diameterMm() * (brief.line().kind() == LineKind.BRAID ? 1.2 : 1);
        double l = leader.diameterMm();
        return switch (leader.knot()) {
            case FG -> 1.5 * (l + 4 * d);
            case PR -> 1.5 * (l + 3 * d);
            case ALBRIGHT -> 2 * (2.5 * l + 2 * d);
            case DOUBLE_UNI, SURGEON -> 2 * 4 * l;
            case BLOOD -> 2 * 3.5 * l;
        };
    }

    private void reel() {
        ReelSeat seat = rod.seat;
        if (seat == null) {
            return;
        }
        Brief.Reel reel = brief.reel();
        breaks(seat.casting() != (brief.rodType() == RodType.CASTING), "reel-fit.seat-kind");
        breaks(mm(reel.footLengthMm() + 1.5) < mm(seat.footLengthMinMm()), "reel-fit.foot-shortest");
        breaks(mm(reel.footLengthMm() + 1.5) > mm(seat.footLengthMaxMm()), "reel-fit.foot-longest");
        breaks(mm(reel.footThicknessMm()) > mm(seat.footThicknessMaxMm()), "reel-fit.foot-thickness");
        breaks(mm(reel.footWidthMm()) > mm(seat.footWidthMaxMm()), "reel-fit.foot-width");
        breaks(refuses(brief.handle().movingHood(), seat.movingHood()), "reel-fit.hood-end");
        if (rod.hood != null) {
            breaks(!rod.hood.family().equals(seat.hoodFamily()), "reel-fit.hood-family");
            breaks(rod.hood.size() != seat.size(), "reel-fit.hood-size");
        }
    }

    static <T> boolean refuses(@Nullable Wish<T> wish, T actual) {
        return wish != null && wish.hard() && !wish.value().equals(actual);
    }

    private void tipTop() {
        breaks(rod.tip == null, "tip-top.present");
        if (rod.tip == null) {
            return;
        }
        double play = rod.tip.tubeMm() - rod.blank.tipOdMm();
        breaks(mm(play) <= 0, "tip-top.tube-tight");
        breaks(mm(play) > 40, "tip-top.tube-loose");
        warns(mm(play) < 2, "tip-top.snug");
        warns(mm(play) > 15 && mm(play) <= 25, "tip-top.thick-glue");
        warns(mm(play) > 25, "tip-top.thread-layer");
    }

    private void train() {
        double length = rod.blank.lengthMm();
        int floor = switch (brief.rodType()) {
            case SPINNING -> steps(length, 5, 1650, 1850, 2200, 2750);
            case CASTING -> steps(length, 7, 1800, 2050, 2200);
            case SURF_SPINNING -> 6;
        };
        if (brief.guidesByClearance()) {
            clearance(floor);
        } else {
            breaks(rod.count < floor, "guide-train.count");
        }
        breaks(!rod.spaced, "guide-train.spacing");
        for (int i = 0; i + 1 < rod.guideX.length; i++) {
            double next = i + 2 < rod.guideX.length ? rod.guideX[i + 2] : rod.blank.lengthMm();
            warns(milli((rod.guideX[i + 1] - rod.guideX[i]) / (next - rod.guideX[i + 1])) > 1500, "guide-train.growth");
        }
        breaks(rod.part("thread", Part.class) == null, "guide-train.thread");
        breaks(rod.part("finish", Part.class) == null, "guide-train.finish");
        for (int n = 1; n <= rod.count; n++) {
            Guide guide = rod.guide(n);
            breaks(guide == null, "guide-train.filled");
            Guide next = n < rod.count ? rod.guide(n + 1) : null;
            if (guide != null && next != null) {
                breaks(Math.round(next.ringSize() * 10) > Math.round(guide.ringSize() * 10), "guide-train.ring-order");
                breaks(n <= 2 && milli(next.ringSize() / guide.ringSize()) < 400, "guide-train.reducer");
                breaks(!next.frameFinish().equals(guide.frameFinish()), "guide-train.frame-finish");
                breaks(next.ringMaterial() != guide.ringMaterial(), "guide-train.ring-material");
            }
        }
        Guide last = rod.guide(rod.count);
        if (last != null && rod.tip != null) {
            breaks(sizesAbove(last.ringSize(), rod.tip.ringSize()) > 2, "guide-train.tip-ring");
            breaks(!last.frameFinish().equals(rod.tip.frameFinish()), "guide-train.tip-finish");
            breaks(last.ringMaterial() != rod.tip.ringMaterial(), "guide-train.tip-ring-material");
        }
        stripper();
    }

    private void clearance(int usual) {
        SecondLine line = new SecondLine(rod);
        unsure |= line.unsure(rod.count, usual);
        breaks(line.rubs(rod.count), "guide-train.clearance");
        breaks(rod.count < usual && line.turns(rod.count, usual), "guide-train.turn");
        int fewer = rod.count - 1;
        if (fewer >= 3 && new SecondSpacing(rod, fewer).even) {
            unsure |= line.unsure(fewer, usual);
            warns(!line.rubs(fewer) && !(fewer < usual && line.turns(fewer, usual)), "guide-train.spare");
        }
    }

    private static int steps(double length, int first, double... edges) {
        int count = first;
        for (double edge : edges) {
            count += length >= edge ? 1 : 0;
        }
        return count;
    }

    private static int sizesAbove(double from, double to) {
        double[] sizes = {3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 10, 12, 16, 20, 25, 30, 40, 50};
        int above = 0;
        for (double size : sizes) {
            above += size > from + 0.04 && size < to + 0.05 ? 1 : 0;
        }
        return above;
    }

    private void stripper() {
        Guide guide = rod.guide(1);
        if (guide == null) {
            return;
        }
        if (brief.rodType() == RodType.CASTING) {
            breaks(guide.ringSize() < 8, "guide-train.casting-stripper");
            return;
        }
        double lip = brief.reel().lipDiameterMm();
        breaks(milli(guide.ringIdMm() / lip) < 300, "guide-train.stripper-ring");
        warns(milli(guide.ringIdMm() / lip) < 350, "guide-train.stripper-small");
        double spool = rod.foot + 60;
        double tip = rod.blank.lengthMm() - spool;
        double choke = Math.max(0.35 * tip, Math.min(0.6 * tip, 26.5 * lip));
        double lipHeight = 11 + brief.reel().stemHeightMm() - lip / 2;
        double line = Math.max(0, lipHeight - lipHeight * (rod.guideX[0] - spool) / choke);
        double height = rod.od(rod.guideX[0]) / 2 + guide.heightMm();
        warns(mm(Math.abs(height - line)) > 1000, "guide-train.stripper-height");
    }

    private void salt() {
        Set<Material> metals = Set.of(
                Material.ALUMINIUM, Material.NICKEL_SILVER, Material.STAINLESS, Material.TITANIUM, Material.BRASS);
        Set<PartKind> holdMetal =
                Set.of(PartKind.GUIDE, PartKind.TIP_TOP, PartKind.REEL_SEAT, PartKind.HOOD, PartKind.KEEPER);
        for (Part part : rod.all()) {
            boolean corrodes = holdMetal.contains(part.kind())
                    || metals.contains(part.facts().material());
            breaks(corrodes && part.facts().corrosionClass() < brief.corrosionClass(), "salt.corrosion-class");
        }
    }

    private void budget() {
        Long budget = brief.budgetMinor();
        breaks(
                budget != null
                        && figures.priceMinor()
                                        .setScale(0, java.math.RoundingMode.HALF_UP)
                                        .longValueExact()
                                > budget,
                "budget.price");
    }

    private void stock() {
        Map<String, Integer> pieces = new HashMap<>();
        rod.placed().forEach(part -> pieces.merge(part.id(), 1, Integer::sum));
        if (rod.arbor != null && rod.seat != null) {
            pieces.put(rod.arbor.id(), SecondFigures.arborPieces(rod, rod.arbor, rod.seat));
        }
        for (Part part : rod.all()) {
            boolean owned = brief.owned().contains(part.id());
            Integer days = part.facts().leadDays();
            LocalDate wanted = brief.wantedBy();
            boolean arrives = !owned
                    && days != null
                    && (wanted == null || !rod.catalog.asOf().plusDays(days).isAfter(wanted));
            int free = owned ? 1 : part.facts().stock();
            int needed = pieces.getOrDefault(part.id(), 1);
            breaks(!arrives && free < 1, "stock.one-piece");
            breaks(!arrives && needed > 1 && free < needed, "stock.all-pieces");
        }
    }

    private void must() {
        Set<String> used = new TreeSet<>();
        rod.all().forEach(part -> used.add(part.id()));
        brief.insisted().forEach(wish -> breaks(wish.hard() && !used.contains(wish.partId()), "must.insisted"));
        brief.refused().forEach(wish -> breaks(wish.hard() && used.contains(wish.partId()), "must.refused-part"));
        for (Part part : rod.all()) {
            breaks(brief.look().refusedMaterials().contains(part.facts().material()), "must.refused-material");
        }
        if (rod.cap != null && !brief.counterweightAsked()) {
            double grams = rod.cap.facts().measuredG() == null
                    ? rod.cap.facts().weightG()
                    : rod.cap.facts().measuredG();
            breaks(milli(grams) > 30_000, "must.cap-mass");
            breaks(milli(grams) > milli(0.08 * figures.weightG()), "must.cap-share");
        }
    }
}
