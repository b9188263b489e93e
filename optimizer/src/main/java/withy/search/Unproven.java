package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import withy.catalog.Blank;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;
import withy.search.planning.Engine;
import withy.search.planning.EngineSettings;
import withy.search.planning.Improvement;
import withy.search.planning.Problem;
import withy.search.planning.Slot;

/** Hands a question whose proof was given up over to the engine. The only way to it, so that a proven answer never loads the engine. */
final class Unproven {
    private final Task task;

    Unproven(Task task) {
        this.task = task;
    }

    /** The same solution or a better one; the bound stays, so that it tells the gap. */
    Solution improve(Solution sofar, EngineSettings settings, Watch watch) {
        Set<Layout> layouts = layouts();
        if (layouts.isEmpty()) {
            return sofar;
        }
        Watch onlyBetter = new Watch(watch.interrupted(), (build, objectives, score) -> {
            if (score < sofar.score()) {
                watch.better().found(build, objectives, score);
            }
        });
        Improvement found = Engine.improve(problem(layouts, watch), sofar.build(), settings, onlyBetter);
        if (found.build() == null || found.score() >= sofar.score()) {
            return sofar;
        }
        return new Solution(
                found.build(),
                found.objectives(),
                found.score(),
                Math.min(sofar.bound(), found.score()),
                sofar.bound() >= found.score(),
                sofar.layoutsOpened() + found.completed());
    }

    /** The question as the engine takes it. */
    Problem problem(Set<Layout> layouts, Watch watch) {
        return new Problem(
                task.ground.catalog,
                task.brief,
                task.ground.rules,
                task.scoring,
                task.ground.style,
                task.ground.wishes,
                id -> task.ground.shape((Blank) Objects.requireNonNull(task.ground.catalog.find(id))),
                task.query.ceilings(),
                task.query.forced(),
                List.copyOf(layouts),
                slots(layouts),
                new LayoutKernel(task, watch, task.leastClass()));
    }

    Set<Layout> layouts() {
        Set<Layout> layouts = new LinkedHashSet<>();
        for (Site site : task.sites()) {
            layouts.addAll(site.layouts());
        }
        return layouts;
    }

    private List<Slot> slots(Set<Layout> layouts) {
        List<Slot> slots = new ArrayList<>();
        slots.add(slot(Station.BUTT_CAP, task.ground.caps));
        slots.add(grips(Station.BUTT_GRIP, task.ground.buttGrips, List.of()));
        slots.add(grips(Station.REAR_GRIP, task.ground.rearGrips, task.ground.fullGrips));
        slots.add(slot(Station.REAR_CHECK, task.ground.checks));
        slots.add(slot(Station.SEAT, task.ground.seats));
        slots.add(slot(Station.HOOD, task.ground.hoods));
        slots.add(slot(Station.SEAT_ARBORS, task.ground.arbors));
        slots.add(slot(Station.FORE_CHECK, task.ground.checks));
        slots.add(grips(Station.FORE_GRIP, task.ground.foreGrips, List.of()));
        slots.add(slot(Station.WINDING_CHECK, task.ground.checks));
        slots.add(slot(Station.KEEPER, task.ground.keepers));
        int most = layouts.stream().mapToInt(Layout::guideCount).max().orElse(0);
        for (int number = 1; number <= most; number++) {
            slots.add(slot(Station.guide(number), task.ground.candidates.of(PartKind.GUIDE)));
        }
        slots.add(slot(Station.TIP_TOP, task.ground.tipTops));
        slots.add(slot(Station.THREAD, task.ground.threads));
        slots.add(slot(Station.FINISH, task.ground.finishes));
        slots.add(slot(Station.ADHESIVE, task.ground.adhesives));
        slots.add(slot(Station.DECAL, task.ground.decals));
        return slots;
    }

    private Slot slot(Station station, List<? extends Part> parts) {
        return slot(station, parts, part -> List.of(0.0));
    }

    /** Grips at each cut, then grips whose length follows from their place. */
    private Slot grips(Station station, List<Grip> cut, List<Grip> full) {
        List<Grip> all = new ArrayList<>(cut);
        all.addAll(full);
        Set<Grip> uncut = new LinkedHashSet<>(full);
        return slot(
                station,
                all,
                part -> part instanceof Grip grip && !uncut.contains(grip) ? Cut.lengthsOf(grip) : List.of(0.0));
    }

    private Slot slot(Station station, List<? extends Part> parts, Function<Part, List<Double>> cuts) {
        Choice given = task.query.fixed().get(station);
        if (given != null) {
            return new Slot(station, List.of(given), true);
        }
        if (task.query.empty().contains(station)) {
            return new Slot(station, List.of(), true);
        }
        List<Choice> choices = new ArrayList<>();
        for (Part part : parts) {
            if (task.query.refused().contains(part.id())) {
                continue;
            }
            for (double cut : cuts.apply(part)) {
                choices.add(new Choice(part.id(), cut));
            }
        }
        return new Slot(station, choices, false);
    }
}
