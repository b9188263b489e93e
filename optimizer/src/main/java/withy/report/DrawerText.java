package withy.report;

import java.util.List;
import java.util.Set;
import withy.app.DrawerAnswer;
import withy.app.DrawerAnswer.DrawerLine;
import withy.explain.Phrases;

/** The drawer of one station for a terminal of 80 columns. */
public final class DrawerText {
    /** Stations at which a part brings more than itself. */
    private static final Set<String> WITH_MORE = Set.of("seat", "blank");

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
        page.paragraph(
                "",
                Phrases.of(
                                WITH_MORE.contains(answer.station())
                                        ? "text.drawer.as." + answer.station()
                                        : "text.drawer.as")
                        + " " + Phrases.of("ledger.felt"));
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
        DrawerGroup.alike(lines)
                .forEach(same -> page.paragraph(same.get(0).here() ? "→ " : "· ", DrawerGroup.told(same)));
    }
}
