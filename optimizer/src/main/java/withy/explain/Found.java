package withy.explain;

import withy.explain.TradeOffs.Side;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;
import withy.rod.Rod;

/**
 * A build an answer speaks of.
 *
 * @param build its ids
 * @param rod measured for the brief that was asked, whatever brief it was found with
 * @param vector its objectives for that brief
 * @param proven true where the search proved that none is better for the question it was found with
 * @param mayBeOffSteps how much better one could be, in noticeable steps; 0 where proven
 */
public record Found(Build build, Rod rod, ObjectiveVector vector, boolean proven, double mayBeOffSteps) {

    /** As one side of a comparison; 1 is the best for the brief. */
    Side side(int rank) {
        return new Side(rank, rod, vector);
    }
}
