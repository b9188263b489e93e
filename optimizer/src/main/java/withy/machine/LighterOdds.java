package withy.machine;

import java.util.Map;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import withy.catalog.Part;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;

/**
 * How likely one rod really is lighter than another, by drawing weights within their tolerances (Monte Carlo, seeded).
 *
 * <p>A catalogue weight is equally likely anywhere within its ± tolerance. Pieces of one model share their error, in one rod and in both, so
 * what the rods have in common cancels. Thread, finish and glue differ from rod to rod within the shop's workmanship tolerance. A scale reading
 * replaces weight and tolerance.
 *
 * @param probability that the first rod is the lighter one, 0 to 1
 * @param differenceG first less second, as expected, g
 * @param spreadG standard deviation of the difference, g
 * @param draws how often it was drawn
 * @param seed what the draws began with
 */
public record LighterOdds(double probability, double differenceG, double spreadG, int draws, long seed) {
    /** Draws that tell the probability to about half a percent. */
    public static final int USUAL_DRAWS = 20_000;

    /** Tolerance of a scale reading, g: scales that show 0.1 g. ASSUMED. */
    public static final double SCALE_G = 0.05;

    private static final double MG_PER_G = 1000;

    /** Draws. Readings are weights of one piece as sold, g, by part id. */
    public static LighterOdds of(Rod first, Rod second, Map<String, Double> readings, long seed, int draws) {
        SortedMap<String, Piece> pieces = new TreeMap<>();
        collect(first, 1, pieces);
        collect(second, -1, pieces);
        double expected = (first.total().massMg() - second.total().massMg()) / MG_PER_G;
        int count = 0;
        double[] reach = new double[pieces.size() + 2];
        for (Piece piece : pieces.values()) {
            Double reading = readings.get(piece.part.id());
            double tolerance = piece.part.facts().weightTolG();
            if (reading != null) {
                expected += piece.share * (reading - piece.part.massMg() / MG_PER_G);
                tolerance = SCALE_G;
            } else if (piece.part.facts().weighed()) {
                tolerance = Math.min(tolerance, SCALE_G);
            }
            reach[count++] = Math.abs(piece.share) * tolerance;
        }
        reach[count++] = first.setting().catalog().rates().workmanshipToleranceG();
        reach[count] = second.setting().catalog().rates().workmanshipToleranceG();
        return draw(expected, reach, seed, draws);
    }

    /** A sum of an expected value and errors, each even within ± its reach. */
    static LighterOdds draw(double expected, double[] reach, long seed, int draws) {
        SplittableRandom random = new SplittableRandom(seed);
        double variance = 0;
        for (double r : reach) {
            variance += r * r / 3;
        }
        double lighter = 0;
        for (int i = 0; i < draws; i++) {
            double difference = expected;
            for (double r : reach) {
                difference += r * (2 * random.nextDouble() - 1);
            }
            lighter += difference < 0 ? 1 : difference == 0 ? 0.5 : 0;
        }
        return new LighterOdds(lighter / draws, expected, Math.sqrt(variance), draws, seed);
    }

    /** A model of part and how many pieces' worth of it one rod has more than the other. */
    private static final class Piece {
        private final Part part;
        private double share;

        Piece(Part part) {
            this.part = part;
        }
    }

    private static void collect(Rod rod, int sign, Map<String, Piece> pieces) {
        for (Placed placed : rod.placed().values()) {
            long whole = placed.part().massMg();
            long fitted =
                    rod.shares().getOrDefault(placed.station(), Share.NONE).partMg();
            if (whole > 0) {
                pieces.computeIfAbsent(placed.part().id(), id -> new Piece(placed.part())).share +=
                        sign * (double) fitted / whole;
            }
        }
    }
}
