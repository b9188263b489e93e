package withy.report;

import withy.app.BenchSheet.Fit;
import withy.app.BenchSheet.HandleLine;
import withy.explain.Phrases;

/** How a part of the handle, or the tip-top, is cut and fitted, in words. */
final class FitWords {
    /** Trade table: above these a tip-top's glue is to be thick, then a layer of thread goes under it, mm. */
    private static final double THICK_GLUE_MM = 0.15;

    private static final double THREAD_LAYER_MM = 0.25;

    private FitWords() {}

    /** Empty where nothing is to be done. */
    static String of(HandleLine line, Reader reader) {
        Double sold = line.soldMm();
        String cut = sold == null
                ? ""
                : Phrases.of("paper.cut", reader.length(sold), reader.length(line.toMm() - line.fromMm())) + " ";
        Fit fit = line.fit();
        if (fit == null) {
            return cut.strip();
        }
        String key = "paper.fit." + fit.how();
        if (fit.how().equals("tube")) {
            key = fit.gapMm() > THREAD_LAYER_MM
                    ? "paper.fit.tube.thread"
                    : fit.gapMm() > THICK_GLUE_MM ? "paper.fit.tube.thick" : key;
        }
        return cut
                + Phrases.of(
                        key,
                        reader.thin(fit.blankMm()),
                        reader.thin(fit.rearMm()),
                        reader.thin(fit.frontMm()),
                        reader.thin(fit.gapMm()),
                        fit.pieces());
    }
}
