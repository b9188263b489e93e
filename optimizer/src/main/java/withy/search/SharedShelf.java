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

    /** Pieces of a part there are by a day for the jobs wanted by then that can't wait for an order. */
    private record Row(String part, LocalDate day, int there) {}

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
        for (int job = 0; job < jobs.size(); job++) {
            Map<PlanOption, int[]> own = new IdentityHashMap<>();
            for (PlanOption way : pool.get(job)) {
                own.put(way, takes(jobs.get(job).wanted(), way));
            }
            takes.add(own);
        }
    }

    private int[] takes(LocalDate wanted, PlanOption way) {
        return rows.stream()
                .mapToInt(row ->
                        !wanted.isAfter(row.day()) && supplies.scarce(row.part(), wanted) ? way.of(row.part()) : 0)
                .toArray();
    }

    /** Pieces wanted beyond what there is, added up over parts and days. */
    long excess(List<PlanOption> options) {
        int[] used = new int[rows.size()];
        for (int job = 0; job < options.size(); job++) {
            int[] own = takes.get(job).get(options.get(job));
            for (int row = 0; own != null && row < used.length; row++) {
                used[row] += own[row];
            }
        }
        long excess = 0;
        for (int row = 0; row < used.length; row++) {
            excess += Math.max(0, used[row] - rows.get(row).there());
        }
        return excess;
    }

    /** Suppliers that something must be ordered from. */
    long orders(List<PlanOption> options) {
        Map<String, Integer> all = new HashMap<>();
        options.forEach(option -> option.pieces().forEach((part, count) -> all.merge(part, count, Integer::sum)));
        return all.entrySet().stream()
                .filter(one -> one.getValue() > supplies.by(one.getKey(), Supplies.NO_HURRY))
                .map(one -> jobs.get(0).catalog().find(one.getKey()))
                .filter(part -> part != null)
                .map(Part::facts)
                .map(facts -> facts.supplier())
                .distinct()
                .count();
    }
}
