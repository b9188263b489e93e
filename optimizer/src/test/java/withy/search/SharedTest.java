package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.planning.Slot;

/** Questions that force or refuse parts stand on the ground of the one that does neither: what the parts leave as it is, they share. */
class SharedTest {
    private static final int GUIDES = 6;

    private final Catalog catalog = SampleCatalogs.bench();
    private final Query query = Query.of(Scenarios.brief("kayak-estuary", catalog), Rulebook.standard());
    private final Task task = SmallShop.task(catalog, query);

    SharedTest() throws IOException {}

    private List<Site> forcing(Part part) {
        return task.ground.sites(Stations.alternatives(catalog, query, Set.of(part.id())));
    }

    private Stand stand(Site site) {
        Setting setting = site.spacings().at(task.ground.firstFoot() + 10, GUIDES);
        return site.stands(setting).get(0);
    }

    private static Site of(Site like, List<Site> sites) {
        return sites.stream()
                .filter(site -> site.shape() == like.shape() && site.ends().equals(like.ends()))
                .findFirst()
                .orElseThrow();
    }

    /** A check that may stand in three places leaves the train as it is in all of them. */
    @Test
    void aPartOfTheHandleLeavesTheTrain() {
        Site free = task.sites().get(0);
        List<Site> forced = forcing(task.ground.checks.get(0)).stream()
                .filter(site -> site.shape() == free.shape())
                .toList();
        assertEquals(3, forced.size());
        for (Site site : forced) {
            assertSame(free.floors(), site.floors());
            assertSame(free.spacings(), site.spacings());
            assertNotSame(free.shelf(HandleForm.SPLIT), site.shelf(HandleForm.SPLIT));
        }
    }

    /** A guide or a thread leaves the handle as it is. */
    @Test
    void aPartOfTheTrainLeavesTheHandle() {
        Site free = task.sites().get(0);
        Part guide = task.ground.candidates.of(PartKind.GUIDE).get(0);
        for (Part part : List.of(guide, task.ground.threads.get(0))) {
            Site site = of(free, forcing(part));
            assertNotSame(free.floors(), site.floors());
            assertSame(free.shelf(HandleForm.SPLIT), site.shelf(HandleForm.SPLIT));
            Stand one = stand(free);
            Stand other = stand(site);
            assertNotSame(one, other);
            assertSame(one.priced(k()), other.priced(k()));
        }
    }

    private Linear k() {
        return Prices.start(task.scoring).linear(task.aim, 0);
    }

    /** The sites that force nothing stay whatever is asked meanwhile; of the others those asked last. */
    @Test
    void whatForcesNothingIsKept() {
        List<Site> free = task.sites();
        Part first = task.ground.keepers.get(0);
        List<Site> forced = forcing(first);
        assertSame(forced, forcing(first));
        task.ground.caps.stream().limit(4).forEach(this::forcing);
        assertSame(free, task.sites());
        assertNotSame(forced, forcing(first));
    }

    /** An arbor that is asked for is open though another does as well. */
    @Test
    void anArborIsOpenWhereItIsGiven() {
        Part left = task.ground.arbors.stream()
                .filter(arbor -> !task.ground.arborsWorthIt.contains(arbor))
                .findFirst()
                .orElseThrow();
        assertTrue(task.sites().get(0).shelf(HandleForm.SPLIT).arbors.stream().noneMatch(left::equals));
        assertEquals(List.of(left), forcing(left).get(0).shelf(HandleForm.SPLIT).arbors);
    }

    /** Asked one after another of one search, questions have the answers that each has by itself. */
    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "very-small-budget", "sea-trout-travel"})
    void answersAreThoseOfQuestionsAskedAlone(String scenario) throws IOException {
        Query plain = Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard());
        Search search = new Search(catalog);
        Solution best = search.solve(plain, Watch.NONE);
        int built = 0;
        for (PartKind kind : List.of(PartKind.CHECK, PartKind.GUIDE, PartKind.ARBOR, PartKind.THREAD, PartKind.GRIP)) {
            for (Part part : catalog.all(kind).stream().limit(3).toList()) {
                Query forced = plain.forcing(Set.of(part.id()));
                Solution one = search.solve(forced, Watch.NONE);
                Solution alone = new Search(catalog).solve(forced, Watch.NONE);
                assertEquals(alone.score(), one.score(), part.id());
                assertEquals(alone.proven(), one.proven(), part.id());
                built += one.build() == null ? 0 : 1;
            }
        }
        assertTrue(built > 3, built + " were built");
        assertEquals(best.score(), search.solve(plain, Watch.NONE).score());
    }

    private List<Site> refusing(String... ids) {
        return task.ground.sites(Stations.alternatives(catalog, query.refusing(Set.of(ids)), Set.of()));
    }

    /** Without a blank, handle and train of the others stay; without a guide the handle, without a seat the train. */
    @Test
    void aRefusedPartLeavesTheRest() {
        Site free = task.sites().get(1);
        Part blank = task.sites().get(0).shape().blank();
        assertEquals(task.sites().size() - 1, refusing(blank.id()).size());
        Site other = of(free, refusing(blank.id()));
        assertSame(free.floors(), other.floors());
        assertSame(free.shelf(HandleForm.SPLIT), other.shelf(HandleForm.SPLIT));
        Site unguided = of(
                free, refusing(task.ground.candidates.of(PartKind.GUIDE).get(0).id()));
        assertNotSame(free.floors(), unguided.floors());
        assertSame(free.shelf(HandleForm.SPLIT), unguided.shelf(HandleForm.SPLIT));
        Site unseated = of(free, refusing(task.ground.seats.get(0).id()));
        assertSame(free.floors(), unseated.floors());
        assertEquals(free.shelf(HandleForm.SPLIT).seats.length - 1, unseated.shelf(HandleForm.SPLIT).seats.length);
    }

    /** Asked after the others of one search, a question that refuses parts has the answer of a catalogue that never held them. */
    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "very-small-budget", "brook-trout-cork"})
    void refusedPartsAreAsIfTheyWereNotThere(String scenario) throws IOException {
        Query plain = Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard());
        Search search = new Search(catalog);
        Set<String> seen = new TreeSet<>();
        Query open = plain;
        for (int round = 0; round < 5; round++) {
            Solution best = search.solve(open, Watch.NONE);
            Set<String> rest = new TreeSet<>(catalog.byId().keySet());
            rest.removeAll(seen);
            Solution alone = new Search(catalog.only(rest)).solve(plain, Watch.NONE);
            assertEquals(alone.score(), best.score(), seen::toString);
            assertEquals(alone.proven(), best.proven(), seen::toString);
            Build build = best.build();
            if (build == null) {
                break;
            }
            assertTrue(build.partIds().stream().noneMatch(seen::contains), seen::toString);
            // one more of what is seen of the best, a small part of it among them
            List<Station> seenAt =
                    List.of(Station.SEAT, Station.guide(1), Station.WINDING_CHECK, Station.REAR_GRIP, Station.BLANK);
            String lost = build.partAt(seenAt.get(round));
            seen.add(lost == null ? build.layout().blankId() : lost);
            open = plain.refusing(Set.copyOf(seen));
        }
        assertTrue(seen.size() > 3, seen::toString);
        assertEquals(
                new Search(catalog).solve(plain, Watch.NONE).score(),
                search.solve(plain, Watch.NONE).score());
    }

    /** Neither a build found lately nor the engine brings a refused part back. */
    @Test
    void whatIsRefusedComesBackNowhere() {
        Search search = new Search(catalog);
        Build best = Objects.requireNonNull(search.solve(query, Watch.NONE).build());
        for (Station station : List.of(Station.SEAT, Station.guide(1), Station.REAR_GRIP)) {
            String id = Objects.requireNonNull(best.partAt(station));
            Query without = query.refusing(Set.of(id));
            Build any = Objects.requireNonNull(search.any(without, Watch.NONE).build());
            assertFalse(any.partIds().contains(id), id);
            Task refusing = SmallShop.task(catalog, without);
            Unproven unproven = new Unproven(refusing);
            List<Slot> slots = unproven.problem(unproven.layouts(), Watch.NONE).slots();
            assertTrue(slots.size() > 10, slots::toString);
            assertTrue(
                    slots.stream()
                            .flatMap(slot -> slot.choices().stream())
                            .noneMatch(choice -> choice.partId().equals(id)),
                    id);
        }
    }
}
