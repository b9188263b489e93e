package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.rules.Rulebook;

/** What was learnt of one blank stays its own; blanks of which nothing was learnt go by what was learnt last. */
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
        Learnt learnt = new Learnt(task);
        Prices start = Prices.start(task.scoring);
        assertEquals(start, learnt.prices(one));

        int before = learnt.version(one);
        Prices ofOne = start.slope(0);
        learnt.learn(one, ofOne);
        assertEquals(ofOne, learnt.prices(one));
        assertEquals(ofOne, learnt.prices(other));
        assertNotEquals(before, learnt.version(one));
        assertEquals(learnt.version(one), learnt.version(other));

        Prices ofOther = start.with(Prices.Kind.COST, 10 * task.scoring.perCostMilli());
        learnt.learn(other, ofOther);
        assertEquals(ofOne, learnt.prices(one));
        assertEquals(ofOther, learnt.prices(other));
        assertNotEquals(learnt.version(one), learnt.version(other));
    }

    /** Floors are not worked out anew for a small change. */
    @Test
    void littleIsNothing() {
        Task task = task();
        Site site = task.sites().get(0);
        Learnt learnt = new Learnt(task);
        Prices start = Prices.start(task.scoring);
        int before = learnt.version(site);
        learnt.learn(site, start.slope(start.slope() - start.slope() / 20));
        assertEquals(start, learnt.prices(site));
        assertEquals(before, learnt.version(site));
    }
}
