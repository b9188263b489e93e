package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import withy.app.BuildFile;
import withy.app.JobDesk;
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
                .answers()
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
        return new Planned(job.job(), Phrases.of("text.job.title", job.job(), job.name()), words, notes(job));
    }

    private List<String> notes(PlanAnswer.JobLine job) {
        if (job.kept()) {
            List<String> notes = new ArrayList<>(List.of(Words.say("plan.kept")));
            job.waitsFor().forEach(one -> notes.add(one.sentence()));
            return notes;
        }
        List<String> notes = new ArrayList<>();
        String again = again(job);
        if (!again.isEmpty()) {
            notes.add(again);
        }
        job.waitsFor().forEach(one -> notes.add(one.sentence()));
        String against = PlanText.against(job, named(job.differs()));
        if (!against.isEmpty()) {
            notes.add(against);
        }
        return notes;
    }

    private String named(Collection<String> parts) {
        return Phrases.list(parts.stream().map(pages.bench().workshop()::name).toList());
    }

    /** How the rod of a job that lost pieces differs from what was agreed; empty where it does not, or nothing was agreed. */
    private String again(PlanAnswer.JobLine job) {
        JsonNode agreed = new JobDesk(pages.bench().workshop()).show(job.job()).build();
        BuildFile build = job.build();
        if (agreed == null || build == null) {
            return "";
        }
        Set<String> gone = new TreeSet<>();
        agreed.path("parts").forEach(at -> gone.add(at.path("part").asText()));
        Set<String> come = new TreeSet<>();
        build.parts().forEach(at -> come.add(at.part()));
        Set<String> both = new TreeSet<>(gone);
        both.retainAll(come);
        gone.removeAll(both);
        come.removeAll(both);
        if (gone.isEmpty() && come.isEmpty()) {
            return "";
        }
        return gone.isEmpty()
                ? Words.say("plan.again.with", named(come))
                : come.isEmpty()
                        ? Words.say("plan.again.without", named(gone))
                        : Words.say("plan.again", named(come), named(gone));
    }

    private static List<String> summary(PlanAnswer answer) {
        return answer.jobs().isEmpty() ? List.of() : PlanText.summary(answer);
    }

    private Supplier supplier(PlanAnswer.SupplierList list) {
        String name = list.supplier().isEmpty() ? Phrases.of("text.plan.anyone") : list.supplier();
        List<Line> lines = list.lines().stream()
                .map(line -> new Line(
                        line.name(),
                        List.of(
                                new Cell(String.valueOf(line.pieces()), ""),
                                new Cell(pages.bench().money(line.priceMinor()), ""),
                                new Cell(line.orderBy() == null ? "–" : line.orderBy(), "")),
                        "/stock/" + line.part()))
                .toList();
        return new Supplier(name, pages.bench().money(list.totalMinor()), lines);
    }
}
