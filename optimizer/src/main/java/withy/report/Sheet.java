package withy.report;

import java.util.List;
import java.util.Locale;

/** A sheet of paper. */
public enum Sheet {
    /** ISO 216. */
    A4(210, 297),
    /** ANSI/ASME Y14.1, size A: 8.5 by 11 inches. */
    LETTER(215.9, 279.4);

    /** Room left white on each side, mm; printers leave up to 6 mm. */
    static final double MARGIN_MM = 15;

    private final double widthMm;
    private final double heightMm;

    Sheet(double widthMm, double heightMm) {
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** Width, mm. */
    public double widthMm() {
        return widthMm;
    }

    /** Height, mm. */
    public double heightMm() {
        return heightMm;
    }

    /** Its size as a rule of a style sheet. */
    String rule() {
        return String.format(
                Locale.ROOT, "@page { size: %.1fmm %.1fmm; margin: %.0fmm; }", widthMm, heightMm, MARGIN_MM);
    }

    /** Both. */
    public static List<Sheet> all() {
        return List.of(values());
    }
}
