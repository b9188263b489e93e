package withy.search;

/** What the guides of one placing cost but for their wraps, and tip-tops but for what glues and dresses them, under prices that make weight a burden: the same with every thread. */
final class BareTrains {
    private final long[][][] cost;
    private final long[][] tips;
    private final long[] floors;

    BareTrains(TrainGraph graph, Linear k, int leastClass) {
        int groups = graph.trains().size();
        this.cost = new long[groups][][];
        this.tips = new long[groups][];
        this.floors = new long[groups];
        for (int t = 0; t < groups; t++) {
            TrainGraph.Train train = graph.trains().get(t);
            int[][] at = train.worthIt();
            tips[t] = train.tips.bare(k, leastClass);
            cost[t] = new long[at.length][];
            for (int i = 0; i < at.length; i++) {
                cost[t][i] = train.bare(i, at[i], k, leastClass);
                floors[t] = TrainGraph.sum(floors[t], TrainGraph.least(cost[t][i]));
            }
        }
    }

    /** Cost of each guide worth it at each number of a group's train; {@link TrainGraph#NONE} where it is of too low a class. */
    long[][] of(int train) {
        return cost[train];
    }

    /** Cost of each tip-top of a group's train; {@link TrainGraph#NONE} where it is of too low a class. */
    long[] tips(int train) {
        return tips[train];
    }

    /** A number no guides of a group's train cost less than, each by itself the cheapest, whether or not they go together. */
    long floor(int train) {
        return floors[train];
    }
}
