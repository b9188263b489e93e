package withy.explain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.explain.TradeOffs.TradeOff;
import withy.objectives.Scoring;

/**
 * How firm an offer is.
 *
 * @param shares of all ways to weigh the six objectives, how many put each build first, in the order of the builds
 * @param swap the nearest change of one priority that swaps two neighbouring ranks, or null where none does
 * @param binding wishes without which a better rod could be had
 */
public record Sensitivity(List<Double> shares, @Nullable Swap swap, List<Binding> binding) {
    /** Weightings tried; evenly spread, the same each time. */
    static final int WEIGHTINGS = 4096;

    private static final int[] PRIMES = {2, 3, 5, 7, 11};
    private static final double MOST_PRIORITY = 100;

    /** What a brief tells without wishing it: the hand, the line and the fish. */
    private static final Set<String> GIVEN =
            Set.of(HandleDemands.HAND, "largestFish", "line.strength", "line.kind", "leader.strength", "leader.knot");

    public Sensitivity {
        shares = List.copyOf(shares);
        binding = List.copyOf(binding);
    }

    /**
     * Two ranks that change places.
     *
     * @param rank the higher of the two
     * @param objective whose priority changes
     * @param now what it is
     * @param keeps nearest value to {@code swaps} with which they keep their places
     * @param swaps value with which they do not
     * @param sentence told as on the phone
     */
    public record Swap(int rank, Objective objective, double now, double keeps, double swaps, String sentence) {}

    /**
     * A wish that costs something.
     *
     * @param wish what is asked
     * @param without the best rod without it, measured for the brief
     * @param tradeOffs that rod against the best with it, all six objectives
     * @param sentence told as on the phone
     */
    public record Binding(Conflict.Asked wish, Found without, List<TradeOff> tradeOffs, String sentence) {
        public Binding {
            tradeOffs = List.copyOf(tradeOffs);
        }
    }

    /** Of up to three builds, best first. */
    public static Sensitivity of(Inquiry inquiry, List<Found> builds) {
        return new Sensitivity(shares(inquiry, builds), swap(inquiry, builds), binding(inquiry, builds.get(0)));
    }

    /** Weightings are spread evenly over all that add up to one (Halton's sequence, sorted into spacings). */
    static List<Double> shares(Inquiry inquiry, List<Found> builds) {
        int[] wins = new int[builds.size()];
        for (int i = 1; i <= WEIGHTINGS; i++) {
            Map<Objective, Double> weighting = weighting(i);
            Scoring scoring = Scoring.of(inquiry.brief(), inquiry.catalog().rates(), weighting);
            int best = 0;
            for (int b = 1; b < builds.size(); b++) {
                if (scoring.score(builds.get(b).vector())
                        < scoring.score(builds.get(best).vector())) {
                    best = b;
                }
            }
            wins[best]++;
        }
        return Arrays.stream(wins).mapToObj(won -> (double) won / WEIGHTINGS).toList();
    }

    static Map<Objective, Double> weighting(int index) {
        double[] cuts = new double[PRIMES.length];
        for (int i = 0; i < cuts.length; i++) {
            cuts[i] = halton(index, PRIMES[i]);
        }
        Arrays.sort(cuts);
        Map<Objective, Double> weighting = new EnumMap<>(Objective.class);
        double before = 0;
        for (Objective objective : Objective.values()) {
            int at = objective.ordinal();
            double cut = at < cuts.length ? cuts[at] : 1;
            weighting.put(objective, cut - before);
            before = cut;
        }
        return weighting;
    }

    private static double halton(int index, int base) {
        double value = 0;
        double share = 1;
        for (int rest = index; rest > 0; rest /= base) {
            share /= base;
            value += share * (rest % base);
        }
        return value;
    }

    private static @Nullable Swap swap(Inquiry inquiry, List<Found> builds) {
        Swap nearest = null;
        double least = Double.MAX_VALUE;
        for (int rank = 1; rank < builds.size(); rank++) {
            for (Objective objective : Objective.values()) {
                double now = inquiry.brief().priority(objective);
                for (double way : new double[] {0.1, -0.1}) {
                    long step = steps(inquiry, builds.get(rank - 1), builds.get(rank), objective, way);
                    double change = step * 0.1 / (now + 1);
                    if (step > 0 && change < least) {
                        least = change;
                        nearest = told(rank, objective, now, tenth(now + way * (step - 1)), tenth(now + way * step));
                    }
                }
            }
        }
        return nearest;
    }

    private static long steps(Inquiry inquiry, Found first, Found second, Objective objective, double way) {
        double now = inquiry.brief().priority(objective);
        long most = Math.round(Math.abs((way > 0 ? MOST_PRIORITY : 0) - now) / 0.1);
        return Turning.first(most, step -> {
            Map<Objective, Double> priorities = new EnumMap<>(inquiry.brief().priorities());
            priorities.put(objective, tenth(now + way * step));
            Scoring scoring = Scoring.of(inquiry.brief(), inquiry.catalog().rates(), priorities);
            return scoring.score(second.vector()) < scoring.score(first.vector());
        });
    }

    private static Swap told(int rank, Objective objective, double now, double keeps, double swaps) {
        String sentence = Phrases.of(
                "sensitivity.swap",
                rank + 1,
                rank,
                Phrases.of("objective." + objective.key()),
                Turning.number(swaps),
                Turning.number(now));
        return new Swap(rank, objective, now, keeps, swaps, sentence);
    }

    private static double tenth(double value) {
        return Math.max(0, Math.round(value * 10) / 10.0);
    }

    /** A wish binds where the best rod without it is better for the brief's own priorities. Another reel would be another rod: it is left alone. */
    private static List<Binding> binding(Inquiry inquiry, Found first) {
        List<Binding> binding = new ArrayList<>();
        long score = inquiry.score(first.vector());
        for (Demand demand : Demands.of(inquiry)) {
            if (demand.key().equals("reel") || inquiry.stopped()) {
                continue;
            }
            Found best = without(inquiry, demand, score);
            if (best != null) {
                binding.add(binding(inquiry, first, demand, best));
            }
        }
        return binding;
    }

    /** The best rod without a wish where it beats a score by the brief's own priorities, or null. */
    private static @Nullable Found without(Inquiry inquiry, Demand demand, long score) {
        Found best = null;
        long least = score;
        for (Brief brief : Demands.without(inquiry.brief(), List.of(demand))) {
            Found found = inquiry.best(inquiry.query().withBrief(brief));
            if (found != null && inquiry.score(found.vector()) < least) {
                least = inquiry.score(found.vector());
                best = found;
            }
        }
        return best;
    }

    private static Binding binding(Inquiry inquiry, Found first, Demand demand, Found best) {
        List<TradeOff> tradeOffs = TradeOffs.between(best.side(0), first.side(1), inquiry.units());
        boolean meets = !Missed.of(first.rod(), best.rod()).isEmpty();
        boolean gains = meets || tradeOffs.stream().anyMatch(t -> t.noticeable() && t.better());
        // it is better for something: where nothing of that would be noticed alone, it is all told
        List<TradeOff> told = tradeOffs.stream()
                .filter(t -> t.noticeable() || t.better() && !gains)
                .toList();
        boolean noticed = gains
                || told.stream().anyMatch(TradeOff::noticeable)
                || !Missed.of(best.rod(), first.rod()).isEmpty();
        boolean wishFirst = meets && told.stream().noneMatch(t -> t.better() && !t.same());
        String key = GIVEN.contains(demand.key()) ? "sensitivity.given" : "sensitivity.binds";
        String sentence = noticed
                ? Phrases.of(wishFirst ? key + ".one" : key, demand.words(), Ledger.costs(inquiry, first, best, told))
                : Phrases.of(key + ".hardly", demand.words());
        return new Binding(Conflict.Asked.of(demand), best, tradeOffs, sentence);
    }
}
