package withy.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.app.OutAnswer.Applied;
import withy.app.OutAnswer.JobLadder;
import withy.app.OutAnswer.RungLine;
import withy.app.OutAnswer.Standing;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.ChangeLadder;
import withy.search.ChangeLadder.Situation;
import withy.shop.Job;
import withy.shop.Piece;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.shop.Snapshot;

/** Chooses open jobs again with least disturbance when a part runs out, gets dearer or does not fit, or the customer wants it otherwise. */
public final class OutDesk {
    /** Most parts changed that are looked at. */
    private static final int MOST_CHANGES = 3;

    private final Workshop workshop;
    private final JobDesk desk;
    private final Progress progress;

    public OutDesk(Workshop workshop, Progress progress) {
        this.workshop = workshop;
        this.desk = new JobDesk(workshop);
        this.progress = progress;
    }

    /**
     * What happened.
     *
     * @param part the part that ran out, or null
     * @param priceMinor its new price where it only got dearer, or null
     * @param onlyJob the one job it concerns, or null for all
     * @param brief the job's new brief, or null
     */
    public record Event(
            @Nullable String part,
            @Nullable Long priceMinor,
            @Nullable Long onlyJob,
            @Nullable Brief brief) {}

    /** Looks; nothing is changed. */
    public OutAnswer look(Event event) {
        return look(event, soFar -> {});
    }

    /**
     * The same.
     *
     * @param soFar told what is known: a job as agreed and what waiting means, then rung by rung what it can do, then the next job
     */
    public OutAnswer look(Event event, Consumer<OutAnswer> soFar) {
        try (Shop shop = workshop.open()) {
            List<JobLadder> all =
                    ladders(shop, event, ladders -> soFar.accept(answer(shop, event, List.copyOf(ladders), null)));
            return answer(shop, event, all, null);
        }
    }

    /** Looks again and takes a rung for the one job. */
    public OutAnswer accept(Event event, long job, int rung) {
        return accept(event, job, rung, null);
    }

    /** What was looked at is not there any more: the shelf changed since. Nothing was taken. */
    public static final class Moved extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Moved() {
            super("the ladder is another one by now", null, false, false);
        }
    }

    /**
     * The same, where the rung still is what was looked at.
     *
     * @param mark its mark when it was looked at, or null for whatever it is
     * @throws Moved where it is another one
     */
    public OutAnswer accept(Event event, long job, int rung, @Nullable String mark) {
        try (Shop shop = workshop.open()) {
            List<JobLadder> ladders = ladders(shop, event, soFar -> {});
            Optional<RungLine> found = ladders.stream()
                    .flatMap(ladder -> ladder.rungs().stream())
                    .filter(one -> one.rung() == rung)
                    .findFirst();
            if (mark != null && found.filter(one -> one.mark().equals(mark)).isEmpty()) {
                throw new Moved();
            }
            RungLine line = found.orElseThrow(() -> new RefusedBuild(
                    "job " + job + " has no build with " + rung + " parts changed.",
                    List.of("Maybe look at the ladder again, without --accept.")));
            Brief brief = event.brief();
            String told = brief == null ? null : AnswerJson.write(BriefWriter.write(brief));
            desk.take(shop, shop.jobs().get(job), told, AnswerJson.write(line.build()), note(event, line));
            return answer(shop, event, ladders, new Applied(job, rung));
        }
    }

    private static String note(Event event, RungLine line) {
        String part = event.part();
        String why =
                part == null ? "another brief" : event.priceMinor() == null ? "without " + part : part + " got dearer";
        StringBuilder note = new StringBuilder(why);
        line.swaps()
                .forEach(swap ->
                        note.append("; ").append(swap.from()).append(" → ").append(swap.to()));
        return note.toString();
    }

    private OutAnswer answer(Shop shop, Event event, List<JobLadder> ladders, @Nullable Applied applied) {
        String part = event.part();
        return new OutAnswer(
                Answer.SCHEMA,
                shop.snapshot(workshop.lists()).hash(),
                part,
                part == null ? null : workshop.name(part),
                workshop.lists().rates().currency(),
                ladders,
                applied,
                progress.stopped());
    }

    private List<JobLadder> ladders(Shop shop, Event event, Consumer<List<JobLadder>> soFar) {
        List<JobLadder> ladders = new ArrayList<>();
        Snapshot snapshot = shop.snapshot(workshop.lists());
        for (Job job : shop.jobs().all()) {
            Long only = event.onlyJob();
            boolean asked = only == null || only == job.id();
            if (asked && job.state() == Job.State.ACCEPTED && !progress.stopped()) {
                JobLadder ladder = ladder(shop, snapshot, job, event, begun -> {
                    List<JobLadder> known = new ArrayList<>(ladders);
                    known.add(begun);
                    soFar.accept(known);
                });
                if (ladder != null) {
                    ladders.add(ladder);
                }
            } else if (only != null && asked) {
                throw ShopFault.refused(
                        "job " + job.id() + " is " + job.state().word() + ": only an accepted build is chosen again.",
                        "another job is meant: withy job lists them.");
            }
        }
        return ladders;
    }

    private @Nullable JobLadder ladder(Shop shop, Snapshot snapshot, Job job, Event event, Consumer<JobLadder> soFar) {
        Brief before = Agreed.brief(workshop, job);
        Brief brief = event.brief() == null ? before : event.brief();
        SortedMap<String, Integer> held = shop.jobs().held(job.id());
        Catalog had = snapshot.forJob(before, held);
        Build current = Agreed.build(job, had);
        Set<Station> locked = new TreeSet<>();
        job.glued().forEach(key -> locked.add(Objects.requireNonNull(Station.parse(key))));
        String part = event.part();
        if (part != null
                && (!loose(current, locked).contains(part) || brief.owned().contains(part))) {
            return null;
        }
        Catalog now = without(snapshot.forJob(brief, held), event, used(shop, job, part));
        Rod agreed = Rod.measure(had, before, current);
        Set<String> lost = part == null || event.priceMinor() != null ? Set.of() : Set.of(part);
        Situation situation = new Situation(now, Query.of(brief, Rulebook.standard()), current, locked, lost);
        LocalDate wanted = brief.wantedBy();
        JobLadder bare = new JobLadder(
                job.id(),
                job.name(),
                wanted == null ? null : wanted.toString(),
                Standing.of(agreed),
                new Waits(workshop.day(), snapshot)
                        .of(shop.jobs().file(job.id()).pieces(), agreed, part, wanted),
                List.of());
        soFar.accept(bare);
        RungLines beside = new RungLines(workshop, now, brief, agreed, snapshot, held, event);
        List<RungLine> lines = new ArrayList<>();
        long[] best = {Long.MAX_VALUE};
        ChangeLadder.climb(situation, MOST_CHANGES, new Watch(progress::stopped, (b, o, s) -> {}), rung -> {
            Build build = rung.build();
            if (build != null && rung.score() < best[0]) {
                best[0] = rung.score();
                lines.add(beside.line(rung, build));
                soFar.accept(bare.with(lines));
            }
        });
        return bare.with(lines);
    }

    private static Set<String> loose(Build build, Set<Station> locked) {
        Set<String> loose = new TreeSet<>();
        build.choices().forEach((station, choice) -> {
            if (!locked.contains(station)) {
                loose.add(choice.partId());
            }
        });
        if (locked.isEmpty()) {
            loose.add(build.layout().blankId());
        }
        return loose;
    }

    /** Pieces of a part that are built into the job already. */
    private static int used(Shop shop, Job job, @Nullable String part) {
        int used = 0;
        for (Piece piece : shop.jobs().file(job.id()).pieces()) {
            used += piece.part().equals(part) && piece.state().equals("used") ? 1 : 0;
        }
        return used;
    }

    private static Catalog without(Catalog catalog, Event event, int used) {
        String id = event.part();
        Part part = id == null ? null : catalog.find(id);
        if (id == null || part == null) {
            return catalog;
        }
        Long price = event.priceMinor();
        PartFacts facts = price == null
                ? part.facts().withStock(used).notOrdered()
                : part.facts().withPrice(price, catalog.asOf());
        return catalog.changed(Map.of(id, facts), catalog.hash());
    }
}
