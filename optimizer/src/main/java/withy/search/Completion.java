package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Decal;
import withy.catalog.Keeper;
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
 * every build below a limit. Not for several threads at once.
 */
final class Completion {
    private static final long NONE = TrainGraph.NONE;

    private final Task task;
    private final Setting setting;
    private final List<Consumables> with;
    private final Stations stations;
    private final int leastClass;
    private final Ends.Group ends;
    private @Nullable List<Dressing> dressings;
    private long leftOut = NONE;
    private final HandleGraph handle;
    private final AheadGraph ahead;
    private @Nullable List<HandleGraph.SeatGroup> seats;
    private Linear k = new Linear(0, 0, 0, 0, 0, 0, 0, 0);
    private Behind behind;
    private List<Priced> priced = List.of();

    /**
     * @param with thread, finish and adhesive, one entry for each thread worth looking at, the likeliest first
     * @param leastClass class every load-bearing part has at least
     * @param ends caps and tip-tops that go together
     */
    Completion(Task task, Setting setting, List<Consumables> with, Stations stations, int leastClass, Ends.Group ends) {
        this.task = task;
        this.setting = setting;
        this.with = with;
        this.stations = stations;
        this.leastClass = leastClass;
        this.ends = ends;
        Fitter fitter = new Fitter(setting, with.get(0), task.tariff);
        this.handle = new HandleGraph(task, setting, fitter, stations, leastClass, ends);
        this.ahead = new AheadGraph(handle);
        this.behind = new Behind(handle, k);
    }

    /** What depends on the thread: the blank's own wraps, the train, the ends of the handle. */
    private static final class Dressing {
        final Consumables with;
        final Fitter fitter;
        final TrainGraph train;
        private final Share blankShare;
        private final long style;
        private final long missed;
        private final long fixedMilli;
        private final Map<Long, Long> ends = new HashMap<>();
        private long rest;

        Dressing(Task task, Setting setting, Consumables with, Stations stations, int leastClass, Ends.Group ends) {
            this.with = with;
            this.fitter = new Fitter(setting, with, task.tariff);
            this.train = new TrainGraph(task, setting, fitter, stations, leastClass, ends);
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

        /** Cost of everything but the handle, the train at its cheapest. */
        long price(Linear k) {
            ends.clear();
            long cheapest = train.price(k);
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
                list.add(new Dressing(task, setting, with.get(t), stations, leastClass, ends));
            } else {
                leftOut = Math.min(leftOut, floors[t]);
            }
        }
        dressings = list;
    }

    private List<Dressing> dressings() {
        List<Dressing> known = dressings;
        if (known == null) {
            known = new ArrayList<>();
            for (Consumables one : with) {
                known.add(new Dressing(task, setting, one, stations, leastClass, ends));
            }
            dressings = known;
        }
        return known;
    }

    /** A thread with its ways from every seat, cheapest seat first. */
    private record Priced(Dressing dressing, List<SeatWays> seats, long best) {}

    /** One seat with the cheapest handle around it. */
    private record SeatWays(HandleGraph.SeatGroup seat, long best) {}

    /** A way ahead with its cost, its cheapest keeper and inscription, and the cheapest way behind beside its fore grip. */
    private record Ahead(AheadGraph.Way way, long own, long ends, long behind) {
        long total() {
            return own + ends + behind;
        }
    }

    /** Takes builds below the limit; gives the limit for further ones. */
    interface Leaf {
        long build(Build build, long cost);
    }

    /**
     * Least cost of a build under these prices.
     *
     * @param prices prices
     * @param limit above it only "not below the limit" is of interest
     * @param handleFloor a number the handle's cost under these prices is not below
     * @return the least cost where it is below the limit, else some number that is not below the limit and not above the least cost
     */
    long price(Linear prices, long limit, long handleFloor) {
        k = prices;
        priced = List.of();
        long floor = leftOut;
        for (Dressing dressing : dressings()) {
            if (!TrainGraph.none(dressing.price(k))) {
                floor = Math.min(floor, dressing.rest + handleFloor);
            }
        }
        if (floor >= limit || TrainGraph.none(floor)) {
            return floor;
        }
        behind = new Behind(handle, k);
        ahead.price(k);
        List<Priced> list = new ArrayList<>();
        long least = leftOut;
        long floor0 = handleFloor;
        for (Dressing dressing : dressings()) {
            if (TrainGraph.none(dressing.rest)) {
                continue;
            }
            long floorNow = list.isEmpty() ? floor0 : Math.max(floor0, handleFloor(list.get(0), dressing));
            if (dressing.rest + floorNow < limit) {
                Priced one = price(dressing, limit);
                if (!TrainGraph.none(one.best)) {
                    list.add(one);
                    least = Math.min(least, one.best);
                }
            } else {
                least = Math.min(least, dressing.rest + floorNow);
            }
        }
        list.sort(Comparator.comparingLong(Priced::best));
        priced = list;
        return least;
    }

    /** The handle with another thread: only the ends of the handle can get cheaper. */
    private long handleFloor(Priced known, Dressing other) {
        long saved = 0;
        for (Map.Entry<Long, Long> end : known.dressing.ends.entrySet()) {
            long there = endsOf(other, HandleGraph.place(end.getKey()));
            if (!TrainGraph.none(end.getValue()) && !TrainGraph.none(there)) {
                saved = Math.max(saved, end.getValue() - there);
            }
        }
        return known.best - known.dressing.rest - saved;
    }

    /** Only seats from which a build below the limit may start are worked out; the others are not below it. */
    private Priced price(Dressing dressing, long limit) {
        List<SeatWays> list = new ArrayList<>();
        long room = Math.min(limit, NONE) - dressing.rest;
        long least = room;
        long behindFloor = behind.floor();
        if (!TrainGraph.none(behindFloor)) {
            for (HandleGraph.SeatGroup seat : seats()) {
                SeatWays ways = waysOf(dressing, seat, room, behindFloor);
                if (!TrainGraph.none(ways.best)) {
                    list.add(ways);
                    least = Math.min(least, ways.best);
                }
            }
        }
        list.sort(Comparator.comparingLong(SeatWays::best));
        return new Priced(dressing, list, TrainGraph.none(least) ? NONE : dressing.rest + least);
    }

    private long cheapestSeat(HandleGraph.SeatGroup seat) {
        long cheapest = NONE;
        for (HandleGraph.SeatOption option : seat.options()) {
            option.option().price(k);
            cheapest = Math.min(cheapest, option.option().cost);
        }
        return cheapest;
    }

    private List<HandleGraph.SeatGroup> seats() {
        List<HandleGraph.SeatGroup> known = seats;
        if (known == null) {
            known = handle.seats();
            seats = known;
        }
        return known;
    }

    /** The cheapest handle around a seat, where it leaves room below the limit. */
    private SeatWays waysOf(Dressing dressing, HandleGraph.SeatGroup seat, long room, long behindFloor) {
        long cheapest = cheapestSeat(seat);
        Cheapest least = new Cheapest(dressing, seat.set(), room - cheapest, behindFloor);
        ahead.ways(seat.set(), least, least);
        return new SeatWays(seat, least.found ? cheapest + least.best : NONE);
    }

    /** Keeps the cheapest way around a seat. */
    private final class Cheapest implements AheadGraph.Asked, AheadGraph.Visitor {
        private final Dressing dressing;
        private final SeatSet set;
        private final long behindFloor;
        private long best;
        private boolean found;

        Cheapest(Dressing dressing, SeatSet set, long under, long behindFloor) {
            this.dressing = dressing;
            this.set = set;
            this.best = under;
            this.behindFloor = behindFloor;
        }

        @Override
        public long ends(double frontMm) {
            return endsOf(dressing, frontMm);
        }

        @Override
        public long under() {
            return best - behindFloor;
        }

        @Override
        public void way(AheadGraph.Way way, long ends) {
            BitSet match = task.gripMatch.rearsBeside(setting, way.foreGrip().part, handle.split);
            long own = way.cost() + ends;
            long back = behind.best(set, match, best - own);
            if (!TrainGraph.none(back) && own + back < best) {
                best = own + back;
                found = true;
            }
        }
    }

    /** Cheapest keeper and inscription ahead of a front end. */
    private long endsOf(Dressing dressing, double frontMm) {
        Long known = dressing.ends.get(HandleGraph.key(frontMm));
        if (known == null) {
            long keeper = cheapest(ahead.keepersAheadOf(frontMm, dressing.fitter));
            long decal = cheapest(ahead.decalsAheadOf(frontMm, dressing.fitter));
            known = TrainGraph.none(keeper) || TrainGraph.none(decal) ? NONE : keeper + decal;
            dressing.ends.put(HandleGraph.key(frontMm), known);
        }
        return known;
    }

    private <P extends Part> long cheapest(List<Option<P>> options) {
        long least = NONE / 8;
        boolean any = false;
        for (Option<P> option : options) {
            option.price(k);
            if (!any || option.cost < least) {
                least = option.cost;
                any = true;
            }
        }
        return any ? least : NONE;
    }

    /** Every build that costs less than a limit under the prices last set; the limit may fall as they come. */
    void builds(long limit, Leaf leaf) {
        Walk walk = new Walk(limit, leaf);
        for (Priced one : priced) {
            walk.thread(one);
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

        void thread(Priced one) {
            Dressing with = one.dressing;
            long behindFloor = behind.floor();
            for (SeatWays seat : one.seats) {
                if (with.rest + seat.best >= limit) {
                    break;
                }
                for (HandleGraph.SeatOption option : seat.seat.options()) {
                    long before = with.rest + option.option().cost;
                    AheadGraph.Asked asked = new AheadGraph.Asked() {
                        @Override
                        public long ends(double frontMm) {
                            return endsOf(with, frontMm);
                        }

                        @Override
                        public long under() {
                            return limit == Long.MIN_VALUE ? Long.MIN_VALUE / 2 : limit - before - behindFloor;
                        }
                    };
                    ahead.ways(option.set(), asked, (way, ends) -> {
                        BitSet match = task.gripMatch.rearsBeside(setting, way.foreGrip().part, handle.split);
                        long own = way.cost();
                        long back = behind.best(option.set(), match, limit - before - own - ends);
                        if (!TrainGraph.none(back)) {
                            ends(with, option, new Ahead(way, own, ends, back));
                        }
                    });
                }
            }
        }

        private void ends(Dressing with, HandleGraph.SeatOption seat, Ahead way) {
            for (Option<Keeper> keeper : ahead.keepersAheadOf(way.way.frontMm(), with.fitter)) {
                for (Option<Decal> decal : ahead.decalsAheadOf(way.way.frontMm(), with.fitter)) {
                    long before = seat.option().cost + way.own + keeper.cost + decal.cost;
                    if (with.rest + before + way.behind < limit) {
                        behind.ways(seat.set(), way.way.foreGrip().part, limit - with.rest - before, back -> {
                            trains(new Handle(with, seat, way.way, keeper, decal, back), before + back.cost());
                            return limit == Long.MIN_VALUE ? Long.MIN_VALUE : limit - with.rest - before;
                        });
                    }
                }
            }
        }

        private void trains(Handle handleChoice, long handleCost) {
            Dressing with = handleChoice.with;
            // rest holds the cheapest train; the walk adds the actual one
            long base = with.rest - with.train.best() + handleCost;
            for (TrainGraph.Train one : with.train.trains()) {
                if (!TrainGraph.none(one.best()) && base + one.best() < limit) {
                    guides(new Draft(handleChoice, one), 0, base);
                }
            }
        }

        private void guides(Draft draft, int i, long soFar) {
            TrainGraph.Train one = draft.train;
            int n = one.at.length;
            boolean[] may = i == 0 ? null : one.group.follows(setting, i)[one.at[i - 1][draft.picked[i - 1]]];
            for (int j = 0; j < one.at[i].length; j++) {
                if (one.toGo[i][j] < NONE
                        && soFar + one.cost[i][j] + one.toGo[i][j] < limit
                        && (may == null || may[one.at[i][j]])) {
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
            boolean[] may = one.group.tipFollows(setting)[one.at[last][draft.picked[last]]];
            for (int t = 0; t < one.tipIndex.length; t++) {
                Option<TipTop> tip = one.tips.get(t);
                if (soFar + tip.cost < limit && may[one.tipIndex[t]]) {
                    limit = Math.min(limit, leaf.build(draft.build(tip), soFar + tip.cost));
                }
            }
        }
    }

    /** Everything but the train. */
    private record Handle(
            Dressing with,
            HandleGraph.SeatOption seat,
            AheadGraph.Way way,
            Option<Keeper> keeper,
            Option<Decal> decal,
            Behind.Way back) {}

    /** A build in the making. */
    private final class Draft {
        private final Handle chosen;
        private final TrainGraph.Train train;
        private final int[] picked;

        Draft(Handle chosen, TrainGraph.Train train) {
            this.chosen = chosen;
            this.train = train;
            this.picked = new int[train.at.length];
        }

        Build build(Option<TipTop> tip) {
            SortedMap<Station, Choice> choices = new TreeMap<>();
            Behind.Way back = chosen.back;
            put(choices, Station.BUTT_CAP, back.cap(), false);
            if (back.buttGrip() != null) {
                put(choices, Station.BUTT_GRIP, back.buttGrip(), true);
            }
            put(choices, Station.REAR_GRIP, back.rearGrip(), handle.split);
            put(choices, Station.REAR_CHECK, back.rearCheck(), false);
            SeatSet set = chosen.seat.set();
            choices.put(Station.SEAT, Choice.of(set.seat().id()));
            if (set.hood() != null) {
                choices.put(Station.HOOD, Choice.of(set.hood().id()));
            }
            if (set.arbor() != null) {
                choices.put(Station.SEAT_ARBORS, Choice.of(set.arbor().id()));
            }
            put(choices, Station.FORE_CHECK, chosen.way.foreCheck(), false);
            put(choices, Station.FORE_GRIP, chosen.way.foreGrip(), true);
            put(choices, Station.WINDING_CHECK, chosen.way.endCheck(), false);
            put(choices, Station.KEEPER, chosen.keeper, false);
            put(choices, Station.DECAL, chosen.decal, false);
            for (int i = 0; i < picked.length; i++) {
                String id = train.group.guides[train.at[i][picked[i]]].id();
                choices.put(Station.guide(i + 1), Choice.of(id));
            }
            put(choices, Station.TIP_TOP, tip, false);
            Consumables with = chosen.with.with;
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
