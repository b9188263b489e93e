package withy.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import withy.app.LighterAnswer;
import withy.app.LighterAnswer.PartLine;
import withy.app.LighterAnswer.PointLine;
import withy.app.Reasons.BuildLine;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** The answer of {@code lighter} for a terminal of 80 columns. */
public final class LighterText {
    /** From here on tenths of a gram will do. */
    private static final double MUCH_G = 10;

    /** Lighter parts told one by one at a station, legal ones and others each. */
    private static final int MOST_TOLD = 3;

    private final Page page = new Page();
    private final QuantityText units;
    private final Currency currency;

    private LighterText(QuantityText units, Currency currency) {
        this.units = units;
        this.currency = currency;
    }

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(LighterAnswer answer, QuantityText units, Currency currency) {
        LighterText text = new LighterText(units, currency);
        text.write(answer);
        return text.page.toString();
    }

    private void write(LighterAnswer answer) {
        page.paragraph("", answer.brief().path("name").asText());
        BuildLine first = answer.first();
        BuildLine lightest = answer.lightest();
        if (first == null || lightest == null) {
            if (answer.impossible() != null) {
                WhyNotText.impossible(page, answer.impossible(), units);
            }
            return;
        }
        page.gap();
        page.paragraph("", Phrases.of("text.lighter.best", WhyNotText.figures(first, units, currency)));
        page.paragraph("", answer.sentence());
        page.paragraph(
                "",
                lightest.proven()
                        ? Phrases.of("text.lighter.proven", units.mass(lightest.weightG()))
                        : Phrases.of("text.lighter.open"));
        curve(answer.curve());
        ledger(answer.ledger());
        if (answer.interrupted()) {
            page.gap().paragraph("", Phrases.of("text.cut"));
        }
    }

    /** Of a single step all is told before: it leads to the lightest. */
    private void curve(List<PointLine> curve) {
        if (curve.size() < 3) {
            return;
        }
        page.heading(Phrases.of("text.lighter.curve"));
        Page.Column[] columns = {new Page.Column(10, true), new Page.Column(69, false)};
        for (PointLine point : curve) {
            String words = point.sentence().isEmpty()
                    ? Phrases.of("text.lighter.from", Money.print(point.build().priceMinor(), currency))
                    : Phrases.sentence(point.sentence());
            page.row(columns, units.mass(point.build().weightG()), words);
        }
    }

    private void ledger(List<PartLine> ledger) {
        if (ledger.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.lighter.ledger"));
        page.paragraph("", Phrases.of("text.lighter.ledger.as") + " " + Phrases.of("ledger.felt"));
        grouped(ledger).forEach((title, lines) -> {
            page.gap().paragraph("", title);
            told(lines);
        });
    }

    /** Lines by station; guides in a row that share all their lines are one. */
    private Map<String, List<PartLine>> grouped(List<PartLine> ledger) {
        Map<String, List<PartLine>> byStation = new LinkedHashMap<>();
        ledger.forEach(line -> byStation
                .computeIfAbsent(line.station(), key -> new ArrayList<>())
                .add(line));
        Map<String, List<PartLine>> grouped = new LinkedHashMap<>();
        String start = "";
        String last = "";
        List<PartLine> lines = List.of();
        for (Map.Entry<String, List<PartLine>> entry : byStation.entrySet()) {
            boolean joins = entry.getKey().startsWith("guide-") && same(lines, entry.getValue());
            if (!joins) {
                put(grouped, start, last, lines);
                start = entry.getKey();
                lines = entry.getValue();
            }
            last = entry.getKey();
        }
        put(grouped, start, last, lines);
        return grouped;
    }

    private static void put(Map<String, List<PartLine>> grouped, String start, String last, List<PartLine> lines) {
        if (!lines.isEmpty()) {
            grouped.put(Phrases.sentence(Phrases.stations(start, last)), lines);
        }
    }

    private static boolean same(List<PartLine> one, List<PartLine> other) {
        return words(one).equals(words(other));
    }

    private static List<String> words(List<PartLine> lines) {
        return lines.stream().map(line -> line.part() + line.sentence()).toList();
    }

    private void told(List<PartLine> lines) {
        List<PartLine> legal =
                lines.stream().filter(line -> line.breaks() == null).toList();
        List<PartLine> refused =
                lines.stream().filter(line -> line.breaks() != null).toList();
        Map<String, List<String>> alike = new LinkedHashMap<>();
        legal.forEach(line ->
                alike.computeIfAbsent(line.sentence(), any -> new ArrayList<>()).add(line.name()));
        alike.forEach((sentence, names) -> page.paragraph("· ", Phrases.list(names) + ": " + sentence + "."));
        List<PartLine> told = differently(refused);
        told.forEach(line -> page.paragraph("· ", refused(line)));
        if (refused.size() > told.size()) {
            List<PartLine> rest = new ArrayList<>(refused);
            rest.removeAll(told);
            page.paragraph("· ", others(rest));
        }
    }

    /** A few of those refused, in their order: one for each rule before a second for the same. */
    private static List<PartLine> differently(List<PartLine> refused) {
        Set<String> rules = new HashSet<>();
        List<PartLine> told = new ArrayList<>(refused.stream()
                .filter(line -> rules.add(rule(line)))
                .limit(MOST_TOLD)
                .toList());
        refused.stream()
                .filter(line -> !told.contains(line))
                .limit(MOST_TOLD - told.size())
                .forEach(told::add);
        return refused.stream().filter(told::contains).toList();
    }

    private static String rule(PartLine line) {
        return line.breaks() == null ? "" : line.breaks().rule();
    }

    private String refused(PartLine line) {
        double saves = line.partSavesG();
        String lighter = saves < MUCH_G ? units.fineMass(saves) : units.mass(saves);
        List<String> about = line.breaks() == null ? List.of() : line.breaks().parts();
        boolean own = about.isEmpty() || about.contains(line.part());
        String clause = Phrases.afterName(own ? line.name() : "", line.sentence());
        return clause == null
                ? Phrases.of("text.lighter.refused.plain", line.name(), lighter, line.sentence())
                : Phrases.of("text.lighter.refused", line.name(), lighter, clause);
    }

    private static String others(List<PartLine> lines) {
        Map<String, Integer> counts = new TreeMap<>();
        for (PartLine line : lines) {
            counts.merge(rule(line), 1, Integer::sum);
        }
        List<String> words = new ArrayList<>();
        counts.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .forEach(of -> {
                    String rule = Phrases.of("ruleName." + of.getKey());
                    words.add(counts.size() == 1 ? rule : Phrases.of("text.lighter.other", of.getValue(), rule));
                });
        String key = lines.size() == 1 ? "text.lighter.others.one" : "text.lighter.others";
        return Phrases.of(key, lines.size(), Phrases.list(words));
    }
}
