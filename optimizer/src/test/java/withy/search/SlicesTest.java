package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Consumables;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** What is kept of a layout from one slice to the next. */
class SlicesTest {
    private static final int SHOPS = 60;
    private static final int LEAST = 3;
    private static final long MOST_MG = 1;

    private final SmallShop shop = SmallShop.of(0);
    private final Task task = SmallShop.task(shop.catalog(), shop.query(Rulebook.standard()));
    private final Site site = task.sites().get(0);
    private final Setting setting =
            Setting.of(shop.catalog(), task.brief, site.shape(), site.layouts().get(0));
    private final Stand stand = site.stands(setting).get(0);
    private final Node node = new Node(0, 7, site, task.brief.durabilityClass(), setting, Node.Stage.WEIGHED, 0);
    private final Slices slices = new Slices();
    private final Task light =
            SmallShop.task(shop.catalog(), shop.query(Rulebook.standard()).under(Map.of(Objective.WEIGHT, MOST_MG)));
    private final Task.Measured heavy = new Task.Measured(
            new Build(setting.layout(), new TreeMap<>()),
            new ObjectiveVector(MOST_MG + 1, 0, 0, 0, 0, 0, 0),
            0,
            0,
            0,
            false);
    private final Consumables one = site.threads().get(0);
    private final Consumables other = new Consumables(
            task.ground.threads.stream()
                    .filter(thread -> !thread.equals(one.thread()))
                    .findFirst()
                    .orElseThrow(),
            one.finish(),
            one.adhesive());

    /** Every layout is put off at once and walked in slices: what is found is what one walk finds. */
    @Test
    void slicesFindWhatOneWalkFinds() {
        int legal = 0;
        for (long seed = 0; seed < SHOPS; seed++) {
            SmallShop one = SmallShop.of(seed);
            Query query = one.query(Rulebook.standard());
            Solution plain = compare("seed " + seed, one, query);
            if (plain.objectives() != null) {
                legal++;
                Query byWeight = query.withPriorities(Map.of(Objective.WEIGHT, 1.0));
                ObjectiveVector light =
                        compare("seed " + seed + " by weight", one, byWeight).objectives();
                assertNotNull(light);
                Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
                for (Objective objective : Objective.values()) {
                    ceilings.put(
                            objective,
                            Math.max(light.loss(objective), plain.objectives().loss(objective)));
                }
                ceilings.put(Objective.WEIGHT, light.loss(Objective.WEIGHT));
                compare("seed " + seed + " under ceilings", one, query.under(ceilings));
            }
        }
        assertTrue(legal >= SHOPS / 2, legal + " shops with a legal build");
    }

    private static Solution compare(String told, SmallShop shop, Query query) {
        Solution whole = new Proof(SmallShop.task(shop.catalog(), query), Watch.NONE).run();
        Solution sliced = new Proof(SmallShop.task(shop.catalog(), query), Watch.NONE, 0).run();
        assertEquals(whole.score(), sliced.score(), told);
        assertEquals(whole.proven(), sliced.proven(), told);
        return whole;
    }

    /** As many threads, but others: what was found of the ones before says nothing of them. */
    @Test
    void ceilingsAreFoundAnewForOtherThreads() {
        LayoutCeilings first = ceilings(List.of(one), LEAST);
        assertSame(first, ceilings(List.of(one), LEAST));
        assertNotSame(first, ceilings(List.of(other), LEAST));
        assertNotSame(first, ceilings(List.of(one), LEAST + 1));
    }

    /** Where some of the builds may keep the ceilings some of more may, and where none does none of fewer. */
    @Test
    void whatWasFoundHoldsForMoreOrForFewer() {
        LayoutCeilings some = ceilings(List.of(one), LEAST + 1);
        assertTrue(some.mayBeKept(heavy, all(true)));
        assertSame(some, ceilings(List.of(one, other), LEAST));
        assertNotSame(some, ceilings(List.of(one), LEAST + 2));
        LayoutCeilings none = ceilings(List.of(one, other), LEAST);
        assertFalse(none.mayBeKept(heavy, all(false)));
        assertSame(none, ceilings(List.of(one), LEAST + 1));
        assertNotSame(none, ceilings(List.of(one), LEAST - 1));
    }

    private LayoutCeilings ceilings(List<Consumables> threads, int leastClass) {
        return slices.ceilings(light, setting.layout(), stand, threads, leastClass);
    }

    private static TwoCeilings.Builds all(boolean kept) {
        return new TwoCeilings.Builds() {
            @Override
            public long least(Linear k, long limit) {
                return kept ? limit - 1 : limit;
            }

            @Override
            public @Nullable ObjectiveVector cheapest(long least) {
                return null;
            }
        };
    }

    /** What was looked through up to a score is left to look at from there on. */
    @Test
    void aStandIsWalkedUpToAScore() {
        assertFalse(slices.isWalked(node, stand, 1));
        slices.walked(node, stand, 10);
        slices.walked(node, stand, 5);
        assertTrue(slices.isWalked(node, stand, 10));
        assertFalse(slices.isWalked(node, stand, 11));
        Stand another = new Stand(stand.shelf, site.stations(), setting, stand.fitter, stand.ends);
        assertFalse(slices.isWalked(node, another, 10));
    }
}
