package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import withy.app.BuildReader;
import withy.app.BuildSheet;
import withy.app.DrawerAnswer;
import withy.app.Explain;
import withy.app.LighterAnswer;
import withy.app.LighterAnswer.PointLine;
import withy.app.Reasons.BuildLine;
import withy.app.WhyNotAnswer;
import withy.brief.Objective;
import withy.explain.Flip;
import withy.explain.Phrases;
import withy.report.SideBySide;
import withy.report.WhyNotText;
import withy.rod.Build;
import withy.rod.Station;
import withy.web.Bench.Asked;
import withy.web.ReasonsView.DrawerView;
import withy.web.ReasonsView.LighterView;
import withy.web.ReasonsView.Line;
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
        BuildSheet sheet = pages.bench().answer(asked, Look.of(ctx)).builds().stream()
                .filter(b -> String.valueOf(b.rank()).equals(rank))
                .findFirst()
                .orElse(null);
        if (station == null || sheet == null) {
            throw new Refusal(404, Words.say("page.none"));
        }
        Build build = BuildReader.written(sheet, asked.catalog());
        DrawerAnswer drawer = pages.bench()
                .explained(
                        "drawer " + rank + " " + key,
                        asked,
                        Look.of(ctx),
                        (inquiry, progress) -> Objects.requireNonNull(Explain.drawer(inquiry, build, station)));
        List<Line> fits = new ArrayList<>();
        List<Line> refused = new ArrayList<>();
        String now = "";
        for (DrawerAnswer.DrawerLine line : drawer.parts()) {
            now = line.here() ? line.part() : now;
            (line.breaks() == null ? fits : refused)
                    .add(new Line(line.part(), line.name(), line.here(), Phrases.sentence(line.sentence())));
        }
        String heading = Words.say("drawer.head", Phrases.sentence(Phrases.station(key)), sheet.rank());
        pages.html(
                ctx,
                "drawer",
                new DrawerView(
                        pages.frame(heading, "brief", step),
                        heading,
                        Words.say("drawer.of", sheet.name()),
                        now,
                        fits,
                        refused,
                        drawer.interrupted()));
    }

    /** Why a part is not in the best build. */
    void whyNot(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        String part = ctx.pathParam("part");
        var known = asked.catalog().find(part);
        if (known == null) {
            throw new Refusal(404, Words.say("why.unknown", part));
        }
        WhyNotAnswer answer = pages.bench()
                .explained(
                        "why " + part,
                        asked,
                        Look.of(ctx),
                        (inquiry, progress) -> Explain.whyNot(inquiry, new TreeSet<>(List.of(part))));
        String name = known.facts().name();
        List<String> beside = new ArrayList<>();
        if (answer.first() != null
                && answer.opponent() != null
                && !answer.tradeOffs().isEmpty()) {
            beside.add(Words.say("why.best", figures(answer.first())));
            beside.add(Words.say("why.with", figures(answer.opponent())));
        }
        pages.html(
                ctx,
                "why",
                new WhyView(
                        pages.frame(Words.say("why.head", name), "brief", step),
                        Words.say("why.head", name),
                        part,
                        name,
                        answer.sentence(),
                        answer.breaks().stream()
                                .skip(1)
                                .map(b -> Phrases.of("text.whynot.also", b.sentence()))
                                .toList(),
                        flips(answer, false),
                        flips(answer, true),
                        beside,
                        WhyNotText.differences(answer.tradeOffs()).stream()
                                .map(Phrases::sentence)
                                .toList(),
                        answer.opponent() != null && answer.breaks().isEmpty(),
                        answer.breaks().isEmpty(),
                        answer.interrupted()));
    }

    /** What would have to change; what a part costs the shop is not for a customer who looks on. */
    private static List<String> flips(WhyNotAnswer answer, boolean forTheShop) {
        return answer.flips().stream()
                .filter(flip -> flip.kind().equals(Flip.Kind.PRICE.key()) == forTheShop)
                .map(flip -> Phrases.sentence(flip.sentence()) + ".")
                .toList();
    }

    private String figures(BuildLine build) {
        return build.name() + " · " + pages.bench().money(build.priceMinor()) + " · "
                + pages.bench().units().mass(build.weightG());
    }

    /** What each gram less costs, and each lighter part. */
    void lighter(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        LighterAnswer answer = pages.bench().lighter(asked, Look.of(ctx));
        BuildLine first = answer.first();
        BuildLine lightest = answer.lightest();
        if (first == null || lightest == null) {
            Pages.go(ctx, "/builds/" + step.id());
            return;
        }
        pages.html(
                ctx,
                "lighter",
                new LighterView(
                        pages.frame(Words.say("lighter.head"), "brief", step),
                        Phrases.of("text.lighter.best", figures(first)),
                        answer.sentence(),
                        lightest.proven()
                                ? Phrases.of(
                                        "text.lighter.proven",
                                        pages.bench().units().mass(lightest.weightG()))
                                : Phrases.of("text.lighter.open"),
                        answer.curve().size() < 2
                                ? ""
                                : CurveDrawing.of(
                                        answer.curve(),
                                        asked.told().step(Objective.PRICE),
                                        pages.bench().units(),
                                        pages.bench()::money),
                        List.of(Words.say("lighter.weight"), Words.say("lighter.price"), Words.say("lighter.costs")),
                        rows(answer.curve()),
                        ledger(answer),
                        answer.interrupted()));
    }

    private List<BuildsView.Line> rows(List<PointLine> curve) {
        List<BuildsView.Line> rows = new ArrayList<>();
        for (int i = 0; i < curve.size(); i++) {
            PointLine point = curve.get(i);
            rows.add(new BuildsView.Line(
                    String.valueOf(i + 1),
                    List.of(
                            new BuildsView.Cell(
                                    pages.bench().units().mass(point.build().weightG()), ""),
                            new BuildsView.Cell(
                                    pages.bench().money(point.build().priceMinor()), ""),
                            new BuildsView.Cell(
                                    point.sentence().isEmpty()
                                            ? point.build().name()
                                            : Phrases.sentence(point.sentence()),
                                    ""))));
        }
        return rows;
    }

    private static List<ReasonsView.Station> ledger(LighterAnswer answer) {
        Map<String, List<LighterAnswer.PartLine>> byPlace = new LinkedHashMap<>();
        answer.ledger()
                .forEach(line -> byPlace.computeIfAbsent(SideBySide.place(line.station()), key -> new ArrayList<>())
                        .add(line));
        List<ReasonsView.Station> stations = new ArrayList<>();
        byPlace.forEach((place, lines) -> {
            Map<String, Line> fits = new LinkedHashMap<>();
            Map<String, Line> refused = new LinkedHashMap<>();
            for (LighterAnswer.PartLine line : lines) {
                (line.breaks() == null ? fits : refused)
                        .putIfAbsent(
                                line.part(),
                                new Line(line.part(), line.name(), false, Phrases.sentence(line.sentence())));
            }
            stations.add(new ReasonsView.Station(
                    stationTitle(Phrases.sentence(Phrases.of("station." + place)), fits.size(), refused.size()),
                    List.copyOf(fits.values()),
                    List.copyOf(refused.values())));
        });
        return stations;
    }

    private static String stationTitle(String place, int fits, int refused) {
        return fits == 0
                ? Words.say("lighter.station.none", place, refused)
                : Words.say("lighter.station.some", place, fits, fits + refused);
    }
}
