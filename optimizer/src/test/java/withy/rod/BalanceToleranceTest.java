package withy.rod;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import withy.catalog.Part;
import withy.fixture.Fixtures;

/** Guards the tolerance of the balance point against rods measured anew with heavier parts. */
class BalanceToleranceTest {
    private static double bareMm(Rod rod) {
        return (double) rod.total().momentMgMm() / rod.total().massMg();
    }

    /** The rod with workmanship taken as exact: thread, finish and glue have no weight in a list that could be raised. */
    private static Rod exact(Fixtures shop) {
        return Rod.measure(
                shop.catalog().withRates(shop.catalog().rates().withWorkmanshipTolerance(0)),
                shop.theBrief(),
                shop.build());
    }

    @Test
    void itIsTheMovesOfAllModelsTogether() {
        Rod rod = exact(Fixtures.legal());
        double bare = 0;
        double withReel = 0;
        for (Part part : rod.setting().catalog().byId().values()) {
            double heavier = part.facts().weightG() + part.facts().weightTolG();
            Rod moved = exact(Fixtures.legal().part(part.id(), "facts.weightG", heavier));
            bare += Math.pow(bareMm(moved) - bareMm(rod), 2);
            withReel += Math.pow(moved.balance().pointMm() - rod.balance().pointMm(), 2);
        }
        assertEquals(Math.sqrt(bare), BalanceTolerance.bareMm(rod), 0.1 * Math.sqrt(bare));
        assertEquals(Math.sqrt(withReel), BalanceTolerance.withReelMm(rod), 0.1 * Math.sqrt(withReel));
    }

    @Test
    void workmanshipAddsToIt() {
        assertTrue(BalanceTolerance.bareMm(Fixtures.legal().rod()) > BalanceTolerance.bareMm(exact(Fixtures.legal())));
    }
}
