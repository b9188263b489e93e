package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.rules.Sentences;

/** A sentence after the name of its part, as an ear expects it. */
class PhrasesTest {
    @Test
    void listsAsInSpeech() {
        assertEquals("a", Phrases.list(List.of("a")));
        assertEquals("a and b", Phrases.list(List.of("a", "b")));
        assertEquals("a, b and c", Phrases.list(List.of("a", "b", "c")));
        assertEquals("a, from 3 m, and b, 4 m in all", Phrases.list(List.of("a, from 3 m", "b, 4 m in all")));
        assertEquals("a and b, 4 m in all", Phrases.list(List.of("a", "b, 4 m in all")));
    }

    @Test
    void aPartIsNotNamedTwice() {
        assertEquals(
                "it comes in 3 pieces; at most 2 are wished.",
                after("Fen 7", "Fen 7 comes in 3 pieces; at most 2 are wished."));
        assertEquals("its ring is only 3 mm clear.", after("Fen 7", "The ring of Fen 7 is only 3 mm clear."));
        assertEquals(
                "its longest section is 900 mm long.", after("Fen 7", "The longest section of Fen 7 is 900 mm long."));
        assertEquals("its bore, 15 mm, is too narrow.", after("Fen 7", "The bore of Fen 7, 15 mm, is too narrow."));
    }

    /** Of two parts the one that is told of comes first, whichever the rule names first. */
    @Test
    void ofTwoPartsTheOwnComesFirst() {
        String clause = "it is of another material than Reed 3; grips are to be of one.";
        assertEquals(clause, after("Fen 7", "Fen 7 and Reed 3 are of different materials; grips are to be of one."));
        assertEquals(clause, after("Fen 7", "Reed 3 and Fen 7 are of different materials; grips are to be of one."));
        for (String two : List.of("Reed 3 and Fen 7", "Fen 7 and Reed 3")) {
            assertEquals("it differs from Reed 3 in frame finish.", after("Fen 7", two + " differ in frame finish."));
            assertEquals(
                    "its ring differs from that of Reed 3 in material.",
                    after("Fen 7", two + " have rings of different material."));
            assertEquals(
                    "it stands 5 mm too near Reed 3: a split handle shows 30 mm.",
                    after("Fen 7", two + " stand 5 mm too near each other: a split handle shows 30 mm."));
        }
    }

    @Test
    void anotherPartKeepsItsName() {
        assertEquals(
                "the ring of Fen 70 is only 3 mm clear.", after("Fen 7", "The ring of Fen 70 is only 3 mm clear."));
        assertEquals("the reel foot is too long for Fen 70.", after("Fen 7", "The reel foot is too long for Fen 70."));
        assertEquals("the reel foot is too long for it.", after("Fen 7", "The reel foot is too long for Fen 7."));
        assertNull(after("Fen 7", "Fen 70 and Fen 71 are of different materials; grips are to be of one."));
        assertNull(after("Fen 7", "Fen 70 comes in 3 pieces."));
        assertNull(after("Fen 7", "So many guides cannot be spaced evenly on Fen 7."));
    }

    /** Whatever a rule says when it is broken goes on after a colon as in the middle of a sentence; only a name keeps its first letter. */
    @Test
    void afterAColonOnlyNamesAreLarge() {
        Map<String, String> broken = new TreeMap<>(Sentences.messages());
        broken.keySet().removeIf(key -> !key.matches("rule\\..*\\.(fail|unknown)"));
        assertTrue(broken.size() > 60, "" + broken.size());
        broken.forEach((key, words) -> {
            String small = words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
            assertEquals(words.startsWith("{part}") ? words : small, Phrases.clause(words), key);
        });
        assertEquals("Onlyn 7 is too thin.", Phrases.clause("Onlyn 7 is too thin."));
    }

    /** Where the part is not what a clause is about first, "it" stands for the part alone; and nothing is "of it" that could be its own. */
    @Test
    void whatItIsStaysPlain() {
        Pattern it = Pattern.compile("\\bit\\b");
        int told = 0;
        for (Map.Entry<String, String> message : Sentences.messages().entrySet()) {
            if (message.getKey().matches("rule\\..*\\.(fail|unknown)")) {
                String clause = after(
                        "Fen 7",
                        message.getValue()
                                .replace("{part}", "Fen 7")
                                .replace("{other}", "Reed 3")
                                .replaceAll("\\{[a-z]+}", "5"));
                boolean about = clause != null && !clause.matches("its? .*");
                assertFalse(clause != null && clause.contains(" of it"), message::toString);
                assertTrue(!about || it.matcher(clause).results().count() <= 1, message::toString);
                told += about ? 1 : 0;
            }
        }
        assertTrue(told > 10, "" + told);
    }

    private static String after(String name, String sentence) {
        return Phrases.afterName(name, sentence);
    }

    /** Of a line that lies on the blank. */
    @Test
    void aLineThatLiesOnTheBlank() {
        assertEquals(
                "The line lies on the blank behind guide 3: run straight from ring to ring it would cut 1.2 mm into it.",
                Phrases.of("bend.line.touches", "1.2 mm", Phrases.station("guide-3")));
    }
}
