package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.rod.BlankShape;
import withy.rod.GuidePlan;
import withy.rod.Layout;
import withy.rod.Setting;

/** Where the guides of a blank stand, layout by layout: the same whatever parts are given. Not for several threads at once. */
final class Spacings {
    /** In the place of a stretch: all reel positions. */
    static final int ANYWHERE = -1;

    /** A guide that shifts this much from one reel position to the next stands on another side of a joint, mm. */
    private static final double JUMP_MM = 10;

    private final Ground ground;
    private final BlankShape shape;
    /** True where guides stand only where they can be spaced evenly. */
    private final boolean ruled;
    /** No more can be. */
    private final int mostGuides;

    private final Map<Integer, Boolean> evenly = new HashMap<>();
    private final Map<Integer, Setting> settings = new HashMap<>();
    private final Map<Stretch, Optional<Nearest>> nearest = new HashMap<>();
    private final Map<Integer, Map<Integer, Integer>> stretches = new HashMap<>();
    private final Map<List<Integer>, Double> nearestOfAll = new HashMap<>();

    Spacings(Ground ground, BlankShape shape) {
        this.ground = ground;
        this.shape = shape;
        this.ruled = ground.ruled("guide-train");
        this.mostGuides = GuidePlan.mostGuides(ground.brief, shape.blank().lengthMm(), ground.firstFoot());
    }

    BlankShape shape() {
        return shape;
    }

    /**
     * Guides as near the reel foot as any reel position of a stretch brings them.
     *
     * @param setting has them there
     * @param thinnestMm for each number the place where the blank is thinnest, mm
     */
    record Nearest(Setting setting, double[] thinnestMm) {}

    /** What a layout with a split handle fixes; guides stand the same with a full one. */
    Setting at(int foot, int count) {
        return settings.computeIfAbsent(foot * 100 + count, any -> {
            Layout layout = new Layout(shape.blank().id(), foot, HandleForm.SPLIT, count);
            return ground.setting(shape, layout);
        });
    }

    /** True where so many guides can be spaced evenly somewhere. */
    boolean evenly(int count) {
        return evenly.computeIfAbsent(
                count,
                any -> count <= mostGuides
                        && ground.feet.stream().anyMatch(foot -> at(foot, count).spaced()));
    }

    /** True where a guide may have a number, as far as the rules ask for even spaces. */
    boolean mayNumber(int number) {
        return !ruled || number <= mostGuides;
    }

    private record Stretch(int count, int number) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Stretch that && count == that.count && number == that.number;
        }

        @Override
        public int hashCode() {
            return 31 * count + number;
        }
    }

    /**
     * Which stretch of reel positions one is in: from one to the next of a stretch the guides of a count move little by little, and do not change the side
     * of a joint. {@link #ANYWHERE} where they never do.
     */
    int stretch(int foot, int count) {
        Map<Integer, Integer> of = stretches.computeIfAbsent(count, this::stretchesNow);
        return of.getOrDefault(foot, ANYWHERE);
    }

    private Map<Integer, Integer> stretchesNow(int count) {
        Map<Integer, Integer> of = new HashMap<>();
        Setting before = null;
        int number = 0;
        for (int foot : ground.feet) {
            Setting setting = at(foot, count);
            if (setting.spaced() || !ruled) {
                number += before != null && jumps(before, setting) ? 1 : 0;
                of.put(foot, number);
                before = setting;
            }
        }
        return number == 0 ? Map.of() : of;
    }

    private static boolean jumps(Setting one, Setting next) {
        for (int n = 1; n <= one.guideCount(); n++) {
            if (Math.abs(next.guideMm(n) - one.guideMm(n)) > JUMP_MM) {
                return true;
            }
        }
        return false;
    }

    /** With the reel in one stretch; null where none can stand. */
    @Nullable
    Nearest nearest(int count, int stretch) {
        return nearest.computeIfAbsent(
                        new Stretch(count, stretch), any -> Optional.ofNullable(nearestNow(count, stretch)))
                .orElse(null);
    }

    /** Where the nearest of guides in these counts, tip and joints is with the reel at whatever place, told from its foot, mm. */
    double nearestMm(List<Integer> counts) {
        return nearestOfAll.computeIfAbsent(counts, this::nearestOfAllNow);
    }

    private double nearestOfAllNow(List<Integer> counts) {
        double least = shape.blank().lengthMm();
        for (BlankShape.Joint joint : shape.joints()) {
            least = Math.min(least, joint.fromMm());
        }
        least -= ground.lastFoot();
        for (int count : counts) {
            Nearest guides = nearest(count, ANYWHERE);
            for (int number = 1; guides != null && number <= count; number++) {
                Setting there = guides.setting();
                least = Math.min(least, there.guideMm(number) - there.footMm());
            }
        }
        return least;
    }

    private @Nullable Nearest nearestNow(int count, int stretch) {
        Setting furthest = null;
        double[] nearestMm = new double[count];
        double[] thinnest = new double[count];
        double[] thinnestOd = new double[count];
        Arrays.fill(nearestMm, Double.POSITIVE_INFINITY);
        Arrays.fill(thinnestOd, Double.POSITIVE_INFINITY);
        for (int foot : ground.feet) {
            Setting setting = at(foot, count);
            boolean in = stretch == ANYWHERE || stretch(foot, count) == stretch;
            if (in && (setting.spaced() || !ruled)) {
                furthest = setting;
                for (int n = 0; n < count; n++) {
                    double x = setting.guideMm(n + 1);
                    double od = setting.odAt(x);
                    nearestMm[n] = Math.min(nearestMm[n], x - foot);
                    thinnest[n] = od < thinnestOd[n] ? x : thinnest[n];
                    thinnestOd[n] = Math.min(thinnestOd[n], od);
                }
            }
        }
        if (furthest == null) {
            return null;
        }
        for (int n = 0; n < count; n++) {
            nearestMm[n] += furthest.footMm();
        }
        return new Nearest(furthest.withGuidesAt(nearestMm), thinnest);
    }
}
