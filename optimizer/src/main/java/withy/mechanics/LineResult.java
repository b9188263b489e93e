package withy.mechanics;

import java.util.List;

/** What came of a line through the rings: a shape in equilibrium with the line's path, or why there is none to be trusted. */
public sealed interface LineResult {

    /**
     * A ring under load.
     *
     * @param sMm along the rod, mm from the butt
     * @param xMm where the line touches it, mm ahead of the clamp
     * @param yMm mm above the clamp
     * @param forwardN force of the line on it, away from the angler, N
     * @param upN up, N
     * @param turnRad angle the line turns by in it, radians
     */
    record RingLoad(double sMm, double xMm, double yMm, double forwardN, double upN, double turnRad) {}

    /**
     * The rod and its line.
     *
     * @param nodes the blank's axis from clamp to tip
     * @param rings stripper first, tip-top last
     * @param reelXMm where the line leaves the reel, mm ahead of the clamp
     * @param reelYMm mm above the clamp
     * @param dropMm distance of the tip from the straight line of the unbent rod, downward positive
     * @param rootMomentNmm bending moment of the blank at the clamp, as integrated
     * @param leverMomentNmm the same from the outer pull, the line between stripper and reel and the weights, with their levers
     * @param lineMm length of line from reel to tip-top
     * @param energyNmm elastic energy, less the work weights and pull can still do; the rod settles where it is least
     */
    record Held(
            List<BendResult.Node> nodes,
            List<RingLoad> rings,
            double reelXMm,
            double reelYMm,
            double dropMm,
            double rootMomentNmm,
            double leverMomentNmm,
            double lineMm,
            double energyNmm)
            implements LineResult {
        public Held {
            nodes = List.copyOf(nodes);
            rings = List.copyOf(rings);
        }

        public BendResult.Node tip() {
            return nodes.get(nodes.size() - 1);
        }
    }

    /** No shape found that can be believed. */
    record NotConverged(String reason) implements LineResult {}
}
