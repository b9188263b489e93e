package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import withy.mechanics.LoadedStretches.Stretch;

/** The stretches of a rod with rings by span: span i runs from ring i (counted from the tip) to the next one, the last to the clamp. */
final class LineSpans {
    private static final double ONE_PLACE_MM = 1e-6;

    private final LoadedStretches stretches;
    private final List<List<Stretch>> spans = new ArrayList<>();

    LineSpans(LineCase line) {
        List<Double> rings = line.rings().stream().map(LineCase.Ring::sMm).toList();
        this.stretches = new LoadedStretches(line.held(), line.pullRad(), line.tensionN(), rings);
        int next = rings.size() - 1;
        for (Stretch stretch : stretches.all()) {
            double front = stretches.tipMm() - stretches.lengthMm() * stretch.u0();
            if (next >= 0 && front <= rings.get(next) + ONE_PLACE_MM) {
                spans.add(new ArrayList<>());
                next--;
            }
            spans.get(spans.size() - 1).add(stretch);
        }
    }

    List<Stretch> of(int span) {
        return spans.get(span);
    }

    /** The rod they are cut from, in a frame that lies along the pull. */
    LoadedStretches stretches() {
        return stretches;
    }
}
