package withy.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.app.JobAnswer;
import withy.app.JobDesk;
import withy.app.OfferEnd;
import withy.app.ScaleReading;
import withy.shop.ShopFault;
import withy.shop.WayBack;
import withy.units.LengthUnit;
import withy.units.Quantities;
import withy.web.ShopView.Stand;

/** What is done with a job. What is odd, or can't be undone, is asked back first. */
final class JobActs {
    /** A rod's weight as it may be typed. */
    private static final String RIGHT_WEIGHT = "100.2 g";

    private final Pages pages;
    private final JobsPage jobs;

    JobActs(Pages pages, JobsPage jobs) {
        this.pages = pages;
        this.jobs = jobs;
    }

    private JobDesk desk() {
        return new JobDesk(pages.bench().workshop());
    }

    /** The next thing that was done, unless another window did something since. */
    void act(Context ctx) {
        long job = Pages.job(ctx);
        try {
            act(ctx, job);
        } catch (Slip.Fault fault) {
            ctx.status(422);
            jobs.one(ctx, job, Slip.of(ctx, fault));
        } catch (JobsPage.Stale stale) {
            ctx.status(409);
            jobs.one(ctx, job, Slip.of(ctx, new Slip.Fault(JobsPage.STALE, stale(ctx, stale))));
        }
    }

    /** What another window did, beside what was typed here of the same. */
    private String stale(Context ctx, JobsPage.Stale stale) {
        var units = pages.bench().units();
        var built = stale.now().asBuilt();
        if (!Pages.told(ctx, "do").equals("weighed") || built == null) {
            return stale.words("jobs.stale");
        }
        Double balance = built.balanceMm();
        String there = units.fineMass(built.weightG()) + (balance == null ? "" : ", " + units.partLength(balance));
        String here = Stream.of("weight", "balance")
                .map(field -> Pages.told(ctx, field).strip())
                .filter(told -> !told.isEmpty())
                .collect(Collectors.joining(", "));
        return Words.say("jobs.stale.weighed", stale.now().job(), there, here);
    }

    private void act(Context ctx, long job) {
        boolean asked = !Sure.told(ctx)
                && !pages.done(ctx)
                && switch (Pages.told(ctx, "do")) {
                    case "weighed" -> ask(ctx, job, "scale.sure", doubt(ctx, current(ctx, job)));
                    case "accept" -> ask(ctx, job, "jobs.late", late(ctx, job));
                    case "built" -> ask(ctx, job, "jobs.built.sure", unticked(ctx, job));
                    case "cancel" ->
                        ask(
                                ctx,
                                job,
                                "jobs.sure",
                                Words.say(
                                        "jobs.sure.question",
                                        job,
                                        current(ctx, job).name()));
                    default -> false;
                };
        if (!asked) {
            pages.once(ctx, () -> {
                current(ctx, job);
                done(ctx, job);
                return "/jobs/" + job;
            });
        }
    }

    /** False where there is nothing to ask. */
    private boolean ask(Context ctx, long job, String key, @Nullable String question) {
        if (question != null) {
            List<String> kept = List.of("do", "revision", "rank", "weight", "balance");
            String back = Slip.address(ctx, "/jobs/" + job, List.of("station", "weight", "balance"));
            Sure.ask(pages, ctx, key, "jobs", question, back, kept);
        }
        return question != null;
    }

    /** The job, where no other window changed it since. */
    private JobAnswer current(Context ctx, long job) {
        JobAnswer now = desk().show(job);
        JobsPage.unchanged(now, Pages.told(ctx, "revision"));
        return now;
    }

    private @Nullable String unticked(Context ctx, long job) {
        List<Stand> stands = jobs.stations(current(ctx, job));
        List<String> ticked = ctx.formParams("station");
        long open = stands.stream()
                .filter(stand -> !stand.glued() && !ticked.contains(stand.station()))
                .count();
        return open == 0 ? null : Words.say("jobs.built.question", open, stands.size());
    }

    private @Nullable String late(Context ctx, long job) {
        current(ctx, job);
        return new OfferEnd(pages.bench().workshop()).doubt(job);
    }

    private @Nullable String doubt(Context ctx, JobAnswer job) {
        long mg = weight(ctx);
        balance(ctx);
        String far = ScaleReading.doubt(job, mg, pages.bench().units());
        return far == null ? null : far + "\n" + Words.say("scale.sure.maybe");
    }

    private void done(Context ctx, long job) {
        String what = Pages.told(ctx, "do");
        switch (what) {
            case "accept" -> desk().accept(job, JobsPage.number(Pages.told(ctx, "rank")));
            case "withdraw" -> new OfferEnd(pages.bench().workshop()).withdraw(job, "");
            case "offer" -> jobs.offer(job, pages.bench().answers()::ofJob);
            case "glue" -> desk().glue(job, glued(ctx));
            case "built" -> desk().built(job);
            case "weighed" -> desk().weighed(job, weight(ctx), balance(ctx));
            case "close" -> desk().close(job);
            case "cancel" -> desk().cancel(job, "");
            case "back" -> back(job);
            default -> throw new Refusal(422, Words.say("change.unknown", what));
        }
    }

    private void back(long job) {
        try {
            desk().takeBack(job);
        } catch (ShopFault fault) {
            if (fault.kind() != ShopFault.Kind.REFUSED) {
                throw fault;
            }
            WayBack last = desk().wayBack(job);
            List<String> lines = last == null
                    ? List.of()
                    : last.obstacles().stream().map(jobs::named).toList();
            throw new Slip.Fault(
                    JobsPage.STALE,
                    Words.say("jobs.stuck", String.join(" ", lines)).strip());
        }
    }

    private static Set<String> glued(Context ctx) {
        Set<String> stations = new TreeSet<>(ctx.formParams("station"));
        if (stations.isEmpty()) {
            throw new Slip.Fault("station", Words.say("jobs.noStation"));
        }
        return stations;
    }

    private static long weight(Context ctx) {
        return Slip.read(ctx, "weight", RIGHT_WEIGHT, ScaleReading::milligrams);
    }

    private static @Nullable Double balance(Context ctx) {
        return Pages.told(ctx, "balance").isBlank()
                ? null
                : Slip.read(
                        ctx,
                        "balance",
                        "",
                        told -> Quantities.length(told, LengthUnit.MILLIMETRE).mm());
    }
}
