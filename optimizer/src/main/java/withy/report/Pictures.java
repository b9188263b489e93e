package withy.report;

import java.util.ArrayList;
import java.util.List;
import withy.app.MachineSheet;
import withy.app.MachineSheet.Line;
import withy.app.MachineSheet.Outline;
import withy.units.QuantityText;

/** Drawings of a rod, each with its figures: the same for terminal, page and paper. */
public final class Pictures {
    /** Figures beside the drawing where there is room, below it on a phone; a section stays on one sheet of paper. */
    private static final String STYLE = """
        body { font-family: sans-serif; margin: 1rem auto; max-width: 75rem; padding: 0 0.75rem; color: #1c1c1c; }
        section { break-inside: avoid; margin-bottom: 2rem; }
        figure { margin: 0; }
        .pair { display: grid; gap: 1rem; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); align-items: start; }
        table { border-collapse: collapse; font-size: 0.9rem; width: 100%; }
        th, td { border-bottom: 1px solid #d9d9d9; padding: 0.2rem 0.4rem; text-align: left; }
        .number { text-align: right; }
        td.number { white-space: nowrap; }
        th { font-weight: normal; }
        thead th { border-bottom: 1px solid #1c1c1c; font-weight: bold; }
        @media screen and (max-width: 50rem) {
          .pair { grid-template-columns: minmax(0, 1fr); }
          td.number { white-space: normal; }
        }
        @page { margin: 15mm; }
        @media print {
          body { margin: 0; max-width: none; padding: 0; font-size: 0.8rem; }
          .pair { grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); }
          table { font-size: 0.65rem; }
          th, td { padding: 0.1rem 0.25rem; }
        }
        """;

    private Pictures() {}

    /** All of them: the rod to scale, the bend at work and in the static test, load against drop, mass along the rod. */
    public static List<Picture> of(MachineSheet machine, QuantityText units) {
        List<Picture> all = new ArrayList<>();
        all.add(rod(machine, units));
        all.add(working(machine, units));
        Line test = machine.staticTest();
        if (test != null) {
            all.add(LinePicture.of("static", test, machine.outline(), units));
        }
        all.add(loads(machine, units));
        all.add(mass(machine, units));
        return List.copyOf(all);
    }

    /** The rod to scale with its parts, stations and balance point. */
    public static Picture rod(MachineSheet machine, QuantityText units) {
        return RodPicture.of(machine.outline(), units);
    }

    /** The same strip by strip, for paper. */
    static List<Picture> strips(Outline outline, QuantityText units) {
        return RodPicture.strips(outline, units);
    }

    /** The bend at work with line and rings. */
    public static Picture working(MachineSheet machine, QuantityText units) {
        return LinePicture.of("working", machine.working(), machine.outline(), units);
    }

    /** Load against tip drop. */
    public static Picture loads(MachineSheet machine, QuantityText units) {
        return ChartPictures.loads(machine.hung(), units);
    }

    /** Mass along the rod. */
    public static Picture mass(MachineSheet machine, QuantityText units) {
        return ChartPictures.mass(machine.massAlong(), machine.outline(), units);
    }

    /** One page with all pictures, their figures beside them, for a browser and its printer. */
    public static String page(String name, List<Picture> pictures) {
        StringBuilder html = new StringBuilder();
        html.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
                .append(Svg.escape(name))
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("\n</style>\n</head>\n<body>\n<h1>")
                .append(Svg.escape(name))
                .append("</h1>\n");
        for (Picture picture : pictures) {
            html.append("<section>\n<h2>").append(Svg.escape(picture.title())).append("</h2>\n<div class=\"pair\">\n");
            html.append("<figure>\n").append(picture.svg()).append("</figure>\n");
            html.append(table(picture.table())).append("</div>\n</section>\n");
        }
        return html.append("</body>\n</html>\n").toString();
    }

    /** A table of figures as HTML. */
    public static String table(Picture.Table table) {
        StringBuilder html = new StringBuilder("<table>\n<thead><tr>");
        for (int i = 0; i < table.heads().size(); i++) {
            cell(html, "th scope=\"col\"", i >= table.words(), table.heads().get(i));
        }
        html.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : table.rows()) {
            html.append("<tr>");
            for (int i = 0; i < row.size(); i++) {
                cell(html, i == 0 ? "th scope=\"row\"" : "td", i >= table.words(), row.get(i));
            }
            html.append("</tr>\n");
        }
        return html.append("</tbody>\n</table>\n").toString();
    }

    private static void cell(StringBuilder html, String tag, boolean number, String words) {
        html.append('<').append(tag).append(number ? " class=\"number\">" : ">").append(Svg.escape(words));
        html.append("</").append(tag, 0, 2).append('>');
    }
}
