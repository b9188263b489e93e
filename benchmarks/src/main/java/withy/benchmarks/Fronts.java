package withy.benchmarks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Nsga2;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Race;
import withy.brief.Objective;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.oracle.Enumeration;
import withy.oracle.Enumeration.Legal;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Search;

/**
 * The offer's builds on catalogues small enough that every legal build is known: what volume of objectives they dominate against the best three builds
 * of the exact front with the same rank 1 and within the same regret.
 */
final class Fronts {
    /** Most builds of such a catalogue. */
    static final long BUILDS = 400_000;

    /** The offer's own cap: so much of rank 1's score. */
    private static final double REGRET = 0.12;

    /** Fronts up to this size are also measured whole. */
    private static final int MOST_WHOLE = 40;

    /** How long NSGA-II may look, s. */
    static final double NSGA_SECONDS = 1;

    /** The six objectives and the nice wishes missed. */
    private static final int AXES = Objective.values().length + 1;

    private Fronts() {}

    /**
     * One catalogue.
     *
     * @param scenario the brief
     * @param parts parts
     * @param builds builds
     * @param legal legal builds
     * @param front builds of the exact front
     * @param within of these, within the regret
     * @param picks builds offered
     * @param looks looks (blank, seat, grip material, guide family) among those
     * @param share their volume over that of the best triple
     * @param shareOfDifferent their volume over that of the best triple of builds that look different
     * @param wholeShare their volume over that of the whole front, or null where it is too large
     * @param nsgaShare the volume of NSGA-II's last population over that of the whole front, or null
     */
    record Case(
            String scenario,
            int parts,
            long builds,
            int legal,
            int front,
            int within,
            int picks,
            int looks,
            double share,
            double shareOfDifferent,
            @Nullable Double wholeShare,
            @Nullable Double nsgaShare) {}

    static List<Case> measure(Shop shop, List<Scenario> scenarios, long end, List<String> faults) {
        List<Case> cases = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            Excerpt excerpt = System.nanoTime() < end ? Excerpt.of(shop, scenario, BUILDS) : null;
            if (excerpt != null) {
                List<Legal> legal = new Enumeration(excerpt.catalog(), excerpt.query(), true).legal();
                cases.add(new One(scenario.name(), excerpt, legal, faults).measure());
            }
        }
        return cases;
    }

    private static final class One {
        private final String name;
        private final Excerpt shop;
        private final List<Legal> legal;
        private final List<String> faults;
        private final Scoring own;
        private final Scoring equal;

        One(String name, Excerpt shop, List<Legal> legal, List<String> faults) {
            this.name = name;
            this.shop = shop;
            this.legal = legal;
            this.faults = faults;
            Query query = shop.query();
            this.own = Scoring.of(query.brief(), shop.catalog().rates(), query.priorities());
            this.equal = Scoring.even(query.brief(), shop.catalog().rates());
        }

        Case measure() {
            List<ObjectiveVector> front = front();
            List<Proposal> offer = Offer.three(new Search(shop.catalog()), shop.query(), new Cap(Cap.SECONDS).watch());
            List<double[]> picks =
                    offer.stream().map(one -> point(one.objectives())).toList();
            ObjectiveVector first = offer.get(0).objectives();
            long best = own.score(first);
            long most = best + Math.round(REGRET * Math.abs(best));
            List<ObjectiveVector> within =
                    front.stream().filter(one -> own.score(one) <= most).toList();
            Map<ObjectiveVector, Set<String>> looks = looks(within);
            double[] reference = beyond(within);
            double ours = Hypervolume.of(picks, reference);
            double share = ours / bestTriple(first, within, reference, (one, other) -> true);
            double different = ours / bestTriple(first, within, reference, (one, other) -> differ(looks, one, other));
            if (front.stream().noneMatch(first::equals)) {
                faults.add("excerpt for " + name + ": rank 1 is not on the exact front");
            }
            if (share > 1 + 1e-9) {
                faults.add("excerpt for " + name + ": suspicious: the offer beats the best triple, share " + share);
            }
            boolean small = front.size() <= MOST_WHOLE;
            double whole =
                    small ? Hypervolume.of(front.stream().map(this::point).toList(), beyond(front)) : 0;
            Double wholeShare = small ? Double.valueOf(Hypervolume.of(picks, beyond(front)) / whole) : null;
            Double nsga = small ? Double.valueOf(Hypervolume.of(nsga(), beyond(front)) / whole) : null;
            return new Case(
                    name,
                    shop.catalog().size(),
                    shop.builds(),
                    legal.size(),
                    front.size(),
                    within.size(),
                    picks.size(),
                    (int) looks.values().stream()
                            .flatMap(Set::stream)
                            .distinct()
                            .count(),
                    share,
                    different,
                    wholeShare,
                    nsga);
        }

        private List<double[]> nsga() {
            Question question = new Question(shop.catalog(), shop.query());
            List<ObjectiveVector> found = Nsga2.front(question, new Race(question, NSGA_SECONDS));
            return nonDominated(found).stream().map(this::point).toList();
        }

        private List<ObjectiveVector> front() {
            return nonDominated(legal.stream().map(Legal::vector).toList());
        }

        private static List<ObjectiveVector> nonDominated(List<ObjectiveVector> all) {
            List<ObjectiveVector> front = new ArrayList<>();
            for (ObjectiveVector one : all.stream().distinct().toList()) {
                if (front.stream().noneMatch(other -> atLeastAsGood(other, one))) {
                    front.removeIf(other -> atLeastAsGood(one, other));
                    front.add(one);
                }
            }
            return front;
        }

        /** In all six objectives and in the nice wishes. */
        private static boolean atLeastAsGood(ObjectiveVector one, ObjectiveVector other) {
            return one.missedMilliSteps() <= other.missedMilliSteps()
                    && Arrays.stream(Objective.values()).allMatch(o -> one.loss(o) <= other.loss(o));
        }

        /** Rank 1 with the two that add most volume, each pair of the three allowed. */
        private double bestTriple(
                ObjectiveVector first,
                List<ObjectiveVector> within,
                double[] reference,
                BiPredicate<ObjectiveVector, ObjectiveVector> allowed) {
            double[] start = point(first);
            double best = Hypervolume.of(List.of(start), reference);
            for (int i = 0; i < within.size(); i++) {
                ObjectiveVector second = within.get(i);
                if (allowed.test(first, second)) {
                    best = Math.max(best, Hypervolume.of(List.of(start, point(second)), reference));
                    for (int j = i + 1; j < within.size(); j++) {
                        ObjectiveVector third = within.get(j);
                        if (allowed.test(first, third) && allowed.test(second, third)) {
                            best = Math.max(
                                    best, Hypervolume.of(List.of(start, point(second), point(third)), reference));
                        }
                    }
                }
            }
            return best;
        }

        /** Some build of one looks different from some build of the other. */
        private static boolean differ(
                Map<ObjectiveVector, Set<String>> looks, ObjectiveVector one, ObjectiveVector other) {
            Set<String> ones = looks.getOrDefault(one, Set.of());
            Set<String> others = looks.getOrDefault(other, Set.of());
            return ones.size() > 1 || others.size() > 1 || !ones.equals(others);
        }

        private Map<ObjectiveVector, Set<String>> looks(List<ObjectiveVector> within) {
            Map<ObjectiveVector, Set<String>> looks = new HashMap<>();
            within.forEach(one -> looks.put(one, new TreeSet<>()));
            for (Legal one : legal) {
                Set<String> of = looks.get(one.vector());
                if (of != null) {
                    of.add(look(one.build()));
                }
            }
            return looks;
        }

        private String look(Build build) {
            Part grip = part(build, Station.REAR_GRIP);
            String guide =
                    part(build, Station.guide(1)) instanceof Guide of ? of.family() + " " + of.frameFinish() : "";
            return build.layout().blankId() + "|" + build.partAt(Station.SEAT) + "|"
                    + (grip == null ? "" : grip.facts().material()) + "|" + guide;
        }

        private @Nullable Part part(Build build, Station station) {
            String id = build.partAt(station);
            return id == null ? null : shop.catalog().find(id);
        }

        /** Losses in steps, each objective alike, missed wishes last. */
        private double[] point(ObjectiveVector vector) {
            double[] steps = new double[AXES];
            steps[AXES - 1] = Scoring.steps(equal.missed(vector));
            for (Objective objective : Objective.values()) {
                steps[objective.ordinal()] = Scoring.steps(equal.share(objective, vector));
            }
            return steps;
        }

        /** One step worse than the worst in everything. */
        private double[] beyond(List<ObjectiveVector> front) {
            double[] reference = new double[AXES];
            Arrays.fill(reference, Double.NEGATIVE_INFINITY);
            for (ObjectiveVector one : front) {
                double[] point = point(one);
                for (int i = 0; i < point.length; i++) {
                    reference[i] = Math.max(reference[i], point[i] + 1);
                }
            }
            return reference;
        }
    }
}
