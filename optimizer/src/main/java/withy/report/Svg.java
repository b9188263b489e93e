package withy.report;

import java.util.Locale;

/**
 * Writes one drawing as SVG text: black, grey and one colour on white, so that it prints; lettering large enough to be read at half size.
 * Coordinates with one decimal, the same on every machine.
 */
final class Svg {
    /** Width of every drawing in its own units; a phone shows about half a pixel a unit. */
    static final double WIDTH = 760;

    /** Lettering, units. */
    static final double LETTERS = 21;

    /** Width of a usual letter, units; a bound for placing labels. */
    static final double LETTER_WIDTH = 11.5;

    static final String INK = "#1c1c1c";
    static final String GREY = "#8c8c8c";
    static final String PALE = "#d9d9d9";
    static final String ACCENT = "#b3401f";

    private final StringBuilder body = new StringBuilder();

    /** Everything drawn, in a picture of a height, with a sentence for who can't see it. */
    String text(double height, String words) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + number(WIDTH) + ' ' + number(height)
                + "\" role=\"img\" aria-label=\"" + escape(words) + "\" width=\"100%\" font-family=\"sans-serif\""
                + " font-size=\"" + number(LETTERS) + "\" fill=\"" + INK + "\">\n<title>" + escape(words)
                + "</title>\n<rect width=\"" + number(WIDTH) + "\" height=\"" + number(height)
                + "\" fill=\"#ffffff\"/>\n" + body + "</svg>\n";
    }

    Svg line(double x1, double y1, double x2, double y2, String colour, double width) {
        return line(x1, y1, x2, y2, colour, width, "");
    }

    Svg dashed(double x1, double y1, double x2, double y2, String colour, double width) {
        return line(x1, y1, x2, y2, colour, width, " stroke-dasharray=\"6 5\"");
    }

    private Svg line(double x1, double y1, double x2, double y2, String colour, double width, String more) {
        body.append("<line x1=\"").append(number(x1)).append("\" y1=\"").append(number(y1));
        body.append("\" x2=\"").append(number(x2)).append("\" y2=\"").append(number(y2));
        body.append("\" stroke=\"").append(colour).append("\" stroke-width=\"").append(number(width));
        body.append('"').append(more).append("/>\n");
        return this;
    }

    /** A run of x, y, x, y …; filled where a fill is named, else a line. */
    Svg points(double[] xy, String stroke, double width, String fill) {
        body.append(fill.equals("none") ? "<polyline" : "<polygon").append(" points=\"");
        for (int i = 0; i < xy.length; i += 2) {
            body.append(i == 0 ? "" : " ").append(number(xy[i])).append(',').append(number(xy[i + 1]));
        }
        body.append("\" fill=\"").append(fill).append("\" stroke=\"").append(stroke);
        body.append("\" stroke-width=\"").append(number(width)).append("\" stroke-linejoin=\"round\"/>\n");
        return this;
    }

    Svg box(double x, double y, double width, double height, String fill) {
        body.append("<rect x=\"").append(number(x)).append("\" y=\"").append(number(y));
        body.append("\" width=\"").append(number(width)).append("\" height=\"").append(number(height));
        body.append("\" fill=\"")
                .append(fill)
                .append("\" stroke=\"")
                .append(INK)
                .append("\" stroke-width=\"0.8\"/>\n");
        return this;
    }

    Svg oval(double x, double y, double rx, double ry, String fill) {
        body.append("<ellipse cx=\"").append(number(x)).append("\" cy=\"").append(number(y));
        body.append("\" rx=\"").append(number(rx)).append("\" ry=\"").append(number(ry));
        body.append("\" fill=\"")
                .append(fill)
                .append("\" stroke=\"")
                .append(INK)
                .append("\" stroke-width=\"1.4\"/>\n");
        return this;
    }

    /** Words at a place; anchor start, middle or end. */
    Svg words(double x, double y, String anchor, String colour, String words) {
        body.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y));
        body.append("\" text-anchor=\"")
                .append(anchor)
                .append("\" fill=\"")
                .append(colour)
                .append("\">");
        body.append(escape(words)).append("</text>\n");
        return this;
    }

    static String number(double value) {
        String shown = String.format(Locale.ROOT, "%.1f", value);
        String plain = shown.endsWith(".0") ? shown.substring(0, shown.length() - 2) : shown;
        return plain.equals("-0") ? "0" : plain;
    }

    static String escape(String words) {
        StringBuilder safe = new StringBuilder();
        words.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> {
                    // control characters, halves of pairs and the two that are none are not allowed in XML at all
                    if (c >= ' ' && (c < 0xD800 || c > 0xDFFF) && c != 0xFFFE && c != 0xFFFF
                            || c == '\n'
                            || c == '\t') {
                        safe.appendCodePoint(c);
                    }
                }
            }
        });
        return safe.toString();
    }
}
