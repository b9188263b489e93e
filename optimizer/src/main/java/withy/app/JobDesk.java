package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.VerdictLine;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.rod.Build;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.shop.Job;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.shop.Snapshot;
import withy.shop.WayBack;

/** A job step by step: wish, offer, acceptance, glue, finished rod. */
public final class JobDesk {
    private final Workshop workshop;

    public JobDesk(Workshop workshop) {
        this.workshop = workshop;
    }

    /** Whose jobs they are. */
    public Workshop workshop() {
        return workshop;
    }

    /** Begins a job. */
    public JobAnswer begin(Brief brief) {
        try (Shop shop = workshop.open()) {
            Job job = shop.jobs().add(brief.name(), AnswerJson.write(BriefWriter.write(brief)), brief.wantedBy());
            return answer(shop, job.id(), List.of());
        }
    }

    /** The jobs of this very brief that are not finished, oldest first. */
    public List<JobsAnswer.Line> open(Brief brief) {
        if (!Shop.exists(workshop.folder())) {
            return List.of();
        }
        String written = AnswerJson.write(BriefWriter.write(brief));
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            return shop.jobs().all().stream()
                    .filter(job -> job.state() != Job.State.CLOSED && job.state() != Job.State.CANCELLED)
                    .filter(job -> job.brief().equals(written))
                    .map(job -> JobsAnswer.line(job, 0))
                    .toList();
        }
    }

    /** A job with all that belongs to it. */
    public JobAnswer show(long job) {
        try (Shop shop = workshop.reading(job)) {
            return answer(shop, job, List.of());
        }
    }

    /** True where the customer of a job asked for a part by name, and it must be in. */
    public boolean insists(long job, String part) {
        try (Shop shop = workshop.reading(job)) {
            return Agreed.brief(workshop, shop.jobs().get(job)).insisted().stream()
                    .anyMatch(wish -> wish.hard() && wish.partId().equals(part));
        }
    }

    /** The offer of this number, or the last one where it is 0, as it was shown when it was given. */
    public Job.Offer offer(long job, long number) {
        try (Shop shop = workshop.reading(job)) {
            List<Job.Offer> offers = shop.jobs().file(job).offers();
            return offers.stream()
                    .filter(o -> number == 0 ? o.equals(offers.get(offers.size() - 1)) : o.id() == number)
                    .findFirst()
                    .orElseThrow(() -> ShopFault.refused(
                            "job " + job + " has " + (number == 0 ? "no offer" : "no offer " + number) + ".",
                            "make one first: withy job " + job + " --offer."));
        }
    }

    /**
     * Proposes builds for a job and keeps the offer as it was given.
     *
     * @param proposer answers a brief over a catalogue
     * @param shown how an answer is shown
     * @param paper what its paper says besides
     */
    public Offered offer(long job, Proposer proposer, Function<Answer, String> shown, OfferDesk.Order paper) {
        try (Shop shop = workshop.open()) {
            Job now = shop.jobs().get(job);
            Brief brief = Agreed.brief(workshop, now);
            Snapshot snapshot = shop.snapshot(workshop.lists());
            Catalog catalog = snapshot.forJob(brief, shop.jobs().held(job));
            Answer answer = proposer.propose(catalog, brief);
            if (answer.builds().isEmpty() || answer.interrupted()) {
                return new Offered(answer, answer(shop, job, List.of()));
            }
            OfferSheet printed = OfferDesk.of(catalog, brief, answer, paper);
            shop.jobs()
                    .offer(
                            now,
                            answer.catalogHash(),
                            AnswerJson.write(answer),
                            shown.apply(answer),
                            OfferFile.json(printed));
            return new Offered(answer, answer(shop, job, Rivals.of(workshop, shop, now, answer)));
        }
    }

    /** Answers a brief over a catalogue. */
    public interface Proposer {
        Answer propose(Catalog catalog, Brief brief);
    }

    /**
     * An offer made.
     *
     * @param answer the answer
     * @param job the job with it
     */
    public record Offered(Answer answer, JobAnswer job) {}

    /** The customer took a build of the last offer. */
    public JobAnswer accept(long job, int rank) {
        Job.Offer last = offer(job, 0);
        OfferEnd.refuseEnded(job, last);
        for (JsonNode build : JsonText.tree(last.answer()).path("builds")) {
            if (build.path("rank").intValue() == rank) {
                return accept(job, build.toString(), "build " + rank + " of offer " + last.id());
            }
        }
        throw ShopFault.refused(
                "Offer " + last.id() + " has no build " + rank + ".",
                "look at it again: withy job " + job + " --read-offer.");
    }

    /** The customer took a build of the builder's own, or another one in place of the first. */
    public JobAnswer accept(long job, String buildJson, String note) {
        try (Shop shop = workshop.open()) {
            Job now = shop.jobs().get(job);
            take(shop, now, null, buildJson, note);
            return answer(shop, job, List.of());
        }
    }

    /**
     * Measures and judges a build against what this job can have now, then promises its pieces.
     *
     * @param newBrief another brief as JSON, or null
     */
    Job take(Shop shop, Job job, @Nullable String newBrief, String buildJson, String note) {
        String told = newBrief == null ? job.brief() : newBrief;
        Brief brief = Agreed.brief(workshop, told);
        Catalog catalog =
                shop.snapshot(workshop.lists()).forJob(brief, shop.jobs().held(job.id()));
        BuildReader.Reading reading = BuildReader.read(buildJson, catalog);
        Build build = reading.build();
        if (build == null) {
            throw RefusedBuild.unreadable(
                    reading.faults().stream().map(f -> f.message()).toList());
        }
        Rod rod = Rod.measure(catalog, brief, build);
        List<String> broken = broken(rod);
        if (!broken.isEmpty()) {
            throw new RefusedBuild("the build breaks rules by now; nothing was changed.", broken);
        }
        LocalDate wanted = brief.wantedBy();
        return shop.jobs()
                .accept(
                        job,
                        told,
                        wanted == null ? null : wanted.toString(),
                        AnswerJson.write(BuildFile.of(build)),
                        Prediction.of(rod).json(),
                        Agreed.needs(rod),
                        note);
    }

    private static List<String> broken(Rod rod) {
        return Verdicts.of(rod, Rulebook.standard()).stream()
                .filter(v -> v.outcome().equals(Verdicts.FAIL) || v.outcome().equals(Verdicts.UNKNOWN))
                .map(VerdictLine::sentence)
                .distinct()
                .toList();
    }

    /** Stations are glued or wrapped; {@code guides} stands for all guides. */
    public JobAnswer glue(long job, Set<String> stations) {
        try (Shop shop = workshop.open()) {
            Job now = shop.jobs().get(job);
            Rod rod = Agreed.rod(workshop, shop, now);
            Set<String> fresh = new TreeSet<>();
            SortedMap<String, Integer> pieces = new TreeMap<>();
            for (Station station : StationWords.of(rod.build(), stations)) {
                if (!now.glued().contains(station.key())) {
                    fresh.add(station.key());
                    Placed placed = rod.placed().get(station);
                    if (placed != null && Agreed.fromTheShop(rod, placed)) {
                        pieces.merge(placed.part().id(), rod.pieces(station), Integer::sum);
                    }
                }
            }
            shop.jobs().glue(now, fresh, pieces);
            return answer(shop, job, BenchJob.gluedTooSoon(shop.jobs().file(job), workshop.lists()));
        }
    }

    /** The rod is built. */
    public JobAnswer built(long job) {
        try (Shop shop = workshop.open()) {
            shop.jobs().built(shop.jobs().get(job));
            return answer(shop, job, List.of());
        }
    }

    /** The finished rod on the scale. */
    public JobAnswer weighed(long job, long weightMg, @Nullable Double balanceMm) {
        try (Shop shop = workshop.open()) {
            Job.File file = shop.jobs().file(job);
            String told = file.job().predicted();
            JobAnswer.Foretold foretold = told == null
                    ? new JobAnswer.Foretold(0, 0, 0, 0, 0)
                    : JobAnswer.foretold(Prediction.read(told), file.pieces());
            shop.jobs()
                    .weighed(
                            file.job(),
                            weightMg,
                            balanceMm,
                            Math.round(foretold.weightOfPiecesG() * 1000),
                            Math.round(foretold.toleranceG() * 1000));
            return answer(shop, job, List.of());
        }
    }

    /** The customer has his rod. */
    public JobAnswer close(long job) {
        try (Shop shop = workshop.open()) {
            shop.jobs().close(shop.jobs().get(job));
            return answer(shop, job, List.of());
        }
    }

    /** The customer wants it no more. */
    public JobAnswer cancel(long job, String note) {
        try (Shop shop = workshop.open()) {
            shop.jobs().cancel(shop.jobs().get(job), note);
            return answer(shop, job, List.of());
        }
    }

    /** What was done with a job last and has a way back, or null. */
    public @Nullable WayBack wayBack(long job) {
        try (Shop shop = workshop.reading(job)) {
            return shop.jobs().wayBack(job);
        }
    }

    /** Takes back what was done with it last. */
    public JobAnswer takeBack(long job) {
        try (Shop shop = workshop.open()) {
            shop.jobs().takeBack(shop.jobs().get(job));
            return answer(shop, job, List.of());
        }
    }

    private JobAnswer answer(Shop shop, long job, List<String> warnings) {
        return JobAnswer.of(shop.jobs().file(job), workshop.lists().rates().currency(), warnings);
    }
}
