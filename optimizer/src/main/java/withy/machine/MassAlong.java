package withy.machine;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.PartKind;
import withy.mechanics.TubeMass;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;

/**
 * Where along the rod its mass lies: stretches of equal length from butt end to tip, the blank told from what is on it. Parts with a length
 * are spread evenly over it, wraps and glue with them; the sum is the rod's weight.
 *
 * @param stretches from the butt end
 */
public record MassAlong(List<Stretch> stretches) {
    /** Length of a stretch, mm. */
    public static final double STRETCH_MM = 100;

    private static final double MG_PER_G = 1000;

    /** Simpson's parts a stretch for the blank; its law is smooth between stations. */
    private static final int PARTS = 40;

    public MassAlong {
        stretches = List.copyOf(stretches);
    }

    /**
     * One stretch.
     *
     * @param fromMm from the blank's butt, mm; the first begins at the butt cap's end
     * @param toMm mm
     * @param blankG the blank in it, g
     * @param partsG everything else in it, g
     */
    public record Stretch(double fromMm, double toMm, double blankG, double partsG) {}

    /** Works it out. */
    public static MassAlong of(Rod rod) {
        double tip = rod.setting().blank().lengthMm();
        double start =
                rod.placed().values().stream().mapToDouble(Placed::fromMm).min().orElse(0);
        int behind = (int) Math.ceil(-Math.min(0, start) / STRETCH_MM - 1e-9);
        int ahead = (int) Math.ceil(tip / STRETCH_MM - 1e-9);
        double[] blank = new double[behind + ahead];
        double[] parts = new double[behind + ahead];
        double[] edges = new double[behind + ahead + 1];
        for (int i = 0; i <= behind + ahead; i++) {
            edges[i] = Math.max(Math.min(0, start), Math.min(tip, (i - behind) * STRETCH_MM));
        }
        tube(rod.setting().shape().tube(), edges, blank);
        rod.placed().values().forEach(placed -> spread(rod, placed, edges, parts));
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < blank.length; i++) {
            stretches.add(new Stretch(edges[i], edges[i + 1], blank[i], parts[i]));
        }
        return new MassAlong(stretches);
    }

    private static void tube(TubeMass tube, double[] edges, double[] into) {
        double sum = 0;
        for (int i = 0; i < into.length; i++) {
            double h = (edges[i + 1] - edges[i]) / PARTS;
            for (int k = 0; k < PARTS && edges[i + 1] > 0; k++) {
                into[i] += h * tube.perLengthGPerMm(Math.max(0, edges[i] + (k + 0.5) * h));
            }
            sum += into[i];
        }
        double lumps = tube.lumps().stream().mapToDouble(TubeMass.Lump::massG).sum();
        for (int i = 0; i < into.length; i++) {
            into[i] *= (tube.massG() - lumps) / sum;
        }
        tube.lumps().forEach(lump -> into[at(lump.xMm(), edges)] += lump.massG());
    }

    private static void spread(Rod rod, Placed placed, double[] edges, double[] into) {
        Share share = rod.shares().getOrDefault(placed.station(), Share.NONE);
        if (placed.part().kind() == PartKind.BLANK) {
            double wraps = (share.massMg() - share.partMg()) / MG_PER_G;
            var joints = rod.setting().shape().joints();
            joints.forEach(joint -> into[at((joint.fromMm() + joint.toMm()) / 2, edges)] += wraps / joints.size());
            return;
        }
        double massG = share.massMg() / MG_PER_G;
        boolean point = placed.station().equals(Station.TIP_TOP) || !(placed.lengthMm() > 0);
        if (point) {
            into[at(placed.fromMm(), edges)] += massG;
            return;
        }
        for (int i = 0; i < into.length; i++) {
            double overlap = Math.min(edges[i + 1], placed.toMm()) - Math.max(edges[i], placed.fromMm());
            if (overlap > 0) {
                into[i] += massG * overlap / placed.lengthMm();
            }
        }
    }

    private static int at(double xMm, double[] edges) {
        int i = 0;
        while (i < edges.length - 2 && xMm >= edges[i + 1]) {
            i++;
        }
        return i;
    }
}
