package withy.app;

import java.util.ArrayList;
import java.util.List;
import withy.app.BuildSheet.VerdictLine;
import withy.catalog.Blank;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Phrases;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;
import withy.units.QuantityText;

/** What is legal but should be looked at, and what the figures rest on. Bounds are common practice (handbook, sections 3 and 9). */
final class Plausibility {
    /** Trim rings and checks together above which a builder asks, g. */
    private static final double TRIM_G = 6;

    /** Thread, finish, adhesive, arbors, tip-top together above which the sum is suspicious, g, on a rod up to {@link #LURE_ROD_MM}. */
    private static final double SMALL_THINGS_G = 18;

    private static final double LURE_ROD_MM = 2450;

    /** Reel over rod by weight: outside of these it is worth a warning. */
    private static final double REEL_LEAST = 1.2;

    private static final double REEL_MOST = 3.2;

    /** Shares of the heaviest rated lure between which a blank casts best (trade tables, common practice). */
    private static final double LURE_LEAST = 0.5;

    private static final double LURE_MOST = 0.75;

    private final Rod rod;
    private final QuantityText units;
    private final List<String> list = new ArrayList<>();

    private Plausibility(Rod rod, QuantityText units) {
        this.rod = rod;
        this.units = units;
    }

    static List<String> of(Rod rod, List<VerdictLine> verdicts, QuantityText units) {
        Plausibility plausibility = new Plausibility(rod, units);
        verdicts.stream()
                .filter(v -> v.outcome().equals(Verdicts.WARNING))
                .map(VerdictLine::sentence)
                .distinct()
                .forEach(plausibility.list::add);
        plausibility.rating();
        plausibility.usualLure();
        plausibility.massAlongBlank();
        plausibility.reel();
        plausibility.train();
        plausibility.trim();
        plausibility.smallThings();
        return plausibility.list;
    }

    private void rating() {
        Blank blank = rod.setting().blank();
        if (blank.ownLureMinG() != null || blank.ownLureMaxG() != null) {
            list.add(Phrases.of("warning.ownRating", blank.facts().name()));
        }
        if (blank.ownLiftKg() != null && rod.brief().landing() == withy.brief.Brief.Landing.LIFTED) {
            list.add(Phrases.of("warning.ownLift", blank.facts().name()));
        }
    }

    private void usualLure() {
        Blank blank = rod.setting().blank();
        double usualG = rod.brief().lure().usualG();
        Double ownG = blank.ownLureMaxG();
        double ratedG = ownG == null ? blank.lureMaxG() : ownG;
        if (usualG < LURE_LEAST * ratedG || usualG > LURE_MOST * ratedG) {
            list.add(Phrases.of(
                    "warning.usualLure",
                    blank.facts().name(),
                    units.lureMass(LURE_LEAST * ratedG),
                    units.lureMass(LURE_MOST * ratedG),
                    units.lureMass(usualG)));
        }
    }

    private void massAlongBlank() {
        if (!rod.setting().shape().fromBalance()) {
            list.add(Phrases.of(
                    "warning.massAlongBlank", rod.setting().blank().facts().name()));
        }
    }

    private void reel() {
        double share = rod.brief().reel().massG() / rod.figures().weightG();
        if (share < REEL_LEAST || share > REEL_MOST) {
            String key = share < REEL_LEAST ? "warning.reelLight" : "warning.reelHeavy";
            list.add(Phrases.of(
                    key,
                    units.mass(rod.brief().reel().massG()),
                    units.mass(rod.figures().weightG())));
        }
    }

    private void train() {
        long train = 0;
        long blank = 0;
        for (Placed placed : rod.placed().values()) {
            Share share = rod.shares().get(placed.station());
            long milli = share == null ? 0 : share.partCostMilli();
            train += placed.part().kind() == PartKind.GUIDE || placed.part().kind() == PartKind.TIP_TOP ? milli : 0;
            blank += placed.part().kind() == PartKind.BLANK ? milli : 0;
        }
        if (blank > 0 && train > blank) {
            list.add(Phrases.of("warning.trainDearer"));
        }
    }

    private void trim() {
        double grams = weightG(PartKind.CHECK);
        if (grams > TRIM_G) {
            list.add(Phrases.of("warning.trim", units.mass(grams), units.mass(TRIM_G)));
        }
    }

    private void smallThings() {
        Share total = rod.total();
        double grams = (total.threadMg() + total.finishMg() + total.glueMg() + total.tapeMg()) / 1000.0
                + weightG(PartKind.ARBOR)
                + weightG(PartKind.TIP_TOP);
        if (rod.figures().finishedLengthMm() <= LURE_ROD_MM && grams > SMALL_THINGS_G) {
            list.add(Phrases.of("warning.smallThings", units.mass(grams), units.mass(SMALL_THINGS_G)));
        }
    }

    private double weightG(PartKind kind) {
        long mg = 0;
        for (Station station : rod.shares().keySet()) {
            Part part = rod.partAt(station);
            Share share = rod.shares().get(station);
            mg += part != null && share != null && part.kind() == kind ? share.partMg() : 0;
        }
        return mg / 1000.0;
    }
}
