package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Choco;
import withy.benchmarks.peer.CpSat;
import withy.benchmarks.peer.Greedy;
import withy.benchmarks.peer.Habit;
import withy.benchmarks.peer.Nsga2;
import withy.benchmarks.peer.Peer;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Race;
import withy.benchmarks.peer.engine.EngineAlone;
import withy.objectives.Scoring;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.search.Search;

/** The product and its peers on one scenario after the other, each alone with two cores until its cap. */
final class Field {
    /** When the best so far is looked at, ms. */
    static final List<Integer> AT_MS = List.of(50, 200, 1_000, 5_000, 60_000);

    private Field() {}

    /** Everyone but the product. */
    static List<Peer> peers() {
        return List.of(
                Habit.lightest(),
                Habit.cheapest(),
                new Greedy(),
                new Nsga2(),
                new EngineAlone(),
                new CpSat(),
                new Choco());
    }

    /** Those that are done at once. */
    static List<Peer> quickPeers() {
        return List.of(Habit.lightest(), Habit.cheapest());
    }

    /**
     * Longest races.
     *
     * @param qualitySeconds of a peer that cannot prove
     * @param proofSeconds of one that can
     */
    record Caps(double qualitySeconds, double proofSeconds) {
        double of(Peer peer) {
            return peer.proves() ? proofSeconds : qualitySeconds;
        }
    }

    /**
     * One scenario.
     *
     * @param scenario its name
     * @param parts size of the catalogue
     * @param best the product's answer
     * @param lanes the product first, then the peers
     */
    record Heat(String scenario, int parts, Solution best, List<Lane> lanes) {
        Heat {
            lanes = List.copyOf(lanes);
        }
    }

    /**
     * One runner.
     *
     * @param name who
     * @param capSeconds when it was stopped, s
     * @param found what it found, as it got better
     * @param provenMs when it said it had the best, or null
     * @param made what it built last, legal or not; null where it built nothing
     * @param legal true where that is legal
     * @param lost why it could not run, or null
     */
    record Lane(
            String name,
            double capSeconds,
            List<Race.Found> found,
            @Nullable Double provenMs,
            @Nullable Rod made,
            boolean legal,
            @Nullable String lost) {
        Lane {
            found = List.copyOf(found);
        }

        /** Score at a time, or null where nothing legal was found by then. */
        @Nullable
        Long scoreAt(double ms) {
            Long score = null;
            for (Race.Found one : found) {
                score = one.ms() <= ms ? Long.valueOf(one.score()) : score;
            }
            return score;
        }

        @Nullable
        Long last() {
            return scoreAt(Double.POSITIVE_INFINITY);
        }

        /** When it had reached a score, ms, or null. */
        @Nullable
        Double reachedMs(long score) {
            return found.stream()
                    .filter(one -> one.score() <= score)
                    .map(Race.Found::ms)
                    .findFirst()
                    .orElse(null);
        }
    }

    /** Runs a scenario; what is suspicious or lost is added to the faults. */
    static Heat heat(Shop shop, Scenario scenario, List<Peer> peers, Caps caps, List<String> faults) {
        List<Lane> lanes = new ArrayList<>();
        Question question = new Question(shop.catalog(), scenario.query());
        Race own = new Race(question, Cap.SECONDS);
        Watch watch = new Watch(own::over, (build, objectives, score) -> own.offer(build));
        Solution best = new Search(shop.catalog()).solve(scenario.query(), watch);
        if (best.build() != null) {
            own.offer(best.build());
        }
        if (best.proven()) {
            own.proven();
        }
        lanes.add(lane("Withy", Cap.SECONDS, question, own, null));
        for (Peer peer : peers) {
            Lane lane = run(question, peer, caps.of(peer));
            lanes.add(lane);
            judge(scenario.name(), shop.parts(), best, lane, faults);
        }
        return new Heat(scenario.name(), shop.parts(), best, lanes);
    }

    private static Lane run(Question question, Peer peer, double seconds) {
        Race race = new Race(question, seconds);
        String lost = null;
        try {
            peer.run(question, race);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            lost = "interrupted";
        } catch (Exception | LinkageError e) {
            lost = e.getClass().getSimpleName() + ": " + e.getMessage();
        }
        return lane(peer.name(), seconds, question, race, lost);
    }

    private static Lane lane(String name, double seconds, Question question, Race race, @Nullable String lost) {
        List<Race.Found> found = race.found();
        boolean legal = !found.isEmpty();
        Build made = legal ? found.get(found.size() - 1).build() : race.leastBroken();
        return new Lane(
                name, seconds, found, race.provenMs(), made == null ? null : question.measure(made), legal, lost);
    }

    /** Better than a proven best is suspicious, and so is a proof that says something else. */
    static void judge(String scenario, int parts, Solution best, Lane lane, List<String> faults) {
        String who = scenario + " on " + parts + " parts, " + lane.name() + ": ";
        Long last = lane.last();
        if (lane.lost() != null) {
            faults.add(who + "the peer is lost: " + lane.lost());
        }
        if (last != null && last < best.bound()) {
            faults.add(who + "suspicious: " + Scoring.steps(best.bound() - last) + " steps better than the bound");
        }
        if (lane.provenMs() != null && best.proven()) {
            double off = Scoring.steps((last == null ? Long.MAX_VALUE : last) - best.score());
            if (last == null ? best.build() != null : best.build() == null || off > PROOF_WITHIN) {
                faults.add(who + "suspicious: it says that it proved a best "
                        + (last == null ? "that there is none" : off + " steps worse than a legal build"));
            }
        }
    }

    /** A proof over rounded integers may be off by so many steps. */
    private static final double PROOF_WITHIN = 0.02;
}
