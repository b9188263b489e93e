package withy.search.planning;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.objectives.Scoring;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;

/**
 * Moves on several stations at once, for parts that only go together: two or three stations anew, a run of equal guides, a seat with hood and
 * arbors, the reel foot against the cut of the rear grip; and now and then the layout or one near it completed by the kernel without some of the
 * parts in use, which leads around a rule that the kernel does not know.
 */
public final class FitTogetherMoves implements MoveIteratorFactory<RodPlan, Refit> {
    /** Of this many moves one asks the kernel. */
    private static final int KERNEL_EVERY = 40;

    private static final int MOST_LEFT_OUT = 3;

    /** For the engine. */
    public FitTogetherMoves() {}

    @Override
    public long getSize(ScoreDirector<RodPlan> director) {
        long stations = director.getWorkingSolution().rod().stations().size();
        return stations * stations;
    }

    @Override
    public Iterator<Refit> createOriginalMoveIterator(ScoreDirector<RodPlan> director) {
        return createRandomMoveIterator(director, new Random(0));
    }

    @Override
    public Iterator<Refit> createRandomMoveIterator(ScoreDirector<RodPlan> director, Random random) {
        RodChoice rod = director.getWorkingSolution().rod();
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return true;
            }

            @Override
            public Refit next() {
                return new Draw(rod, random).move();
            }
        };
    }

    /** One random move. */
    private static final class Draw {
        private final RodChoice rod;
        private final Random random;
        private final Map<StationChoice, @Nullable Choice> changes = new LinkedHashMap<>();

        Draw(RodChoice rod, Random random) {
            this.rod = rod;
            this.random = random;
        }

        Refit move() {
            Layout layout = rod.layout();
            if (layout == null) {
                return new Refit(rod, null, changes);
            }
            if (random.nextInt(KERNEL_EVERY) == 0) {
                return around(layout);
            }
            return switch (random.nextInt(6)) {
                case 0 -> guides(layout);
                case 1 -> seat();
                case 2 -> foot(layout);
                case 3 -> anew(layout, 3);
                default -> anew(layout, 2);
            };
        }

        private Refit anew(Layout layout, int stations) {
            for (int i = 0; i < stations; i++) {
                StationChoice station =
                        rod.stations().get(random.nextInt(rod.stations().size()));
                if (station.station().number() <= layout.guideCount()) {
                    change(station);
                }
            }
            return new Refit(rod, null, changes);
        }

        private Refit guides(Layout layout) {
            int first = 1 + random.nextInt(layout.guideCount());
            int last = Math.min(layout.guideCount(), first + 1 + random.nextInt(layout.guideCount()));
            Choice chosen = null;
            for (StationChoice station : rod.stations()) {
                int number = station.station().number();
                if (number >= first && number <= last && !station.given()) {
                    chosen = number == first || chosen == null ? any(station) : chosen;
                    if (chosen != null && station.choices().contains(chosen)) {
                        changes.put(station, chosen);
                    }
                }
            }
            return new Refit(rod, null, changes);
        }

        private Refit seat() {
            Set<Station> together = Set.of(Station.SEAT, Station.HOOD, Station.SEAT_ARBORS);
            for (StationChoice station : rod.stations()) {
                if (together.contains(station.station())) {
                    change(station);
                }
            }
            return new Refit(rod, null, changes);
        }

        private Refit foot(Layout layout) {
            int by = Layout.GRID_MM * (1 + random.nextInt(3)) * (random.nextBoolean() ? 1 : -1);
            int foot = layout.reelFootMm() + by;
            if (!rod.feetMm().contains(foot)) {
                return new Refit(rod, null, changes);
            }
            for (StationChoice station : rod.stations()) {
                Choice choice = station.choice();
                if (station.station().equals(Station.REAR_GRIP) && choice != null && !station.given()) {
                    Choice cut = new Choice(choice.partId(), choice.cutMm() + by);
                    if (random.nextBoolean() && station.choices().contains(cut)) {
                        changes.put(station, cut);
                    }
                }
            }
            return new Refit(rod, new Layout(layout.blankId(), foot, layout.form(), layout.guideCount()), changes);
        }

        private Refit around(Layout layout) {
            List<String> used = new ArrayList<>(new TreeSet<>(rod.stations().stream()
                    .map(StationChoice::choice)
                    .filter(choice -> choice != null)
                    .map(Choice::partId)
                    .toList()));
            Set<String> without = new TreeSet<>();
            int leftOut = used.isEmpty() ? 0 : 1 + random.nextInt(MOST_LEFT_OUT);
            for (int i = 0; i < leftOut; i++) {
                without.add(used.get(random.nextInt(used.size())));
            }
            List<Layout> layouts = rod.desk().problem().layouts();
            Layout on = random.nextInt(4) > 0 ? layout : layouts.get(random.nextInt(layouts.size()));
            Reading now = rod.reading();
            long under = now == null || !now.legal()
                    ? Long.MAX_VALUE
                    : rod.desk().problem().scoring().score(now.objectives()) + (long) Scoring.SCALE;
            Build build = rod.desk().complete(on, without, under);
            return build == null ? new Refit(rod, null, changes) : Refit.to(rod, build);
        }

        private void change(StationChoice station) {
            if (!station.given()) {
                changes.put(station, any(station));
            }
        }

        /** Any of its parts, or none. */
        private @Nullable Choice any(StationChoice station) {
            List<Choice> choices = station.choices();
            int at = random.nextInt(choices.size() + 1);
            return at == choices.size() ? null : choices.get(at);
        }
    }
}
