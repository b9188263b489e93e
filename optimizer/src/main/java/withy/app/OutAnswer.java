package withy.app;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import withy.rod.Rod;

/**
 * What {@code out} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of lists and memory
 * @param part the part that ran out, or null where another brief is asked for
 * @param name maker and model, or null
 * @param currency currency of the prices
 * @param jobs every open job that needs it, chosen again
 * @param applied the job's number and the rung that was accepted, or null
 * @param interrupted true where it was stopped before its end
 */
public record OutAnswer(
        int schema,
        String catalogHash,
        @Nullable String part,
        @Nullable String name,
        String currency,
        List<JobLadder> jobs,
        @Nullable Applied applied,
        boolean interrupted) {
    public OutAnswer {
        jobs = List.copyOf(jobs);
    }

    /**
     * What was accepted.
     *
     * @param job the job's number
     * @param rung parts that might be changed
     */
    public record Applied(long job, int rung) {}

    /**
     * One job.
     *
     * @param job its number
     * @param name short name of the commission
     * @param wantedBy day it is wanted, or null
     * @param agreed the build as it was agreed
     * @param waiting what waiting for the part means
     * @param rungs the best builds with 0, 1, 2, 3 parts changed; one that is no better than the one before is left out
     */
    public record JobLadder(
            long job, String name, @Nullable String wantedBy, Standing agreed, Waiting waiting, List<RungLine> rungs) {
        public JobLadder {
            rungs = List.copyOf(rungs);
        }

        /** The same job with other rungs. */
        JobLadder with(List<RungLine> others) {
            return new JobLadder(job, name, wantedBy, agreed, waiting, others);
        }
    }

    /**
     * How a rod stands.
     *
     * @param weightG finished rod without reel, g
     * @param balanceMm balance point with reel, mm ahead of the reel foot
     * @param priceMinor what the customer pays, minor units
     */
    public record Standing(double weightG, double balanceMm, long priceMinor) {
        static Standing of(Rod rod) {
            return new Standing(
                    rod.figures().weightG(),
                    Sheets.rounded(rod.figures().balanceFromReelFootMm(), 2),
                    rod.figures().priceMinor());
        }
    }

    /**
     * Waiting for the part.
     *
     * @param possible false where it cannot be ordered and none is on its way
     * @param day day it would be here, or null; where what is on order for the job will do, the day that is due
     * @param daysLate days after the day wanted; 0 in time
     * @param onOrder true where all that the job still needs of it is on order for it
     * @param sooner day a new order would be here, where that is before the day; else null
     */
    public record Waiting(
            boolean possible,
            @Nullable String day,
            long daysLate,
            boolean onOrder,
            @Nullable String sooner) {}

    /**
     * One rung.
     *
     * @param rung parts that may be changed
     * @param changes parts that are
     * @param standing how the rod stands then
     * @param weightG this rod less the agreed one, g
     * @param balanceMm likewise, mm
     * @param priceMinor likewise, minor units
     * @param score likewise, noticeable steps of the brief; above nought = worse
     * @param ready day all its parts are here
     * @param daysLate days after the day wanted; 0 in time
     * @param proven true where no build with so few changes is better
     * @param swaps part by part
     * @param build the build as a build file
     */
    public record RungLine(
            int rung,
            int changes,
            Standing standing,
            double weightG,
            double balanceMm,
            long priceMinor,
            double score,
            @Nullable String ready,
            long daysLate,
            boolean proven,
            List<Swap> swaps,
            BuildFile build) {
        public RungLine {
            swaps = List.copyOf(swaps);
        }

        /** What is changed into what, by ids: two rungs of one job that tell the same lead to the same rod. */
        public String mark() {
            return swaps.stream()
                    .map(swap -> String.join("+", swap.stations()) + " " + swap.from() + " " + swap.to())
                    .collect(Collectors.joining(", "));
        }
    }

    /**
     * What is other at some stations.
     *
     * @param stations where
     * @param from part there so far, or null for none
     * @param to part there then, or null for none
     * @param fromName its name, or null
     * @param toName its name, or null
     * @param why a sentence
     */
    public record Swap(
            List<String> stations,
            @Nullable String from,
            @Nullable String to,
            @Nullable String fromName,
            @Nullable String toName,
            String why) {
        public Swap {
            stations = List.copyOf(stations);
        }
    }
}
