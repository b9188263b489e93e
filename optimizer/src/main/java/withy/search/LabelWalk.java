package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * One walk over the builds of a layout, number by number: of all beginnings (a handle and the guides so far) that end in guides of one ring, only those
 * are kept that no other beats in every sum that decides. What can follow is the same for both, so the beaten one is never needed. Holds only where
 * builds are what their sums promise: one that is refused by a rule outside the chain, or dearer, may have beaten one that is not.
 */
final class LabelWalk implements Walk {
    /** Beginnings kept of one number before it is given up. */
    private static final int MOST_KEPT = 200_000;

    /** The same before those that are beaten are sifted out. */
    private static final int MOST_MET = 600_000;

    /** Parts of handles met before it is worth finding what each seat costs at least. */
    private static final long SOON = 5_000;

    /** Steps between two looks for an interruption. */
    private static final long STEPS_BETWEEN_LOOKS = 256;

    private final Aim aim;
    private final List<Test> tests;
    private final TestTrains trains;
    private final boolean[] decides;
    private final Leaf leaf;
    private final long mostSteps;
    private final BooleanSupplier interrupted;
    private final Map<Stand, Map<SeatGroup, Map<BitSet, HandleLabels.Ways>>> behind = new IdentityHashMap<>();
    private final Map<Stand, TestSeats> seats = new IdentityHashMap<>();
    private long limit;
    private long steps;
    private boolean gaveUp;

    /**
     * @param aim what a build is scored by
     * @param limit the limit of the walk; may fall as builds come
     * @param tests prices, the first those last set
     * @param decides in which of them a beginning must be beaten: the score's own ahead of the balance zone, in it and behind it, and every ceiling
     * @param mostSteps beginnings met before it is given up
     * @param interrupted asked now and then
     */
    LabelWalk(
            Aim aim,
            long limit,
            List<Test> tests,
            boolean[] decides,
            long mostSteps,
            BooleanSupplier interrupted,
            Leaf leaf) {
        this.aim = aim;
        this.tests = tests;
        this.trains = new TestTrains(tests);
        this.decides = decides.clone();
        this.leaf = leaf;
        this.mostSteps = mostSteps;
        this.interrupted = interrupted;
        this.limit = Math.min(limit, TrainGraph.NONE);
    }

    /**
     * A beginning.
     *
     * @param handle its handle
     * @param before the same without its last guide; null where that is the handle alone
     * @param index index of the last guide among those that may stand there
     * @param used pieces taken of each guide of the group
     */
    private record Label(Chosen handle, @Nullable Label before, int index, int[] used) {}

    @Override
    public long under() {
        return tests.get(0).under(limit);
    }

    @Override
    public boolean whole() {
        return !gaveUp;
    }

    private boolean step() {
        steps++;
        if (steps > mostSteps || steps % STEPS_BETWEEN_LOOKS == 0 && interrupted.getAsBoolean()) {
            giveUp();
        }
        return !gaveUp;
    }

    private void giveUp() {
        gaveUp = true;
        limit = Long.MIN_VALUE;
    }

    @Override
    public void thread(Dressing with) {
        TrainCosts[] costs = trains.of(with);
        List<Unbeaten.Of<Chosen>> handles = handles(with, costs);
        List<TrainGraph.Train> trains = with.graph().trains();
        for (int t = 0; t < trains.size() && !gaveUp; t++) {
            List<Unbeaten.Of<Label>> beginnings = beginnings(with, handles, costs, t);
            if (!beginnings.isEmpty()) {
                new Guides(with, trains.get(t), TrainCosts.of(costs, t)).from(beginnings);
            }
        }
    }

    /** The handles no other beats; where they are not found soon, what each seat costs is found first, which spares most of the steps. */
    private List<Unbeaten.Of<Chosen>> handles(Dressing with, TrainCosts[] costs) {
        TestSeats known = seats.get(with.stand);
        if (known == null) {
            long soon = steps + SOON;
            List<Unbeaten.Of<Chosen>> found = labels(with, costs, TestSeats.UNKNOWN, () -> step() && steps <= soon)
                    .all();
            if (gaveUp || steps <= soon) {
                return found;
            }
            behind.remove(with.stand);
            known = new TestSeats(with.stand, tests, decides, with.leastClass, under() - with.rest());
            seats.put(with.stand, known);
        }
        return labels(with, costs, known, this::step).all();
    }

    private HandleLabels labels(Dressing with, TrainCosts[] costs, TestSeats known, BooleanSupplier step) {
        return new HandleLabels(
                with,
                tests,
                decides,
                costs,
                known,
                behind.computeIfAbsent(with.stand, any -> new IdentityHashMap<>()),
                this::under,
                limit,
                step,
                this::giveUp);
    }

    private static int compare(List<Integer> one, List<Integer> other) {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            if (!one.get(i).equals(other.get(i))) {
                return Integer.compare(one.get(i), other.get(i));
            }
        }
        return Integer.compare(one.size(), other.size());
    }

    /** Handles that may go with a train. */
    private List<Unbeaten.Of<Label>> beginnings(
            Dressing with, List<Unbeaten.Of<Chosen>> handles, TrainCosts[] costs, int train) {
        List<Unbeaten.Of<Label>> labels = new ArrayList<>();
        int[] none = new int[with.graph().trains().get(train).group.guides.length];
        for (Unbeaten.Of<Chosen> handle : handles) {
            boolean may = true;
            for (int f = 0; f < costs.length && may; f++) {
                may = tests.get(f).may(handle.sums()[f], costs[f].best(train), limit);
            }
            if (may) {
                labels.add(new Unbeaten.Of<>(new Label(handle.thing(), null, 0, none), handle.sums()));
            }
        }
        return labels;
    }

    /** Number by number along one train. */
    private final class Guides {
        private final Dressing with;
        private final TrainGraph.Train train;
        private final GroupCosts[] of;

        Guides(Dressing with, TrainGraph.Train train, GroupCosts[] of) {
            this.with = with;
            this.train = train;
            this.of = of;
        }

        void from(List<Unbeaten.Of<Label>> beginnings) {
            List<Unbeaten.Of<Label>> labels = beginnings;
            for (int i = 0; i < train.at.length && !labels.isEmpty(); i++) {
                labels = next(i, labels);
            }
            labels.forEach(this::ends);
        }

        /** The beginnings with one guide more. */
        private List<Unbeaten.Of<Label>> next(int i, List<Unbeaten.Of<Label>> labels) {
            Map<List<Integer>, Unbeaten<Label>> alike = new TreeMap<>(LabelWalk::compare);
            int[] standing = train.at[i];
            int kept = 0;
            for (Unbeaten.Of<Label> label : labels) {
                int before = i == 0 ? -1 : train.at[i - 1][label.thing().index];
                for (int j = 0; j < standing.length; j++) {
                    boolean may = i == 0 || train.mayFollow(i - 1, before, standing[j]);
                    int[] used = may ? with(standing[j], label.thing().used) : null;
                    long[] sums = used == null ? null : sums(label.sums(), i, j, used);
                    if (used != null && sums != null && step()) {
                        Label more = new Label(label.thing().handle, label.thing(), j, used);
                        Unbeaten<Label> of =
                                alike.computeIfAbsent(toGo(i, standing[j], used), any -> new Unbeaten<>(decides));
                        kept -= of.size();
                        of.add(more, sums);
                        kept += of.size();
                        if (kept > MOST_MET) {
                            giveUp();
                        }
                    }
                }
            }
            List<Unbeaten.Of<Label>> next = new ArrayList<>();
            alike.values().forEach(of -> next.addAll(of.all()));
            if (next.size() > MOST_KEPT) {
                giveUp();
            }
            return gaveUp ? List.of() : next;
        }

        /** Pieces taken with one more of a guide, or null where there is none left. */
        private int @Nullable [] with(int guide, int[] used) {
            if (!train.mayRunShort) {
                return used;
            }
            int[] more = used.clone();
            more[guide]++;
            return more[guide] > train.pieces(guide) ? null : more;
        }

        /** What decides which guides may follow: the ring of the last, and the guides that may run short with the pieces taken. */
        private List<Integer> toGo(int i, int guide, int[] used) {
            List<Integer> decides = new ArrayList<>(List.of(train.ring(guide)));
            for (int g = 0; train.mayRunShort && g < used.length; g++) {
                if (used[g] > 0 && train.pieces(g) - used[g] < train.at.length - 1 - i) {
                    decides.add(g);
                    decides.add(used[g]);
                }
            }
            return decides;
        }

        private long @Nullable [] sums(long[] soFar, int i, int j, int[] used) {
            if (TrainGraph.none(of[0].cost[i][j])) {
                return null;
            }
            long[] sums = new long[of.length];
            for (int f = 0; f < of.length; f++) {
                sums[f] = soFar[f] + of[f].cost[i][j];
                if (!tests.get(f).may(sums[f], of[f].toGo(i, train.at[i][j], used), limit)) {
                    return null;
                }
            }
            return sums;
        }

        private void ends(Unbeaten.Of<Label> label) {
            int last = train.at.length - 1;
            for (int t = 0; t < train.tips.size(); t++) {
                boolean may = train.mayEnd(train.at[last][label.thing().index], t);
                for (int f = 0; f < of.length && may; f++) {
                    may = tests.get(f).may(label.sums()[f], of[f].tips[t], limit);
                }
                if (may && step()) {
                    limit = Math.min(limit, leaf.build(draft(label.thing(), t)));
                }
            }
        }

        private Draft draft(Label last, int tip) {
            Tally tally = last.handle.tally(with.tally(), with.stand.ground.style);
            Draft draft = new Draft(aim, with, last.handle, train, tally);
            Label label = last;
            for (int i = train.at.length - 1; i >= 0; i--) {
                draft.picked[i] = label.index;
                label = Objects.requireNonNull(label.before);
            }
            draft.tip = train.tips.get(tip);
            return draft;
        }
    }
}
