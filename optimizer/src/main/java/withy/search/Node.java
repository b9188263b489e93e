package withy.search;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import withy.rod.BlankShape;
import withy.rod.Setting;

/**
 * A part of the choice still open, with a number no build in it can score below.
 *
 * @param bound that number
 * @param order position in content order, to break ties the same way always
 * @param shape the blank
 * @param alternative which placing of the forced parts
 * @param leastClass every load-bearing part is at least of this class, and that class is what is credited
 * @param setting the layout, or null where all layouts of the blank are meant
 * @param looked true where the exact train of the blank is in the bound
 * @param version which floors the bound was worked out with
 */
record Node(
        long bound,
        long order,
        BlankShape shape,
        Stations alternative,
        int leastClass,
        @Nullable Setting setting,
        boolean looked,
        int version) {

    /** Least bound first. */
    static final Comparator<Node> BEST_FIRST =
            Comparator.comparingLong(Node::bound).thenComparingLong(Node::order);

    /** The same to be looked at more closely. */
    Node look() {
        return new Node(bound, order, shape, alternative, leastClass, setting, true, version);
    }

    /** The same with a bound of other floors. */
    Node bounded(long other, int newVersion) {
        return new Node(Math.max(bound, other), order, shape, alternative, leastClass, setting, looked, newVersion);
    }
}
