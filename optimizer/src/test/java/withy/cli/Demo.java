package withy.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import withy.app.Chooser;
import withy.app.SearchChooser;
import withy.catalog.Catalog;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Station;
import withy.search.Proposal;

/** The demo's answer, worked out once for all tests, and a chooser that gives the same builds again without searching. */
final class Demo {
    private static final Recorder RECORDER = new Recorder();

    /** The real search's answer as JSON. */
    static final Terminal.Shown JSON = new Terminal().choosing(RECORDER::over).run("demo", "--json");

    private Demo() {}

    static JsonNode answer() {
        return JSON.json();
    }

    static JsonNode build(int index) {
        return answer().path("builds").path(index);
    }

    /** The recorded builds, changed. */
    static Chooser replay(Catalog catalog, UnaryOperator<List<Proposal>> change) {
        Recorder seen = RECORDER;
        SearchChooser real = new SearchChooser(catalog);
        if (JSON.code() != 0) {
            throw new IllegalStateException("the demo failed: " + JSON.err());
        }
        return new Chooser() {
            @Override
            public List<Proposal> offer(Query query, Watch watch) {
                List<Proposal> changed = change.apply(seen.offered);
                changed.forEach(p -> watch.better().found(p.build(), p.objectives(), p.score()));
                watch.interrupted().getAsBoolean();
                return changed;
            }

            @Override
            public boolean looksFurther() {
                return real.looksFurther();
            }

            @Override
            public Map<Station.Place, Fit> fits(Query query) {
                return real.fits(query);
            }

            @Override
            public Solution solve(Query query, Watch watch) {
                boolean weightOnly = !query.priorities().equals(query.brief().priorities());
                return weightOnly ? seen.lightest : seen.best();
            }
        };
    }

    static Chooser replay(Catalog catalog) {
        return replay(catalog, offered -> offered);
    }

    private static final class Recorder {
        private List<Proposal> offered = List.of();
        private Solution lightest = new Solution(null, null, Long.MAX_VALUE, 0, false, 0);

        Chooser over(Catalog catalog) {
            SearchChooser real = new SearchChooser(catalog);
            return new Chooser() {
                @Override
                public List<Proposal> offer(Query query, Watch watch) {
                    offered = real.offer(query, watch);
                    return offered;
                }

                @Override
                public boolean looksFurther() {
                    return real.looksFurther();
                }

                @Override
                public Map<Station.Place, Fit> fits(Query query) {
                    return real.fits(query);
                }

                @Override
                public Solution solve(Query query, Watch watch) {
                    lightest = real.solve(query, watch);
                    return lightest;
                }
            };
        }

        Solution best() {
            Proposal first = offered.get(0);
            return new Solution(first.build(), first.objectives(), first.score(), first.bound(), first.proven(), 1);
        }
    }
}
