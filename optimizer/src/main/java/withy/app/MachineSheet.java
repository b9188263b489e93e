package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finished rod as a machine; its fields in this order are the published JSON. Places x are mm from the blank's butt; places of bent shapes are
 * mm ahead of and above the front of the handle, where the blank is held fast.
 *
 * @param outline what a picture of the rod to scale needs
 * @param stiffness the blank's
 * @param hung held level, weights on the tip
 * @param working under the working load, line through the rings
 * @param staticTest held level, the weight that drops the tip by a third on the line; null where there is none
 * @param quickness frequencies
 * @param wraps thread and finish
 * @param handle hand, reels, counterweights
 * @param massAlong where the mass lies, from the butt end to the tip
 */
public record MachineSheet(
        Outline outline,
        Stiffness stiffness,
        Hung hung,
        Line working,
        @Nullable Line staticTest,
        Quick quickness,
        Wrapping wraps,
        HandSheet handle,
        List<Stretch> massAlong) {
    public MachineSheet {
        massAlong = List.copyOf(massAlong);
    }

    /**
     * The rod to scale.
     *
     * @param fromMm butt end, cap included
     * @param toMm front of the tip-top
     * @param footMm reel foot
     * @param handMm where the hand turns it
     * @param handleFrontMm front of the handle
     * @param balanceMm balance point of the rod with its reel
     * @param bareBalanceMm balance point of the rod without reel
     * @param ringsAbove true where the guides stand above the blank
     * @param blank outer diameters
     * @param joints stretches where sections join
     * @param pieces what has a length
     * @param rings guides and tip-top
     */
    public record Outline(
            double fromMm,
            double toMm,
            double footMm,
            double handMm,
            double handleFrontMm,
            double balanceMm,
            double bareBalanceMm,
            boolean ringsAbove,
            List<Diameter> blank,
            List<Span> joints,
            List<Piece> pieces,
            List<Ring> rings) {
        public Outline {
            blank = List.copyOf(blank);
            joints = List.copyOf(joints);
            pieces = List.copyOf(pieces);
            rings = List.copyOf(rings);
        }
    }

    /** Outer diameter at a place. */
    public record Diameter(double xMm, double odMm) {}

    /** A stretch. */
    public record Span(double fromMm, double toMm) {}

    /** A part with a length and its outer diameters at rear, middle and front. */
    public record Piece(
            String station,
            String name,
            double fromMm,
            double toMm,
            double rearOdMm,
            double midOdMm,
            double frontOdMm) {}

    /**
     * A ring.
     *
     * @param axisMm blank's axis to the ring's centre
     * @param ringMm nominal size, about its outer diameter
     * @param ringIdMm clear inner diameter
     * @param feet one or two; 0 for the tip-top
     */
    public record Ring(
            String station, String name, double xMm, double axisMm, double ringMm, double ringIdMm, int feet) {}

    /**
     * The blank's stiffness.
     *
     * @param source bend-test, third-test, wall or weight
     * @param modulusMpa modulus in bending, N/mm²; null where a bend test did without
     * @param doubt why the catalogue's test could not be used, or null
     * @param along by places; at a step two lines of one place
     */
    public record Stiffness(
            String source,
            @Nullable Double modulusMpa,
            @Nullable String doubt,
            List<StiffnessAt> along) {
        public Stiffness {
            along = List.copyOf(along);
        }
    }

    /** Outer diameter and stiffness EI at a place. */
    public record StiffnessAt(double xMm, double odMm, double eiNmm2) {}

    /**
     * Weights hung on the tip; drop from the straight line of the unbent rod, its own weight included.
     *
     * @param thirdG weight that drops the tip by a third of what is free ahead of the handle, or null
     * @param thirdDropMm that third
     * @param actionAngleDeg how far the tip points below level then, or null
     * @param doubt why there is no such weight, or null
     * @param curve lightest first
     */
    public record Hung(
            @Nullable Double thirdG,
            double thirdDropMm,
            @Nullable Double actionAngleDeg,
            @Nullable String doubt,
            List<LoadDrop> curve) {
        public Hung {
            curve = List.copyOf(curve);
        }
    }

    /**
     * A weight and its drop.
     *
     * @param dropMm null where no bend can be trusted
     * @param tipDeg how far the tip points below level
     * @param shape the bent blank
     */
    public record LoadDrop(
            double loadG, @Nullable Double dropMm, @Nullable Double tipDeg, List<Point> shape) {
        public LoadDrop {
            shape = List.copyOf(shape);
        }
    }

    /** A place ahead of and above the front of the handle. */
    public record Point(double aheadMm, double upMm) {}

    /**
     * The rod under a line.
     *
     * @param buttDeg butt above level
     * @param pullDeg line beyond the tip above level; −90 straight down
     * @param pullKg pull
     * @param liftRatingKg the blank's, or null
     * @param reserve lift rating over pull, or null
     * @param dropMm tip below the straight line of the unbent rod, or null without a shape
     * @param handMomentNmm moment of the pull about the hand, or null
     * @param leastGapMm least distance of line and blank ahead of the stripper; below 0 they touch
     * @param largestTurnDeg most the line turns by in one guide
     * @param allTurnsDeg all it turns by, the tip-top included
     * @param rings stripper first, tip-top last
     * @param shape the bent blank
     * @param line from the reel through the rings
     * @param doubt why there is no shape, or null
     */
    public record Line(
            double buttDeg,
            double pullDeg,
            double pullKg,
            @Nullable Double liftRatingKg,
            @Nullable Double reserve,
            @Nullable Double dropMm,
            @Nullable Double handMomentNmm,
            @Nullable Double leastGapMm,
            @Nullable Double largestTurnDeg,
            @Nullable Double allTurnsDeg,
            List<RingUnderLoad> rings,
            List<Point> shape,
            List<Point> line,
            @Nullable String doubt) {
        public Line {
            rings = List.copyOf(rings);
            shape = List.copyOf(shape);
            line = List.copyOf(line);
        }
    }

    /**
     * One ring under load.
     *
     * @param turnDeg angle the line turns by in it
     * @param forceN of the line on it
     * @param gapBehindMm least distance of line and blank between this ring and the one behind, or the reel
     * @param gapAtMm where
     */
    public record RingUnderLoad(
            String station,
            double xMm,
            double turnDeg,
            double forceN,
            @Nullable Double gapBehindMm,
            @Nullable Double gapAtMm) {}

    /**
     * Quickness, held fast at the front of the handle.
     *
     * @param blankHz the blank alone, or null
     * @param finishedHz the finished rod, or null
     * @param tipHertzPerGram what a gram at the tip takes off
     * @param groups what leaving off one group would give back
     * @param guides each guide with its wraps
     * @param doubt why there are no numbers, or null
     */
    public record Quick(
            double heldMm,
            @Nullable Double blankHz,
            @Nullable Double finishedHz,
            @Nullable Double tipHertzPerGram,
            List<GroupCost> groups,
            List<GuideCost> guides,
            @Nullable String doubt) {
        public Quick {
            groups = List.copyOf(groups);
            guides = List.copyOf(guides);
        }
    }

    /** A group of parts. */
    public record GroupCost(String what, double massG, double hertz) {}

    /** A guide with its wraps. */
    public record GuideCost(String station, double xMm, double massG, double hertzPerGram, double hertz) {}

    /** Thread and finish. */
    public record Wrapping(List<GuideWrap> guides, Amount total, List<ThreadSize> threads) {
        public Wrapping {
            guides = List.copyOf(guides);
            threads = List.copyOf(threads);
        }
    }

    /** Thread and finish used up on the rod. */
    public record Amount(double threadM, double threadG, double finishMl, double finishG) {}

    /**
     * A guide's wraps.
     *
     * @param wrapMm covered by each foot's wrap
     * @param turns turns a foot
     * @param underTurns turns of the underwrap a foot; 0 without one
     */
    public record GuideWrap(String station, int feet, double wrapMm, double turns, double underTurns, Amount amount) {}

    /**
     * The same rod with another thread.
     *
     * @param own true for the thread the build has
     * @param weightG the whole rod
     */
    public record ThreadSize(
            String thread,
            String name,
            String letter,
            double diameterMm,
            Amount amount,
            double weightG,
            double swingWeightKgM2,
            boolean own) {}

    /** A stretch of the rod and what lies in it. */
    public record Stretch(double fromMm, double toMm, double blankG, double partsG) {}
}
