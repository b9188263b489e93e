package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import withy.objectives.Scoring;

/** What a walk past the builds of a layout holds them against: the score under the best multipliers found, then what each must keep besides. */
final class WalkTests {
    private final LayoutCeilings ceilings;
    private final Scoring even;
    private final Walk.Test own;
    /** The score on each side of the balance zone and inside it, and every ceiling by itself. */
    private final List<Walk.Test> besides = new ArrayList<>();

    /**
     * @param prices the best multipliers found
     * @param margin classes that are credited
     * @param ceilings what was found of the layout's
     */
    WalkTests(Task task, Linear prices, long margin, LayoutCeilings ceilings) {
        this.ceilings = ceilings;
        this.even = Scoring.even(task.brief, task.ground.catalog.rates());
        this.own = new Walk.Test(prices, Long.MAX_VALUE);
        Prices score = Prices.start(task.scoring);
        for (Prices side : List.of(score, score.slope(0), score.slope(-score.slope()))) {
            besides.add(new Walk.Test(side.linear(task.aim, margin), Long.MAX_VALUE));
        }
        besides.addAll(ceilings.tests());
    }

    /** Without two ceilings that are hard to keep together. */
    List<Walk.Test> plain() {
        List<Walk.Test> tests = new ArrayList<>(List.of(own));
        tests.addAll(besides);
        return tests;
    }

    /**
     * With them, those first that leave the least room.
     *
     * @param room between the least score a build may have and the limit
     */
    List<Walk.Test> narrowestFirst(long room) {
        List<Walk.Test> tests = new ArrayList<>(List.of(own));
        double narrowest = steps(own.k(), room);
        for (TwoCeilings.Edge edge : ceilings.edges()) {
            double wide = steps(edge.k(), edge.most() - edge.least());
            tests.add(wide < narrowest ? 0 : tests.size(), new Walk.Test(edge.k(), edge.most() + 1));
            narrowest = Math.min(narrowest, wide);
        }
        tests.addAll(besides);
        return tests;
    }

    /** Several ceilings together besides. */
    List<Walk.Test> withSums(List<Walk.Test> tests) {
        List<Walk.Test> all = new ArrayList<>(tests);
        all.addAll(ceilings.together(even));
        return all;
    }

    /** Of so many tests that begin with some, in which a beginning must be beaten: in what each must keep besides. */
    boolean[] decides(List<Walk.Test> tests, int all) {
        boolean[] decides = new boolean[all];
        Arrays.fill(decides, tests.size() - besides.size(), tests.size(), true);
        return decides;
    }

    /** A cost under some prices, told in steps of everything they ask a price for. */
    private double steps(Linear k, double cost) {
        return cost / k.perStep(even);
    }
}
