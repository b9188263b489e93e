package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.app.MachineSheet.Diameter;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Ring;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Words of the drawing of a whole rod stand clear of what is drawn. */
class RodPictureTest {
    private static Outline rod(double ringAtMm) {
        return rod(ringAtMm, 200, 250, 300);
    }

    private static Outline rod(double ringAtMm, double footMm, double balanceMm, double bareMm) {
        return new Outline(
                0,
                600,
                150,
                150,
                footMm,
                balanceMm,
                bareMm,
                false,
                List.of(new Diameter(0, 10), new Diameter(600, 5)),
                List.of(),
                List.of(),
                List.of(new Ring("guide-1", "A guide", ringAtMm, 90, 20, 15, 2)));
    }

    /** The words of the bare balance, and at which end they begin. */
    private static String anchor(double ringAtMm) {
        String svg = RodPicture.of(rod(ringAtMm), new QuantityText(UnitSystem.METRIC))
                .svg();
        Matcher words = Pattern.compile("<text[^>]*>balances bare").matcher(svg);
        assertTrue(words.find(), svg);
        return words.group().contains("end") ? "left" : "right";
    }

    @Test
    void aGuideBesideABalancePointSendsItsWordsToTheOtherSide() {
        assertEquals("right", anchor(500));
        assertEquals("left", anchor(340));
        assertEquals("right", anchor(260));
    }

    @Test
    void strokesOfTheRulerStandBelowIt() {
        String svg =
                RodPicture.of(rod(500), new QuantityText(UnitSystem.METRIC)).svg();
        Matcher line = Pattern.compile("<line x1=\"([0-9.]+)\" y1=\"([0-9.]+)\" x2=\"([0-9.]+)\" y2=\"([0-9.]+)\"")
                .matcher(svg);
        double ruler = 0;
        while (line.find()) {
            if (line.group(2).equals(line.group(4))) {
                ruler = Double.parseDouble(line.group(2));
            } else if (ruler > 0 && line.group(1).equals(line.group(3)) && Double.parseDouble(line.group(4)) > ruler) {
                assertEquals(ruler, Double.parseDouble(line.group(2)), "a stroke through the words above the ruler");
            }
        }
        assertFalse(ruler == 0, svg);
    }

    @Test
    void noMarkGoesThroughTheWordsOfAnother() {
        double[][] places = {
            {250, 340, 510}, {250, 290, 300}, {100, 90, 80}, {560, 570, 580}, {300, 560, 590}, {250, 590, 300}
        };
        for (double[] at : places) {
            String svg = RodPicture.of(rod(30, at[0], at[1], at[2]), new QuantityText(UnitSystem.METRIC))
                    .svg();
            assertEquals(List.of(), struck(svg), svg);
        }
    }

    /** Words that an upright coloured line goes through, by a width of letters that is less than it will be. */
    private static List<String> struck(String svg) {
        List<double[]> lines = new ArrayList<>();
        Matcher line = Pattern.compile(
                        "<line x1=\"([0-9.]+)\" y1=\"([0-9.]+)\" x2=\"[0-9.]+\" y2=\"([0-9.]+)\" stroke=\""
                                + Svg.ACCENT)
                .matcher(svg);
        while (line.find()) {
            lines.add(new double[] {
                Double.parseDouble(line.group(1)), Double.parseDouble(line.group(2)), Double.parseDouble(line.group(3))
            });
        }
        assertEquals(3, lines.size(), svg);
        List<String> struck = new ArrayList<>();
        Matcher text = Pattern.compile("<text x=\"([0-9.]+)\" y=\"([0-9.]+)\" text-anchor=\"(start|end)\" fill=\""
                        + Svg.ACCENT + "\">([^<]+)<")
                .matcher(svg);
        while (text.find()) {
            double x = Double.parseDouble(text.group(1));
            double middle = Double.parseDouble(text.group(2)) - Svg.LETTERS / 3;
            double reach = Svg.LETTERS / 2 * text.group(4).length();
            double from = text.group(3).equals("end") ? x - reach : x;
            for (double[] one : lines) {
                if (one[0] > from && one[0] < from + reach && one[1] < middle && one[2] > middle) {
                    struck.add(text.group(4) + " at " + one[0]);
                }
            }
        }
        return struck;
    }
}
