package withy.search;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rules.Rulebook;

/**
 * No rear or full grip costs less where it stands than its floor says, whether weight there is a burden, welcome, or one behind and the other ahead; and
 * where it is both the floor is not far below.
 */
class GripFloorsTest {
    private static final int LAYOUTS = 40;

    /** Slopes may be this many times what the brief asks for balance, or this part of it. */
    private static final int STEEP = 12;

    private int met;
    private int mixed;
    private int near;

    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "sea-trout-travel", "brook-trout-cork", "quay-squid-nice-wishes"})
    void noGripIsCheaperThanTheFloorSays(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard()));
        Random random = new Random(20261129);
        List<Site> sites = task.sites();
        for (int i = 0; i < LAYOUTS; i++) {
            Prices start = Prices.start(task.scoring);
            Linear k = start.slope((long) (start.slope() * Math.pow(STEEP, 2 * random.nextDouble() - 1)))
                    .linear(task.aim, 0);
            Site site = sites.get(random.nextInt(sites.size()));
            List<Layout> layouts = site.layouts();
            Layout layout = layouts.get(random.nextInt(layouts.size()));
            for (Stand stand :
                    task.setting(site.shape(), layout).map(site::stands).orElse(List.of())) {
                look(stand, random, k);
            }
        }
        assertTrue(met > 200, met + " grips met");
        assertTrue(mixed > 50, mixed + " grips where weight is welcome and a burden");
        assertTrue(near > mixed * 0.9, near + " of " + mixed + " within 5 g");
    }

    private void look(Stand stand, Random random, Linear k) {
        int foot = stand.setting.footMm();
        double arm = foot - stand.setting.handMm();
        GripMasses masses = stand.shelf.rearMasses(stand.setting.shape());
        long[] anywhere = masses.floors(k, arm, cut -> 0);
        Map<Integer, Long> filled = stand.split ? Map.of() : filled(masses.filledAt(foot, k, arm, cut -> 0));
        for (int s = 0; s < stand.shelf.seats.length; s += 1 + random.nextInt(20)) {
            for (SeatGroup seat : stand.seat(s)) {
                double front = seat.set().fromMm() - random.nextDouble() * stand.shelf.widestCheckMm;
                for (int i = 0; i < stand.shelf.rears.length; i += 1 + random.nextInt(5)) {
                    Option<Grip> grip = masses.possible(i) ? stand.rearGrip(i, front) : null;
                    if (grip != null) {
                        double rear = grip.fromMm - foot;
                        Cut cut = stand.shelf.rears[i];
                        long here = cut.fills() ? filled.getOrDefault(i, 0L) : masses.near(i, rear, rear, k, arm);
                        held(grip, here, anywhere[i], k, foot, arm);
                    }
                }
            }
        }
    }

    private static Map<Integer, Long> filled(Ranked ranks) {
        Map<Integer, Long> floors = new HashMap<>();
        for (int r = 0; ranks.has(r); r++) {
            floors.put(ranks.at(r), ranks.floor(r));
        }
        return floors;
    }

    private void held(Option<Grip> grip, long here, long anywhere, Linear k, int foot, double arm) {
        long cost = grip.cost(k);
        assertTrue(here <= cost, grip.part + " here, " + k);
        assertTrue(anywhere <= here, grip.part + " anywhere, " + k);
        double rear = grip.fromMm - foot;
        double least = k.leastPerMg(rear, rear + grip.lengthMm, arm);
        double most = Math.max(k.perMgAt(rear, arm), k.perMgAt(rear + grip.lengthMm, arm));
        met++;
        if (least < 0 && most > 0) {
            mixed++;
            near += cost - here < 5_000 * (most - least) ? 1 : 0;
        }
    }
}
