package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.app.BuildReader;
import withy.app.BuildSheet;
import withy.app.DrawerAnswer;
import withy.app.Explain;
import withy.app.Progress;
import withy.app.Reasons.BuildLine;
import withy.app.SwappedIn;
import withy.app.WhyNotAnswer;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Flip;
import withy.explain.Phrases;
import withy.report.WhyNotText;
import withy.rod.Build;
import withy.rod.Station;
import withy.web.Bench.Asked;
import withy.web.Growing.SoFar;
import withy.web.ReasonsView.DrawerView;
import withy.web.ReasonsView.Line;
import withy.web.ReasonsView.More;
import withy.web.ReasonsView.WhyView;

/** Why not that part, and why not lighter. */
final class WhyPage {
    private final Pages pages;

    WhyPage(Pages pages) {
        this.pages = pages;
    }

    /** Everything made for one place of a build, and what it would do. */
    void drawer(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        String key = ctx.pathParam("station");
        Station station = Station.parse(key);
        String rank = ctx.pathParam("rank");
        BuildSheet sheet = pages.bench().answers().answer(asked, Look.of(ctx)).builds().stream()
                .filter(b -> String.valueOf(b.rank()).equals(rank))
                .findFirst()
                .orElse(null);
        if (station == null || sheet == null) {
            throw new Refusal(404, Words.say("page.none"));
        }
        pages.html(ctx, "drawer", view(step, asked, sheet, station, Look.of(ctx)));
    }

    private DrawerView view(Step step, Asked asked, BuildSheet sheet, Station station, Look look) {
        List<Line> fits = new ArrayList<>();
        List<Line> refused = new ArrayList<>();
        Build build = BuildReader.written(sheet, asked.catalog());
        String now = Objects.requireNonNullElse(build.partAt(station), "");
        SoFar<DrawerAnswer> soFar = opened(asked, sheet.rank(), build, station, look);
        if (soFar == null) {
            // the best stays first; where another goes is not known yet
            if (!now.isEmpty() && sheet.rank() == 1) {
                fits.add(new Line(now, pages.bench().workshop().name(now), true, ""));
            }
        } else {
            for (DrawerAnswer.DrawerLine line : soFar.answer().parts()) {
                (line.breaks() == null ? fits : refused)
                        .add(new Line(line.part(), line.name(), line.here(), Phrases.sentence(line.sentence())));
            }
        }
        boolean whole = soFar != null && soFar.whole();
        String heading = Words.say("drawer.head", Phrases.sentence(Phrases.station(station.key())), sheet.rank());
        Frame frame = pages.frame(heading, "brief", step);
        return new DrawerView(
                whole ? frame : frame.waiting(),
                heading,
                Words.say("drawer.of", sheet.name()) + " " + Words.say("ledger.felt"),
                sheet.rank() + "/" + station.key(),
                now,
                fits,
                refused,
                More.of(whole, "drawer.coming", soFar == null ? 0 : soFar.stage()),
                soFar != null && soFar.answer().interrupted());
    }

    /** What lies in a drawer, as far as it is looked through, or null where nothing is. */
    private @Nullable SoFar<DrawerAnswer> opened(Asked asked, int rank, Build build, Station station, Look look) {
        try {
            return pages.bench()
                    .answers()
                    .explaining(
                            "drawer " + rank + " " + station.key(),
                            asked,
                            look,
                            (inquiry, progress, told) ->
                                    Objects.requireNonNull(Explain.drawer(inquiry, build, station, told)));
        } catch (Soon.NotYet e) {
            return null;
        }
    }

    /** Why a part is not in the best build. */
    void whyNot(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        String part = ctx.pathParam("part");
        Part known = asked.catalog().find(part);
        if (known == null) {
            throw new Refusal(404, Words.say("why.unknown", part));
        }
        String name = known.facts().name();
        SoFar<WhyNotAnswer> soFar;
        try {
            soFar = pages.bench()
                    .answers()
                    .explaining(
                            "why " + part,
                            asked,
                            Look.of(ctx),
                            (inquiry, progress, told) -> Explain.whyNot(inquiry, Set.of(part), told));
        } catch (Soon.NotYet e) {
            pages.html(ctx, "why", lookedFor(step, CameFrom.of(ctx), known, meanwhile(asked, known), 0));
            return;
        }
        WhyView view = soFar.answer().sentence().isEmpty() && soFar.answer().opponent() == null
                ? lookedFor(step, CameFrom.of(ctx), known, meanwhile(asked, known), soFar.stage())
                : view(step, CameFrom.of(ctx), part, name, soFar);
        pages.html(ctx, "why", view);
    }

    private WhyView lookedFor(Step step, CameFrom from, Part part, String meanwhile, int stage) {
        String name = part.facts().name();
        return new WhyView(
                pages.frame(Words.say("why.head", name), "brief", step).waiting(),
                from,
                Words.say("why.head", name),
                part.id(),
                name,
                "",
                meanwhile.isEmpty() ? List.of() : List.of(meanwhile),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                false,
                false,
                new More(Words.say(meanwhile.isEmpty() ? "why.coming" : "why.coming.best"), stage),
                false);
    }

    /** What is known at once: what the part would do in the best build, all else as it is, or what refuses it there is; empty where nothing is. */
    private String meanwhile(Asked asked, Part part) {
        List<Build> builds = pages.bench().answers().known(asked);
        if (builds.isEmpty()) {
            return "";
        }
        if (builds.get(0).holds(Set.of(part.id()))) {
            return Words.say("why.meanwhile.in");
        }
        SwappedIn in = SwappedIn.of(pages.bench().answers().inquiry(asked, Progress.NONE), builds.get(0), part);
        if (in == null) {
            return blanks(asked, part, builds.get(0));
        }
        return in.station().isEmpty()
                ? Phrases.sentence(in.sentence())
                : Words.say(
                        (in.legal() ? "why.meanwhile" : "why.meanwhile.breaks")
                                + (in.instead().isEmpty() ? ".added" : ""),
                        in.instead(),
                        Phrases.station(in.station()),
                        in.legal() ? in.sentence() : Phrases.sentence(in.sentence()));
    }

    /** Of another blank that the brief does not refuse, its weight: all else of the rod changes with it. */
    private String blanks(Asked asked, Part part, Build build) {
        Part now = asked.catalog().find(build.layout().blankId());
        return part.kind() != PartKind.BLANK || now == null
                ? ""
                : Words.say(
                        "why.meanwhile.blank",
                        pages.bench().units().fineMass(part.facts().massMg() / 1000.0),
                        now.facts().name(),
                        pages.bench().units().fineMass(now.facts().massMg() / 1000.0));
    }

    private WhyView view(Step step, CameFrom from, String part, String name, SoFar<WhyNotAnswer> soFar) {
        WhyNotAnswer answer = soFar.answer();
        List<String> beside = new ArrayList<>();
        BuildLine first = answer.first();
        BuildLine opponent = answer.opponent();
        if (first != null && opponent != null && !answer.tradeOffs().isEmpty()) {
            boolean alike = first.name().equals(opponent.name());
            beside.add(Words.say(
                    "why.best",
                    alike ? pages.bench().sums(first) : pages.bench().figures(first)));
            beside.add(Words.say(
                    "why.with",
                    alike ? pages.bench().sums(opponent) : pages.bench().figures(opponent)));
        }
        Frame frame = pages.frame(Words.say("why.head", name), "brief", step);
        return new WhyView(
                soFar.whole() ? frame : frame.waiting(),
                from,
                Words.say("why.head", name),
                part,
                name,
                answer.sentence(),
                WhyNotText.besides(answer),
                flips(answer, false),
                flips(answer, true),
                beside,
                WhyNotText.differences(answer.tradeOffs()).stream()
                        .map(Phrases::sentence)
                        .toList(),
                opponent != null && answer.breaks().isEmpty(),
                answer.breaks().isEmpty(),
                More.of(soFar.whole(), answer.sentence().isEmpty() ? "why.coming" : "why.coming.flips", soFar.stage()),
                answer.interrupted());
    }

    /** What would have to change; what a part costs the shop is not for a customer who looks on. */
    private static List<String> flips(WhyNotAnswer answer, boolean forTheShop) {
        return answer.flips().stream()
                .filter(flip -> flip.kind().equals(Flip.Kind.PRICE.key()) == forTheShop)
                .map(flip -> Phrases.sentence(flip.sentence()) + ".")
                .toList();
    }
}
