package withy.oracle;

import withy.catalog.Blank;

/** How a blank's mass lies along it: as a power of its diameter, so that it balances where it was measured to. */
final class SecondTaper {
    private SecondTaper() {}

    /**
     * The power, from 0 to 4; 1 where no balance point was measured, or none of these comes to it.
     *
     * @param lumps mass of all ferrules, g
     */
    static double exponent(SecondRod rod, double lumps) {
        Double measured = rod.blank.balanceMm();
        double low = 0;
        double high = 4;
        if (measured == null || (balance(rod, low, lumps) - measured) * (balance(rod, high, lumps) - measured) > 0) {
            return 1;
        }
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            boolean beyond = (balance(rod, middle, lumps) > measured) == (balance(rod, 0, lumps) > measured);
            low = beyond ? middle : low;
            high = beyond ? high : middle;
        }
        return low;
    }

    private static double balance(SecondRod rod, double n, double lumps) {
        double tube = SecondSums.grams(rod.blank) - lumps;
        double first = integral(rod.blank, n, 1) / integral(rod.blank, n, 0) * tube;
        for (double[] joint : rod.joints) {
            first += lumps > 0 ? rod.blank.ferruleExtraG() * (joint[0] + joint[1]) / 2 : 0;
        }
        return first / SecondSums.grams(rod.blank);
    }

    /** ∫ d(x)^n · x^k over the blank, a stretch between stations at a time. */
    static double integral(Blank blank, double n, int k) {
        double sum = 0;
        var stations = blank.stations();
        for (int i = 1; i < stations.size(); i++) {
            double x0 = stations.get(i - 1).xMm();
            double x1 = stations.get(i).xMm();
            double d0 = stations.get(i - 1).odMm();
            double d1 = stations.get(i).odMm();
            if (x1 > x0) {
                sum += SecondRod.simpson(
                        x0, x1, x -> Math.pow(d0 + (d1 - d0) * (x - x0) / (x1 - x0), n) * Math.pow(x, k));
            }
        }
        return sum;
    }
}
