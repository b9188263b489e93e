package withy.rod;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.mechanics.TaperProfile;

/**
 * A layout with everything that follows from it and the brief alone: diameters, hand point, guide positions.
 *
 * <pre>
 *   x = 0            foot        guide-1        guide-n     L
 *   butt |====grips==|seat|=======o=====o===o==o==o=o=o=o  tip
 * </pre>
 */
public final class Setting {
    /** Hand point behind the foot centre of a casting rod, mm; common practice. */
    private static final double CASTING_HAND_MM = 25;

    private final Catalog catalog;
    private final Brief brief;
    private final BlankShape shape;
    private final Layout layout;
    private final double handMm;
    private final @Nullable GuideSpots spots;
    private @Nullable GuidePositions positions;

    /**
     * @param spots knows where guides are; null where none does
     * @param positions where they are; null where that is worked out when first asked for
     */
    private Setting(
            Catalog catalog,
            Brief brief,
            BlankShape shape,
            Layout layout,
            @Nullable GuideSpots spots,
            @Nullable GuidePositions positions) {
        this.catalog = catalog;
        this.brief = brief;
        this.shape = shape;
        this.layout = layout;
        this.handMm = layout.reelFootMm() - armMm(brief);
        this.spots = spots;
        this.positions = positions;
    }

    /** Several threads may work them out at once: they come to the same. */
    private GuidePositions positions() {
        GuidePositions known = positions;
        if (known == null) {
            known = spots == null ? GuidePositions.of(brief, shape, layout) : spots.of(brief, shape, layout);
            positions = known;
        }
        return known;
    }

    /** Works the layout out. */
    public static Setting of(Catalog catalog, Brief brief, BlankShape shape, Layout layout) {
        return new Setting(catalog, brief, shape, layout, null, null);
    }

    /** The same, with what is known of where guides are. */
    public static Setting of(Catalog catalog, Brief brief, BlankShape shape, Layout layout, GuideSpots spots) {
        return new Setting(catalog, brief, shape, layout, spots, null);
    }

    /** The same layout with another count of guides. */
    public Setting withGuides(int count) {
        Layout other = new Layout(layout.blankId(), layout.reelFootMm(), layout.form(), count);
        return new Setting(catalog, brief, shape, other, spots, null);
    }

    /** The same layout with its guides elsewhere: for bounds over many layouts. */
    public Setting withGuidesAt(double[] xMm) {
        return new Setting(catalog, brief, shape, layout, spots, new GuidePositions(xMm.clone(), spaced()));
    }

    public Catalog catalog() {
        return catalog;
    }

    public Brief brief() {
        return brief;
    }

    public Layout layout() {
        return layout;
    }

    public BlankShape shape() {
        return shape;
    }

    public Blank blank() {
        return shape.blank();
    }

    /** Outer diameter along the blank. */
    public TaperProfile profile() {
        return shape.profile();
    }

    /** Outer diameter of the blank at x, mm. */
    public double odAt(double xMm) {
        return shape.profile().at(xMm);
    }

    /** Largest outer diameter between two places, mm. */
    public double thickestMm(double fromMm, double toMm) {
        return shape.profile().largestBetween(fromMm, toMm);
    }

    /** Where swing weight and tip-heaviness are told about, mm from the blank's butt. */
    public double handMm() {
        return handMm;
    }

    /** From the hand to the reel foot, mm. */
    public static double armMm(Brief brief) {
        return brief.rodType().spinningReel() ? 0 : CASTING_HAND_MM;
    }

    /** Reel foot centre, mm from the blank's butt. */
    public int footMm() {
        return layout.reelFootMm();
    }

    /** Guides without the tip-top. */
    public int guideCount() {
        return layout.guideCount();
    }

    /** Ring of guide {@code number} (1 = stripper), mm from the blank's butt. */
    public double guideMm(int number) {
        return positions().xMm()[number - 1];
    }

    /** Largest of the gaps between guides, each in the next one toward the tip; 1 where there is one gap. */
    public double steepestGrowth() {
        double steepest = 1;
        for (int number = 1; number < positions().xMm().length; number++) {
            steepest = Math.max(steepest, growth(number));
        }
        return steepest;
    }

    /** The gap ahead of a guide in the next one toward the tip; the last guide has none. */
    public double growth(int number) {
        double[] guideMm = positions().xMm();
        double next = (number + 1 < guideMm.length
                        ? guideMm[number + 1]
                        : shape.blank().lengthMm())
                - guideMm[number];
        return (guideMm[number] - guideMm[number - 1]) / next;
    }

    /** True where this count of guides can be spaced evenly (growth 1.05 to 1.25, clear of ferrules). */
    public boolean spaced() {
        return positions().even();
    }
}
