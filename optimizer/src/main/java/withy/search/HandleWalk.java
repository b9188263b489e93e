package withy.search;

import java.util.BitSet;
import java.util.function.Predicate;
import withy.catalog.Decal;
import withy.catalog.Keeper;
import withy.rod.Fitter;

/** One walk over the handles of a stand below a limit, seat by seat and from each on ahead. */
final class HandleWalk {
    private static final long NONE = TrainGraph.NONE;

    private final Handle handle;
    private final Fitter dress;
    private final int leastClass;
    private final Predicate<SeatGroup> worthIt;
    private final Handle.FrontVisitor visitor;
    private long limit;

    HandleWalk(
            Handle handle,
            Fitter dress,
            int leastClass,
            long limit,
            Predicate<SeatGroup> worthIt,
            Handle.FrontVisitor visitor) {
        this.handle = handle;
        this.dress = dress;
        this.leastClass = leastClass;
        this.limit = Math.min(limit, NONE);
        this.worthIt = worthIt;
        this.visitor = visitor;
    }

    void go() {
        if (handle.none()) {
            return;
        }
        for (int s = handle.next(0, leastClass, limit); s >= 0; s = handle.next(s + 1, leastClass, limit)) {
            handle.seat(s, leastClass).forEach(this::seat);
        }
    }

    private void seat(SeatGroup group) {
        if (limit == Long.MIN_VALUE) {
            return;
        }
        long cheapest = handle.cheapest(group, leastClass);
        long back = TrainGraph.none(cheapest)
                ? NONE
                : handle.behind.best(group, handle.all(), limit - cheapest - handle.aheadFloor());
        if (TrainGraph.none(back) || !worthIt.test(group)) {
            return;
        }
        Around around = new Around(group, cheapest, back);
        handle.ahead.ways(group.set(), around, around);
    }

    /** The ways around a seat, whichever hood and arbors hold it. */
    private final class Around implements Ahead.Asked, Ahead.Visitor {
        private final SeatGroup group;
        private final long cheapest;
        private final long back;

        /** With what the seat costs at least, and the cheapest way behind it beside any grips. */
        Around(SeatGroup group, long cheapest, long back) {
            this.group = group;
            this.cheapest = cheapest;
            this.back = back;
        }

        @Override
        public long ends(double frontMm) {
            return handle.ends.cost(dress, frontMm);
        }

        @Override
        public long under() {
            return under(back);
        }

        @Override
        public boolean cheapest() {
            return false;
        }

        @Override
        public long under(long rest) {
            return limit == Long.MIN_VALUE ? Long.MIN_VALUE / 2 : limit - cheapest - rest;
        }

        @Override
        public long behind(BitSet beside, long ahead) {
            return limit == Long.MIN_VALUE ? NONE : handle.behind.best(group, beside, limit - cheapest - ahead);
        }

        @Override
        public void way(Ahead.Way way, long beyond, long rest) {
            if (limit == Long.MIN_VALUE) {
                return;
            }
            long besides = way.cost() + beyond + rest;
            group.below(handle.k, leastClass, limit - besides, seat -> {
                seat(seat, way, rest);
                return limit == Long.MIN_VALUE ? Long.MIN_VALUE : limit - besides;
            });
        }

        private void seat(SeatGroup.SeatOption seat, Ahead.Way way, long rest) {
            long own = seat.option().cost + way.cost();
            for (Option<Keeper> keeper : handle.ends.keepersAheadOf(way.frontMm(), dress)) {
                for (Option<Decal> decal : handle.ends.decalsAheadOf(way.frontMm(), dress)) {
                    keeper.price(handle.k);
                    decal.price(handle.k);
                    long soFar = own + keeper.cost + decal.cost;
                    if (limit != Long.MIN_VALUE && soFar + rest < limit) {
                        limit = Math.min(limit, visitor.front(new Front(seat, way, keeper, decal), soFar));
                    }
                }
            }
        }
    }
}
