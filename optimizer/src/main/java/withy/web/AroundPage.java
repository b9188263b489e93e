package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;
import withy.app.Around;
import withy.app.Explain;
import withy.app.WhyAnswer;
import withy.brief.Brief;
import withy.web.Bench.Asked;
import withy.web.BuildsView.Cell;
import withy.web.BuildsView.Line;
import withy.web.Growing.SoFar;
import withy.web.ReasonsView.AroundView;
import withy.web.ReasonsView.More;

/** What else there is around the three builds, and how firm they stand. */
final class AroundPage {
    private final Pages pages;

    AroundPage(Pages pages) {
        this.pages = pages;
    }

    void show(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        Answer answer = pages.bench().answers().answer(asked, Look.of(ctx));
        if (answer.builds().isEmpty()) {
            Pages.go(ctx, "/builds/" + step.id());
            return;
        }
        Look look = Look.of(ctx);
        // worked out beside the other rods, so that it is there when they are
        WhyAnswer beside = why(asked, new Look(look.patienceS(), 0, Look.WHOLE));
        SoFar<Around> around = pages.bench().answers().around(asked, answer.builds(), look);
        WhyAnswer why = !around.whole() ? null : beside == null ? why(asked, look) : beside;
        pages.html(ctx, "around", view(step, asked, around, why));
    }

    /** How firm the offer is, or null while that is worked out. */
    private @Nullable WhyAnswer why(Asked asked, Look look) {
        Bench bench = pages.bench();
        try {
            return bench.answers()
                    .explained(
                            "why",
                            asked,
                            look,
                            (inquiry, progress) ->
                                    Explain.why(inquiry, bench.answers().chooser(asked.catalog()), progress));
        } catch (Soon.NotYet e) {
            return null;
        }
    }

    private AroundView view(Step step, Asked asked, SoFar<Around> soFar, @Nullable WhyAnswer why) {
        Around around = soFar.answer();
        Frame frame = pages.frame(Words.say("around.head"), "brief", step);
        More more = !soFar.whole()
                ? new More(Words.say("around.coming"), soFar.stage())
                : why == null ? new More(Words.say("around.coming.firm"), soFar.stage()) : More.NONE;
        return new AroundView(
                why == null ? frame.waiting() : frame,
                around.asked() > 0
                        ? Words.say(
                                "around.said", around.asked(), around.lines().size())
                        : "",
                ParallelDrawing.of(around.lines(), asked.told(), pages.bench()),
                ParallelDrawing.axes(asked.told()).stream()
                        .map(axis -> Words.say("axis." + axis.key()))
                        .toList(),
                around.lines().stream().map(line -> row(line, asked.told())).toList(),
                why == null ? List.of() : firm(why),
                more,
                around.interrupted() || why != null && why.interrupted());
    }

    private Line row(Around.Line line, Brief brief) {
        List<Cell> cells = new ArrayList<>();
        for (ParallelDrawing.Axis axis : ParallelDrawing.axes(brief)) {
            cells.add(new Cell(axis.words(line.figures(), pages.bench()), ""));
        }
        String name = line.rank() == 0 ? line.name() : Words.say("around.rank", line.rank(), line.name());
        return new Line(name, cells);
    }

    private static List<String> firm(WhyAnswer why) {
        List<String> lines = new ArrayList<>();
        why.builds()
                .forEach(share -> lines.add(Words.say(
                        "around.share", share.rank(), String.format(Locale.ROOT, "%.0f", share.share() * 100))));
        if (why.swap() != null) {
            lines.add(why.swap().sentence() + ".");
        }
        why.binding().forEach(binding -> lines.add(binding.sentence() + "."));
        return lines;
    }
}
