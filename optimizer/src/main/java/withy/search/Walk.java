package withy.search;

import withy.rod.Build;

/** A way past every build of a layout that may be of interest, one thread after another. */
interface Walk {
    /** All builds with one thread, under the prices last set for it. */
    void thread(Dressing with);

    /** What a build must cost less than under the first prices; may fall as builds come. */
    long under();

    /** False where builds were left out because there were too many. */
    boolean whole();

    /**
     * Other prices.
     *
     * @param k prices
     * @param under what a build must cost less than under them; {@link Long#MAX_VALUE} where that is the limit of the walk
     */
    record Test(Linear k, long under) {
        /** Whether what costs so much so far, and this much at least to go, may stay below. */
        boolean may(long soFar, long toGo, long limit) {
            return !TrainGraph.none(toGo) && soFar + toGo < under(limit);
        }

        /** What a build must cost less than while this is the limit of the walk. */
        long under(long limit) {
            return under == Long.MAX_VALUE || limit == Long.MIN_VALUE ? limit : under;
        }
    }

    /** A build that was met. */
    interface Met {
        /** The build. */
        Build build();

        /** Its score with the class of this node credited, by its sums alone; {@link TrainGraph#NONE} where one breaks its ceiling. */
        long score();
    }

    /** Takes builds below the limit; gives the limit for further ones. */
    interface Leaf {
        long build(Met met);
    }
}
