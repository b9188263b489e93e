package withy.brief;

import org.jspecify.annotations.Nullable;
import withy.catalog.Lab;

/**
 * A screen colour {@code #rrggbb} as CIE L*a*b*.
 *
 * <p>Formula: IEC 61966-2-1 (sRGB, D65) to XYZ, then ISO/CIE 11664-4 with the white that the same matrix gives for r = g = b = 1; constants
 * from memory. Rounded to 0.01.
 */
final class ScreenColour {
    private static final double[][] XYZ_OF_RGB = {
        {0.4124, 0.3576, 0.1805},
        {0.2126, 0.7152, 0.0722},
        {0.0193, 0.1192, 0.9505}
    };

    private ScreenColour() {}

    /** The colour, or null where the text is none. */
    static @Nullable Lab lab(String text) {
        if (!text.matches("#[0-9a-fA-F]{6}")) {
            return null;
        }
        double[] rgb = new double[3];
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(text.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            rgb[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }
        double[] f = new double[3];
        for (int i = 0; i < 3; i++) {
            double[] row = XYZ_OF_RGB[i];
            f[i] = root((row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]) / (row[0] + row[1] + row[2]));
        }
        return new Lab(
                hundredth(Math.max(0, Math.min(100, 116 * f[1] - 16))),
                hundredth(500 * (f[0] - f[1])),
                hundredth(200 * (f[1] - f[2])));
    }

    private static double root(double t) {
        double edge = 6.0 / 29;
        return t > edge * edge * edge ? Math.cbrt(t) : t / (3 * edge * edge) + 4.0 / 29;
    }

    private static double hundredth(double value) {
        return Math.round(value * 100) / 100.0 + 0.0;
    }
}
