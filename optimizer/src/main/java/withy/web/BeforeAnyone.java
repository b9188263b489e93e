package withy.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import withy.app.Propose;
import withy.brief.Brief;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;
import withy.web.Beforehand.Aside;
import withy.web.Beforehand.How;
import withy.web.Bench.Asked;

/** What a start does before anybody comes, one thing after another: draws the first pages, then solves what is usually begun with. */
final class BeforeAnyone {
    private final Bench bench;
    private final Answers answers;
    private final FirstPages pages;

    BeforeAnyone(Bench bench, Answers answers, FirstPages pages) {
        this.bench = bench;
        this.answers = answers;
        this.pages = pages;
    }

    /** All of it, in the order in which it helps. */
    List<Aside> asides() {
        List<StartView.Start> starts = Starts.all();
        String first = starts.get(0).key();
        List<Aside> asides = new ArrayList<>();
        asides.add(usual("talk", (patience, soFar) -> {
            pages.talk(first);
            return true;
        }));
        for (StartView.Start start : starts) {
            asides.add(usual(start.key(), (patience, soFar) -> solved(start.key(), patience)));
            if (start.key().equals(first)) {
                asides.add(usual("builds", (patience, soFar) -> drawn(first, patience)));
            }
        }
        return asides;
    }

    private static Aside usual(String name, How how) {
        return new Aside(List.of("usual", name), true, how);
    }

    private boolean solved(String start, Patience patience) {
        Asked asked = bench.read(Starts.brief(start));
        Brief brief = asked.brief();
        if (brief == null) {
            return false;
        }
        Watch watch = new Watch(patience::stopped, (build, objectives, score) -> {});
        return answers.chooser(asked.catalog())
                .solve(Query.of(brief, Rulebook.standard()), watch)
                .proven();
    }

    /** Draws the best build of a beginning; its others are not looked for. */
    private boolean drawn(String start, Patience patience) {
        ObjectNode typed = Starts.brief(start);
        Asked asked = bench.read(typed);
        Brief brief = asked.brief();
        if (brief == null) {
            return false;
        }
        Propose.run(asked.catalog(), brief, answers.chooser(asked.catalog()), bench.units(), patience, best -> {
            pages.builds(typed, asked, best);
            patience.stop();
        });
        return true;
    }
}
