package withy.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withy.app.DrawerAnswer;
import withy.app.DrawerAnswer.DrawerLine;
import withy.explain.Phrases;

/** The drawer of one station for a terminal of 80 columns. */
public final class DrawerText {
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
                alike.computeIfAbsent(said(line), said -> new ArrayList<>()).add(line));
        alike.forEach((said, same) -> page.paragraph(same.get(0).here() ? "→ " : "· ", told(said, same)));
    }

    /** What is said of a part without its name, where its name comes first; else the whole sentence. */
    private static String said(DrawerLine line) {
        String start = line.name() + " ";
        boolean plain = line.breaks() == null || !line.sentence().startsWith(start);
        return plain ? line.sentence() : line.sentence().substring(start.length());
    }

    private static String told(String said, List<DrawerLine> same) {
        DrawerLine first = same.get(0);
        String names = Phrases.list(same.stream().map(DrawerLine::name).toList());
        if (first.breaks() == null) {
            return names + ": " + said + ".";
        }
        return same.size() == 1 ? first.sentence() : Phrases.of("drawer.each", names, said);
    }
}
