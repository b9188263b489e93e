package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class AtSpacesTest {
    private static String broken(String words) {
        AtSpaces breaks = new AtSpaces();
        breaks.setText(words);
        StringBuilder lines = new StringBuilder();
        int from = 0;
        for (int at = breaks.next(); at >= 0; at = breaks.next()) {
            lines.append(words, from, at).append('|');
            from = at;
        }
        return lines + words.substring(from);
    }

    @Test
    void aSizeIsNeverTornApart() {
        assertEquals("Saltglass |270 |Tip |6-4.5/64", broken("Saltglass 270 Tip 6-4.5/64"));
        assertEquals("Guides |4–7 |(20-40)", broken("Guides 4–7 (20-40)"));
        assertEquals("tip-|top |12\u00a0mm", broken("tip-top 12\u00a0mm"));
        assertEquals("fellcork-|saltglass-270-|s4p5#2", broken("fellcork-saltglass-270-s4p5#2"));
        assertEquals("", broken(""));
    }
}
