package withy.search;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;

/** Where jobs together want more of a part by some day than there is, and who may have to do with less. */
final class Contention {
    private final List<PlanJob> jobs;
    private final Supplies supplies;
    private final SortedSet<LocalDate> days;

    Contention(List<PlanJob> jobs, Supplies supplies) {
        this.jobs = jobs;
        this.supplies = supplies;
        this.days = supplies.days(jobs.stream().map(PlanJob::wanted).toList());
    }

    /**
     * Jobs that together want more of a part by a day than there is.
     *
     * @param part the part
     * @param there pieces there are
     * @param jobs numbers of the jobs
     */
    record Conflict(String part, int there, List<Integer> jobs) {}

    /** All conflicts, by part and day. */
    List<Conflict> all(List<PlanOption> options, Collection<Integer> among) {
        List<Conflict> conflicts = new ArrayList<>();
        for (Map.Entry<String, List<Integer>> one : users(options, among).entrySet()) {
            for (LocalDate day : days) {
                List<Integer> using = one.getValue().stream()
                        .filter(job -> !jobs.get(job).wanted().isAfter(day))
                        .toList();
                int used = using.stream()
                        .mapToInt(job -> options.get(job).of(one.getKey()))
                        .sum();
                int there = supplies.by(one.getKey(), day);
                if (used > there) {
                    conflicts.add(new Conflict(one.getKey(), there, using));
                }
            }
        }
        return conflicts;
    }

    private SortedMap<String, List<Integer>> users(List<PlanOption> options, Collection<Integer> among) {
        SortedMap<String, List<Integer>> users = new TreeMap<>();
        for (int job : among) {
            for (String part : options.get(job).pieces().keySet()) {
                if (supplies.scarce(part, jobs.get(job).wanted())) {
                    users.computeIfAbsent(part, any -> new ArrayList<>()).add(job);
                }
            }
        }
        return users;
    }

    /** What a job may take at most of the scarce parts that others took before it. */
    SortedMap<String, Integer> left(int job, List<PlanOption> taken) {
        LocalDate wanted = jobs.get(job).wanted();
        SortedMap<String, Integer> limits = new TreeMap<>();
        for (PlanOption option : taken) {
            for (String part : option.pieces().keySet()) {
                if (supplies.scarce(part, wanted)) {
                    limits.computeIfAbsent(part, any -> left(part, job, taken));
                }
            }
        }
        return limits;
    }

    /** Pieces of a part a job may take beside what others took. */
    private int left(String part, int job, List<PlanOption> taken) {
        LocalDate wanted = jobs.get(job).wanted();
        int left = Integer.MAX_VALUE;
        for (LocalDate day : days) {
            if (!day.isBefore(wanted)) {
                int used = 0;
                for (int other = 0; other < jobs.size(); other++) {
                    LocalDate of = jobs.get(other).wanted();
                    boolean shares = other != job && !of.isAfter(day) && supplies.scarce(part, of);
                    used += shares ? taken.get(other).of(part) : 0;
                }
                left = Math.min(left, supplies.by(part, day) - used);
            }
        }
        return Math.max(0, left);
    }
}
