package withy.catalog;

/**
 * Weights against geometry and density. Seats, hoods, caps, guides and tip-tops are too hollow for it; carbon grips may be shells, so only too much
 * is asked about.
 */
final class PlausibleWeight {
    /** Slack on a material's own scatter: rounding of small weights, chamfers, lacquer. */
    private static final double SLACK = 1.3;

    /** Least share of solid that a turned ring keeps. */
    private static final double TURNED = 0.5;

    /** Share of a thread's round section that is fibre: packed from loosely twisted to monofilament. ASSUMED. */
    private static final double LOOSE_THREAD = 0.5;

    /** Rounding of a printed weight, g. */
    private static final double ROUNDING_G = 0.05;

    private PlausibleWeight() {}

    static void check(Part part, CatalogPlausibility told) {
        if (part instanceof Blank blank && blank.wallMm() != null) {
            double joints = (blank.sections() - 1) * blank.ferruleExtraG();
            solid(part, PartVolume.tube(blank.stations(), blank.wallMm()), 1, joints, told);
        } else if (part instanceof Arbor arbor) {
            solid(part, PartVolume.ring(arbor.odMm(), arbor.idMm(), arbor.lengthMm()), 1, 0, told);
        } else if (part instanceof Grip grip) {
            double hollow = part.facts().material() == Material.CARBON ? 0.1 : 1;
            solid(part, PartVolume.grip(grip), hollow, 0, told);
        } else if (part instanceof Check check) {
            solid(part, PartVolume.ring(check.outerMm(), check.innerMm(), check.widthMm()), TURNED, 0, told);
        } else if (part instanceof WrapThread thread) {
            thread(thread, told);
        } else if (part instanceof Finish finish) {
            pack(part, finish.densityGMl() * finish.packMl(), told);
        } else if (part instanceof Adhesive adhesive) {
            pack(part, adhesive.densityGMl() * adhesive.packMl(), told);
        }
    }

    private static void solid(Part part, double volumeMm3, double leastShare, double extraG, CatalogPlausibility told) {
        MaterialDensity density = MaterialDensity.of(part.facts().material());
        double least = volumeMm3 * density.least() / 1000 * leastShare / SLACK + extraG - ROUNDING_G;
        double most = volumeMm3 * density.most() / 1000 * SLACK + extraG + ROUNDING_G;
        double weight = part.facts().weightG();
        if (weight < least || weight > most) {
            told.warn(
                    part,
                    "weight_g",
                    Numbers.plain(weight) + " g",
                    "does not follow from the measures of a part of "
                            + part.facts().material().word(),
                    "about " + rounded(Math.max(0, least)) + " to " + rounded(most) + " g",
                    "a measure or the material is mistyped");
        }
    }

    private static void thread(WrapThread thread, CatalogPlausibility told) {
        MaterialDensity density = MaterialDensity.of(thread.facts().material());
        double section = Math.PI / 4 * thread.diameterMm() * thread.diameterMm();
        // g/km = mm² × 10⁶ mm/km × g/mm³
        double solid = section * 1000;
        double least = solid * density.least() * LOOSE_THREAD;
        double most = solid * density.most() * SLACK;
        if (thread.tex() < least || thread.tex() > most) {
            told.warn(
                    thread,
                    "tex",
                    Numbers.plain(thread.tex()) + " g/km",
                    "does not suit a thread " + Numbers.plain(thread.diameterMm()) + " mm thick",
                    "about " + rounded(least) + " to " + rounded(most) + " g/km",
                    "it is denier (9 denier are 1 tex)");
        }
    }

    private static void pack(Part part, double grams, CatalogPlausibility told) {
        double weight = part.facts().weightG();
        if (weight < grams / SLACK || weight > grams * SLACK) {
            told.warn(
                    part,
                    "weight_g",
                    Numbers.plain(weight) + " g",
                    "does not follow from volume and density",
                    "about " + rounded(grams) + " g",
                    "bottles were weighed too, or it is one bottle of two");
        }
    }

    private static String rounded(double value) {
        return Numbers.plain(Math.round(value * 100) / 100.0);
    }
}
