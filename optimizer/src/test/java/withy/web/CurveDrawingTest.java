package withy.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import withy.app.BuildFile;
import withy.app.BuildSheet.LayoutLine;
import withy.app.LighterAnswer.PointLine;
import withy.app.Reasons.BuildLine;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The curve of what a gram costs: a trifle looks like one, what costs much still fills the sheet. */
class CurveDrawingTest {
    private static final double STEP_MINOR = 2_000;
    private static final double SHEET = 270;

    private static PointLine point(double weightG, long priceMinor) {
        BuildFile file = new BuildFile(1, new LayoutLine(240, "split", 7), List.of());
        return new PointLine(weightG, new BuildLine("a rod", weightG, priceMinor, 90, true, 0, file), List.of(), "");
    }

    private static String drawn(PointLine... points) {
        QuantityText units = new QuantityText(UnitSystem.METRIC);
        return CurveDrawing.of(
                List.of(points), STEP_MINOR, units, minor -> String.format(Locale.ROOT, "%.2f EUR", minor / 100.0));
    }

    /** How far the second point stands above the first, as a share of the sheet's height. */
    private static double rise(String svg) {
        Matcher circle = Pattern.compile("cy=\"([0-9.]+)\"").matcher(svg);
        assertTrue(circle.find(), svg);
        double first = Double.parseDouble(circle.group(1));
        assertTrue(circle.find(), svg);
        return (first - Double.parseDouble(circle.group(1))) / SHEET;
    }

    private static Set<String> prices(String svg) {
        return Pattern.compile(">([0-9]+\\.[0-9]{2})(?: EUR)?<")
                .matcher(svg)
                .results()
                .map(price -> price.group(1))
                .collect(Collectors.toSet());
    }

    @Test
    void fortyCentsAreNearlyLevel() {
        String svg = drawn(point(95.7, 66_877), point(95.6, 66_917));
        assertEquals(0.005, rise(svg), 0.001);
        assertEquals(Set.of("668.77"), prices(svg), "the dearer stands too near to be told beside it");
    }

    @Test
    void aStepThatIsNoticedIsAQuarterOfTheSheet() {
        String svg = drawn(point(95.7, 66_877), point(92.0, 68_877));
        assertEquals(0.25, rise(svg), 0.001);
        assertEquals(Set.of("668.77", "688.77"), prices(svg), "prices of rods only, not where the scale ends");
    }

    @Test
    void whatCostsMuchFillsTheSheet() {
        String svg = drawn(point(95.7, 60_000), point(80.0, 90_000));
        assertEquals(1, rise(svg), 0.001);
        assertEquals(Set.of("600.00", "900.00"), prices(svg));
    }

    @Test
    void theSamePriceIsLevel() {
        assertEquals(0, rise(drawn(point(95.7, 60_000), point(80.0, 60_000))), 1e-9);
    }

    @Test
    void theNumberOfACheapRodBetweenDearerOnesStandsBelowTheLine() {
        String svg = drawn(point(430, 80_000), point(404, 76_000), point(402, 90_000));
        Matcher number = Pattern.compile("cy=\"([0-9.]+)\" r=\"6.0\"/><text [^>]* y=\"([0-9.]+)\"")
                .matcher(svg);
        boolean[] below = new boolean[3];
        for (int i = 0; i < 3; i++) {
            assertTrue(number.find(), svg);
            below[i] = Double.parseDouble(number.group(2)) > Double.parseDouble(number.group(1));
        }
        assertArrayEquals(new boolean[] {false, true, false}, below);
    }
}
