package withy.report;

import java.util.List;
import java.util.Locale;
import withy.explain.Phrases;

/** Writes one document as HTML that is XML as well: a browser reads it, and so does what prints it. All words are escaped here. */
final class Markup {
    /** Lettering large enough to be read at arm's length over the bench. */
    private static final String STYLE = """
        @font-face { font-family: Withy; src: url(font:regular); font-weight: normal; -fs-font-subset: subset; }
        @font-face { font-family: Withy; src: url(font:bold); font-weight: bold; -fs-font-subset: subset; }
        body { font-family: Withy, "DejaVu Sans", sans-serif; font-size: 9pt; line-height: 1.2; color: #1c1c1c; margin: 0; }
        h1 { font-size: 15pt; margin: 0 0 2mm 0; }
        h2 { font-size: 11pt; margin: 4mm 0 1mm 0; page-break-after: avoid; }
        p { margin: 0 0 0.8mm 0; }
        table { border-collapse: collapse; width: 100%; margin-bottom: 1mm; -fs-table-paginate: paginate; }
        th, td { border-bottom: 0.2mm solid #8c8c8c; padding: 0.6mm 1mm; text-align: left; vertical-align: top; }
        tr, svg { page-break-inside: avoid; }
        .number { text-align: right; }
        .care { border: 0.5mm solid #b3401f; padding: 1.5mm; margin: 2mm 0; page-break-inside: avoid; }
        .kept { page-break-inside: avoid; }
        .sheet { page-break-before: always; }
        .ruler { margin: 2mm 0; }
        @media screen { body { max-width: 180mm; margin: 5mm auto; } }
        """;

    private final StringBuilder body = new StringBuilder();

    /** A quantity that may be broken between its two systems of units only. */
    static String unbroken(String quantity) {
        return quantity.replace(' ', '\u00a0').replace("\u00a0(", " (");
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

    Markup strong(String words) {
        body.append("<p><b>").append(Svg.escape(words)).append("</b></p>\n");
        return this;
    }

    Markup line(String words) {
        return element("p", words);
    }

    /** What follows begins on a new sheet. */
    Markup sheet() {
        body.append("<div class=\"sheet\"></div>\n");
        return this;
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

    /** Rows under heads; the first {@code words} columns are words, the others numbers. */
    Markup table(int words, List<String> heads, List<List<String>> rows) {
        body.append("<table>\n<thead><tr>");
        for (int i = 0; i < heads.size(); i++) {
            cell("th", i >= words, heads.get(i));
        }
        body.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : rows) {
            body.append("<tr>");
            for (int i = 0; i < row.size(); i++) {
                cell("td", i >= words, row.get(i));
            }
            body.append("</tr>\n");
        }
        body.append("</tbody>\n</table>\n");
        return this;
    }

    /** The whole document on sheets of one size. */
    String document(String title, Sheet sheet) {
        return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"" + Phrases.of("paper.language")
                + "\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>" + Svg.escape(title) + "</title>\n<style>\n"
                + sheet.rule() + "\n" + STYLE + "</style>\n</head>\n<body>\n<h1>" + Svg.escape(title) + "</h1>\n" + body
                + "</body>\n</html>\n";
    }

    private Markup element(String tag, String words) {
        body.append('<').append(tag).append('>').append(Svg.escape(words));
        body.append("</").append(tag).append(">\n");
        return this;
    }

    private void cell(String tag, boolean number, String words) {
        body.append('<').append(tag).append(number ? " class=\"number\">" : ">");
        body.append(Svg.escape(words)).append("</").append(tag).append('>');
    }
}
