package withy.shop;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;

/**
 * How far what was foretold and what was seen lay apart: for each kind of part its listed weight against the scale, and the finished rods against
 * the weight of the very pieces in them.
 *
 * @param kinds by kind of part
 * @param rods of finished rods, which is what thread, finish and glue are off
 */
public record Experience(Map<PartKind, Seen> kinds, Seen rods) {
    /** Nothing seen yet. */
    public static final Experience NONE = new Experience(Map.of(), Seen.of(List.of()));

    public Experience {
        Map<PartKind, Seen> copy = new EnumMap<>(PartKind.class);
        copy.putAll(kinds);
        kinds = Collections.unmodifiableMap(copy);
    }

    /**
     * A finished rod.
     *
     * @param errorMg weight less what was foretold, mg
     * @param toleranceMg ± that was stated, mg
     */
    public record Rod(long errorMg, long toleranceMg) {}

    /**
     * What was seen.
     *
     * @param count parts weighed, or rods
     * @param meanErrorG mean of weight less foretold, g
     * @param factor stated ± times this is what was seen
     */
    public record Seen(int count, double meanErrorG, double factor) {
        /** The stated tolerance counts as much as so many parts or rods. ASSUMED. */
        private static final double TRUST = 4;

        /** A ± is taken as two standard deviations. ASSUMED. */
        private static final double DEVIATIONS = 2;

        private static final double LEAST = 0.5;
        private static final double MOST = 5;

        /**
         * √((t + Σ (2·error/±)²) / (t + n)): 1 without evidence, and where the errors spread as the ± says.
         *
         * @param pairs error and ±, g
         */
        static Seen of(List<double[]> pairs) {
            double squares = 0;
            double sum = 0;
            for (double[] pair : pairs) {
                sum += pair[0];
                squares += DEVIATIONS * DEVIATIONS * pair[0] * pair[0] / (pair[1] * pair[1]);
            }
            double factor = Math.sqrt((TRUST + squares) / (TRUST + pairs.size()));
            double kept = Math.max(LEAST, Math.min(MOST, factor));
            double mean = pairs.isEmpty() ? 0 : sum / pairs.size();
            return new Seen(pairs.size(), Math.round(mean * 1000) / 1000.0, Math.round(kept * 1000) / 1000.0);
        }
    }

    static Experience of(Catalog lists, Map<String, Weights> weights, List<Rod> finished) {
        Map<PartKind, List<double[]>> pairs = new EnumMap<>(PartKind.class);
        weights.forEach((id, seen) -> {
            Part part = lists.find(id);
            if (part != null && part.facts().weightTolG() > 0) {
                PartFacts facts = part.facts();
                pairs.computeIfAbsent(part.kind(), kind -> new ArrayList<>())
                        .add(new double[] {seen.meanG() - facts.weightG(), facts.weightTolG()});
            }
        });
        Map<PartKind, Seen> kinds = new EnumMap<>(PartKind.class);
        pairs.forEach((kind, list) -> kinds.put(kind, Seen.of(list)));
        List<double[]> rods = new ArrayList<>();
        finished.forEach(rod -> rods.add(new double[] {rod.errorMg() / 1000.0, rod.toleranceMg() / 1000.0}));
        return new Experience(kinds, Seen.of(rods));
    }

    /** What a stated ± of a kind's listed weight is worth. */
    double factor(PartKind kind) {
        Seen seen = kinds.get(kind);
        return seen == null ? 1 : seen.factor();
    }
}
