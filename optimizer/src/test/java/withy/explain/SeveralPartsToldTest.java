package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.app.Explain;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.explain.Finding.Outcome;
import withy.fixture.Changed;
import withy.report.WhyNotText;
import withy.rod.Station;

/** Several parts asked about together are "they", one is "it"; only parts that contend for a place are said to. */
class SeveralPartsToldTest {
    private static final FewBuilds SHOP = FewBuilds.shop().or(Station.TIP_TOP, "tip-loose");
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));
    private static final Currency EUR = Currency.getInstance("EUR");

    /** "It" that is a rod, a difference or what a rule says of its own part stands in these. */
    private static final Pattern OF_ONE = Pattern.compile(
            "\\bit cannot|\\bit can be|\\bwith it\\b|\\bwithout it\\b|\\blet it in|\\bit would win|take it if|against it\\.|\\bit is left out");

    private static final Pattern OF_SEVERAL = Pattern.compile("\\b(?:they|them)\\b");

    private static String told(Brief brief, Set<String> parts) {
        return WhyNotText.of(Explain.whyNot(SHOP.inquiry(brief), new TreeSet<>(parts)), FewBuilds.METRIC, EUR)
                .replaceAll("\n {2,}(?=\\S)", " ")
                .replaceAll("(?<=\\S)\n(?=\\S)", " ");
    }

    private static Outcome outcome(Brief brief, Set<String> parts) {
        return WhyNot.reason(SHOP.inquiry(brief), parts).outcome();
    }

    @Test
    void severalAreThey() {
        Brief salt = Changed.with(BRIEF, "corrosionClass", 4);
        Brief coarse = Changed.with(
                BRIEF,
                "steps",
                Map.of(
                        Objective.WEIGHT, 1e6,
                        Objective.BALANCE, 1e6,
                        Objective.SWING_WEIGHT, 1e6,
                        Objective.PRICE, 1e6,
                        Objective.STYLE, 1e6,
                        Objective.DURABILITY, 1e6));
        Set<Outcome> seen = new TreeSet<>();
        for (Brief brief : List.of(BRIEF, salt, coarse)) {
            for (Set<String> two : List.of(
                    Set.of("seat-light", "blank-light"),
                    Set.of("cap-gilded", "seat-light"),
                    Set.of("tip-loose", "seat-light"),
                    Set.of("cap", "cap-light"))) {
                String text = told(brief, two);
                seen.add(outcome(brief, two));
                assertFalse(OF_ONE.matcher(text).find(), text);
            }
            for (String one : List.of("seat-light", "cap-gilded", "tip-loose")) {
                String text = told(brief, Set.of(one));
                assertFalse(OF_SEVERAL.matcher(text.replace("one of them", "")).find(), text);
            }
        }
        assertTrue(
                seen.containsAll(Set.of(Outcome.LOSES, Outcome.EQUAL, Outcome.DOMINATED, Outcome.BREAKS_RULE)),
                "" + seen);
        tells(BRIEF, "blank-light", ": they can be built in together, but the best rod with them is ");
        tells(BRIEF, "tip-loose", ": they cannot go on a rod of this type together, whatever is wished. ");
        tells(
                salt,
                "blank-light",
                ": they cannot go in together. Tarn seat-light is of corrosion class 3; the water asks");
        String nothing = told(salt, Set.of("cap-gilded", "blank-light"));
        assertTrue(nothing.contains(": nothing can be built here, with them or without them. "), nothing);
        tells(
                coarse,
                "blank-light",
                ": take them if they please. The best rod with them differs by nothing a hand or a purse would notice.");
    }

    /** Of a part and the light seat. */
    private static void tells(Brief brief, String part, String words) {
        String text = told(brief, Set.of(part, "seat-light"));
        assertTrue(text.contains(words), text);
    }

    /** Two caps and a seat: the caps are in each other's way. */
    @Test
    void onlyThoseThatContend() {
        assertEquals(
                "Tarn cap, Tarn cap-light and Tarn seat-light: they cannot go in together. There is only one place on a rod for Tarn"
                        + " cap and Tarn cap-light.",
                WhyNot.reason(SHOP.inquiry(BRIEF), Set.of("cap", "cap-light", "seat-light"))
                        .sentence());
    }
}
