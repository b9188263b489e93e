package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.WrapThread;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.search.planning.Kernel;

/**
 * Completes one layout for the engine: exactly where every rule fits the chain, otherwise the best of as many builds as are worth looking at.
 * Remembers which layouts had nothing, since the engine comes back to layouts.
 */
final class LayoutKernel implements Kernel {
    /** Builds measured in one walk; the engine would rather look at another layout than finish a long one. */
    private static final int MOST_BUILDS = 500;

    /** Handles and builds met in one walk. */
    private static final long MOST_STEPS = 20_000;

    private final Task task;
    private final Watch watch;
    private final int leastClass;
    private final Refusal refusal = new Refusal();
    private final Map<Shelved, Shelf> shelves = new HashMap<>();
    private final Map<Layout, Long> hopeless = new HashMap<>();

    LayoutKernel(Task task, Watch watch, int leastClass) {
        this.task = task;
        this.watch = watch;
        this.leastClass = leastClass;
    }

    @Override
    public @Nullable Build complete(Layout layout, Set<String> without, long under) {
        Long least = hopeless.get(layout);
        if (least != null && under <= least) {
            return null;
        }
        Build found = completeNow(layout, without, under);
        if (found == null && without.isEmpty()) {
            hopeless.put(layout, under);
        }
        return found;
    }

    private @Nullable Build completeNow(Layout layout, Set<String> without, long under) {
        if (!(task.ground.catalog.find(layout.blankId()) instanceof Blank blank) || task.ground.finishes.isEmpty()) {
            return null;
        }
        BlankShape shape = task.ground.shape(blank);
        Setting setting = Setting.of(task.ground.catalog, task.brief, shape, layout, task.ground.spots);
        task.ground.rules.onLayout(setting, refusal.reset());
        if (refusal.refused() || task.ground.adhesives.isEmpty()) {
            return null;
        }
        Task.Judged best = null;
        for (Stations alternative : task.alternatives) {
            Stations allowed = alternative.leavingOut(task.ground.catalog, without);
            if (!allowed.allows(Station.BLANK, blank)) {
                continue;
            }
            for (int least = leastClass; least <= blank.facts().durabilityClass(); least++) {
                long limit = best == null ? under : best.score();
                Task.Judged found = best(setting, shape, allowed, least, limit);
                best = found == null ? best : found;
            }
        }
        return best == null ? null : best.build();
    }

    private Task.@Nullable Judged best(Setting setting, BlankShape shape, Stations stations, int least, long limit) {
        List<Completion.Candidate> with = new ArrayList<>();
        for (WrapThread thread : task.ground.threadChoice.on(stations, setting.blank(), true)) {
            Consumables dressed = new Consumables(thread, task.ground.finishes.get(0), task.ground.adhesives.get(0));
            with.add(new Completion.Candidate(dressed, Long.MIN_VALUE));
        }
        if (with.isEmpty()) {
            return null;
        }
        Task.Judged best = null;
        Shelf shelf = shelves.computeIfAbsent(
                new Shelved(stations, setting.layout().form()),
                key -> new Shelf(task.ground, stations, setting.layout().form()));
        Fitter fitter = new Fitter(setting, with.get(0).with(), task.ground.tariff);
        for (Ends.Group ends : new Ends(task.ground, setting).groups()) {
            Completion completion =
                    new Completion(new Stand(shelf, stations, setting, fitter, ends), setting, with, least, limit);
            Dual dual = new Dual(task, completion, shape, least, watch, MOST_STEPS, MOST_BUILDS, Dual.FEW_STEPS);
            Task.Judged found = dual.solve(Prices.start(task.scoring), best == null ? limit : best.score())
                    .best();
            best = found == null ? best : found;
        }
        return best;
    }

    private record Shelved(Stations stations, HandleForm form) {}
}
