package withy.brief;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief.FishedFrom;
import withy.brief.Brief.Lure;
import withy.brief.FrameReader.Ends;
import withy.brief.FrameReader.Kind;
import withy.catalog.RodType;

/**
 * Reads hand and reach. Reach follows the body where forearm or hand size is told: 0.65–0.80 × forearm-to-grip length for one hand, 1.0–1.25 ×
 * for two [common practice]; else the trade table by rod type.
 */
final class BodyReader {
    private static final double ABOUT_MM = 20;
    private static final double ONE_ENDED_MM = 40;

    private final Fields root;
    private final Notes notes;

    BodyReader(Fields root) {
        this.root = root;
        this.notes = root.notes();
    }

    /**
     * Hand sizes. Hand breadth and forearm-to-grip length in mm are medians of ANSUR II (2012), women for small and men for large, their mean for
     * medium; a child's are ASSUMED.
     */
    enum HandSize {
        CHILD(65, 225, "a child's hand, assumed"),
        SMALL(78, 316, "median of women, ANSUR II 2012"),
        MEDIUM(83, 332, "mean of the medians of women and men, ANSUR II 2012"),
        LARGE(88, 348, "median of men, ANSUR II 2012");

        private final double palmMm;
        private final double forearmMm;
        private final String source;

        HandSize(double palmMm, double forearmMm, String source) {
            this.palmMm = palmMm;
            this.forearmMm = forearmMm;
            this.source = source;
        }
    }

    /**
     * The hand as read.
     *
     * @param size size told, or null
     * @param palmMm palm breadth, mm
     * @param forearmMm forearm-to-grip length told, mm, or null
     */
    record Hand(
            @Nullable HandSize size,
            double palmMm,
            @Nullable Double forearmMm) {}

    Hand hand() {
        Fields fields = root.object("hand");
        HandSize size = fields.choice("size", HandSize.class);
        Double palm = fields.quantity("palm", Quantity.LENGTH, Bounds.PALM_MM);
        Double forearm = fields.quantity("forearm", Quantity.LENGTH, Bounds.FOREARM_MM);
        fields.finish();
        if (palm == null) {
            HandSize from = size == null ? HandSize.MEDIUM : size;
            palm = from.palmMm;
            notes.taken(Default.PALM_BY_SIZE, palm, from.source);
        }
        return new Hand(size, palm, forearm);
    }

    Ends reach(Hand hand, Kind kind, Lure lure, boolean twoHanded) {
        Span told = root.span("reach", Quantity.LENGTH, Bounds.REACH_MM);
        Double min = told.min();
        Double max = told.max();
        if (min != null && max != null) {
            if (told.single()) {
                min = Quantity.LENGTH.round(Bounds.REACH_MM.clamp(min - ABOUT_MM));
                max = Quantity.LENGTH.round(Bounds.REACH_MM.clamp(max + ABOUT_MM));
                notes.taken(Default.REACH_ABOUT, min, max);
            }
            return new Ends(min, max);
        }
        if (min != null) {
            double most = Quantity.LENGTH.round(Bounds.REACH_MM.clamp(min + ONE_ENDED_MM));
            notes.taken(Default.REACH_MAX, most);
            return new Ends(min, most);
        }
        if (max != null) {
            double least = Quantity.LENGTH.round(Bounds.REACH_MM.clamp(max - ONE_ENDED_MM));
            notes.taken(Default.REACH_MIN, least);
            return new Ends(least, max);
        }
        boolean body = hand.forearmMm() != null || hand.size() != null;
        return body && kind.type() != RodType.SURF_SPINNING ? byBody(hand, twoHanded) : byType(kind, lure, twoHanded);
    }

    private Ends byBody(Hand hand, boolean twoHanded) {
        HandSize size = hand.size() == null ? HandSize.MEDIUM : hand.size();
        double forearm = hand.forearmMm() == null ? size.forearmMm : hand.forearmMm();
        Ends reach = twoHanded
                ? new Ends(Math.round(forearm), Math.round(1.25 * forearm))
                : new Ends(Math.round(0.65 * forearm), Math.round(0.80 * forearm));
        notes.taken(
                Default.REACH_BY_BODY,
                reach.min(),
                reach.max(),
                twoHanded ? "1.0 to 1.25" : "0.65 to 0.80",
                forearm,
                hand.forearmMm() == null ? size.source : "told");
        return reach;
    }

    private Ends byType(Kind kind, Lure lure, boolean twoHanded) {
        ReachTable row = ReachTable.of(kind.type(), kind.from() == FishedFrom.KAYAK, lure.heaviestG(), twoHanded);
        notes.taken(Default.REACH_BY_TYPE, row.minMm(), row.maxMm(), row.word());
        return new Ends(row.minMm(), row.maxMm());
    }
}
