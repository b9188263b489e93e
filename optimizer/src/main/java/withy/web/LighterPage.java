package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withy.app.Answer;
import withy.app.BuildSheet;
import withy.app.LighterAnswer;
import withy.app.LighterAnswer.PointLine;
import withy.app.Reasons.BuildLine;
import withy.brief.Objective;
import withy.explain.Phrases;
import withy.report.SideBySide;
import withy.web.Bench.Asked;
import withy.web.Growing.SoFar;
import withy.web.ReasonsView.LighterView;
import withy.web.ReasonsView.Line;
import withy.web.ReasonsView.More;

/** Whether it can be lighter: what the lightest gives up, what each gram less costs, each lighter part. */
final class LighterPage {
    private final Pages pages;

    LighterPage(Pages pages) {
        this.pages = pages;
    }

    /** What each gram less costs, and each lighter part. */
    void show(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        Look look = Look.of(ctx);
        SoFar<LighterAnswer> soFar;
        try {
            soFar = pages.bench().answers().lighter(asked, look);
        } catch (Soon.NotYet e) {
            Answer best =
                    pages.bench().answers().coming(asked, look.patienceS()).first();
            if (best == null || best.builds().isEmpty()) {
                throw e;
            }
            BuildSheet sheet = best.builds().get(0);
            pages.html(
                    ctx,
                    "lighter",
                    lookedFor(
                            step,
                            sheet.name() + " · "
                                    + pages.bench()
                                            .sums(
                                                    sheet.figures().priceMinor(),
                                                    sheet.figures().weightG())));
            return;
        }
        BuildLine first = soFar.answer().first();
        BuildLine lightest = soFar.answer().lightest();
        if (first == null || lightest == null) {
            Pages.go(ctx, "/builds/" + step.id());
            return;
        }
        pages.html(ctx, "lighter", view(step, asked, first, lightest, soFar));
    }

    private LighterView lookedFor(Step step, String best) {
        return new LighterView(
                pages.frame(Words.say("lighter.head"), "brief", step).waiting(),
                Phrases.of("text.lighter.best", best),
                "",
                "",
                "",
                List.of(),
                List.of(),
                List.of(),
                new More(Words.say("lighter.coming"), 0),
                false);
    }

    private LighterView view(Step step, Asked asked, BuildLine first, BuildLine lightest, SoFar<LighterAnswer> soFar) {
        LighterAnswer answer = soFar.answer();
        Frame frame = pages.frame(Words.say("lighter.head"), "brief", step);
        return new LighterView(
                soFar.whole() ? frame : frame.waiting(),
                Phrases.of("text.lighter.best", pages.bench().figures(first)),
                answer.sentence(),
                lightest.proven()
                        ? Phrases.of(
                                "text.lighter.proven", pages.bench().units().mass(lightest.weightG()))
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
                More.of(
                        soFar.whole(),
                        answer.curve().isEmpty() ? "lighter.coming.curve" : "lighter.coming.parts",
                        soFar.stage()),
                answer.interrupted());
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
                    place,
                    stationTitle(Phrases.sentence(Phrases.of("station." + place)), fits.size(), refused.size()),
                    List.copyOf(fits.values()),
                    List.copyOf(refused.values())));
        });
        return stations;
    }

    static String stationTitle(String place, int fits, int refused) {
        if (fits == 0) {
            return Words.say("lighter.station.none", place, refused);
        }
        String how = "lighter.station." + (refused > 0 ? fits == 1 ? "some.one" : "some" : fits == 1 ? "one" : "all");
        return Words.say(how, place, fits, fits + refused);
    }
}
