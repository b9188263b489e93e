package withy.app;

import java.util.Locale;
import withy.catalog.Lab;

/**
 * A part's colour as a screen shows it, {@code #rrggbb}: ISO/CIE 11664-4 back to XYZ under D65, then IEC 61966-2-1 (sRGB); constants from
 * memory. What a screen can't show is taken to its edge.
 */
final class ScreenInk {
    private static final double[][] RGB_OF_XYZ = {
        {3.2406, -1.5372, -0.4986},
        {-0.9689, 1.8758, 0.0415},
        {0.0557, -0.2040, 1.0570}
    };
    private static final double[] WHITE = {0.9505, 1.0000, 1.0890};

    private ScreenInk() {}

    static String of(Lab lab) {
        double y = (lab.l() + 16) / 116;
        double[] xyz = {WHITE[0] * cube(y + lab.a() / 500), WHITE[1] * cube(y), WHITE[2] * cube(y - lab.b() / 200)};
        StringBuilder hex = new StringBuilder("#");
        for (double[] row : RGB_OF_XYZ) {
            double linear = row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2];
            double shown = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
            long level = Math.round(255 * Math.max(0, Math.min(1, shown)));
            hex.append(String.format(Locale.ROOT, "%02x", level));
        }
        return hex.toString();
    }

    private static double cube(double f) {
        double edge = 6.0 / 29;
        return f > edge ? f * f * f : 3 * edge * edge * (f - 4.0 / 29);
    }
}
