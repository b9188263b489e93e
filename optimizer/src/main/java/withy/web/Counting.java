package withy.web;

import java.util.List;
import java.util.Map;
import withy.app.Chooser.Fit;
import withy.brief.BriefFault;
import withy.objectives.Solver.Query;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.web.Bench.Asked;
import withy.web.BriefView.CountView;

/** What still fits a brief, told in a line or two. */
final class Counting {
    private final Bench bench;

    Counting(Bench bench) {
        this.bench = bench;
    }

    CountView of(Asked asked) {
        if (asked.brief() == null) {
            return new CountView(
                    asked.faults().stream().map(BriefFault::message).limit(1).toList(), true);
        }
        Query query = Query.of(asked.told(), Rulebook.standard());
        Map<Station.Place, Fit> fits = bench.chooser(asked.catalog()).fits(query);
        Fit blanks = fits.get(Station.Place.BLANK);
        if (blanks == null) {
            throw new IllegalStateException("no station for the blank");
        }
        return new CountView(
                List.of(Words.say("count.blanks", blanks.offered(), blanks.offered() + blanks.refused())),
                blanks.offered() == 0);
    }
}
