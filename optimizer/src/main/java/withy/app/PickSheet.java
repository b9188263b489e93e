package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to take off the shelf, and what to wait for, across all accepted jobs.
 *
 * @param schema format of the answer
 * @param day the day it holds for
 * @param jobs the accepted jobs
 * @param bins what lies here, by bin; without a name first
 * @param suppliers what is still to come, by supplier; without a name first
 * @param missing what was promised and is lost
 * @param brought what the customers bring
 * @param warnings jobs that could not be read
 */
public record PickSheet(
        int schema,
        String day,
        List<JobLine> jobs,
        List<Bin> bins,
        List<Supplier> suppliers,
        List<Missing> missing,
        List<Missing> brought,
        List<String> warnings) {
    public PickSheet {
        jobs = List.copyOf(jobs);
        bins = List.copyOf(bins);
        suppliers = List.copyOf(suppliers);
        missing = List.copyOf(missing);
        brought = List.copyOf(brought);
        warnings = List.copyOf(warnings);
    }

    /**
     * A job.
     *
     * @param wantedBy day it is wanted, or null
     */
    public record JobLine(long job, String name, @Nullable String wantedBy) {}

    /** A bin with what to take out of it. */
    public record Bin(String bin, List<Pick> picks) {
        public Bin {
            picks = List.copyOf(picks);
        }
    }

    /**
     * A part to take.
     *
     * @param amount how much, in {@code unit}
     * @param unit pieces, m or ml
     * @param takes for which job how much
     */
    public record Pick(String part, String name, double amount, String unit, List<Take> takes) {
        public Pick {
            takes = List.copyOf(takes);
        }
    }

    /**
     * What one job takes of a part.
     *
     * @param numbers numbers on the bags; empty for what is used by amount
     */
    public record Take(long job, double amount, List<Integer> numbers) {
        public Take {
            numbers = List.copyOf(numbers);
        }
    }

    /** A supplier with what is to come from him. */
    public record Supplier(String supplier, List<Due> lines) {
        public Supplier {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A part that is not here yet.
     *
     * @param pieces pieces the jobs wait for
     * @param toOrder pieces whose order is still to be sent, full packs
     * @param due last day one of them is due, or null
     * @param jobs who waits
     */
    public record Due(
            String part,
            String name,
            int pieces,
            int toOrder,
            @Nullable String due,
            List<Long> jobs) {
        public Due {
            jobs = List.copyOf(jobs);
        }
    }

    /** Pieces of a part that a job lacks, or that its customer brings. */
    public record Missing(long job, String part, String name, int pieces) {}
}
