package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;

/**
 * Exact completion of one layout, every load-bearing part at least of one class: the cheapest build under linear prices, and
 * every build below a limit. Handle and guide train meet only in the thread and in the sums. Not for several threads at once.
 */
final class Completion {
    private static final long NONE = TrainGraph.NONE;

    private final Task task;
    private final Setting setting;
    private final Stand stand;
    private final int leastClass;
    private List<Dressing> dressings = new ArrayList<>();
    private long leftOut = NONE;
    private Linear k = new Linear(0, 0, 0, 0, 0, 0, 0, 0);
    private List<Priced> priced = List.of();

    /**
     * @param stand the handle's side of the layout
     * @param with thread, finish and adhesive, one entry for each thread worth looking at, the likeliest first
     * @param leastClass class every load-bearing part has at least
     */
    Completion(Stand stand, Setting setting, List<Consumables> with, int leastClass) {
        this.task = stand.task;
        this.setting = setting;
        this.stand = stand;
        this.leastClass = leastClass;
        for (Consumables one : with) {
            dressings.add(new Dressing(one));
        }
    }

    /** What depends on the thread: the blank's own wraps, the train, the ends of the handle. */
    private final class Dressing {
        final Consumables with;
        final Fitter fitter;
        private @Nullable TrainGraph known;
        private final Share blankShare;
        private final long style;
        private final long missed;
        private final long fixedMilli;
        private long rest;

        Dressing(Consumables with) {
            this.with = with;
            this.fitter = new Fitter(setting, with, task.tariff);
            this.blankShare = fitter.blank();
            int n = setting.guideCount();
            this.style = task.style.part(setting.blank(), setting.layout().form(), Station.BLANK, setting.blank(), n)
                    + task.style.part(setting.blank(), setting.layout().form(), Station.THREAD, with.thread(), n);
            this.missed = task.wishes.layout(setting)
                    + task.wishes.part(Station.BLANK, setting.blank(), n)
                    + task.wishes.part(Station.THREAD, with.thread(), n)
                    + task.wishes.part(Station.FINISH, with.finish(), n)
                    + task.wishes.part(Station.ADHESIVE, with.adhesive(), n);
            this.fixedMilli = task.tariff.fixedMilli(with, 0);
        }

        TrainGraph train() {
            TrainGraph graph = known;
            if (graph == null) {
                graph = new TrainGraph(task, setting, fitter, stand.stations, leastClass, stand.ends);
                known = graph;
            }
            return graph;
        }

        /** Cost of everything but the handle, the train at its cheapest. */
        long price(Linear k) {
            long cheapest = train().price(k);
            rest = TrainGraph.none(cheapest)
                    ? NONE
                    : k.constant() + k.of(blankShare, style, missed) + k.perMilli() * fixedMilli + cheapest;
            return rest;
        }
    }

    /**
     * Leaves threads out that cannot matter.
     *
     * @param floors a number no build with that thread scores below, thread by thread
     * @param limit scores from here on are of no interest
     */
    void narrow(long[] floors, long limit) {
        List<Dressing> list = new ArrayList<>();
        for (int t = 0; t < floors.length; t++) {
            if (floors[t] < limit) {
                list.add(dressings.get(t));
            } else {
                leftOut = Math.min(leftOut, floors[t]);
            }
        }
        dressings = list;
    }

    /** A thread with the cheapest build it makes. */
    private record Priced(Dressing dressing, long best) {}

    /** Takes builds below the limit; gives the limit for further ones. */
    interface Leaf {
        long build(Build build, long cost);
    }

    /**
     * Least cost of a build under these prices.
     *
     * @param prices prices
     * @param limit above it only "not below the limit" is of interest
     * @return the least cost where it is below the limit, else some number that is not below the limit and not above the least cost
     */
    long price(Linear prices, long limit) {
        k = prices;
        priced = List.of();
        Handle handle = stand.priced(k);
        List<Priced> list = new ArrayList<>();
        long least = leftOut;
        for (Dressing dressing : dressings) {
            long rest = dressing.price(k);
            if (TrainGraph.none(rest)) {
                continue;
            }
            long under = Math.min(limit, NONE) - rest;
            long best = handle.least(stand.dress(dressing.with), under);
            if (!TrainGraph.none(best)) {
                least = Math.min(least, rest + best);
                if (best < under) {
                    list.add(new Priced(dressing, rest + best));
                }
            }
        }
        list.sort(Comparator.comparingLong(Priced::best));
        priced = list;
        return least;
    }

    /** Every build that costs less than a limit under the prices last set; the limit may fall as they come. */
    void builds(long limit, Leaf leaf) {
        Walk walk = new Walk(limit, leaf);
        for (Priced one : priced) {
            if (one.best < walk.limit) {
                walk.thread(one.dressing);
            }
        }
    }

    /** One walk over the builds below a limit. */
    private final class Walk {
        private long limit;
        private final Leaf leaf;

        Walk(long limit, Leaf leaf) {
            // room is left to subtract costs below nought from it
            this.limit = Math.min(limit, NONE);
            this.leaf = leaf;
        }

        void thread(Dressing with) {
            stand.priced(k).below(stand.dress(with.with), limit - with.rest, (handle, cost) -> {
                trains(with, handle, cost);
                return limit == Long.MIN_VALUE ? Long.MIN_VALUE : limit - with.rest;
            });
        }

        private void trains(Dressing with, Handle.Chosen handle, long handleCost) {
            // rest holds the cheapest train; the walk adds the actual one
            long base = with.rest - with.train().best() + handleCost;
            for (TrainGraph.Train one : with.train().trains()) {
                if (!TrainGraph.none(one.best()) && base + one.best() < limit) {
                    guides(new Draft(with, handle, one), 0, base);
                }
            }
        }

        private void guides(Draft draft, int i, long soFar) {
            TrainGraph.Train one = draft.train;
            int n = one.at.length;
            int before = i == 0 ? -1 : one.at[i - 1][draft.picked[i - 1]];
            for (int j = 0; j < one.at[i].length; j++) {
                long toGo = one.toGo(i, one.at[i][j]);
                if (!TrainGraph.none(toGo)
                        && soFar + one.cost[i][j] + toGo < limit
                        && (before < 0 || one.mayFollow(i - 1, before, one.at[i][j]))) {
                    draft.picked[i] = j;
                    if (i + 1 < n) {
                        guides(draft, i + 1, soFar + one.cost[i][j]);
                    } else {
                        tips(draft, soFar + one.cost[i][j]);
                    }
                }
            }
        }

        private void tips(Draft draft, long soFar) {
            TrainGraph.Train one = draft.train;
            int last = one.at.length - 1;
            int before = one.at[last][draft.picked[last]];
            for (int t = 0; t < one.tipIndex.length; t++) {
                Option<TipTop> tip = one.tips.get(t);
                if (soFar + tip.cost < limit && one.mayEnd(before, t)) {
                    limit = Math.min(limit, leaf.build(draft.build(tip), soFar + tip.cost));
                }
            }
        }
    }

    /** A build in the making. */
    private final class Draft {
        private final Dressing with;
        private final Handle.Chosen chosen;
        private final TrainGraph.Train train;
        private final int[] picked;

        Draft(Dressing with, Handle.Chosen chosen, TrainGraph.Train train) {
            this.with = with;
            this.chosen = chosen;
            this.train = train;
            this.picked = new int[train.at.length];
        }

        Build build(Option<TipTop> tip) {
            SortedMap<Station, Choice> choices = new TreeMap<>();
            Behind.Way back = chosen.behind();
            put(choices, Station.BUTT_CAP, back.cap(), false);
            if (back.buttGrip() != null) {
                put(choices, Station.BUTT_GRIP, back.buttGrip(), true);
            }
            put(choices, Station.REAR_GRIP, back.rearGrip(), stand.split);
            put(choices, Station.REAR_CHECK, back.rearCheck(), false);
            SeatSet set = chosen.seat().set();
            choices.put(Station.SEAT, Choice.of(set.seat().id()));
            if (set.hood() != null) {
                choices.put(Station.HOOD, Choice.of(set.hood().id()));
            }
            if (set.arbor() != null) {
                choices.put(Station.SEAT_ARBORS, Choice.of(set.arbor().id()));
            }
            put(choices, Station.FORE_CHECK, chosen.ahead().foreCheck(), false);
            put(choices, Station.FORE_GRIP, chosen.ahead().foreGrip(), true);
            put(choices, Station.WINDING_CHECK, chosen.ahead().endCheck(), false);
            put(choices, Station.KEEPER, chosen.keeper(), false);
            put(choices, Station.DECAL, chosen.decal(), false);
            for (int i = 0; i < picked.length; i++) {
                String id = train.group.guides[train.at[i][picked[i]]].id();
                choices.put(Station.guide(i + 1), Choice.of(id));
            }
            put(choices, Station.TIP_TOP, tip, false);
            Consumables with = this.with.with;
            choices.put(Station.THREAD, Choice.of(with.thread().id()));
            choices.put(Station.FINISH, Choice.of(with.finish().id()));
            choices.put(Station.ADHESIVE, Choice.of(with.adhesive().id()));
            return new Build(setting.layout(), choices);
        }

        private static void put(
                SortedMap<Station, Choice> choices, Station station, Option<? extends Part> option, boolean cut) {
            if (option.part != null) {
                choices.put(station, new Choice(option.part.id(), cut ? option.lengthMm : 0));
            }
        }
    }
}
