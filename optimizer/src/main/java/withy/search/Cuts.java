package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.mechanics.ArborRings;
import withy.rod.GripFit;
import withy.rod.Station;

/**
 * The grips of one station at every length they may be cut to, each with a number its cost is not below, so that only the likely ones are fitted
 * exactly. A cut grip weighs at least its share of the weight as sold, reamed for the thickest blank it could stand on.
 */
final class Cuts {
    /** Glue, tape and rounding a grip may add where weight is welcome, mg. */
    private static final long SLACK_MG = 30_000;

    private final HandleGraph graph;
    private final Station station;
    private final Grip[] grip;
    private final double[] cut;
    private final double[] lightMg;
    private final long[] milli;
    private final long[] style;
    private final long[] missed;
    private final Map<Long, @Nullable Option<Grip>[]> fitted = new HashMap<>();
    private final Map<Long, boolean[]> known = new HashMap<>();

    Cuts(HandleGraph graph, Station station, List<Grip> grips) {
        this.graph = graph;
        this.station = station;
        List<Grip> each = new ArrayList<>();
        List<Double> lengths = new ArrayList<>();
        boolean full = station.equals(Station.REAR_GRIP) && !graph.split;
        for (Grip one : grips) {
            for (double length : full ? new double[] {Double.NaN} : graph.cuts(station, one)) {
                each.add(one);
                lengths.add(length);
            }
        }
        int n = each.size();
        grip = each.toArray(Grip[]::new);
        cut = lengths.stream().mapToDouble(Double::doubleValue).toArray();
        lightMg = new double[n];
        milli = new long[n];
        style = new long[n];
        missed = new long[n];
        Task task = graph.task;
        int count = graph.setting.guideCount();
        double thick = graph.setting.blank().buttOdMm();
        double thin = graph.setting.odAt(graph.setting.footMm());
        double least = full ? graph.leastFullMm() : 0;
        for (int i = 0; i < n; i++) {
            double length = full ? Math.max(least, grip[i].shortestMm()) : cut[i];
            lightMg[i] = lightestMg(grip[i], thick, length) + gluedMg(thin, length);
            milli[i] = task.tariff.partMilli(grip[i], 1) + task.tariff.workMilli(grip[i]);
            style[i] = task.style.part(
                    graph.setting.blank(), graph.setting.layout().form(), station, grip[i], count);
            missed[i] = task.wishes.part(station, grip[i], count)
                    + (station.equals(Station.FORE_GRIP) ? task.wishes.foreGrip(true) : 0);
        }
    }

    int size() {
        return grip.length;
    }

    Grip grip(int i) {
        return grip[i];
    }

    /** Floors of all under these prices, the station lying between two places told from the reel foot. */
    long[] floors(Linear k, double fromMm, double toMm) {
        double arm = graph.setting.footMm() - graph.setting.handMm();
        double c = k.leastPerMg(fromMm, toMm, arm);
        long[] floors = new long[size()];
        for (int i = 0; i < floors.length; i++) {
            double mg = c >= 0 ? lightMg[i] : grip[i].massMg() + SLACK_MG;
            floors[i] = (long) (c * mg)
                    + k.perMilli() * milli[i]
                    - k.perStyleCenti() * style[i]
                    + k.perMilliStep() * missed[i];
        }
        return floors;
    }

    /** Indexes with the least floor first, equal ones in content order. */
    static int[] order(long[] floors) {
        Integer[] order = new Integer[floors.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Long.compare(floors[a], floors[b]));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    /**
     * One of them fitted, or null where it does not fit.
     *
     * @param atMm rear grips: their front face; fore grips: their rear face; butt grips stand at the butt whatever it is
     */
    @Nullable
    Option<Grip> fitted(int i, double atMm) {
        long key = station.equals(Station.BUTT_GRIP) ? 0 : HandleGraph.key(atMm);
        boolean[] asked = known.computeIfAbsent(key, any -> new boolean[size()]);
        @Nullable Option<Grip>[] options = fitted.computeIfAbsent(key, any -> options(size()));
        if (!asked[i]) {
            asked[i] = true;
            double length = Double.isNaN(cut[i]) ? atMm : cut[i];
            double from =
                    station.equals(Station.BUTT_GRIP) ? 0 : station.equals(Station.FORE_GRIP) ? atMm : atMm - length;
            List<Option<Grip>> one = new ArrayList<>(1);
            graph.addGrip(station, grip[i], from, length, one);
            options[i] = one.isEmpty() ? null : one.get(0);
        }
        return options[i];
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static @Nullable Option<Grip>[] options(int size) {
        return new Option[size];
    }

    /** Lightest a grip can be at a length: reamed for the thickest blank. */
    static double lightestMg(Grip grip, double thickMm, double lengthMm) {
        double share = Math.min(1, lengthMm / grip.lengthMm());
        double reamed = GripFit.stretches(grip) ? GripFit.STRETCH_REAM * thickMm : thickMm + GripFit.REAM_OVER_MM;
        double wide = Math.max(grip.boreMm(), Math.min(reamed, grip.reamMaxMm()));
        double outer = Math.min(grip.frontOdMm(), Math.min(grip.midOdMm(), grip.rearOdMm()));
        double left = Math.max(0, (outer * outer - wide * wide) / (outer * outer - grip.boreMm() * grip.boreMm()));
        return Math.max(0, grip.massMg() * share * left - 1);
    }

    private double gluedMg(double thinMm, double lengthMm) {
        double film = graph.task.catalog.rates().adhesiveFilmMm();
        double density = graph.fitter.with().adhesive().densityGMl();
        return Math.max(0, ArborRings.adhesiveMassG(thinMm, lengthMm, film, density) * 1000 - 1);
    }
}
