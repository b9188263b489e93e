package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;
import withy.app.JobAnswer;
import withy.app.JobDesk;
import withy.app.JobsAnswer;
import withy.app.OfferDesk;
import withy.app.OfferEnd;
import withy.app.OfferSheet.Terms;
import withy.app.WaitLine;
import withy.explain.Phrases;
import withy.report.AnswerText;
import withy.report.JobText;
import withy.rod.Station;
import withy.shop.Job.Event;
import withy.shop.WayBack;
import withy.web.Bench.Asked;
import withy.web.ShopView.JobLine;
import withy.web.ShopView.JobView;
import withy.web.ShopView.JobsView;
import withy.web.ShopView.Last;
import withy.web.ShopView.Lost;
import withy.web.ShopView.Offered;
import withy.web.ShopView.Stand;

/** Customers' rods from wish to finished rod. */
final class JobsPage {
    /** What a slip is called by that is of no field: another window came first. */
    static final String STALE = "stale";

    private static final Pattern PART = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)+");

    private final Pages pages;

    JobsPage(Pages pages) {
        this.pages = pages;
    }

    /** True of a job that is not finished. */
    static boolean open(String state) {
        return !state.equals("closed") && !state.equals("cancelled");
    }

    private JobDesk desk() {
        return new JobDesk(pages.bench().workshop());
    }

    void all(Context ctx) {
        List<JobLine> open = new ArrayList<>();
        List<JobLine> done = new ArrayList<>();
        for (JobsAnswer.Line line : JobsAnswer.of(pages.bench().workshop()).jobs()) {
            (open(line.state()) ? open : done).add(line(line));
        }
        pages.html(ctx, "jobs", new JobsView(pages.frame(Words.say("way.jobs"), "jobs", null), open, done));
    }

    static JobLine line(JobsAnswer.Line line) {
        return new JobLine(
                line.job(),
                line.name(),
                Phrases.of("text.job.state." + line.state()),
                line.wantedBy() == null ? "" : Phrases.of("text.job.wanted", line.wantedBy()),
                line.missing() == 0 ? "" : Phrases.of("text.job.missing", line.missing()));
    }

    /** The customer took a build, or goes home with the offer: a job begins with the very answer that was on the screen. */
    void begin(Context ctx) {
        Step step = pages.step(Pages.told(ctx, "step"));
        String rank = Pages.told(ctx, "rank");
        Asked asked = pages.bench().read(step.brief());
        // one after another, so that of two windows the second sees what the first began
        synchronized (this) {
            List<JobsAnswer.Line> begun = Sure.told(ctx) || pages.done(ctx) ? List.of() : desk().open(asked.told());
            if (!begun.isEmpty()) {
                long job = begun.get(begun.size() - 1).job();
                String question = Words.say("jobs.twice.question", job);
                Sure.ask(pages, ctx, "jobs.twice", "jobs", question, "/jobs/" + job, List.of("step", "rank"));
                return;
            }
            begin(ctx, asked, rank);
        }
    }

    private void begin(Context ctx, Asked asked, String rank) {
        pages.once(ctx, () -> {
            Answer shown = pages.bench().answers().answer(asked, Answers.PATIENCE_S);
            if (shown.builds().isEmpty() || shown.interrupted()) {
                throw new Refusal(409, Words.say("jobs.nothing"));
            }
            JobAnswer job = desk().begin(asked.told());
            offer(job.job(), (catalog, brief) -> shown);
            if (!rank.equals("0")) {
                desk().accept(job.job(), number(rank));
            }
            return "/jobs/" + job.job();
        });
    }

    /** Keeps an offer for a job, on the shop's usual terms, for the customer its brief names. */
    void offer(long job, JobDesk.Proposer proposer) {
        Terms terms = new Terms(
                "", pages.bench().workshop().day(), Terms.VALID_DAYS, Terms.DEPOSIT_PERCENT, Terms.BENCH_DAYS);
        JobDesk.Offered offered = desk().offer(
                        job,
                        proposer,
                        answer -> AnswerText.of(answer, pages.bench().units()),
                        new OfferDesk.Order(terms, pages.bench().units()));
        if (offered.answer().builds().isEmpty() || offered.answer().interrupted()) {
            throw new Refusal(409, Words.say("jobs.nothing"));
        }
    }

    static int number(String told) {
        if (!told.matches("\\d{1,4}")) {
            throw new Refusal(422, Words.say("page.number", told));
        }
        return Integer.parseInt(told);
    }

    void one(Context ctx) {
        one(ctx, Pages.job(ctx), Slip.back(ctx));
    }

    /** A job with what was typed about it and can't be booked. */
    void one(Context ctx, long job, Slip slip) {
        pages.html(ctx, "job", view(desk().show(job), slip));
    }

    /**
     * Nothing, where no other window changed a job since a form about it was made.
     *
     * @throws Stale where one did
     */
    static void unchanged(JobAnswer now, String revision) {
        if (!String.valueOf(now.revision()).equals(revision)) {
            throw new Stale(now);
        }
    }

    /** Another window changed a job meanwhile; nothing was done. */
    static final class Stale extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient JobAnswer now;

        Stale(JobAnswer now) {
            super("changed meanwhile", null, false, false);
            this.now = now;
        }

        /** The job as it is. */
        JobAnswer now() {
            return now;
        }

        /** What was done with it last, in the words of a key. */
        String words(String key) {
            List<Event> history = now.history();
            return Words.say(key, now.job(), JobText.event(history.get(history.size() - 1)));
        }
    }

    /** Parts by their names where a text has their ids. */
    String named(String told) {
        return PART.matcher(told)
                .replaceAll(
                        id -> Matcher.quoteReplacement(pages.bench().workshop().name(id.group())));
    }

    private String done(List<Event> history) {
        return Phrases.sentence(named(JobText.event(history.get(history.size() - 1)))) + ".";
    }

    /** What was done last, to be taken back; of what was chosen again also why it can't be. Null where it has no way back. */
    private @Nullable Last last(long job) {
        WayBack back = desk().wayBack(job);
        if (back == null || !back.obstacles().isEmpty() && !back.event().equals("changed")) {
            return null;
        }
        String done = named(JobText.event(new Event(back.day(), back.event(), back.note())));
        return new Last(
                back.act(),
                Words.say("jobs.last", back.day(), done.replaceFirst(": ", ", ")),
                back.obstacles().stream().map(this::named).toList());
    }

    private JobView view(JobAnswer job, Slip slip) {
        var units = pages.bench().units();
        List<JobAnswer.OfferLine> offers = job.offers();
        JobAnswer.OfferLine last = offers.isEmpty() ? null : offers.get(offers.size() - 1);
        JobAnswer.Foretold foretold = job.predicted();
        var built = job.asBuilt();
        String name = Phrases.of("text.job.title", job.job(), job.name());
        return new JobView(
                pages.frame(name, "jobs", null),
                job.job(),
                job.revision(),
                name,
                job.state(),
                job.wantedBy() == null ? "" : Phrases.of("text.job.wanted", job.wantedBy()),
                last == null
                        ? List.of()
                        : last.builds().stream()
                                .map(b -> new Offered(
                                        b.rank(),
                                        b.name(),
                                        pages.bench().money(b.priceMinor()) + " · " + units.mass(b.weightG())))
                                .toList(),
                last == null ? "" : JobText.offer(last),
                last != null && last.ended() != null,
                !job.state().equals("offered")
                        ? ""
                        : Words.say(
                                new OfferEnd(pages.bench().workshop()).doubt(job.job()) == null
                                        ? "jobs.withdraw"
                                        : "jobs.lapsed"),
                JobText.foretold(job, units),
                foretold == null ? "" : units.mass(foretold.weightOfPiecesG()),
                foretold == null ? "" : units.partLength(Math.rint(foretold.balanceOfPiecesMm())),
                built == null ? "" : JobText.asBuilt(built, foretold, units),
                stations(job),
                job.missing().stream()
                        .map(hit -> new Lost(
                                hit.part(),
                                Words.say(
                                        "jobs.lost",
                                        hit.pieces(),
                                        pages.bench().workshop().name(hit.part()))))
                        .toList(),
                WaitLine.of(pages.bench().workshop(), job.job()).stream()
                        .map(WaitLine::sentence)
                        .toList(),
                job.warnings(),
                job.history().stream()
                        .map(e -> e.day() + "  " + named(JobText.event(e)))
                        .toList(),
                done(job.history()),
                last(job.job()),
                job.state().equals("accepted"),
                slip);
    }

    List<Stand> stations(JobAnswer job) {
        JsonNode build = job.build();
        List<Stand> stands = new ArrayList<>();
        if (build == null) {
            return stands;
        }
        for (JsonNode at : build.path("parts")) {
            String station = at.path("station").asText();
            // everything is glued to the blank, which comes out of the rack first
            int place = station.equals(Station.BLANK.key()) ? 0 : stands.size();
            stands.add(
                    place,
                    new Stand(
                            station,
                            Phrases.sentence(Phrases.station(station)),
                            at.path("part").asText(),
                            pages.bench().workshop().name(at.path("part").asText()),
                            job.glued().contains(station)));
        }
        return stands;
    }
}
