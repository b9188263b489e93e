package withy.mechanics;

import java.util.List;
import withy.mechanics.BendResult.Node;

/**
 * The axis of a bent blank at any place: cubic between nodes, with the nodes' directions.
 *
 * @param nodes from clamp to tip
 */
public record BentAxis(List<Node> nodes) {
    public BentAxis {
        nodes = List.copyOf(nodes);
    }

    /** A point beside the axis: offset along the normal, positive above. */
    public double[] beside(double sMm, double offsetMm) {
        Node at = at(sMm);
        return new double[] {
            at.xMm() - offsetMm * Math.sin(at.angleRad()), at.yMm() + offsetMm * Math.cos(at.angleRad())
        };
    }

    /** Place and direction at s; the moment is left out. Straight on behind the first node. */
    public Node at(double sMm) {
        Node first = nodes.get(0);
        if (sMm <= first.sMm()) {
            double back = sMm - first.sMm();
            return new Node(
                    sMm,
                    first.xMm() + back * Math.cos(first.angleRad()),
                    first.yMm() + back * Math.sin(first.angleRad()),
                    first.angleRad(),
                    0);
        }
        Node before = first;
        for (Node next : nodes) {
            if (next.sMm() >= sMm && next.sMm() > before.sMm()) {
                return between(before, next, sMm);
            }
            before = next;
        }
        return before;
    }

    private static Node between(Node a, Node b, double sMm) {
        double h = b.sMm() - a.sMm();
        double t = (sMm - a.sMm()) / h;
        double one = 1 - t;
        double p0 = (1 + 2 * t) * one * one;
        double m0 = t * one * one * h;
        double p1 = t * t * (3 - 2 * t);
        double m1 = -t * t * one * h;
        return new Node(
                sMm,
                p0 * a.xMm() + m0 * Math.cos(a.angleRad()) + p1 * b.xMm() + m1 * Math.cos(b.angleRad()),
                p0 * a.yMm() + m0 * Math.sin(a.angleRad()) + p1 * b.yMm() + m1 * Math.sin(b.angleRad()),
                a.angleRad() + t * (b.angleRad() - a.angleRad()),
                0);
    }
}
