package withy.report;

import java.util.ArrayList;
import java.util.List;
import withy.app.MachineSheet.Outline;
import withy.explain.Phrases;

/**
 * Reel foot and balance points over the ruler of a strip, each with its words in a row of its own and a line down to the ruler, in such an order that
 * no line goes through the words of another.
 *
 * <pre>
 *   ^ reel foot
 *   |      ^ balances, reel on
 *   |      |        ^ balances bare
 *  -+------+--------+--------------- ruler
 * </pre>
 */
final class RodMarks {
    /** Between a line and the words beside it at least, units. */
    private static final double CLEAR = 3;

    private final Outline outline;
    private final Svg svg;

    private record Mark(double xMm, String words, boolean filled) {}

    /** A mark in its row, with where its words lie. */
    private record Stand(Mark mark, int row, double x, double y, boolean left, boolean onRing) {
        double fromX() {
            return left ? x - reach(mark) : x;
        }

        double toX() {
            return left ? x : x + reach(mark);
        }
    }

    RodMarks(Outline outline, Svg svg) {
        this.outline = outline;
        this.svg = svg;
    }

    /** Those that lie in the strip between two places of the rod, whose upper edge is at {@code top}. */
    void draw(double from, double to, double top) {
        List<Mark> here = new ArrayList<>();
        for (Mark mark : List.of(
                new Mark(outline.footMm(), Phrases.of("picture.rod.foot"), false),
                new Mark(outline.balanceMm(), Phrases.of("picture.rod.balance"), true),
                new Mark(outline.bareBalanceMm(), Phrases.of("picture.rod.bare"), false))) {
            if (mark.xMm() >= from && (mark.xMm() < to || to >= outline.toMm())) {
                here.add(mark);
            }
        }
        List<Stand> best = null;
        int least = Integer.MAX_VALUE;
        for (List<Mark> order : orders(here)) {
            List<Stand> set = set(order, from, top);
            int crossed = crossed(set);
            if (crossed < least) {
                least = crossed;
                best = set;
            }
        }
        if (best != null) {
            best.forEach(one -> draw(one, top));
        }
    }

    /** Every order of marks, the given one first. */
    private static List<List<Mark>> orders(List<Mark> marks) {
        if (marks.isEmpty()) {
            return List.of(List.of());
        }
        List<List<Mark>> orders = new ArrayList<>();
        for (Mark first : marks) {
            List<Mark> others = new ArrayList<>(marks);
            others.remove(first);
            for (List<Mark> rest : orders(others)) {
                List<Mark> order = new ArrayList<>(List.of(first));
                order.addAll(rest);
                orders.add(order);
            }
        }
        return orders;
    }

    /** In rows from the ruler upward. */
    private List<Stand> set(List<Mark> order, double from, double top) {
        List<Stand> set = new ArrayList<>();
        for (Mark mark : order) {
            int row = set.size();
            double x = RodPicture.at(mark.xMm(), from);
            double y = top + RodPicture.RULER - 2 - RodPicture.ROW * row;
            set.add(set(mark, row, x, y, y - 16 - top - RodPicture.AXIS));
        }
        return set;
    }

    /** Words stand to the left where there is no room to the right, or a ring hangs there and none to the left. */
    private Stand set(Mark mark, int row, double x, double y, double below) {
        double reach = reach(mark);
        boolean ringRight = ringBelow(below, mark.xMm(), mark.xMm() + reach);
        boolean ringLeft = ringBelow(below, mark.xMm() - reach, mark.xMm());
        boolean right = x + reach <= Svg.WIDTH - 4;
        boolean left = !right || ringRight && x - reach > 4 && !ringLeft;
        return new Stand(mark, row, x, y, left, left ? ringLeft : ringRight);
    }

    private static double reach(Mark mark) {
        return Svg.LETTER_WIDTH * mark.words().length() + 14;
    }

    /** True where a ring between two places hangs lower than so far below the axis. */
    private boolean ringBelow(double below, double fromMm, double toMm) {
        return !outline.ringsAbove()
                && outline.rings().stream()
                        .anyMatch(ring ->
                                ring.xMm() > fromMm && ring.xMm() < toMm && ring.axisMm() + ring.ringMm() / 2 > below);
    }

    /** How often a line goes through the words of a lower row, or a ring hangs into words. */
    private int crossed(List<Stand> set) {
        int crossed = 0;
        for (Stand words : set) {
            if (words.onRing()) {
                crossed++;
            }
            for (Stand line : set) {
                if (line.row() > words.row() && line.x() > words.fromX() - CLEAR && line.x() < words.toX() + CLEAR) {
                    crossed++;
                }
            }
        }
        return crossed;
    }

    private void draw(Stand set, double top) {
        double x = set.x();
        double y = set.y();
        boolean filled = set.mark().filled();
        svg.line(x, y, x, top + RodPicture.RULER, Svg.ACCENT, 0.8);
        svg.points(new double[] {x, y - 14, x - 8, y, x + 8, y}, Svg.ACCENT, 1.4, filled ? Svg.ACCENT : "#ffffff");
        svg.words(
                set.left() ? x - 11 : x + 11,
                y - 2,
                set.left() ? "end" : "start",
                Svg.ACCENT,
                set.mark().words());
    }
}
