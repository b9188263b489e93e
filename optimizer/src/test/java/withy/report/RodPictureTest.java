package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
        return new Outline(
                0,
                600,
                150,
                150,
                200,
                250,
                300,
                false,
                List.of(new Diameter(0, 10), new Diameter(600, 5)),
                List.of(),
                List.of(),
                List.of(new Ring("guide-1", "A guide", ringAtMm, 45, 20, 15, 2)));
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
}
