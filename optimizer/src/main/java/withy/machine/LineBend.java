package withy.machine;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.mechanics.LineClearance.Approach;
import withy.mechanics.LineResult;

/**
 * The rod under a line through its rings.
 *
 * @param pose how it is held and pulled
 * @param held shape and line, or null where none can be trusted
 * @param gaps how near the line comes to the blank in each span, from the reel to the tip
 * @param handMomentNmm moment of the pull about the hand, N·mm; positive presses the tip down
 * @param doubt why there is no shape, or null
 */
public record LineBend(
        Pose pose,
        LineResult.@Nullable Held held,
        List<Approach> gaps,
        double handMomentNmm,
        @Nullable String doubt) {
    public LineBend {
        gaps = List.copyOf(gaps);
    }

    /** Least distance of line and blank ahead of the stripper, mm; below 0 they touch. NaN without a shape. */
    public double leastGapMm() {
        return gaps.stream()
                .filter(gap -> gap.ring() > 1)
                .mapToDouble(Approach::gapMm)
                .min()
                .orElse(Double.NaN);
    }

    /** Largest angle the line turns by in a guide (the tip-top turns it by whatever the fish asks), radians. NaN without a shape. */
    public double largestTurnRad() {
        return held == null
                ? Double.NaN
                : held.rings().subList(0, held.rings().size() - 1).stream()
                        .mapToDouble(ring -> Math.abs(ring.turnRad()))
                        .max()
                        .orElse(0);
    }

    /** All angles the line turns by, from stripper to tip-top, radians. NaN without a shape. */
    public double allTurnsRad() {
        return held == null
                ? Double.NaN
                : held.rings().stream()
                        .mapToDouble(ring -> Math.abs(ring.turnRad()))
                        .sum();
    }
}
