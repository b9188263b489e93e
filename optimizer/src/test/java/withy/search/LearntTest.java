package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.rules.Rulebook;

/** What was learnt of one blank stays its own; of blanks of which nothing was learnt that counts which makes their floor highest. */
class LearntTest {
    private static Task task() {
        SmallShop shop = SmallShop.of(0);
        return SmallShop.task(shop.catalog(), shop.query(Rulebook.standard()));
    }

    @Test
    void eachItsOwn() {
        Task task = task();
        List<Site> sites = task.sites();
        Site one = sites.get(0);
        Site other = sites.get(1);
        NodeBounds bounds = new NodeBounds(task);
        Learnt learnt = new Learnt(task, bounds);

        int before = learnt.version(one);
        Prices ofOne = Prices.start(task.scoring).with(Prices.Kind.COST, 10 * task.scoring.perCostMilli());
        learnt.learn(one, ofOne);
        assertEquals(ofOne, learnt.prices(one));
        assertNotEquals(before, learnt.version(one));

        Prices ofOther = ofOne.slope(0);
        learnt.learn(other, ofOther);
        assertEquals(ofOne, learnt.prices(one));
        assertEquals(ofOther, learnt.prices(other));
        assertNotEquals(learnt.version(one), learnt.version(other));
    }

    /** Of a blank of which nothing was learnt: the floor is the highest of those under all that is known, and falls by nothing that is learnt elsewhere. */
    @Test
    void highestOfAll() {
        Task task = task();
        NodeBounds bounds = new NodeBounds(task);
        Learnt learnt = new Learnt(task, bounds);
        List<Site> sites = task.sites();
        Prices start = Prices.start(task.scoring);
        List<Prices> known = new ArrayList<>(List.of(start, start.slope(0)));
        for (int s = 0; s < sites.size() - 1; s++) {
            Prices one = start.slope(start.slope() / (2 + s)).with(Prices.Kind.COST, s * task.scoring.perCostMilli());
            known.add(one);
            learnt.learn(sites.get(s), one);
            for (Site site : sites.subList(s + 1, sites.size())) {
                long highest = known.stream()
                        .mapToLong(prices -> floor(task, bounds, site, prices))
                        .max()
                        .orElseThrow();
                assertEquals(highest, floor(task, bounds, site, learnt.prices(site)));
            }
        }
    }

    private static long floor(Task task, NodeBounds bounds, Site site, Prices prices) {
        int leastClass = task.leastClass();
        Node listed = Node.blank(0, site, leastClass, Node.Stage.LISTED, 0);
        return bounds.of(listed, prices.linear(task.aim, task.margin(leastClass)), Long.MAX_VALUE);
    }

    /** Floors are not worked out anew for a small change. */
    @Test
    void littleIsNothing() {
        Task task = task();
        Site site = task.sites().get(0);
        Learnt learnt = new Learnt(task, new NodeBounds(task));
        Prices before = learnt.prices(site);
        int version = learnt.version(site);
        learnt.learn(
                site, before.slope(before.slope() + Prices.start(task.scoring).slope() / 20));
        assertEquals(before, learnt.prices(site));
        assertEquals(version, learnt.version(site));
    }
}
