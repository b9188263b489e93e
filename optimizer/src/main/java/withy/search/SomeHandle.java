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
            for (SeatGroup group : handle.stand.seat(seats.at(s))) {
                if (around(group)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean around(SeatGroup group) {
        if (TrainGraph.none(handle.cheapest(group, leastClass))) {
            return false;
        }
        boolean askedBehind = handle.stand.stations.givenBehindSeat();
        return (!askedBehind || handle.behind.some(group, handle.all()))
                && new First(group, true).some()
                && (askedBehind || handle.behind.some(group, handle.all()))
                && new First(group, false).some();
    }

    /** Ends at the first way around a seat. */
    private final class First implements Ahead.Asked, Ahead.Visitor {
        private final SeatGroup seat;
        private final boolean aheadOnly;
        private boolean found;

        /** Of a seat, with what stands ahead of it alone or with what goes behind beside that. */
        First(SeatGroup seat, boolean aheadOnly) {
            this.seat = seat;
            this.aheadOnly = aheadOnly;
        }

        boolean some() {
            handle.ahead.ways(seat.set(), this, this);
            return found;
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
        public boolean cheapest() {
            return true;
        }

        @Override
        public long under(long behind) {
            return under();
        }

        @Override
        public long behind(BitSet beside, long ahead) {
            return !found && (aheadOnly || handle.behind.some(seat, beside)) ? 0 : TrainGraph.NONE;
        }

        @Override
        public void way(Ahead.Way way, long beyond, long behind) {
            found = true;
        }
    }
}
