package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Knot;
import withy.brief.Brief.Leader;
import withy.brief.Brief.LineKind;
import withy.brief.Brief.Lure;
import withy.brief.Brief.MainLine;
import withy.brief.BriefFault.Notation;
import withy.catalog.RodType;
import withy.units.LineGauge;
import withy.units.UnitsFault;

/** Reads main line, leader and drag. */
final class LineReader {
    /** Usual distance from lure to tip when casting, mm; a longer leader takes its knot through the rings [ASSUMED]. */
    private static final double HUNG_FROM_TIP_MM = 600;

    private static final double LB_KG = 0.453_592_37;

    private final Fields root;
    private final Notes notes;

    LineReader(Fields root) {
        this.root = root;
        this.notes = root.notes();
    }

    MainLine line(Lure lure) {
        Fields fields = root.object("line");
        LineKind kind = fields.choice("kind", LineKind.class);
        if (kind == null) {
            kind = LineKind.BRAID;
            notes.taken(Default.LINE_KIND, Words.spoken(kind));
        }
        LineGauge gauge = gauge(fields, kind);
        Double diameter = fields.quantity("diameter", Quantity.LENGTH, Bounds.LINE_MM);
        Double strength = fields.quantity("strength", Quantity.STRENGTH, Bounds.STRENGTH_KG);
        fields.finish();
        if (gauge == null && diameter == null && strength == null) {
            gauge = usualGauge(kind, lure.usualG());
        }
        Double number = number(gauge);
        if (diameter == null && gauge != null) {
            diameter = Quantity.LENGTH.round(gauge.standardDiameterMm());
        }
        if (strength == null) {
            strength = number != null
                    ? LineStrength.ofNumberKg(kind, number)
                    : LineStrength.ofDiameterKg(kind, diameter == null ? Bounds.LINE_MM.min() : diameter);
            notes.taken(Default.LINE_STRENGTH, about(strength), pounds(LineStrength.ofNumberOneKg(kind)));
        }
        if (diameter == null) {
            diameter = LineStrength.diameterMm(kind, strength, LineStrength.ofNumberOneKg(kind));
            notes.taken(Default.LINE_DIAMETER, diameter, pounds(LineStrength.ofNumberOneKg(kind)));
        }
        return new MainLine(kind, diameter, strength, kind == LineKind.BRAID ? number : null);
    }

    /** A gauge as text ("PE 0.8", "no. 2", "0.13 mm") or as a bare number of the kind's scale. */
    private static @Nullable LineGauge gauge(Fields fields, LineKind kind) {
        JsonNode value = fields.take("gauge");
        if (value.isMissingNode()) {
            return null;
        }
        String allowed =
                "a gauge such as \"PE 0.8\", \"no. 2\", \"5X\" or \"0.13 mm\", " + Bounds.LINE_MM.text("mm") + " thick";
        if (!value.isTextual() && !value.isNumber()) {
            fields.fault("gauge", allowed, "Maybe put it in quotes.", Notation.HINT);
            return null;
        }
        try {
            LineGauge gauge = LineGauge.read(
                    value.asText(), kind == LineKind.BRAID ? LineGauge.Kind.BRAID : LineGauge.Kind.NYLON);
            if (gauge instanceof LineGauge.Braid && kind != LineKind.BRAID) {
                fields.fault("gauge", "a gauge of " + Words.of(kind), "Maybe the line is a braid.");
                return null;
            }
            if (!Bounds.LINE_MM.holds(gauge.standardDiameterMm())) {
                fields.fault("gauge", allowed, "Maybe the strength was given where the gauge belongs.");
                return null;
            }
            return gauge;
        } catch (UnitsFault e) {
            fields.fault("gauge", allowed, e.maybe());
            return null;
        }
    }

    private static @Nullable Double number(@Nullable LineGauge gauge) {
        if (gauge instanceof LineGauge.Braid braid) {
            return braid.number();
        }
        return gauge instanceof LineGauge.Nylon nylon ? Double.valueOf(nylon.number()) : null;
    }

    /** ASSUMED, along the trade table's power words: usual lure against braid numbers; nylon of about equal strength. */
    private LineGauge usualGauge(LineKind kind, double lureG) {
        double braid = lureG <= 4
                ? 0.4
                : lureG <= 10 ? 0.6 : lureG <= 20 ? 0.8 : lureG <= 35 ? 1.2 : lureG <= 60 ? 1.5 : lureG <= 90 ? 2 : 3;
        if (kind == LineKind.BRAID) {
            notes.taken(Default.LINE_GAUGE, braid);
            return new LineGauge.Braid(braid);
        }
        double nylon = braid * LineStrength.BRAID_KG / LineStrength.SOLID_KG / 2;
        double rounded = Math.max(1, Math.round(nylon * 2) / 2.0);
        notes.taken(Default.LINE_NYLON, rounded);
        return new LineGauge.Nylon(rounded);
    }

    @Nullable
    Leader leader(MainLine line, Lure lure, RodType type) {
        if (!root.has("leader")) {
            notes.taken(Default.LEADER);
        }
        // An empty object is read even then, so that every key of a leader is known.
        Fields fields = root.isNull("leader") ? root.none("leader") : root.object("leader");
        Double strength = fields.quantity("strength", Quantity.STRENGTH, Bounds.STRENGTH_KG);
        LineGauge gauge = gauge(fields, LineKind.FLUOROCARBON);
        Double diameter = fields.quantity("diameter", Quantity.LENGTH, Bounds.LINE_MM);
        Double length = fields.quantity("length", Quantity.LENGTH, Bounds.LEADER_MM);
        Knot knot = fields.choice("knot", Knot.class);
        Boolean through = fields.flag("castThroughRings");
        fields.finish();
        if (!fields.present()) {
            return null;
        }
        if (diameter == null && gauge != null) {
            diameter = Quantity.LENGTH.round(gauge.standardDiameterMm());
        }
        if (strength == null) {
            strength = leaderStrength(line, lure, type, diameter, number(gauge));
        }
        if (diameter == null) {
            diameter = LineStrength.diameterMm(LineKind.FLUOROCARBON, strength, LineStrength.SOLID_KG);
            notes.taken(Default.LEADER_DIAMETER, diameter);
        }
        if (knot == null) {
            knot = line.kind() == LineKind.BRAID ? Knot.FG : Knot.DOUBLE_UNI;
            notes.taken(Default.KNOT, Words.spoken(knot));
        }
        boolean cast = through == null ? castThrough(length) : through;
        return new Leader(strength, diameter, knot, cast);
    }

    private boolean castThrough(@Nullable Double length) {
        if (length == null) {
            notes.taken(Default.CAST_THROUGH);
            return true;
        }
        boolean through = length > HUNG_FROM_TIP_MM;
        notes.taken(Default.CAST_BY_LENGTH, through ? "it is" : "it is not", length);
        return through;
    }

    private double leaderStrength(
            MainLine line, Lure lure, RodType type, @Nullable Double diameter, @Nullable Double number) {
        double strength;
        String why;
        if (number != null || diameter != null) {
            strength = number != null
                    ? LineStrength.ofNumberKg(LineKind.FLUOROCARBON, number)
                    : LineStrength.ofDiameterKg(LineKind.FLUOROCARBON, diameter == null ? 0 : diameter);
            why = "at 4 lb for each line number";
        } else if (type == RodType.SURF_SPINNING) {
            strength = lure.heaviestG() / 28.349_523_125 * 10 * LB_KG;
            why = "10 lb for each ounce of the heaviest lure";
        } else {
            strength = line.strengthKg() * 0.9;
            why = "0.9 of the main line, so that the leader breaks first";
        }
        double rounded = Quantity.STRENGTH.round(strength);
        notes.taken(Default.LEADER_STRENGTH, about(rounded), why);
        return rounded;
    }

    double drag(MainLine line, @Nullable Leader leader) {
        Double drag = root.quantity("drag", Quantity.STRENGTH, Bounds.DRAG_KG);
        if (drag == null) {
            double weakest = leader == null ? line.strengthKg() : Math.min(line.strengthKg(), leader.strengthKg());
            drag = Bounds.DRAG_KG.clamp(Math.max(0.1, Math.round(weakest * 2.5) / 10.0));
            notes.taken(Default.DRAG, drag);
        }
        return drag;
    }

    /** As it would stand on a label: "7.3 kg (16 lb)". */
    private static String about(double kg) {
        return Bounds.plain(Math.round(kg * 10) / 10.0) + " kg (" + pounds(kg) + " lb)";
    }

    /** To the tenth. */
    private static String pounds(double kg) {
        return Bounds.plain(Math.round(kg / LB_KG * 10) / 10.0);
    }
}
