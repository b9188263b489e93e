package withy.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import withy.app.OutAnswer.Standing;
import withy.app.PlanAnswer.JobLine;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.JobPlanner;
import withy.search.PlanJob;
import withy.search.PlanOption;
import withy.search.Supplies;
import withy.shop.Change;
import withy.shop.Job;
import withy.shop.Level;
import withy.shop.Shop;
import withy.shop.Snapshot;

/**
 * Plans all open jobs at once. A job whose build is accepted and whose pieces are all promised keeps both; a job that lost pieces is chosen again
 * around what is glued; the others are chosen freely. Nothing is promised by a plan.
 */
public final class PlanDesk {
    private final Workshop workshop;
    private final Progress progress;

    public PlanDesk(Workshop workshop, Progress progress) {
        this.workshop = workshop;
        this.progress = progress;
    }

    /** What the plan needs to know of one job. */
    private record Seen(Job job, Brief brief, Catalog catalog, SortedMap<String, Integer> held, PlanJob plan) {}

    /** Plans with the usual effort. */
    public PlanAnswer plan() {
        return plan(false);
    }

    /**
     * Plans.
     *
     * @param longer true where it may take minutes
     */
    public PlanAnswer plan(boolean longer) {
        try (Shop shop = workshop.open()) {
            Snapshot snapshot = shop.snapshot(workshop.lists());
            List<Seen> seen = new ArrayList<>();
            for (Job job : shop.jobs().all()) {
                if (job.open()) {
                    seen.add(seen(shop, snapshot, job));
                }
            }
            List<Seen> asked =
                    seen.stream().filter(one -> one.plan().kept() == null).toList();
            JobPlanner.Plan plan = JobPlanner.plan(
                    asked.stream().map(Seen::plan).toList(),
                    supplies(shop, asked),
                    new Watch(progress::stopped, (b, o, s) -> {}),
                    longer ? JobPlanner.Effort.LONGER : JobPlanner.Effort.STANDARD);
            return answer(shop, snapshot, seen, asked, plan);
        }
    }

    private Seen seen(Shop shop, Snapshot snapshot, Job job) {
        Brief brief = Agreed.brief(workshop, job);
        SortedMap<String, Integer> held = shop.jobs().held(job.id());
        Catalog catalog = snapshot.forJob(brief, held);
        Query query = Query.of(brief, Rulebook.standard());
        if (job.state() != Job.State.ACCEPTED) {
            return new Seen(job, brief, catalog, held, new PlanJob(job.id(), catalog, query, null));
        }
        Build build = Agreed.build(job, catalog);
        if (shop.jobs().file(job.id()).missing().isEmpty()) {
            return new Seen(job, brief, catalog, held, new PlanJob(job.id(), catalog, query, build));
        }
        SortedMap<Station, Build.Choice> fixed = new TreeMap<>();
        for (String key : job.glued()) {
            Station station = Objects.requireNonNull(Station.parse(key));
            Build.Choice choice = build.choices().get(station);
            fixed.put(station, choice == null ? Build.Choice.of(build.layout().blankId()) : choice);
        }
        if (!fixed.isEmpty()) {
            fixed.put(Station.BLANK, Build.Choice.of(build.layout().blankId()));
        }
        Query around = query.fixing(
                fixed, Set.of(), fixed.isEmpty() ? null : build.layout().reelFootMm());
        return new Seen(job, brief, catalog, held, new PlanJob(job.id(), catalog, around, null));
    }

    /** What is free, and what lies ready for the jobs that are chosen again. */
    private Supplies supplies(Shop shop, List<Seen> asked) {
        Map<String, Integer> own = held(asked);
        Map<String, Level> levels = new HashMap<>();
        shop.stock().levels().forEach(level -> levels.put(level.part(), level));
        SortedMap<String, Supplies.Supply> parts = new TreeMap<>();
        for (Part part : workshop.lists().byId().values()) {
            Level level = levels.get(part.id());
            SortedMap<LocalDate, Integer> due = new TreeMap<>();
            if (level != null) {
                level.freeDue().forEach((day, count) -> due.put(LocalDate.parse(day), count));
            }
            Integer held = own.get(part.id());
            int here = (level == null ? 0 : level.free()) + (held == null ? 0 : held);
            parts.put(part.id(), new Supplies.Supply(here, due, part.facts().leadDays()));
        }
        return new Supplies(workshop.day(), parts);
    }

    private PlanAnswer answer(Shop shop, Snapshot snapshot, List<Seen> seen, List<Seen> asked, JobPlanner.Plan plan) {
        List<JobLine> lines = new ArrayList<>();
        SortedMap<String, Integer> toBuild = new TreeMap<>();
        SortedMap<String, LocalDate> first = new TreeMap<>();
        for (Seen one : seen) {
            int at = asked.indexOf(one);
            if (at < 0) {
                lines.add(kept(shop, one));
            } else {
                lines.add(line(shop, snapshot, one, plan, at));
                need(one, plan.options().get(at), toBuild, first);
            }
        }
        long gain = plan.oneByOneCost().score() - plan.cost().score();
        boolean alike = plan.oneByOneCost().unserved() == plan.cost().unserved();
        Long gap = plan.gap();
        return new PlanAnswer(
                Answer.SCHEMA,
                snapshot.hash(),
                workshop.lists().rates().currency(),
                lines,
                plan.cost().unserved(),
                plan.oneByOneCost().unserved(),
                plan.bound().unserved(),
                alike ? steps(gain) : 0,
                gap == null ? null : steps(gap),
                plan.proven(),
                ShoppingList.of(workshop, shop.stock().levels(), held(asked), toBuild, first),
                progress.stopped() && !plan.proven());
    }

    private static double steps(long score) {
        return Sheets.rounded(Scoring.steps(score), 4);
    }

    private JobLine kept(Shop shop, Seen one) {
        Build build = Objects.requireNonNull(one.plan().kept());
        Standing standing = standing(one, build);
        return new JobLine(
                one.job().id(),
                one.job().name(),
                one.job().wanted(),
                true,
                List.copyOf(one.job().glued()),
                true,
                standing,
                standing,
                0,
                0,
                List.of(),
                WaitLine.of(workshop, shop, one.job()),
                BuildFile.of(build));
    }

    private JobLine line(Shop shop, Snapshot snapshot, Seen one, JobPlanner.Plan plan, int at) {
        PlanOption now = plan.options().get(at);
        PlanOption before = plan.oneByOne().get(at);
        PlanOption alone = plan.alone().get(at);
        Build build = now.build();
        Build other = before.build();
        return new JobLine(
                one.job().id(),
                one.job().name(),
                one.job().wanted(),
                false,
                List.copyOf(one.job().glued()),
                now.served(),
                build == null ? null : standing(one, build),
                other == null ? null : standing(one, other),
                build == null || other == null ? 0 : steps(before.score() - now.score()),
                build == null || !alone.served() ? 0 : steps(now.score() - alone.score()),
                build == null || other == null ? List.of() : differs(build, other),
                build == null ? List.of() : lost(shop, snapshot, one, build),
                build == null ? null : BuildFile.of(build));
    }

    /** What a job that lost pieces waits for, where its rod takes the same part again. */
    private List<WaitLine> lost(Shop shop, Snapshot snapshot, Seen one, Build build) {
        Map<String, Integer> needed = new HashMap<>();
        Agreed.needs(Rod.measure(one.catalog(), one.brief(), build))
                .forEach(need -> needed.put(need.part(), need.pieces()));
        Map<String, Level> levels = new HashMap<>();
        shop.stock().levels().forEach(level -> levels.put(level.part(), level));
        List<WaitLine> lines = new ArrayList<>();
        for (Change.Hit hit : shop.jobs().file(one.job().id()).missing()) {
            Integer held = one.held().get(hit.part());
            Integer wanted = needed.get(hit.part());
            Level level = levels.get(hit.part());
            int here = (held == null ? 0 : held) + (level == null ? 0 : level.free());
            int missing = (wanted == null ? 0 : wanted) - here;
            LocalDate day = missing <= 0 ? null : snapshot.delivery(hit.part(), missing, workshop.day());
            if (day != null) {
                int coming = level == null
                        ? 0
                        : level.freeDue().values().stream()
                                .mapToInt(Integer::intValue)
                                .sum();
                lines.add(WaitLine.of(
                        hit.part(),
                        workshop.name(hit.part()),
                        missing,
                        day.toString(),
                        Math.max(0, missing - coming),
                        one.job().wanted()));
            }
        }
        return lines;
    }

    private static Standing standing(Seen one, Build build) {
        return Standing.of(Rod.measure(one.catalog(), one.brief(), build));
    }

    private static List<String> differs(Build build, Build other) {
        Set<Station> stations = new TreeSet<>(build.choices().keySet());
        stations.addAll(other.choices().keySet());
        stations.add(Station.BLANK);
        Set<String> parts = new TreeSet<>();
        for (Station station : stations) {
            String part = build.partAt(station);
            if (part != null && !part.equals(other.partAt(station))) {
                parts.add(part);
            }
        }
        return List.copyOf(parts);
    }

    /** Pieces that lie ready for the jobs that are chosen again, by part. */
    private static Map<String, Integer> held(List<Seen> asked) {
        Map<String, Integer> own = new HashMap<>();
        asked.forEach(one -> one.held().forEach((part, count) -> own.merge(part, count, Integer::sum)));
        return own;
    }

    private static void need(
            Seen one, PlanOption option, SortedMap<String, Integer> toBuild, SortedMap<String, LocalDate> first) {
        LocalDate wanted = one.brief().wantedBy();
        option.pieces().forEach((part, count) -> {
            toBuild.merge(part, count, Integer::sum);
            if (wanted != null) {
                first.merge(part, wanted, (a, b) -> a.isBefore(b) ? a : b);
            }
        });
    }
}
