package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.regex.MatchResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnbrokenTest {
    /** Sentences as they are wrapped; an underscore is a space that no line breaks at. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "97.4_g ±_2.1_g, of them 60_g by weight",
                "It balances 12_mm ahead of the reel.",
                "Lures from 1/8_oz to_1_1/4_oz, line 10_lb",
                "Guide_4 is Tarn R_16 with ring_5.5, 2 feet of_14_mm",
                "It costs 214.50_EUR, 3_% less than build_2",
                "Wrap 2_×_18 turns, about 9_min; 4_pieces in the bag",
                "The reel foot is at_320_mm (12_5/8_in) from the butt",
                "Strandflechter 2210 with 2 parts, the twelfth",
                "1_H20, 2_D8, 3_D5.5 and No.197_16",
                "half a rod"
            })
    void aNumberStaysWithWhatItCounts(String wrapped) {
        String words = wrapped.replace('_', ' ');
        assertEquals(wrapped, Unbroken.of(words).replace(Unbroken.JOIN, '_'));
        assertEquals(words, Unbroken.plain(Unbroken.of(words)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Skerry [205-1] No.124",
                "Tip [6-4.5/64]",
                "[4–7] S4.5",
                "guides [4-7], build 2",
                "well-made 12 g"
            })
    void aSizeWithASignInsideIsWhole(String told) {
        String words = told.replaceAll("[\\[\\]]", "");
        String found = String.join(
                " ", Unbroken.sizes(words).stream().map(MatchResult::group).toList());
        assertEquals(told.replaceAll(".*\\[|\\].*|^[^\\[]*$", ""), found.replace(",", ""));
    }

    @Test
    void aTerminalIsWrappedSoAndHasPlainSpaces() {
        String lines = new Page()
                .row(new Page.Column[] {new Page.Column(14, false)}, "Weighing 97.4 g now")
                .toString();
        assertEquals("Weighing\n97.4 g now\n", lines);
        String narrow = new Page()
                .row(new Page.Column[] {new Page.Column(5, false)}, "of 12345 g")
                .toString();
        assertEquals("of\n12345\ng\n", narrow);
    }
}
