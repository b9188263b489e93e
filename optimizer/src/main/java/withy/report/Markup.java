package withy.report;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import withy.explain.Phrases;

/** Writes one document as HTML that is XML as well: a browser reads it, and so does what prints it. All words are escaped here. */
final class Markup {
    /** Name the style sheet has for the fonts of the jar; a browser goes on to the next name. */
    static final String FONT = "Withy";

    /** Lettering large enough to be read at arm's length over the bench. */
    private static final String STYLE = """
        body { font-family: Withy, "DejaVu Sans", sans-serif; font-size: 9pt; line-height: 1.2; color: #1c1c1c; margin: 0; word-wrap: break-word; }
        h1 { font-size: 15pt; margin: 0 0 2mm 0; padding-bottom: 1.2mm; border-bottom: 0.7mm solid #8a2432; }
        h2 { font-size: 11pt; margin: 4mm 0 1mm 0; page-break-after: avoid; }
        .sum { font-size: 12pt; font-weight: bold; }
        .place { color: #8a2432; }
        p { margin: 0 0 0.8mm 0; }
        table { border-collapse: collapse; width: 100%; table-layout: fixed; margin-bottom: 1mm; -fs-table-paginate: paginate; }
        th, td { border-bottom: 0.2mm solid #8c8c8c; padding: 0.6mm 1mm; text-align: left; vertical-align: top; }
        tr, svg { page-break-inside: avoid; }
        .number { text-align: right; }
        .tick { text-align: center; }
        .care { border: 0.5mm solid #b3401f; padding: 1.5mm; margin: 2mm 0; page-break-inside: avoid; }
        .kept { page-break-inside: avoid; }
        .labels { margin-bottom: 4mm; }
        .labels td { border: 0.2mm dashed #8c8c8c; padding: 1.5mm; font-size: 7.5pt; height: 27mm; }
        .labels p { margin: 0 0 0.4mm 0; }
        .labels td.none { border: none; }
        .ruler { margin: 2mm 0; }
        @media screen { body { max-width: 180mm; margin: 5mm auto; padding: 0 4mm; font-size: 10.5pt; line-height: 1.35; } }
        """;

    /** A browser that knows the rule loads nothing and runs nothing, whatever a name holds. */
    private static final String NOTHING_LOADED =
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n";

    /** For a phone's browser: pictures no wider than the screen, tables scrolled by themselves. What prints would not know the rules. */
    private static final String NARROW = "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
            + "<style media=\"screen\">\nsvg { max-width: 100%; height: auto; }\n"
            + ".wide { overflow-x: auto; }\n.wide table { min-width: 180mm; }\n</style>\n";

    private final StringBuilder body = new StringBuilder();
    private String data = "";

    /** A quantity that may be broken between its two systems of units only. */
    static String unbroken(String quantity) {
        return quantity.replace(' ', Unbroken.JOIN).replace(Unbroken.JOIN + "(", " (");
    }

    Markup heading(String words) {
        return element("h2", words);
    }

    /** A block kept on one sheet. */
    Markup kept(Runnable inside) {
        body.append("<div class=\"kept\">\n");
        inside.run();
        body.append("</div>\n");
        return this;
    }

    /** What it comes to, in large letters, and what is to be said of that. */
    Markup sum(String sum, String words) {
        body.append("<p><span class=\"sum\">").append(text(sum)).append("</span> ");
        body.append(text(words)).append("</p>\n");
        return this;
    }

    /** Parts of a rod in one run, each behind its place. */
    Markup places(List<Map.Entry<String, String>> parts) {
        body.append("<p>");
        String between = "";
        for (Map.Entry<String, String> part : parts) {
            body.append(between).append("<span class=\"place\">").append(text(part.getKey()));
            body.append("</span> ").append(text(part.getValue()));
            between = " · ";
        }
        body.append("</p>\n");
        return this;
    }

    Markup line(String words) {
        return element("p", words);
    }

    /** Labels of equal size, to be cut along their borders; each is lines of words, the first in bold. */
    Markup labels(List<List<String>> labels, int across) {
        body.append("<table class=\"labels\">\n");
        for (int from = 0; from < labels.size(); from += across) {
            body.append("<tr>");
            for (int i = from; i < from + across; i++) {
                label(i < labels.size() ? labels.get(i) : List.of(), 100 / across);
            }
            body.append("</tr>\n");
        }
        body.append("</table>\n");
        return this;
    }

    private void label(List<String> lines, int percent) {
        body.append(lines.isEmpty() ? "<td class=\"none\"" : "<td").append(" style=\"width: ");
        body.append(percent).append("%\">");
        for (int i = 0; i < lines.size(); i++) {
            body.append(i == 0 ? "<p><b>" : "<p>").append(text(lines.get(i)));
            body.append(i == 0 ? "</b></p>" : "</p>");
        }
        body.append("</td>");
    }

    /** What the builder must mind, framed; nothing where there is nothing. */
    Markup care(List<String> sentences) {
        if (sentences.isEmpty()) {
            return this;
        }
        body.append("<div class=\"care\">\n");
        sentences.forEach(this::line);
        body.append("</div>\n");
        return this;
    }

    /** A picture of a width on paper. */
    Markup picture(Picture picture, double widthMm) {
        double height = widthMm * picture.height() / Svg.WIDTH;
        String size = String.format(Locale.ROOT, "width=\"%.2fmm\" height=\"%.2fmm\"", widthMm, height);
        body.append(picture.svg()
                .replaceFirst("width=\"100%\"", size)
                .replaceFirst("font-family=\"sans-serif\"", "font-family=\"Withy, sans-serif\""));
        return this;
    }

    Markup svg(String svg) {
        body.append("<div class=\"ruler\">").append(svg).append("</div>\n");
        return this;
    }

    /** Rows under the heads of columns. */
    Markup table(Columns columns, List<List<String>> rows) {
        List<Columns.Column> all = columns.all();
        body.append("<div class=\"wide\"><table>\n<thead><tr>");
        for (Columns.Column column : all) {
            body.append("<th class=\"").append(column.style()).append("\" style=\"width: ");
            body.append(column.percent())
                    .append("%\">")
                    .append(text(column.head()))
                    .append("</th>");
        }
        body.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : rows) {
            body.append("<tr>");
            for (int i = 0; i < row.size(); i++) {
                body.append("<td class=\"").append(all.get(i).style()).append("\">");
                body.append(text(row.get(i))).append("</td>");
            }
            body.append("</tr>\n");
        }
        body.append("</tbody>\n</table></div>\n");
        return this;
    }

    /** An element of data to be read again, never shown; it must be safe as it is. */
    Markup data(String element) {
        data = element + "\n";
        return this;
    }

    /** The whole document on sheets of one size. */
    String document(String title, Sheet sheet) {
        return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"" + Phrases.of("paper.language")
                + "\">\n<head>\n<meta charset=\"utf-8\"/>\n" + NOTHING_LOADED + "<title>" + Svg.escape(title)
                + "</title>\n<style>\n"
                + sheet.rule() + "\n" + STYLE + "</style>\n" + NARROW + data + "</head>\n<body>\n<h1>"
                + text(title)
                + "</h1>\n" + body
                + "</body>\n</html>\n";
    }

    private static String text(String words) {
        return Svg.escape(Unbroken.of(words));
    }

    private Markup element(String tag, String words) {
        body.append('<').append(tag).append('>').append(text(words));
        body.append("</").append(tag).append(">\n");
        return this;
    }
}
