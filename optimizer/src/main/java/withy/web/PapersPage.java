package withy.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import withy.app.BenchDesk;
import withy.app.BenchSheet;
import withy.app.CutDesk;
import withy.app.JobDesk;
import withy.app.JobRods;
import withy.app.OfferFile;
import withy.app.OfferSheet;
import withy.app.PickDesk;
import withy.app.RefusedBuild;
import withy.app.Workshop;
import withy.report.BenchPaper;
import withy.report.CutPaper;
import withy.report.LabelPaper;
import withy.report.OfferPaper;
import withy.report.Pdf;
import withy.report.PickPaper;
import withy.report.Reader;
import withy.report.Sheet;
import withy.shop.Job;
import withy.shop.ShopFault;

/** Papers as PDF, to be looked at or printed: a job's own, and the lists for all accepted jobs. As the command writes them unless told otherwise. */
final class PapersPage {
    private final Pages pages;

    PapersPage(Pages pages) {
        this.pages = pages;
    }

    /** A paper of one job: the offer as it was given, the bench's sheet, the labels. Where there is none it leads to the job. */
    void ofJob(Context ctx) {
        long job = Pages.job(ctx);
        String paper = ctx.pathParam("paper");
        new JobDesk(workshop()).show(job);
        try {
            send(ctx, paper + "-job-" + job, html(job, paper));
        } catch (ShopFault fault) {
            if (fault.ofDisk()) {
                throw fault;
            }
            throw none(job, String.valueOf(fault.getMessage()).lines().toList());
        } catch (RefusedBuild refused) {
            throw none(
                    job,
                    Stream.concat(Stream.of(String.valueOf(refused.getMessage())), refused.sentences().stream())
                            .toList());
        }
    }

    private String html(long job, String paper) {
        return switch (paper) {
            case "offer" -> offer(job);
            case "bench" -> BenchPaper.of(bench(job), reader(), Sheet.A4);
            case "labels" -> LabelPaper.of(bench(job), reader(), Sheet.A4);
            default -> throw new Refusal(404, Words.say("page.none"));
        };
    }

    private static Refusal none(long job, List<String> why) {
        return new Refusal(409, why, new Refusal.Way("/jobs/" + job, Words.say("scale.job")));
    }

    /** A list for all accepted jobs. */
    void ofShop(Context ctx) {
        String paper = ctx.pathParam("paper");
        String html = switch (paper) {
            case "picks" -> PickPaper.of(PickDesk.of(workshop()), reader(), Sheet.A4);
            case "cuts" -> CutPaper.of(CutDesk.of(workshop(), CutDesk.KERF_MM), reader(), Sheet.A4);
            default -> throw new Refusal(404, Words.say("page.none"));
        };
        send(ctx, paper, html);
    }

    private Workshop workshop() {
        return pages.bench().workshop();
    }

    private Reader reader() {
        return new Reader(pages.bench().units(), Locale.UK);
    }

    private BenchSheet bench(long job) {
        return BenchDesk.of(JobRods.of(workshop(), job), pages.bench().units());
    }

    private static void send(Context ctx, String name, String html) {
        ctx.contentType("application/pdf")
                .header("Content-Disposition", "inline; filename=\"" + name + ".pdf\"")
                .result(Pdf.of(html));
    }

    /** The last offer of a job as it was given, and whether it ended. */
    private String offer(long job) {
        Job.Offer given = new JobDesk(workshop()).offer(job, 0);
        String printed = given.paper();
        if (printed == null) {
            throw new Refusal(404, Words.say("papers.older"));
        }
        try {
            OfferSheet offer = OfferFile.read(printed);
            return OfferPaper.of(offer, OfferPaper.ended(given, offer, reader()), reader(), Sheet.A4);
        } catch (OfferFile.Unreadable e) {
            throw new Refusal(409, Words.say("papers.unreadable", String.valueOf(e.getMessage())));
        }
    }
}
