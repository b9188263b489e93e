package withy.rules;

/** Nominal ring sizes of the trade, mm (from memory); what "one size larger" counts. */
final class RingSizes {
    private static final double[] SIZES = {3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 10, 12, 16, 20, 25, 30, 40, 50};

    private RingSizes() {}

    /** How many sizes {@code larger} lies above {@code smaller}; 0 where it does not. */
    static int between(double smaller, double larger) {
        long from = Unit.RING_SIZE.quantise(smaller);
        long to = Unit.RING_SIZE.quantise(larger);
        int count = 0;
        for (double size : SIZES) {
            long here = Unit.RING_SIZE.quantise(size);
            if (here > from && here <= to) {
                count++;
            }
        }
        return count;
    }
}
