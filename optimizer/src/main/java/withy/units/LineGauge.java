package withy.units;

import java.util.Locale;

/** How thick a line is, as its label says it. */
public sealed interface LineGauge {

    /** Standard diameter in mm; for a braid number that of the fibres packed solid. */
    double standardDiameterMm();

    /** Diameter over all in mm, as a ring sees it. */
    default double overallDiameterMm() {
        return standardDiameterMm();
    }

    /** The label, "PE 0.8". */
    String label();

    /** A number of the braid scale ("PE 0.8", "#0.8"). */
    record Braid(double number) implements LineGauge {
        /** Over-all diameter of a real braid against its packed-solid standard diameter; house rule from memory, 1.15–1.29. */
        public static final double OVERALL_FACTOR = 1.2;

        public Braid {
            refuseUnlessPositive(number, "braid number");
        }

        @Override
        public double standardDiameterMm() {
            return LineStandards.braidDiameterMm(number);
        }

        @Override
        public double overallDiameterMm() {
            return standardDiameterMm() * OVERALL_FACTOR;
        }

        @Override
        public String label() {
            return "PE " + plain(number);
        }
    }

    /** A number of the nylon and fluorocarbon scale ("no. 2"). */
    record Nylon(double number) implements LineGauge {
        public Nylon {
            refuseUnlessPositive(number, "nylon number");
        }

        @Override
        public double standardDiameterMm() {
            return LineStandards.nylonDiameterMm(number);
        }

        @Override
        public String label() {
            return "no. " + plain(number);
        }
    }

    /** A tippet rating ("5X"), 0 to 8. */
    record Tippet(int rating) implements LineGauge {
        public Tippet {
            if (rating < 0 || rating > LineStandards.FINEST_TIPPET) {
                throw new IllegalArgumentException(
                        "An X rating must lie in 0–" + LineStandards.FINEST_TIPPET + ", not " + rating);
            }
        }

        @Override
        public double standardDiameterMm() {
            return LineStandards.tippetDiameterMm(rating);
        }

        @Override
        public String label() {
            return rating + "X";
        }
    }

    /** A stated diameter. */
    record Diameter(Length diameter) implements LineGauge {
        public Diameter {
            refuseUnlessPositive(diameter.mm(), "line diameter in mm");
        }

        @Override
        public double standardDiameterMm() {
            return diameter.mm();
        }

        @Override
        public String label() {
            return plain(diameter.mm()) + " mm";
        }
    }

    /** What a bare number or "#" means on the line at hand. */
    enum Kind {
        BRAID,
        NYLON
    }

    /**
     * Reads "PE 0.8", "#0.8", "no. 2", "5X", "0.13 mm" or a bare number.
     *
     * @param kind what "#" and a bare number count: braid numbers or nylon numbers
     */
    static LineGauge read(String text, Kind kind) {
        TextCursor cursor = new TextCursor(text, DecimalMark.EITHER);
        int from = cursor.position();
        String prefix = cursor.word();
        int numberAt = cursor.position();
        double value = cursor.number();
        int unitAt = cursor.position();
        String suffix = cursor.word();
        Quantities.refuseRest(cursor);
        if (!suffix.isEmpty() && !prefix.isEmpty()) {
            throw cursor.fault(unitAt, "a number alone after " + prefix, "Maybe drop the unit or the prefix.");
        }
        if (value <= 0.0) {
            throw cursor.fault(numberAt, "a gauge above 0", "Maybe a digit is missing.");
        }
        return suffix.isEmpty()
                ? byPrefix(cursor, from, prefix, value, kind)
                : bySuffix(cursor, new Place(numberAt, unitAt), suffix, value);
    }

    private static LineGauge byPrefix(TextCursor cursor, int from, String prefix, double value, Kind kind) {
        return switch (prefix) {
            case "pe" -> new Braid(value);
            case "no.", "no", "#", "" -> kind == Kind.BRAID ? new Braid(value) : new Nylon(value);
            default ->
                throw cursor.fault(
                        from, "PE, #, no. or a number", "Maybe the strength was given where the gauge belongs.");
        };
    }

    private static LineGauge bySuffix(TextCursor cursor, Place place, String suffix, double value) {
        return switch (suffix) {
            case "x" -> {
                if (value != Math.rint(value) || value > LineStandards.FINEST_TIPPET) {
                    throw cursor.fault(
                            place.number(),
                            "a whole X rating from 0 to " + LineStandards.FINEST_TIPPET,
                            "Maybe give the diameter.");
                }
                yield new Tippet((int) value);
            }
            case "mm" -> new Diameter(new Length(value));
            case "in", "in.", "\"" -> new Diameter(Length.of(value, LengthUnit.INCH));
            default ->
                throw cursor.fault(
                        place.unit(), "X, mm or in", "Maybe the strength was given where the gauge belongs.");
        };
    }

    /** Where the number and the unit of a gauge start in its text. */
    record Place(int number, int unit) {}

    private static String plain(double value) {
        String shown = String.format(Locale.ROOT, "%.3f", value);
        return shown.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    private static void refuseUnlessPositive(double value, String what) {
        if (!(value > 0.0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException("A " + what + " must be above 0 and finite, not " + value);
        }
    }
}
