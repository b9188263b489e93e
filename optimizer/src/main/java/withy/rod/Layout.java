package withy.rod;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;

/**
 * The master choice: fixes every diameter, the hand point and the guide positions.
 *
 * @param blankId the blank
 * @param reelFootMm reel foot centre from the blank's butt end (x = 0), mm, on the 5 mm grid
 * @param form split or full handle
 * @param guideCount guides without tip-top
 */
public record Layout(String blankId, int reelFootMm, HandleForm form, int guideCount) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Layout that
                && reelFootMm == that.reelFootMm
                && form == that.form
                && guideCount == that.guideCount
                && blankId.equals(that.blankId);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * (31 * blankId.hashCode() + reelFootMm) + form.ordinal()) + guideCount;
    }

    /** Grid of reel foot positions and of free grip cuts, mm. */
    public static final int GRID_MM = 5;
}
