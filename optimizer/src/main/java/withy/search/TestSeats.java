package withy.search;

import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What handles with each seat of a stand cost at least under each of some tests, whatever the thread: worked out before a walk, one set of prices after
 * another, since parts know their price under one at a time. How a whole handle weighs about a place tells no seat from another (what stands behind one
 * can weigh against it) and takes longest to find: only what stands behind a seat is looked at there.
 */
final class TestSeats {
    /** Nothing is known of any seat. */
    static final TestSeats UNKNOWN = new TestSeats();

    private final Map<SeatGroup, Floors> floors = new IdentityHashMap<>();

    private TestSeats() {}

    /**
     * Of the seats that may stand in a handle below a limit.
     *
     * @param tests prices; those of the first are set afterwards
     * @param asked which of them are looked at besides the first; in the others nothing is left out
     * @param under the limit, under the first prices
     */
    TestSeats(Stand stand, List<Walk.Test> tests, boolean[] asked, int leastClass, long under) {
        Handle first = stand.priced(tests.get(0).k());
        for (int s = first.next(0, leastClass, under); s >= 0; s = first.next(s + 1, leastClass, under)) {
            first.seat(s, leastClass).forEach(group -> floors.put(group, Floors.none(tests.size())));
        }
        for (int f = tests.size() - 1; f >= 0; f--) {
            if (f == 0 || asked[f]) {
                int test = f;
                Handle handle = stand.priced(tests.get(f).k());
                floors.forEach((group, of) -> {
                    of.behind[test] = handle.leastBehind(group);
                    if (!tests.get(test).k().isMoment()) {
                        of.whole[test] = handle.leastWith(group, leastClass, TrainGraph.NONE);
                    }
                });
            }
        }
    }

    /**
     * Of one seat.
     *
     * @param behind what stands behind it costs at least
     * @param whole and the whole handle, but where only how it weighs about a place is asked
     */
    private record Floors(long[] behind, long[] whole) {
        static Floors none(int tests) {
            Floors none = new Floors(new long[tests], new long[tests]);
            Arrays.fill(none.behind, Handle.NOTHING_MORE);
            Arrays.fill(none.whole, Handle.NOTHING_MORE);
            return none;
        }
    }

    /**
     * True where some train may leave room for a handle with a seat.
     *
     * @param besides all but handle and train, by test
     */
    boolean mayStand(SeatGroup seat, long[] besides, TrainRooms rooms) {
        Floors of = floors.get(seat);
        return of == null || rooms.beside(besides).hold(of.whole);
    }

    /** What is left for what stands ahead of a seat, the seat itself and all but handle and train; where nothing is known of the seat all there may be, since parts may cost less than nothing. */
    TrainRooms ahead(@Nullable SeatGroup seat, TrainRooms rooms) {
        Floors of = seat == null ? null : floors.get(seat);
        return of == null ? rooms.unknown() : rooms.beside(of.behind);
    }
}
