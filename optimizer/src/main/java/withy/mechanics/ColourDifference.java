package withy.mechanics;

/**
 * CIEDE2000 colour difference of two CIELAB colours, with kL = kC = kH = 1.
 *
 * <p>CIE 142-2001; ISO/CIE 11664-6. Steps and the cases of the hue mean as in G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000
 * color-difference formula: implementation notes, supplementary test data, and mathematical observations", Color Research and
 * Application 30 (2005) 21–30. L* from 0 to 100; valid for small and medium differences, still ordered for large ones.
 */
public final class ColourDifference {
    private static final double TWENTY_FIVE_TO_SEVENTH = 6103515625.0;

    private ColourDifference() {}

    public static double between(double l1, double a1, double b1, double l2, double a2, double b2) {
        double chromaFactor = 1.0 + g((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2.0);
        double ap1 = chromaFactor * a1;
        double ap2 = chromaFactor * a2;
        double c1 = Math.hypot(ap1, b1);
        double c2 = Math.hypot(ap2, b2);
        double h1 = hueDegrees(ap1, b1);
        double h2 = hueDegrees(ap2, b2);
        boolean grey = c1 * c2 == 0.0;

        double deltaHue = grey ? 0.0 : hueStep(h2 - h1);
        double deltaH = 2.0 * Math.sqrt(c1 * c2) * sinDegrees(deltaHue / 2.0);
        double meanHue = grey ? h1 + h2 : meanHue(h1, h2);
        double meanC = (c1 + c2) / 2.0;
        double meanL50 = (l1 + l2) / 2.0 - 50.0;

        double sl = 1.0 + 0.015 * meanL50 * meanL50 / Math.sqrt(20.0 + meanL50 * meanL50);
        double sc = 1.0 + 0.045 * meanC;
        double sh = 1.0 + 0.015 * meanC * hueWeight(meanHue);
        double l = (l2 - l1) / sl;
        double c = (c2 - c1) / sc;
        double h = deltaH / sh;
        return Math.sqrt(Math.max(0.0, l * l + c * c + h * h + rotation(meanHue, meanC) * c * h));
    }

    private static double g(double meanC) {
        return 0.5 * (1.0 - seventhShare(meanC));
    }

    private static double seventhShare(double c) {
        double c7 = Math.pow(c, 7.0);
        return Math.sqrt(c7 / (c7 + TWENTY_FIVE_TO_SEVENTH));
    }

    private static double hueDegrees(double a, double b) {
        if (a == 0.0 && b == 0.0) {
            return 0.0;
        }
        double degrees = Math.toDegrees(Math.atan2(b, a));
        return degrees < 0.0 ? degrees + 360.0 : degrees;
    }

    private static double hueStep(double difference) {
        if (difference > 180.0) {
            return difference - 360.0;
        }
        return difference < -180.0 ? difference + 360.0 : difference;
    }

    private static double meanHue(double h1, double h2) {
        double sum = h1 + h2;
        if (Math.abs(h1 - h2) <= 180.0) {
            return sum / 2.0;
        }
        return sum < 360.0 ? (sum + 360.0) / 2.0 : (sum - 360.0) / 2.0;
    }

    private static double hueWeight(double hue) {
        return 1.0
                - 0.17 * cosDegrees(hue - 30.0)
                + 0.24 * cosDegrees(2.0 * hue)
                + 0.32 * cosDegrees(3.0 * hue + 6.0)
                - 0.20 * cosDegrees(4.0 * hue - 63.0);
    }

    private static double rotation(double hue, double meanC) {
        double offset = (hue - 275.0) / 25.0;
        double deltaTheta = 30.0 * Math.exp(-offset * offset);
        return -2.0 * seventhShare(meanC) * sinDegrees(2.0 * deltaTheta);
    }

    private static double sinDegrees(double degrees) {
        return Math.sin(Math.toRadians(degrees));
    }

    private static double cosDegrees(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }
}
