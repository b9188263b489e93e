package withy.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.benchmarks.Field.Caps;
import withy.benchmarks.Field.Heat;
import withy.benchmarks.Field.Lane;
import withy.benchmarks.peer.Choco;
import withy.benchmarks.peer.CpSat;
import withy.benchmarks.peer.Peer;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Race;
import withy.brief.Brief;
import withy.objectives.Scoring;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.oracle.SmallShop;
import withy.search.Search;

/** The peers that prove find the search's optimum, each by its own way; a lost peer and one that is too good to be true are found out. */
class PeersAgreeTest {
    private static final long BUILDS = 4_000;

    /** Choco sees the score in ten-thousandths of a step and up to forty parts. */
    private static final double ROUNDED = 0.01;

    /** A guard only: they end by proof. */
    private static final double SECONDS = 120;

    @TestFactory
    Stream<DynamicTest> bothProveTheSearchsOptimum() {
        return LongStream.range(1, 4)
                .boxed()
                .flatMap(seed -> Stream.of(new CpSat(), new Choco())
                        .map(peer ->
                                DynamicTest.dynamicTest(peer.name() + ", seed " + seed, () -> proves(seed, peer))));
    }

    private static void proves(long seed, Peer peer) throws Exception {
        SmallShop.Case shop = SmallShop.of(seed, BUILDS);
        Solution best = new Search(shop.catalog()).solve(shop.query(), Watch.NONE);
        Question question = new Question(shop.catalog(), shop.query());
        Race race = new Race(question, SECONDS);
        peer.run(question, race);
        assertNotNull(race.provenMs(), "not proven");
        assertTrue(best.proven());
        assertEquals(best.build() == null, race.found().isEmpty(), "one of them says that there is no legal build");
        if (best.build() != null) {
            assertEquals(Scoring.steps(best.score()), Scoring.steps(race.best()), ROUNDED);
        }
    }

    @Test
    void aLostPeerIsSaid() {
        List<String> faults = new ArrayList<>();
        SmallShop.Case shop = SmallShop.of(1, BUILDS);
        Scenario scenario = new Scenario("small", shop.query().brief());
        Heat heat = Field.heat(
                new Shop(shop.catalog().size(), "small", shop.catalog()),
                scenario,
                List.of(new Lost()),
                new Caps(1, 1),
                faults);
        assertEquals(2, heat.lanes().size());
        assertEquals(1, faults.size());
        assertTrue(faults.get(0).contains("the peer is lost") && faults.get(0).contains("no licence"), faults.get(0));
    }

    @Test
    void aScoreBelowTheBoundIsSuspicious() {
        SmallShop.Case shop = SmallShop.of(1, BUILDS);
        Solution best = new Search(shop.catalog()).solve(shop.query(), Watch.NONE);
        Solution boast = new Solution(
                best.build(), best.objectives(), best.score() + 1, best.score() + 1, true, best.layoutsOpened());
        Race.Found found = new Race.Found(1, best.score(), java.util.Objects.requireNonNull(best.build()));
        Lane lane = new Lane("peer", 1, List.of(found), null, null, true, null);
        List<String> faults = new ArrayList<>();
        Field.judge("small", 1, boast, lane, faults);
        assertEquals(1, faults.size());
        assertTrue(faults.get(0).contains("suspicious"), faults.get(0));
        faults.clear();
        Field.judge("small", 1, best, lane, faults);
        assertEquals(List.of(), faults);
    }

    @Test
    void aWrongProofIsSuspicious() {
        SmallShop.Case shop = SmallShop.of(1, BUILDS);
        Brief brief = shop.query().brief();
        Solution best = new Search(shop.catalog()).solve(shop.query(), Watch.NONE);
        List<String> faults = new ArrayList<>();
        Field.judge(brief.name(), 1, best, new Lane("peer", 1, List.of(), 1.0, null, false, null), faults);
        assertEquals(1, faults.size());
        assertTrue(faults.get(0).contains("that there is none"), faults.get(0));
    }

    /** Cannot run. */
    private static final class Lost implements Peer {
        @Override
        public String name() {
            return "lost";
        }

        @Override
        public String setUp() {
            return "none";
        }

        @Override
        public boolean proves() {
            return false;
        }

        @Override
        public void run(Question question, Race race) {
            throw new IllegalStateException("no licence");
        }
    }
}
