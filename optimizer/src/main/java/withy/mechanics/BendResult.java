package withy.mechanics;

import java.util.List;

/** What came of a bend calculation: a shape that is in equilibrium, or why there is none to be trusted. */
public sealed interface BendResult {

    /** One place on the bent rod: mm along it from the butt, mm ahead of and above the clamp, radians above level, N·mm. */
    record Node(double sMm, double xMm, double yMm, double angleRad, double momentNmm) {}

    /**
     * The bent rod.
     *
     * @param nodes from clamp to tip
     * @param dropMm distance of the tip from the straight line of the unbent rod, square to that line, downward positive
     * @param rootMomentNmm bending moment at the clamp, as integrated; negative bends the rod down
     * @param leverMomentNmm Σ load × lever at the clamp from the bent places, which must be the same
     * @param energyNmm elastic energy less the work the loads can still do; the rod settles where it is least
     */
    record Bent(List<Node> nodes, double dropMm, double rootMomentNmm, double leverMomentNmm, double energyNmm)
            implements BendResult {
        public Bent {
            nodes = List.copyOf(nodes);
        }

        public Node tip() {
            return nodes.get(nodes.size() - 1);
        }
    }

    /** No shape found that can be believed. */
    record NotConverged(String reason) implements BendResult {}
}
