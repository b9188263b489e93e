package withy.machine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.WrapThread;
import withy.mechanics.ThreadWrap;
import withy.rod.Build;
import withy.rod.Labour;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;
import withy.rod.Wraps;

/**
 * Thread and finish of a rod: guide by guide, in all, and what other sizes of thread would weigh on the same rod.
 *
 * @param guides stripper first
 * @param total all wraps of the rod, ferrules, keeper and tip-top included
 * @param threads one a size letter and diameter, thinnest first
 */
public record WrapTable(List<GuideWrap> guides, Amount total, List<ThreadSize> threads) {
    private static final double MG_PER_G = 1000;

    public WrapTable {
        guides = List.copyOf(guides);
        threads = List.copyOf(threads);
    }

    /**
     * Thread and finish.
     *
     * @param threadM thread, m
     * @param threadG thread, g
     * @param finishMl finish on the rod, ml
     * @param finishG finish cured, g
     */
    public record Amount(double threadM, double threadG, double finishMl, double finishG) {
        /** Both, g. */
        public double massG() {
            return threadG + finishG;
        }

        static Amount of(Share share) {
            return new Amount(
                    share.threadMm() / 1000.0,
                    share.threadMg() / MG_PER_G,
                    share.finishUl() / 1000.0,
                    share.finishMg() / MG_PER_G);
        }
    }

    /**
     * One guide's wraps.
     *
     * @param station which
     * @param feet one or two
     * @param wrapMm covered by each foot's wrap, mm
     * @param turns turns a foot
     * @param underTurns turns of the underwrap a foot, 0 without one
     * @param amount both feet
     */
    public record GuideWrap(Station station, int feet, double wrapMm, double turns, double underTurns, Amount amount) {}

    /**
     * The same rod wrapped with another thread.
     *
     * @param thread which
     * @param amount all wraps
     * @param weightG the whole rod, g
     * @param swingWeightKgM2 the whole rod, kg·m²
     * @param own true for the thread the rod is wrapped with
     */
    public record ThreadSize(WrapThread thread, Amount amount, double weightG, double swingWeightKgM2, boolean own) {}

    /** Works it out. */
    public static WrapTable of(Rod rod) {
        List<GuideWrap> guides = new ArrayList<>();
        double thread = rod.with().thread().diameterMm();
        boolean under = rod.brief().durabilityClass() >= Labour.UNDERWRAP_CLASS;
        for (Placed placed : rod.placed().values()) {
            if (placed.part() instanceof Guide guide) {
                double wrap = guide.footLengthMm() + Wraps.BEYOND_FOOT_MM;
                double underMm = guide.footLengthMm() + Wraps.UNDERWRAP_BEYOND_MM;
                double od = rod.setting().odAt(placed.fromMm());
                Share share = rod.shares().getOrDefault(placed.station(), Share.NONE);
                guides.add(new GuideWrap(
                        placed.station(),
                        guide.feet(),
                        wrap,
                        new ThreadWrap(wrap, od, thread).turns(),
                        under ? new ThreadWrap(underMm, od, thread).turns() : 0,
                        Amount.of(share)));
            }
        }
        return new WrapTable(guides, Amount.of(rod.total()), threads(rod));
    }

    private static List<ThreadSize> threads(Rod rod) {
        SortedMap<String, WrapThread> sizes = new TreeMap<>();
        List<WrapThread> all = new ArrayList<>(rod.setting().catalog().all(PartKind.THREAD, WrapThread.class));
        all.sort(Comparator.comparing(WrapThread::id));
        WrapThread own = rod.with().thread();
        sizes.put(size(own), own);
        all.forEach(thread -> sizes.putIfAbsent(size(thread), thread));
        List<ThreadSize> rows = new ArrayList<>();
        for (WrapThread thread : sizes.values()) {
            Rod other = thread.id().equals(own.id())
                    ? rod
                    : Rod.measure(rod.setting(), rod.build().with(Station.THREAD, Build.Choice.of(thread.id())));
            rows.add(new ThreadSize(
                    thread,
                    Amount.of(other.total()),
                    other.figures().weightG(),
                    other.figures().swingWeightKgM2(),
                    thread.id().equals(own.id())));
        }
        rows.sort(Comparator.comparingDouble((ThreadSize row) -> row.thread().diameterMm())
                .thenComparingDouble(row -> row.thread().tex())
                .thenComparing(row -> row.thread().id()));
        return rows;
    }

    /** Threads of one letter, diameter and linear density differ by colour only. */
    private static String size(WrapThread thread) {
        return thread.letter() + ' ' + thread.diameterMm() + ' ' + thread.tex();
    }
}
