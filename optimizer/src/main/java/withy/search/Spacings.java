package withy.search;

import java.util.Arrays;
import java.util.HashMap;
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
    private final Ground ground;
    private final BlankShape shape;
    /** True where guides stand only where they can be spaced evenly. */
    private final boolean ruled;
    /** No more can be. */
    private final int mostGuides;

    private final Map<Integer, Boolean> evenly = new HashMap<>();
    private final Map<Integer, Setting> settings = new HashMap<>();
    private final Map<Integer, Optional<Nearest>> nearest = new HashMap<>();

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
     * Guides as near the reel foot as any reel position brings them.
     *
     * @param setting has them there
     * @param thinnestMm for each number the place where the blank is thinnest, mm
     */
    record Nearest(Setting setting, double[] thinnestMm) {}

    /** What a layout with a split handle fixes; guides stand the same with a full one. */
    Setting at(int foot, int count) {
        return settings.computeIfAbsent(foot * 100 + count, any -> {
            Layout layout = new Layout(shape.blank().id(), foot, HandleForm.SPLIT, count);
            return Setting.of(ground.catalog, ground.brief, shape, layout);
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

    /** Null where none can stand. */
    @Nullable
    Nearest nearest(int count) {
        return nearest.computeIfAbsent(count, any -> Optional.ofNullable(nearestNow(count)))
                .orElse(null);
    }

    private @Nullable Nearest nearestNow(int count) {
        Setting furthest = null;
        double[] nearestMm = new double[count];
        double[] thinnest = new double[count];
        double[] thinnestOd = new double[count];
        Arrays.fill(nearestMm, Double.POSITIVE_INFINITY);
        Arrays.fill(thinnestOd, Double.POSITIVE_INFINITY);
        for (int foot : ground.feet) {
            Setting setting = at(foot, count);
            if (setting.spaced() || !ruled) {
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
