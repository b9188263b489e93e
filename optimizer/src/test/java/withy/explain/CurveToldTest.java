package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.app.Explain;
import withy.app.LighterAnswer;
import withy.app.Progress;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.fixture.Changed;
import withy.report.LighterText;
import withy.units.Money;

/** What each gram costs, as it is told: one line a rod; a single step is told once, with the lightest. */
class CurveToldTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final String TITLE = Phrases.of("text.lighter.curve");

    /** Money and grams count as in the curve's own test; of the weight this much is noticed, g. */
    private static Brief noticing(double grams) {
        Brief priced = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0, Objective.WEIGHT, grams / 3));
        Map<Objective, Double> steps = new EnumMap<>(priced.steps());
        steps.put(Objective.WEIGHT, grams);
        return Changed.with(priced, "steps", steps);
    }

    /** How many steps there are follows from what is noticed: one, two and more of them. */
    @ParameterizedTest
    @CsvSource({"3, 5", "11, 2", "50, 1"})
    void everyStepOnce(double noticed, int expected) {
        Brief brief = noticing(noticed);
        LighterAnswer answer = Explain.lighter(SHOP.inquiry(brief), Progress.NONE);
        List<String> lines = LighterText.of(answer, FewBuilds.METRIC, EUR)
                .replaceAll("\n {11}(?=\\S)", " ")
                .lines()
                .toList();
        int steps = answer.curve().size() - 1;
        assertEquals(expected, steps);
        assertEquals(steps > 1 ? 1 : 0, lines.stream().filter(TITLE::equals).count(), lines::toString);
        assertEquals(
                steps > 1 ? steps : 0,
                lines.stream().filter(line -> line.contains("he next ")).count(),
                lines::toString);
        lightest(brief, answer, lines);
        if (steps > 1) {
            int from = lines.indexOf(TITLE) + 2;
            for (int i = 0; i <= steps; i++) {
                row(brief, answer, i, lines.get(from + i).strip());
            }
            assertTrue(lines.get(from + steps + 1).isEmpty(), lines::toString);
        }
    }

    /** Its weight is the least of all builds, and what it costs more is told whether or not there is a curve. */
    private static void lightest(Brief brief, LighterAnswer answer, List<String> lines) {
        long least = SHOP.legal(SHOP.catalog(), brief).stream()
                .mapToLong(one -> one.vector().weightMg())
                .min()
                .orElseThrow();
        assertNotNull(answer.first());
        assertNotNull(answer.lightest());
        String text = String.join(" ", lines);
        assertTrue(
                text.contains("The lightest rod that keeps every rule weighs " + FewBuilds.METRIC.mass(least / 1000.0)),
                text);
        long more = answer.lightest().priceMinor() - answer.first().priceMinor();
        assertTrue(more > 0 && text.contains(Money.print(more, EUR) + " dearer"), text);
    }

    /** Its weight, and of the first its price, of every other what it is lighter and dearer than the one before. */
    private static void row(Brief brief, LighterAnswer answer, int i, String row) {
        var build = answer.curve().get(i).build();
        long weight = Math.round(build.weightG() * 1000);
        assertTrue(
                SHOP.legal(SHOP.catalog(), brief).stream()
                        .anyMatch(one -> one.vector().weightMg() == weight
                                && one.rod().figures().priceMinor() == build.priceMinor()),
                row);
        assertTrue(row.startsWith(FewBuilds.METRIC.mass(weight / 1000.0) + " "), row);
        if (i == 0) {
            assertTrue(row.endsWith(Money.print(build.priceMinor(), EUR) + ", the best rod"), row);
            return;
        }
        var before = answer.curve().get(i - 1).build();
        String saved = FewBuilds.METRIC.mass((Math.round(before.weightG() * 1000) - weight) / 1000.0);
        assertTrue(row.contains(" The next " + saved + ": "), row);
        long more = build.priceMinor() - before.priceMinor();
        assertTrue(row.contains(Money.print(Math.abs(more), EUR) + (more > 0 ? " dearer" : " cheaper")), row);
    }
}
