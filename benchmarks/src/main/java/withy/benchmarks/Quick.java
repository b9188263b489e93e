package withy.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Peer;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Solution;
import withy.rod.Build;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Search;

/** A few scenarios to the end, for what is wrong with their optima. Times are told and never judged. */
final class Quick {
    /** A light rod, one in salt, one with many nice wishes, and one that is impossible. */
    static final Set<String> SCENARIOS =
            Set.of("tiny-stream-ultralight", "kayak-estuary", "quay-squid-nice-wishes", "surf-two-piece-short-pack");

    /** Fewest optima that must be judged: free ones of all four scenarios; the others may be stopped by the time. */
    static final int FEWEST_COMPARED = 4;

    /** Longest a solve may take before it is told as not judged, s. */
    private static final int SECONDS = 12;

    /** Races of the quick run. */
    private static final Field.Caps CAPS = new Field.Caps(0.5, 2);

    private final Path home;
    private final PrintStream talk;
    private final List<String> faults = new ArrayList<>();
    private int compared;
    private int judgedOffers;

    Quick(Path home, PrintStream talk) {
        this.home = home;
        this.talk = talk;
    }

    /** Everything that is wrong; empty where nothing was found. */
    List<String> faults() throws IOException {
        Shop shop = Shop.bench();
        Shop shuffled = shop.shuffled();
        List<Scenario> all = Scenario.all(home, shop.catalog());
        int looked = 0;
        for (Scenario scenario : all) {
            if (SCENARIOS.contains(scenario.name())) {
                Solution best = same(shop, shuffled, scenario, Job.RANK_1);
                ObjectiveVector objectives = best.objectives();
                if (objectives != null && best.proven()) {
                    Scenario binding = scenario.binding(shop.catalog(), objectives);
                    same(shop, shuffled, binding, Job.BINDING);
                    offer(shop, scenario, best);
                }
                peers(shop, scenario, looked == 0 ? Field.peers() : Field.quickPeers(), CAPS);
                looked++;
            }
        }
        if (looked != SCENARIOS.size()) {
            faults.add("scenarios looked at: " + looked + ". Expected: " + SCENARIOS.size());
        }
        talk.println("optima compared: " + compared + ", offers of three: " + judgedOffers);
        if (compared < FEWEST_COMPARED) {
            faults.add("optima compared: " + compared + ". Expected: at least " + FEWEST_COMPARED
                    + "\nMaybe the machine is too busy, or the search has become slow: a solve is stopped after "
                    + SECONDS + " s.");
        }
        return List.copyOf(faults);
    }

    /** Every peer to its end, which is short: a lost one shows, and one that beats the proven best. */
    private void peers(Shop shop, Scenario scenario, List<Peer> peers, Field.Caps caps) {
        Field.Heat heat = Field.heat(shop, scenario, peers, caps, faults);
        for (Field.Lane lane : heat.lanes()) {
            boolean habit = lane.name().startsWith("habit");
            if (habit && lane.made() == null && heat.best().build() != null) {
                faults.add(scenario.name() + ", " + lane.name() + ": the peer is lost, it built nothing");
            }
        }
        talk.println("  runners: " + heat.lanes().size());
    }

    private Solution same(Shop shop, Shop shuffled, Scenario scenario, Job job) {
        long start = System.nanoTime();
        Cap cap = new Cap(SECONDS);
        Solution first = new Search(shop.catalog()).solve(scenario.query(), cap.watch());
        tell(scenario, job, Job.millisSince(start));
        Cap again = new Cap(SECONDS);
        Solution second = new Search(shuffled.catalog()).solve(scenario.query(), again.watch());
        if (cap.reached() || again.reached()) {
            talk.println("  stopped after " + SECONDS + " s: not proven, so its optimum is not judged");
            return first;
        }
        if (job == Job.BINDING && !first.proven()) {
            // the made-up ceiling can leave more near-equal builds than one walk looks at; a scenario's own question
            // may not
            talk.println("  not proven: best " + first.score() + ", bound " + first.bound() + ", so it is not judged");
            return first;
        }
        compared++;
        if (first.score() != second.score() || !signature(first.build()).equals(signature(second.build()))) {
            fault(
                    scenario,
                    job,
                    "scores " + first.score() + " with " + signature(first.build()) + ", with the catalogue shuffled "
                            + second.score() + " with " + signature(second.build()));
        }
        new Optimum(shop.catalog(), scenario.query()).faults(first).forEach(found -> fault(scenario, job, found));
        return first;
    }

    private void offer(Shop shop, Scenario scenario, Solution best) {
        long start = System.nanoTime();
        Cap cap = new Cap(SECONDS);
        List<Proposal> builds = Offer.three(new Search(shop.catalog()), scenario.query(), cap.watch());
        tell(scenario, Job.THREE, Job.millisSince(start));
        if (cap.reached()) {
            talk.println("  stopped after " + SECONDS + " s: not proven, so it is not judged");
            return;
        }
        judgedOffers++;
        if (builds.isEmpty() || builds.get(0).score() != best.score()) {
            fault(scenario, Job.THREE, "rank 1 of the offer is not the best build, which scores " + best.score());
        }
        for (Proposal one : builds) {
            for (Proposal other : builds) {
                if (one.objectives().dominates(other.objectives())) {
                    fault(scenario, Job.THREE, "rank " + other.rank() + " is dominated by rank " + one.rank());
                }
            }
        }
    }

    private void fault(Scenario scenario, Job job, String what) {
        faults.add(scenario.name() + ", " + job.words() + ": " + what);
    }

    private void tell(Scenario scenario, Job job, double ms) {
        talk.printf(Locale.ROOT, "%-28s %-24s %8.1f ms%n", scenario.name(), job.words(), ms);
    }

    private static String signature(@Nullable Build build) {
        return build == null ? "no build" : build.signature();
    }
}
