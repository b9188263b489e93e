package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What {@code plan} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of lists and memory
 * @param currency currency of the prices
 * @param jobs what each open job gets
 * @param unserved jobs without a rod
 * @param unservedOneByOne the same when jobs are taken one by one in order of date
 * @param unservedAtLeast no plan leaves fewer jobs without a rod; where that is fewer than this plan does, such a plan was not ruled out
 * @param gain noticeable steps, summed over all jobs, by which the plan beats taking them one by one; where more jobs are served only that counts
 * @param gap steps by which a plan with as few jobs unserved could be better at most; null where nothing is known of that, or where fewer unserved was not ruled out
 * @param proven true where no plan is better
 * @param shopping what is to be ordered, by supplier
 * @param interrupted true where it was stopped before its end
 */
public record PlanAnswer(
        int schema,
        String catalogHash,
        String currency,
        List<JobLine> jobs,
        int unserved,
        int unservedOneByOne,
        int unservedAtLeast,
        double gain,
        @Nullable Double gap,
        boolean proven,
        List<SupplierList> shopping,
        boolean interrupted) {
    public PlanAnswer {
        jobs = List.copyOf(jobs);
        shopping = List.copyOf(shopping);
    }

    /**
     * One job.
     *
     * @param job its number
     * @param name short name of the commission
     * @param wantedBy day it is wanted, or null
     * @param kept true where its build is agreed and stays
     * @param glued stations that are glued or wrapped and stay as they are
     * @param served false where it gets no rod
     * @param rod its rod, or null
     * @param oneByOne its rod when jobs are taken one by one, or null
     * @param gain noticeable steps by which its rod is better than one by one; below nought it gives way
     * @param givesUp steps by which its rod is worse than if it were alone
     * @param differs parts that are other than one by one
     * @param waitsFor parts of its agreed build that are on order, or lost and to be ordered again
     * @param build the build as a build file, or null
     */
    public record JobLine(
            long job,
            String name,
            @Nullable String wantedBy,
            boolean kept,
            List<String> glued,
            boolean served,
            OutAnswer.@Nullable Standing rod,
            OutAnswer.@Nullable Standing oneByOne,
            double gain,
            double givesUp,
            List<String> differs,
            List<WaitLine> waitsFor,
            @Nullable BuildFile build) {
        public JobLine {
            glued = List.copyOf(glued);
            differs = List.copyOf(differs);
            waitsFor = List.copyOf(waitsFor);
        }
    }

    /**
     * Orders to one supplier.
     *
     * @param supplier who
     * @param lines what
     * @param totalMinor what it costs the shop, without tax, minor units
     */
    public record SupplierList(String supplier, List<OrderLine> lines, long totalMinor) {
        public SupplierList {
            lines = List.copyOf(lines);
        }
    }

    /**
     * One part to order.
     *
     * @param part catalogue id
     * @param name maker and model
     * @param pieces how many, in whole packs
     * @param priceMinor for all of them, minor units
     * @param orderBy last day that is in time for the first job that needs it, or null for no hurry
     */
    public record OrderLine(
            String part,
            String name,
            int pieces,
            long priceMinor,
            @Nullable String orderBy) {}
}
