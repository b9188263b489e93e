package withy.app;

import java.util.ArrayList;
import java.util.List;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.explain.Phrases;
import withy.rod.Build;
import withy.rod.Rod;
import withy.shop.Job;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.shop.Snapshot;

/** Rods of the shop's jobs, for paper: measured against what each job holds. */
public final class JobRods {
    private JobRods() {}

    /**
     * A job with its accepted rod.
     *
     * @param file all that is kept of it
     * @param catalog the parts as this job can have them
     * @param brief its brief
     * @param build its accepted build
     */
    public record JobRod(Job.File file, Catalog catalog, Brief brief, Build build) {
        /** The rod, measured. */
        Rod rod() {
            return Rod.measure(catalog, brief, build);
        }
    }

    /**
     * Jobs whose builds were accepted and are not built yet.
     *
     * @param rods those whose builds can be read
     * @param warnings which can't, and why
     */
    record Accepted(List<JobRod> rods, List<String> warnings) {}

    /** One job; refuses one that was given up, whose pieces are no longer its own. */
    public static JobRod of(Workshop workshop, long job) {
        try (Shop shop = workshop.reading(job)) {
            Job one = shop.jobs().get(job);
            if (one.state() == Job.State.CANCELLED) {
                throw ShopFault.refused(Phrases.of("paper.givenUp", job), Phrases.of("paper.givenUp.maybe", job));
            }
            return read(workshop, shop, shop.snapshot(workshop.lists()), one);
        }
    }

    /** All that are accepted, oldest first. */
    static Accepted accepted(Workshop workshop) {
        List<JobRod> rods = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        if (Shop.exists(workshop.folder())) {
            try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
                Snapshot snapshot = shop.snapshot(workshop.lists());
                for (Job job : shop.jobs().all()) {
                    if (job.state() == Job.State.ACCEPTED) {
                        try {
                            rods.add(read(workshop, shop, snapshot, job));
                        } catch (RefusedBuild gone) {
                            warnings.add(Phrases.of("paper.unread", job.id(), String.join(" ", gone.sentences())));
                        }
                    }
                }
            }
        }
        return new Accepted(rods, warnings);
    }

    private static JobRod read(Workshop workshop, Shop shop, Snapshot snapshot, Job job) {
        Brief brief = Agreed.brief(workshop, job);
        Catalog catalog = snapshot.forJob(brief, shop.jobs().held(job.id()));
        return new JobRod(shop.jobs().file(job.id()), catalog, brief, Agreed.build(job, catalog));
    }
}
