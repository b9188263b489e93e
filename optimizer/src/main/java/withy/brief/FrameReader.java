package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.FishedFrom;
import withy.brief.Brief.Lure;
import withy.brief.BriefFault.Notation;
import withy.catalog.RodType;

/** Reads what frames the rod: type, place, hands, length, pieces, packed length. */
final class FrameReader {
    /** Half the range taken around a length told as one figure, and the range taken from one end, mm [ASSUMED]. */
    private static final double ABOUT_MM = 50;

    private static final double ONE_ENDED_MM = 250;

    /** Lures from here on are cast with both hands, g: spinning, casting [common practice]. */
    private static final double TWO_HANDED_SPINNING_G = 50;

    private static final double TWO_HANDED_CASTING_G = 60;

    /** Spinning rods at least this long are cast with both hands, mm [common practice]. */
    private static final double TWO_HANDED_FROM_MM = 2550;

    private static final int MOST_PIECES = 8;

    private final Fields root;
    private final Notes notes;

    FrameReader(Fields root) {
        this.root = root;
        this.notes = root.notes();
    }

    /** Type and place. */
    record Kind(RodType type, FishedFrom from) {}

    /** Least and most of something. */
    record Ends(double min, double max) {}

    /** Fewest and most sections. */
    record Pieces(int min, int max) {}

    Kind kind() {
        RodType type = root.choice("rodType", RodType.class);
        FishedFrom from = root.choice("fishedFrom", FishedFrom.class);
        if (from == null) {
            from = type == RodType.SURF_SPINNING ? FishedFrom.BEACH : FishedFrom.BANK;
            notes.taken(Default.FISHED_FROM, Words.spoken(from));
        }
        if (type == null) {
            type = from == FishedFrom.BEACH ? RodType.SURF_SPINNING : RodType.SPINNING;
            notes.taken(Default.ROD_TYPE, Words.spoken(type), Words.spoken(from));
        }
        return new Kind(type, from);
    }

    /** The finished length as told. */
    Span length() {
        return root.span("length", Quantity.LENGTH, Bounds.ROD_MM);
    }

    boolean twoHanded(RodType type, Lure lure, Span length) {
        Integer hands = root.whole("hands", 1, 2);
        if (hands != null) {
            return hands == 2;
        }
        boolean two = switch (type) {
            case SURF_SPINNING -> true;
            case CASTING -> lure.heaviestG() >= TWO_HANDED_CASTING_G;
            case SPINNING ->
                lure.heaviestG() >= TWO_HANDED_SPINNING_G || length.min() != null && length.min() >= TWO_HANDED_FROM_MM;
        };
        notes.taken(Default.HANDS, two ? "two" : "one");
        return two;
    }

    Ends length(Span told, Kind kind, Lure lure, boolean twoHanded) {
        Double min = told.min();
        Double max = told.max();
        if (min == null && max == null) {
            Ends usual = usualLength(kind, lure, twoHanded);
            notes.taken(Default.LENGTH, usual.min(), usual.max());
            return usual;
        }
        if (min == null && max != null) {
            min = Bounds.ROD_MM.clamp(max - ONE_ENDED_MM);
            notes.taken(Default.LENGTH_MIN, min);
        } else if (max == null && min != null) {
            max = Bounds.ROD_MM.clamp(min + ONE_ENDED_MM);
            notes.taken(Default.LENGTH_MAX, max);
        } else if (told.single() && min != null && max != null) {
            min = Quantity.LENGTH.round(Bounds.ROD_MM.clamp(min - ABOUT_MM));
            max = Quantity.LENGTH.round(Bounds.ROD_MM.clamp(max + ABOUT_MM));
            notes.taken(Default.LENGTH_ABOUT, min, max);
        }
        return new Ends(min == null ? 0 : min, max == null ? 0 : max);
    }

    /** Usual finished lengths, mm [common practice, rounded]. */
    private static Ends usualLength(Kind kind, Lure lure, boolean twoHanded) {
        return switch (kind.type()) {
            case SURF_SPINNING -> new Ends(3400, 3900);
            case CASTING -> new Ends(1900, 2150);
            case SPINNING -> {
                if (twoHanded) {
                    yield new Ends(2550, 2850);
                }
                if (kind.from() == FishedFrom.KAYAK) {
                    yield new Ends(1950, 2150);
                }
                yield lure.heaviestG() <= 7 ? new Ends(1700, 1950) : new Ends(2050, 2300);
            }
        };
    }

    @Nullable
    Double packed() {
        if (root.isNull("packedMaxMm")) {
            return null;
        }
        Double packed = root.quantity("packedMax", Quantity.LENGTH, Bounds.PACKED_MM);
        if (packed == null) {
            notes.taken(Default.PACKED);
        }
        return packed;
    }

    Pieces pieces(RodType type, @Nullable Double packed) {
        JsonNode value = root.take("pieces");
        Integer min = null;
        Integer max = null;
        if (value.isNumber()) {
            min = root.whole("pieces", 1, MOST_PIECES);
            max = min;
        } else if (!value.isMissingNode() && !value.isObject()) {
            root.fault(
                    "pieces",
                    "a whole number, 1 to " + MOST_PIECES,
                    "Maybe write it without quotes.",
                    Notation.RANGE,
                    Notation.HINT);
        }
        // An empty object is read where there is none, so that its keys are known.
        Fields ends = value.isObject() ? root.object("pieces") : root.none("pieces");
        Integer least = ends.whole("min", 1, MOST_PIECES);
        Integer most = ends.whole("max", 1, MOST_PIECES);
        ends.finish();
        min = min == null ? least : min;
        max = max == null ? most : max;
        if (min != null && max != null) {
            if (min > max) {
                ends.fault("min", "at most max, " + max, "Maybe min and max are swapped.");
            }
            return new Pieces(min, max);
        }
        int usualMost = packed != null ? 6 : type == RodType.SURF_SPINNING ? 3 : 2;
        int from = min == null ? 1 : min;
        int to = max == null ? Math.max(usualMost, from) : max;
        notes.taken(Default.PIECES, from, to);
        return new Pieces(from, to);
    }
}
