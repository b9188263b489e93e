package withy.search;

import java.util.BitSet;

/** Whether any handle goes on one stand, whatever it costs: the first one found ends it. */
final class SomeHandle {
    private final Handle handle;
    private final int leastClass;

    private SomeHandle(Handle handle, int leastClass) {
        this.handle = handle;
        this.leastClass = leastClass;
    }

    /** True where there is one with seat and hood of at least one class, but for the thread of its ends. */
    static boolean on(Handle handle, int leastClass) {
        return new SomeHandle(handle, leastClass).some();
    }

    private boolean some() {
        Ranked seats = handle.seats(leastClass);
        for (int s = 0; !handle.none() && seats.has(s); s++) {
            for (Seats.SeatGroup group : handle.stand.seat(seats.at(s))) {
                if (around(group)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean around(Seats.SeatGroup group) {
        boolean strong = !TrainGraph.none(handle.cheapest(group, leastClass));
        if (!strong || TrainGraph.none(handle.behind.best(group, handle.all(), TrainGraph.NONE))) {
            return false;
        }
        First first = new First(group);
        handle.ahead.ways(group.set(), first, first);
        return first.found;
    }

    /** Ends at the first way around a seat. */
    private final class First implements Ahead.Asked, Ahead.Visitor {
        private final Seats.SeatGroup seat;
        private boolean found;

        First(Seats.SeatGroup seat) {
            this.seat = seat;
        }

        @Override
        public long ends(double frontMm) {
            return handle.ends.cost(null, frontMm);
        }

        @Override
        public long under() {
            return found ? Long.MIN_VALUE / 2 : TrainGraph.NONE;
        }

        @Override
        public long under(long behind) {
            return under();
        }

        @Override
        public long behind(BitSet beside, long ahead) {
            return found ? TrainGraph.NONE : handle.behind.best(seat, beside, TrainGraph.NONE);
        }

        @Override
        public void way(Ahead.Way way, long beyond, long behind) {
            found = true;
        }
    }
}
