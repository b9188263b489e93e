package withy.web;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;
import withy.app.BuildSheet;
import withy.app.MachineSheet.Outline;
import withy.app.Outlines;
import withy.brief.Brief;
import withy.explain.Phrases;
import withy.report.LineByLine;
import withy.report.SideBySide;
import withy.web.Bench.Asked;
import withy.web.BuildsView.Card;
import withy.web.BuildsView.Part;
import withy.web.BuildsView.Repair;
import withy.web.BuildsView.Wish;

/** Three builds side by side. */
final class BuildsPage {
    /** Key of what is looked for while a build known before stands in. */
    private static final String AGAIN = "builds.coming.again";

    /** How long a page that was just asked for waits for the best build, ms. */
    private static final long BEST_MS = 150;

    /** How long it waits for all of them, so that the best does not stand alone for a moment only, ms. */
    private static final long TOGETHER_MS = 80;

    /** Answers whose builds stay drawn. */
    private static final int MOST_DRAWN = 16;

    /** Builds drawn for this very answer to this brief. */
    private record Drawn(Answer answer, Brief brief) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Drawn one && one.answer == answer && one.brief.equals(brief);
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(answer);
        }
    }

    private final Pages pages;
    private final Recent<Drawn, List<Card>> cards = new Recent<>(MOST_DRAWN);

    BuildsPage(Pages pages) {
        this.pages = pages;
    }

    void show(Context ctx) {
        Step step = pages.step(ctx);
        Asked asked = pages.bench().read(step.brief());
        Look look = Look.of(ctx);
        Coming coming = pages.bench().answers().coming(asked, look.patienceS());
        String show = String.valueOf(ctx.queryParam("show"));
        boolean best = show.equals("best");
        boolean rest = show.equals("rest");
        long begun = System.nanoTime();
        if (!rest) {
            coming.begun(best ? look.waitMs() : BEST_MS);
        }
        long gone = (System.nanoTime() - begun) / 1_000_000;
        Answer whole = coming.within(rest ? look.waitMs() : best ? 0 : Math.max(0, TOGETHER_MS - gone));
        Answer first = coming.first();
        BuildsView view = whole != null
                ? view(step, asked, whole, "")
                : first == null ? meanwhile(step, asked) : view(step, asked, first, "builds.coming.rest");
        pages.html(ctx, "builds", view);
        if (whole != null && !whole.builds().isEmpty() && !whole.interrupted()) {
            pages.bench().answers().lookAhead(asked);
        }
    }

    private BuildsView meanwhile(Step step, Asked asked) {
        Answer standIn = StandIn.of(pages, step, asked);
        return standIn == null ? waiting(step, asked) : view(step, asked, standIn, AGAIN);
    }

    private BuildsView waiting(Step step, Asked asked) {
        Answer none = new Answer(
                Answer.SCHEMA,
                asked.catalog().hash(),
                JsonNodeFactory.instance.objectNode(),
                List.of(),
                Map.of(),
                List.of(),
                null,
                List.of(),
                List.of(),
                null,
                false);
        return view(step, asked, none, "builds.coming.first");
    }

    /** The page as far as an answer goes; {@code coming} is the key of what is looked for still, or empty. */
    BuildsView view(Step step, Asked asked, Answer answer, String coming) {
        Bench bench = pages.bench();
        Brief brief = asked.told();
        List<BuildSheet> builds = answer.builds();
        SideBySide sides = builds.isEmpty() ? null : new SideBySide(builds, bench.units());
        LineByLine lines = builds.isEmpty() ? null : new LineByLine(builds, bench.units());
        List<String> warnings = new ArrayList<>();
        if (sides != null) {
            sides.warnings()
                    .forEach((warning, ranks) -> warnings.add(
                            ranks.isEmpty() ? warning : Words.say("builds.ofBuild", joined(ranks), warning)));
        }
        Frame frame = pages.frame(BriefPage.name(step), "brief", step);
        return new BuildsView(
                coming.isEmpty() ? frame : frame.waiting(),
                BriefPage.name(step),
                asked(brief),
                step.parent().isEmpty() ? "" : step.said(),
                step.parent(),
                sides == null ? List.of() : cards.get(new Drawn(answer, brief), () -> cards(asked, builds, sides)),
                builds.stream().map(b -> Words.say("builds.head", b.rank())).toList(),
                sides == null ? List.of() : Beside.differences(sides),
                sides == null ? List.of() : Beside.figures(sides, builds),
                sides == null ? List.of() : Beside.meanings(sides),
                lines == null ? List.of() : Beside.plain(lines.weights()),
                Beside.bought(builds, bench::money),
                lines == null ? List.of() : Beside.plain(lines.costs()),
                builds.isEmpty() ? "" : builds.get(0).figures().currency(),
                priorities(step.brief(), asked),
                wishes(brief),
                answer.reasons(),
                conflicts(answer),
                repairs(answer),
                answer.defaultsUsed(),
                warnings,
                answer.cautions(),
                lightest(answer),
                coming.isEmpty() ? "" : Words.say(coming),
                coming.equals(AGAIN),
                answer.interrupted(),
                answer.catalogHash().substring(0, 8));
    }

    private static String joined(List<Integer> ranks) {
        return Phrases.list(ranks.stream().map(String::valueOf).toList());
    }

    private String asked(Brief brief) {
        var units = pages.bench().units();
        return Words.say(
                "builds.asked",
                Words.say("choice.rodType." + word(brief.rodType())),
                units.rodLength(brief.lengthMinMm()),
                units.rodLength(brief.lengthMaxMm()),
                units.lureMass(brief.lure().lightestG()),
                units.lureMass(brief.lure().heaviestG()));
    }

    static String word(Enum<?> constant) {
        StringBuilder word = new StringBuilder();
        boolean capital = false;
        for (char c : constant.name().toLowerCase(Locale.ROOT).toCharArray()) {
            if (c == '_') {
                capital = true;
            } else {
                word.append(capital ? Character.toUpperCase(c) : c);
                capital = false;
            }
        }
        return word.toString();
    }

    private List<Card> cards(Asked asked, List<BuildSheet> builds, SideBySide sides) {
        List<Outline> outlines = builds.stream()
                .map(b -> Outlines.of(asked.catalog(), asked.told(), b))
                .toList();
        double longest =
                outlines.stream().mapToDouble(o -> o.toMm() - o.fromMm()).max().orElse(1);
        double handle =
                outlines.stream().mapToDouble(RodDrawing::handleMm).max().orElse(1);
        List<Card> cards = new ArrayList<>();
        for (int i = 0; i < builds.size(); i++) {
            BuildSheet build = builds.get(i);
            BuildSheet.FigureLines figures = build.figures();
            String proof = SideBySide.proof(build);
            Map<String, String> colours = Outlines.colours(asked.catalog(), build);
            cards.add(new Card(
                    build.rank(),
                    build.name(),
                    pages.bench().money(figures.priceMinor()),
                    pages.bench().units().mass(figures.weightG()),
                    pages.bench().units().mass(figures.weightToleranceG()),
                    sides.ahead(figures.balanceFromReelFootMm()),
                    Beside.other(sides, i),
                    gives(build),
                    proof == null ? "" : proof,
                    RodDrawing.of(
                            outlines.get(i),
                            colours,
                            longest,
                            Words.say(
                                    "builds.drawing",
                                    build.name(),
                                    pages.bench().units().rodLength(figures.finishedLengthMm()),
                                    build.layout().guideCount(),
                                    sides.ahead(figures.balanceFromReelFootMm()))),
                    RodDrawing.handle(
                            outlines.get(i), colours, handle, Words.say("builds.handle", build.rank(), build.name())),
                    parts(build, asked.told())));
        }
        return cards;
    }

    /** The first is the best for what was asked; the others stand against it. */
    private static List<String> gives(BuildSheet build) {
        if (build.rank() == 1) {
            return List.of(Words.say(build.proof() == null ? "builds.standsIn" : "builds.best"));
        }
        List<String> lines = new ArrayList<>();
        build.summaries().stream()
                .filter(s -> s.against() == 1)
                .forEach(s -> lines.add(Words.say("builds.against", s.sentence())));
        return lines;
    }

    private List<Part> parts(BuildSheet build, Brief brief) {
        List<Part> parts = new ArrayList<>();
        for (SideBySide.Group group : SideBySide.groups(build)) {
            BuildSheet.PartLine part = group.part();
            boolean byAmount = part.count() == 0;
            boolean kept = brief.insisted().stream().anyMatch(w -> w.partId().equals(part.part()));
            parts.add(new Part(
                    Phrases.sentence(group.label()),
                    part.station(),
                    part.part(),
                    part.name() + SideBySide.cut(part, pages.bench().units()),
                    byAmount ? "" : pages.bench().units().fineMass(part.unitWeightG() * group.pieces()),
                    kept));
        }
        return parts;
    }

    private List<BriefView.FieldView> priorities(ObjectNode typed, Asked asked) {
        BriefForm form = new BriefForm(pages.bench(), typed, asked);
        return Questions.PRIORITIES.stream().map(form::field).toList();
    }

    private List<Wish> wishes(Brief brief) {
        List<Wish> wishes = new ArrayList<>();
        brief.insisted()
                .forEach(w -> wishes.add(new Wish(
                        Words.say("brief.keeps", pages.bench().workshop().name(w.partId())), w.partId())));
        brief.refused()
                .forEach(w -> wishes.add(new Wish(
                        Words.say("brief.refuses", pages.bench().workshop().name(w.partId())), w.partId())));
        return wishes;
    }

    private static List<String> conflicts(Answer answer) {
        var impossible = answer.impossible();
        return impossible == null
                ? List.of()
                : impossible.conflicts().stream().map(c -> c.sentence()).toList();
    }

    private List<Repair> repairs(Answer answer) {
        var impossible = answer.impossible();
        if (impossible == null) {
            return List.of();
        }
        return impossible.repairs().stream()
                .map(r -> new Repair(
                        r.sentence(),
                        Words.say(
                                "builds.repair",
                                r.build().name(),
                                pages.bench().units().mass(r.build().weightG()),
                                pages.bench().money(r.build().priceMinor()))))
                .toList();
    }

    private String lightest(Answer answer) {
        Answer.Lightest lightest = answer.lightestLegal();
        return lightest == null
                ? ""
                : Phrases.of(
                        lightest.proven() ? "text.lightest" : "text.lightest.open",
                        pages.bench().units().mass(lightest.weightG()));
    }
}
