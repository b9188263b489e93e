package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withy.app.OutAnswer.Standing;
import withy.app.PlanAnswer;
import withy.app.PlanDesk;
import withy.explain.Phrases;
import withy.report.PlanText;
import withy.web.BuildsView.Cell;
import withy.web.BuildsView.Line;
import withy.web.ShopView.PlanView;
import withy.web.ShopView.Planned;
import withy.web.ShopView.Supplier;

/** All open jobs from one stock, and what to order from whom. */
final class PlanPage {
    private final Pages pages;

    PlanPage(Pages pages) {
        this.pages = pages;
    }

    void show(Context ctx) {
        PlanAnswer answer = pages.bench()
                .ofShop("plan", Look.of(ctx), (workshop, progress) -> new PlanDesk(workshop, progress).plan());
        pages.html(
                ctx,
                "plan",
                new PlanView(
                        pages.frame(Words.say("way.plan"), "plan", null),
                        answer.jobs().stream().map(this::job).toList(),
                        summary(answer),
                        answer.shopping().stream().map(this::supplier).toList(),
                        answer.interrupted()));
    }

    private Planned job(PlanAnswer.JobLine job) {
        Standing rod = job.rod();
        String words = rod == null
                ? Phrases.of("text.plan.unserved")
                : Phrases.of(
                        "text.plan.rod",
                        pages.bench().units().mass(rod.weightG()),
                        pages.bench().units().partLength(Math.rint(rod.balanceMm())),
                        pages.bench().money(rod.priceMinor()));
        return new Planned(job.job(), Phrases.of("text.job.title", job.job(), job.name()), words, note(job));
    }

    private String note(PlanAnswer.JobLine job) {
        if (job.kept()) {
            return Words.say("plan.kept");
        }
        String with = Phrases.list(
                job.differs().stream().map(pages.bench().workshop()::name).toList());
        String steps = String.format(Locale.ROOT, "%.2f", Math.abs(job.gain()));
        return !PlanText.shows(job.gain()) || with.isEmpty()
                ? ""
                : Phrases.of(job.gain() > 0 ? "text.plan.gains" : "text.plan.givesWay", steps, with);
    }

    private static List<String> summary(PlanAnswer answer) {
        List<String> lines = new ArrayList<>();
        if (answer.jobs().isEmpty()) {
            return lines;
        }
        if (answer.unserved() > 0) {
            lines.add(Phrases.of("text.plan.left", answer.unserved()));
        }
        int more = answer.unservedOneByOne() - answer.unserved();
        if (more > 0) {
            lines.add(Phrases.of("text.plan.more", more));
        } else {
            lines.add(
                    answer.gain() > 0 && PlanText.shows(answer.gain())
                            ? Phrases.of("text.plan.gain", String.format(Locale.ROOT, "%.2f", answer.gain()))
                            : Phrases.of("text.plan.same"));
        }
        lines.add(answer.proven() ? Phrases.of("text.plan.proven") : PlanText.unproven(answer.gap()));
        return lines;
    }

    private Supplier supplier(PlanAnswer.SupplierList list) {
        String name = list.supplier().isEmpty() ? Phrases.of("text.plan.anyone") : list.supplier();
        List<Line> lines = list.lines().stream()
                .map(line -> new Line(
                        line.name(),
                        List.of(
                                new Cell(String.valueOf(line.pieces()), ""),
                                new Cell(pages.bench().money(line.priceMinor()), ""),
                                new Cell(line.orderBy() == null ? "–" : line.orderBy(), ""))))
                .toList();
        return new Supplier(name, pages.bench().money(list.totalMinor()), lines);
    }
}
