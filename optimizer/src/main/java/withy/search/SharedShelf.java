package withy.search;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import withy.catalog.Part;

/** What jobs take together of the parts that may run short, for plans made of a few known builds a job: added up quickly many times over. */
final class SharedShelf {
    private final List<PlanJob> jobs;
    private final Supplies supplies;
    private final List<Row> rows = new ArrayList<>();
    private final List<Map<PlanOption, int[]>> takes = new ArrayList<>();
    private final List<OrderRow> orderRows = new ArrayList<>();
    private final List<Map<PlanOption, int[]>> ofOrderRows = new ArrayList<>();
    private final int suppliers;

    /** Pieces of a part there are by a day for the jobs wanted by then that can't wait for an order. */
    private record Row(String part, LocalDate day, int there) {}

    /** A part that may have to be ordered: pieces there are in the end, and the number of its supplier. */
    private record OrderRow(String part, int there, int supplier) {}

    /**
     * @param pool the builds of each job; no others may be asked about
     */
    SharedShelf(List<PlanJob> jobs, Supplies supplies, List<List<PlanOption>> pool) {
        this.jobs = jobs;
        this.supplies = supplies;
        Map<String, Integer> most = new TreeMap<>();
        for (int job = 0; job < jobs.size(); job++) {
            LocalDate wanted = jobs.get(job).wanted();
            Map<String, Integer> own = new TreeMap<>();
            pool.get(job)
                    .forEach(way -> way.pieces().forEach((part, count) -> {
                        if (supplies.scarce(part, wanted)) {
                            own.merge(part, count, Math::max);
                        }
                    }));
            own.forEach((part, count) -> most.merge(part, count, Integer::sum));
        }
        for (LocalDate day : supplies.days(jobs.stream().map(PlanJob::wanted).toList())) {
            most.forEach((part, count) -> {
                if (count > supplies.by(part, day)) {
                    rows.add(new Row(part, day, supplies.by(part, day)));
                }
            });
        }
        this.suppliers = orderRows(pool);
        for (int job = 0; job < jobs.size(); job++) {
            Map<PlanOption, int[]> own = new IdentityHashMap<>();
            Map<PlanOption, int[]> ordered = new IdentityHashMap<>();
            for (PlanOption way : pool.get(job)) {
                own.put(way, takes(jobs.get(job).wanted(), way));
                ordered.put(
                        way,
                        orderRows.stream().mapToInt(row -> way.of(row.part())).toArray());
            }
            takes.add(own);
            ofOrderRows.add(ordered);
        }
    }

    /** Parts of which the jobs may together take more than there will be; how many suppliers they have. */
    private int orderRows(List<List<PlanOption>> pool) {
        Map<String, Integer> most = new TreeMap<>();
        for (List<PlanOption> ways : pool) {
            Map<String, Integer> own = new TreeMap<>();
            ways.forEach(way -> way.pieces().forEach((part, count) -> own.merge(part, count, Math::max)));
            own.forEach((part, count) -> most.merge(part, count, Integer::sum));
        }
        Map<String, Integer> numbers = new HashMap<>();
        most.forEach((id, count) -> {
            int there = supplies.by(id, Supplies.NO_HURRY);
            Part part = jobs.get(0).catalog().find(id);
            if (count > there && part != null) {
                String supplier = part.facts().supplier();
                Integer number = numbers.computeIfAbsent(supplier, any -> numbers.size());
                orderRows.add(new OrderRow(id, there, number));
            }
        });
        return numbers.size();
    }

    private int[] takes(LocalDate wanted, PlanOption way) {
        return rows.stream()
                .mapToInt(row ->
                        !wanted.isAfter(row.day()) && supplies.scarce(row.part(), wanted) ? way.of(row.part()) : 0)
                .toArray();
    }

    /** Pieces wanted beyond what there is, added up over parts and days. */
    long excess(List<PlanOption> options) {
        int[] used = used(options, takes, rows.size());
        long excess = 0;
        for (int row = 0; row < used.length; row++) {
            excess += Math.max(0, used[row] - rows.get(row).there());
        }
        return excess;
    }

    private static int[] used(List<PlanOption> options, List<Map<PlanOption, int[]>> takes, int rows) {
        int[] used = new int[rows];
        for (int job = 0; job < options.size(); job++) {
            int[] own = takes.get(job).get(options.get(job));
            for (int row = 0; own != null && row < rows; row++) {
                used[row] += own[row];
            }
        }
        return used;
    }

    /** Suppliers that something must be ordered from. */
    long orders(List<PlanOption> options) {
        int[] used = used(options, ofOrderRows, orderRows.size());
        boolean[] asked = new boolean[suppliers];
        long orders = 0;
        for (int row = 0; row < used.length; row++) {
            OrderRow of = orderRows.get(row);
            if (used[row] > of.there() && !asked[of.supplier()]) {
                asked[of.supplier()] = true;
                orders++;
            }
        }
        return orders;
    }
}
