package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import withy.brief.Objective;
import withy.objectives.Solver.Query;
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

    /** The next question with the same aim on the same ground begins with what this one came to, one with another aim does not. */
    @Test
    void theNextQuestionBeginsWithIt() {
        Task task = task();
        Site one = task.sites().get(0);
        Site other = task.sites().get(1);
        Prices start = Prices.start(task.scoring);
        Prices ofOne = start.with(Prices.Kind.COST, 10 * task.scoring.perCostMilli());
        Prices last = start.slope(0);
        Learnt learnt = new Learnt(task);
        learnt.learn(one, ofOne);
        learnt.learn(other, last);

        Learnt next = new Learnt(task);
        assertEquals(ofOne, next.prices(one));
        assertEquals(last, next.prices(other));
        assertEquals(last, next.prices(task.sites().get(2)));

        Query cheap = task.query.withPriorities(Map.of(Objective.PRICE, 1.0));
        Aim aim = Aim.of(task.ground.catalog, cheap);
        Learnt others = new Learnt(new Task(cheap, task.ground, aim, task.alternatives));
        assertEquals(Prices.start(aim.scoring()), others.prices(one));
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
