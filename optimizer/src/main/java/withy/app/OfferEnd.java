package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.explain.Phrases;
import withy.shop.Job;
import withy.shop.Shop;
import withy.shop.ShopFault;

/** The end of an offer: withdrawn by the shop, or its day on paper is over. It stays as it was given, warns nobody any more and can't be taken. */
public final class OfferEnd {
    private final Workshop workshop;

    public OfferEnd(Workshop workshop) {
        this.workshop = workshop;
    }

    /** What was offered does not hold any more; past its day it lapsed, before that it is withdrawn. */
    public JobAnswer withdraw(long job, String note) {
        try (Shop shop = workshop.open()) {
            Job.File file = shop.jobs().file(job);
            shop.jobs().withdraw(file.job(), doubt(file) != null, note);
            return JobAnswer.of(shop.jobs().file(job), workshop.lists().rates().currency(), List.of());
        }
    }

    /** In a sentence that the day of a job's open offer is over, or null where it is not. */
    public @Nullable String doubt(long job) {
        try (Shop shop = workshop.reading(job)) {
            return doubt(shop.jobs().file(job));
        }
    }

    private @Nullable String doubt(Job.File file) {
        if (file.job().state() != Job.State.OFFERED) {
            return null;
        }
        Job.Offer last = file.offers().get(file.offers().size() - 1);
        String until = OfferFile.validUntil(last);
        return until == null || !OfferFile.lapsed(last, workshop.day())
                ? null
                : Phrases.of("text.job.late", last.id(), until);
    }

    /** Nothing of an offer that has ended can be taken. */
    static void refuseEnded(long job, Job.Offer offer) {
        if (offer.ended() != null) {
            throw ShopFault.refused(
                    "Offer " + offer.id() + " ended on " + offer.ended() + ".",
                    "make a new one (withy job " + job + " --offer), or take its end back (withy job " + job
                            + " --undo).");
        }
    }
}
