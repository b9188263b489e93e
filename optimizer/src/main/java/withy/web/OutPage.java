package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withy.app.JobAnswer;
import withy.app.JobDesk;
import withy.app.OutAnswer;
import withy.app.OutAnswer.JobLadder;
import withy.app.OutAnswer.RungLine;
import withy.app.OutAnswer.Swap;
import withy.app.OutDesk;
import withy.app.OutDesk.Event;
import withy.app.StockAnswer;
import withy.app.Workshop;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.report.WaitWords;
import withy.web.Growing.SoFar;
import withy.web.ReasonsView.More;
import withy.web.ShopView.Ladder;
import withy.web.ShopView.OutView;
import withy.web.ShopView.Rung;

/** A part ran out: what each job can do, with one, two and three parts changed, beside waiting. */
final class OutPage {
    /** Words of the address: the job that changed meanwhile, and whether it was the shelf. */
    private static final String SINCE = "since";

    private static final String MOVED = "moved";

    private final Pages pages;

    OutPage(Pages pages) {
        this.pages = pages;
    }

    void look(Context ctx) {
        Part part = pages.part(ctx);
        SoFar<OutAnswer> soFar = pages.bench()
                .answers()
                .growingOfShop(
                        "out " + part.id(),
                        Look.of(ctx),
                        (workshop, progress, told) ->
                                new OutDesk(workshop, progress).look(new Event(part.id(), null, null, null), told));
        OutAnswer answer = soFar.answer();
        String name = part.facts().name();
        StockAnswer stock = StockAnswer.one(pages.bench().workshop(), part.id());
        // where it did not run out it is asked what would be
        boolean missing = stock.parts().stream().allMatch(line -> line.shelf() == 0);
        Frame frame = pages.frame(Words.say(missing ? "out.head" : "out.head.if", name), "stock", null);
        pages.html(
                ctx,
                "out",
                new OutView(
                        soFar.whole() ? frame : frame.waiting(),
                        part.id(),
                        name,
                        answer.jobs().stream()
                                .map(job -> ladder(job, part.id()))
                                .toList(),
                        since(ctx),
                        More.of(soFar.whole(), "out.coming", soFar.stage()),
                        answer.interrupted(),
                        missing ? TakeBack.of(stock.last(), pages.bench().units()) : null));
    }

    /** What happened since the ladder was made that something was to be taken of; empty where nothing did. */
    private String since(Context ctx) {
        String job = Pages.asked(ctx, SINCE);
        if (!job.matches("\\d{1,9}")) {
            return "";
        }
        boolean shelf = Pages.asked(ctx, MOVED).equals("shelf");
        return shelf
                ? Words.say("jobs.stale.shelf", job)
                : new JobsPage.Stale(new JobDesk(pages.bench().workshop()).show(Long.parseLong(job)))
                        .words("jobs.stale.rod");
    }

    private Ladder ladder(JobLadder job, String part) {
        var units = pages.bench().units();
        JobDesk desk = new JobDesk(pages.bench().workshop());
        return new Ladder(
                job.job(),
                desk.show(job.job()).revision(),
                Phrases.of("text.job.title", job.job(), job.name()),
                Phrases.of(
                        "text.out.agreed",
                        units.mass(job.agreed().weightG()),
                        units.partLength(Math.rint(job.agreed().balanceMm())),
                        pages.bench().money(job.agreed().priceMinor())),
                WaitWords.of(job.waiting()),
                desk.insists(job.job(), part),
                job.rungs().stream().map(rung -> rung(rung, part)).toList());
    }

    /** One way out; what stands in for the part that is missing comes first. */
    private Rung rung(RungLine rung, String part) {
        var units = pages.bench().units();
        List<String> swaps = new ArrayList<>();
        List<Swap> ordered = rung.swaps().stream()
                .sorted(Comparator.comparing(swap -> !part.equals(swap.from())))
                .toList();
        for (Swap swap : ordered) {
            swaps.add(Phrases.of(
                    "text.out.swap",
                    Phrases.sentence(Phrases.stations(
                            swap.stations().get(0),
                            swap.stations().get(swap.stations().size() - 1))),
                    name(swap.fromName()),
                    name(swap.toName()),
                    swap.why()));
        }
        String ready = rung.ready();
        return new Rung(
                rung.rung(),
                rung.mark(),
                Phrases.of("text.out.changes." + rung.changes()),
                swaps,
                Phrases.of(
                        "text.out.then",
                        units.mass(rung.standing().weightG()),
                        signed(
                                rung.weightG(),
                                units.massBetween(
                                        rung.standing().weightG(),
                                        rung.standing().weightG() - rung.weightG())),
                        units.partLength(Math.rint(rung.standing().balanceMm())),
                        pages.bench().money(rung.standing().priceMinor()),
                        signed(rung.priceMinor(), pages.bench().money(Math.abs(rung.priceMinor())))),
                (ready == null
                                ? Phrases.of("text.out.never")
                                : Phrases.of("text.out.ready", ready) + WaitWords.late(rung.daysLate()))
                        + (rung.proven() ? "" : " " + Phrases.of("text.out.unproven")));
    }

    private static String signed(double difference, String amount) {
        return (difference >= 0 ? "+" : "−") + amount;
    }

    private static String name(@org.jspecify.annotations.Nullable String name) {
        return name == null ? Phrases.of("text.out.nothing") : name;
    }

    /** Takes a rung for a job; where another window changed the job or the shelf since, the ladder is shown as it stands now. */
    void accept(Context ctx) {
        Part part = pages.part(ctx);
        String ladder = "/out/" + part.id() + "?" + SINCE + "=" + Pages.told(ctx, "job");
        try {
            take(ctx, part);
        } catch (JobsPage.Stale e) {
            Pages.go(ctx, ladder);
        } catch (OutDesk.Moved e) {
            Pages.go(ctx, ladder + "&" + MOVED + "=shelf");
        }
    }

    private void take(Context ctx, Part part) {
        pages.once(ctx, () -> {
            String told = Pages.told(ctx, "job");
            String rung = Pages.told(ctx, "rung");
            if (!told.matches("\\d{1,9}") || !rung.matches("\\d")) {
                throw new Refusal(422, Words.say("page.number", told + " " + rung));
            }
            long job = Long.parseLong(told);
            Workshop workshop = pages.bench().workshop();
            JobAnswer now = new JobDesk(workshop).show(job);
            JobsPage.unchanged(now, Pages.told(ctx, "revision"));
            new OutDesk(workshop, pages.bench().answers().patience(Answers.PATIENCE_S))
                    .accept(new Event(part.id(), null, job, null), job, Integer.parseInt(rung), ctx.formParam("mark"));
            return "/jobs/" + job;
        });
    }
}
