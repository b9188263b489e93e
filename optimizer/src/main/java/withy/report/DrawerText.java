package withy.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withy.app.DrawerAnswer;
import withy.app.DrawerAnswer.DrawerLine;
import withy.explain.Phrases;

/** The drawer of one station for a terminal of 80 columns. */
public final class DrawerText {
    /** In the place of a part's name. */
    private static final String NAME = "\u0001";

    /** In the place of a figure. */
    private static final String NUMBER = "\u0002";

    /** A figure that differs from part to part. */
    private static final Pattern MEASURED =
            Pattern.compile("(?<=is only |is )([0-9]+(?:\\.[0-9]+)?)(?= (?:% |mm too |mm clear))");

    private DrawerText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(DrawerAnswer answer) {
        Page page = new Page();
        page.paragraph("", answer.brief().path("name").asText());
        page.paragraph(
                "",
                Phrases.of(
                        "text.drawer.title",
                        Phrases.sentence(Phrases.station(answer.station())),
                        answer.build().name()));
        page.paragraph("", Phrases.of("text.drawer.as"));
        lines(
                page,
                "text.drawer.fits",
                answer.parts().stream().filter(line -> line.breaks() == null).toList());
        lines(
                page,
                "text.drawer.refused",
                answer.parts().stream().filter(line -> line.breaks() != null).toList());
        if (answer.interrupted()) {
            page.gap().paragraph("", Phrases.of("text.cut"));
        }
        return page.toString();
    }

    private static void lines(Page page, String title, List<DrawerLine> lines) {
        if (lines.isEmpty()) {
            return;
        }
        page.heading(Phrases.of(title));
        Map<String, List<DrawerLine>> alike = new LinkedHashMap<>();
        lines.forEach(line ->
                alike.computeIfAbsent(kind(line), any -> new ArrayList<>()).add(line));
        alike.values().forEach(same -> page.paragraph(same.get(0).here() ? "→ " : "· ", told(same)));
    }

    /** What is said of a part, whatever its name and whatever figure of its own it has. */
    private static String kind(DrawerLine line) {
        String said = said(line);
        int named = said.indexOf(NAME);
        return named < 0
                ? said
                : said.substring(0, named)
                        + MEASURED.matcher(said.substring(named)).replaceAll(NUMBER);
    }

    /** What is said of a part without its name; the whole sentence where that is not in it. */
    private static String said(DrawerLine line) {
        String sentence = line.sentence();
        Matcher named = Pattern.compile("(?<!\\S)" + Pattern.quote(line.name()) + "(?=[\\s,;:]|\\.$)")
                .matcher(sentence);
        if (line.breaks() == null || !named.find()) {
            return sentence;
        }
        String own = Phrases.ownFirst(line.name(), sentence);
        return own != null
                ? NAME + " " + own
                : sentence.substring(0, named.start()) + NAME + sentence.substring(named.end());
    }

    private static String told(List<DrawerLine> same) {
        DrawerLine first = same.get(0);
        String names = Phrases.list(same.stream().map(DrawerLine::name).toList());
        if (first.breaks() == null) {
            return names + ": " + first.sentence() + ".";
        }
        String said = ranged(same.stream().map(DrawerText::said).toList());
        if (!said.contains(NAME)) {
            return Phrases.of("drawer.eachOf", names, Phrases.clause(said));
        }
        if (same.size() == 1) {
            return first.sentence();
        }
        return said.startsWith(NAME)
                ? Phrases.of("drawer.each", names, said.substring(NAME.length()).strip())
                : Phrases.of("drawer.eachOf", names, Phrases.clause(said).replace(NAME, Phrases.of("drawer.each.one")));
    }

    /** One sentence for several that differ in a figure only: from the least to the most. */
    private static String ranged(List<String> said) {
        TreeMap<Double, String> figures = new TreeMap<>();
        for (String one : said) {
            Matcher measured = MEASURED.matcher(one);
            if (measured.find()) {
                figures.put(Double.valueOf(measured.group(1)), measured.group(1));
            }
        }
        if (figures.size() < 2) {
            return said.get(0);
        }
        String range = Phrases.of(
                "drawer.range",
                figures.firstEntry().getValue(),
                figures.lastEntry().getValue());
        return MEASURED.matcher(said.get(0)).replaceFirst(Matcher.quoteReplacement(range));
    }
}
