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
 * @param site the blank, under one placing of the forced parts
 * @param leastClass every load-bearing part is at least of this class, and that class is what is credited
 * @param setting the layout, or null where all layouts of the blank are meant
 * @param stage how closely it has been looked at
 * @param version which floors the bound was worked out with
 */
record Node(
        long bound,
        long order,
        Site site,
        int leastClass,
        @Nullable Setting setting,
        Stage stage,
        int version) {

    /** All layouts of a blank. */
    static Node blank(long order, Site site, int leastClass, Stage stage, int version) {
        return new Node(Long.MIN_VALUE, order, site, leastClass, null, stage, version);
    }

    /** One layout of a blank that is looked at. */
    Node layout(long newOrder, Setting of) {
        return new Node(bound, newOrder, site, leastClass, of, Stage.LOOKED, version);
    }

    BlankShape shape() {
        return site.shape();
    }

    /** Least bound first. */
    static final Comparator<Node> BEST_FIRST =
            Comparator.comparingLong(Node::bound).thenComparingLong(Node::order);

    /** The one looked at most closely first, but for what is put off. */
    static final Comparator<Node> DEEPEST_FIRST = Comparator.comparing((Node node) -> node.stage == Stage.WEIGHED)
            .thenComparing(node -> node.setting == null)
            .thenComparing(node -> node.stage, Comparator.reverseOrder())
            .thenComparing(BEST_FIRST);

    /** How closely a node has been looked at; the bound gets better and dearer. */
    enum Stage {
        /** Every station takes its best part, those of the handle as if any blank were under them. */
        LISTED,
        /** The exact guide train, as near the reel as any layout brings it, with such a handle. */
        GUIDED,
        /** Every station takes its best part. */
        OPENED,
        /** The exact guide train, as near the reel as any layout brings it. */
        LOOKED,
        /** The exact handle of the layout besides. */
        HANDLED,
        /** The exact guide train of the layout instead of the nearest. */
        TRAINED,
        /** Multipliers of its own besides: too many builds stay below the limit to walk past them while others may hold better ones. */
        WEIGHED
    }

    /** The same to be looked at more closely. */
    Node closer() {
        return at(Stage.values()[stage.ordinal() + 1]);
    }

    /** The same looked at this closely. */
    Node at(Stage closely) {
        return new Node(bound, order, site, leastClass, setting, closely, version);
    }

    /** The same with parts of another class at least. */
    Node ofClass(int other) {
        return new Node(bound, order, site, other, setting, stage, version);
    }

    /** The same with a bound of other floors. */
    Node bounded(long other, int newVersion) {
        return new Node(Math.max(bound, other), order, site, leastClass, setting, stage, newVersion);
    }
}
