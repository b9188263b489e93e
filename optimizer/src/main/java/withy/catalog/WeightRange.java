package withy.catalog;

/**
 * Bounds of one piece's weight, g. Beyond {@code least} and {@code most} a weight is refused as impossible; outside {@code usualLeast} to
 * {@code usualMost} it is readable but asked about. Common practice, widened by the project: no published source.
 */
record WeightRange(double least, double most, double usualLeast, double usualMost) {
    static WeightRange of(PartKind kind) {
        return switch (kind) {
            case BLANK -> new WeightRange(3, 2000, 12, 700);
            case REEL_SEAT -> new WeightRange(1, 180, 8, 110);
            case HOOD -> new WeightRange(0.2, 60, 1, 25);
            case ARBOR -> new WeightRange(0.05, 150, 0.2, 40);
            case GRIP -> new WeightRange(0.5, 400, 1.5, 250);
            case BUTT_CAP -> new WeightRange(0.1, 150, 0.5, 60);
            case CHECK -> new WeightRange(0.02, 40, 0.05, 12);
            case GUIDE -> new WeightRange(0.02, 40, 0.04, 20);
            case TIP_TOP -> new WeightRange(0.02, 25, 0.05, 8);
            case KEEPER -> new WeightRange(0.02, 10, 0.05, 2);
            case THREAD -> new WeightRange(0.2, 1000, 0.5, 200);
            case FINISH, ADHESIVE -> new WeightRange(1, 5000, 10, 1200);
            case DECAL -> new WeightRange(0, 10, 0, 1);
        };
    }
}
