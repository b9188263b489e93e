package withy.rules;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Face;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Setting;

/**
 * One hard rule. It is written as checks of the smallest reach that can decide them (a layout, one part on a layout, two neighbours, the whole
 * rod) so that the filter can refuse early and the judge can ask everything; each check exists once. A rule overrides the hooks it needs.
 *
 * <p>Every hook must be pure and fast (called up to a million times a solve): no formatting, no collections, no allocation where it can be
 * helped; it only calls the {@link Bench}, which in the search merely notes a refusal and in the judge records a {@link Verdict}.
 */
public interface Rule {

    /** Stable code of the rule, not its class name: {@code lure-range}, {@code seat-on-blank} … */
    String code();

    /**
     * What the brief decides of a part whatever rod it goes on: water, refused parts and materials, class, knot and ring, foot and palm, supply of
     * at least one. Asked once a part by the filter, of every part (consumables too) by the judge.
     */
    default void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {}

    /** What layout, blank and brief decide alone. */
    default void onLayout(Setting setting, Bench bench) {}

    /**
     * What one part decides at its place: every placed part, the blank, seat, hood and arbors included. Only what needs the place; what the brief
     * alone decides belongs in {@link #onCandidate}, what seat, hood and arbors decide together in {@link #onSeat}. Of a guide it may refuse by its
     * number (all from the fourth on alike), not by where the layout puts it: the search asks once for all layouts.
     */
    default void onPart(Setting setting, Placed placed, Bench bench) {}

    /** What the seat with its hood and arbors decides at its place. */
    default void onSeat(Setting setting, SeatSet seat, Bench bench) {}

    /**
     * What closes the butt and where it ends.
     *
     * @param cap the butt cap, or null for none
     * @param first the grip nearest the butt (butt grip of a split handle, else the full rear grip), or null where it is missing
     */
    default void onButtEnd(Setting setting, @Nullable ButtCap cap, @Nullable Grip first, Bench bench) {}

    /** Both ends of the rod: what butt cap and tip-top add to the blank; null where one is missing. */
    default void onEnds(Setting setting, @Nullable ButtCap cap, @Nullable TipTop tipTop, Bench bench) {}

    /** Two faces that touch along the handle; {@code rear} lies nearer the butt. */
    default void onNeighbours(Setting setting, Face rear, Face front, Bench bench) {}

    /**
     * An edge that is seen against bare blank.
     *
     * @param finished true where the edge is shaped, or covered by a ring
     */
    default void onExposedEdge(Setting setting, Face edge, boolean finished, Bench bench) {}

    /** Two grips of one handle (butt and rear, rear and fore). */
    default void onGrips(Setting setting, Grip rear, Grip front, Bench bench) {}

    /** Fore grip against the seat it stands ahead of. */
    default void onForeGrip(Setting setting, SeatSet seat, Grip foreGrip, boolean ringBetween, Bench bench) {}

    /** Butt grip against rear grip of a split handle: rear edge of the rear grip and front edge of the butt grip, mm. */
    default void onGap(Setting setting, Placed buttGrip, Placed rearGrip, Bench bench) {}

    /** Two guides in sequence; {@code number} is the rear one's (1 = stripper). */
    default void onGuides(Setting setting, Guide rear, int number, Guide front, Bench bench) {}

    /** The last guide and the tip-top. */
    default void onTip(Setting setting, Guide last, TipTop tipTop, Bench bench) {}

    /** What only the whole rod decides: sums, counts, what is missing. */
    default void onRod(Rod rod, Bench bench) {}
}
