package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;

/**
 * Looks for what is wrong with an answer that claims to be the best: measured and judged anew, it must score what it says, not less than its bound
 * (better than optimal is suspicious), and no exchange of one part or of the reel's place may give a better legal build.
 */
final class Optimum {
    /** Given by the shop's rates; the search does not choose them. */
    private static final Set<Station> HOUSE = Set.of(Station.FINISH, Station.ADHESIVE);

    private final Catalog catalog;
    private final Query query;
    private final Style style;
    private final NiceWishes wishes;
    private final Scoring scoring;

    Optimum(Catalog catalog, Query query) {
        this.catalog = catalog;
        this.query = query;
        this.style = new Style(catalog, query.brief());
        this.wishes = new NiceWishes(query.brief());
        this.scoring = Scoring.of(query.brief(), catalog.rates(), query.priorities());
    }

    /** What is wrong; empty where nothing was found. */
    List<String> faults(Solution solution) {
        List<String> faults = new ArrayList<>();
        if (!solution.proven()) {
            faults.add("not proven: score " + solution.score() + ", bound " + solution.bound());
        }
        Build build = solution.build();
        if (build == null) {
            return faults;
        }
        Long score = score(build);
        if (score == null) {
            faults.add("illegal: " + build.signature());
            return faults;
        }
        if (score != solution.score()) {
            faults.add("said to score " + solution.score() + ", measured " + score);
        }
        if (score < solution.bound()) {
            faults.add("suspicious: scores " + score + ", better than its bound " + solution.bound());
        }
        for (Build other : exchanges(build)) {
            Long better = score(other);
            if (better != null && better < score) {
                faults.add("not the best: " + build.signature() + " scores " + score + ", " + other.signature()
                        + " scores " + better);
            }
        }
        return faults;
    }

    /** Its score, or null where it breaks a rule. */
    private @Nullable Long score(Build build) {
        Rod rod = Rod.measure(catalog, query.brief(), build);
        return Judge.legal(rod, query.rulebook()) ? scoring.score(ObjectiveVector.of(rod, style, wishes)) : null;
    }

    /** Every build that differs in one part, or in the reel's place by one step. */
    List<Build> exchanges(Build build) {
        List<Build> others = new ArrayList<>();
        for (Map.Entry<Station, Choice> filled : build.choices().entrySet()) {
            if (HOUSE.contains(filled.getKey())) {
                continue;
            }
            Part now = catalog.find(filled.getValue().partId());
            if (now != null) {
                for (Part part : catalog.all(now.kind())) {
                    others.add(build.with(
                            filled.getKey(),
                            new Choice(part.id(), cutMm(part, filled.getValue().cutMm()))));
                }
            }
            others.add(build.without(filled.getKey()));
        }
        Layout layout = build.layout();
        Part blank = catalog.find(layout.blankId());
        if (blank != null) {
            for (Part part : catalog.all(blank.kind())) {
                others.add(moved(build, part.id(), layout.reelFootMm()));
            }
        }
        others.add(moved(build, layout.blankId(), layout.reelFootMm() - Layout.GRID_MM));
        others.add(moved(build, layout.blankId(), layout.reelFootMm() + Layout.GRID_MM));
        others.removeIf(build::equals);
        return others;
    }

    private static Build moved(Build build, String blankId, int reelFootMm) {
        Layout layout = build.layout();
        return new Build(new Layout(blankId, reelFootMm, layout.form(), layout.guideCount()), build.choices());
    }

    /** The same cut, within what the other grip can be cut to; 0 stays. */
    private static double cutMm(Part part, double cutMm) {
        if (cutMm == 0 || !(part instanceof Grip grip)) {
            return 0;
        }
        return Math.min(grip.lengthMm(), Math.max(cutMm, grip.shortestMm()));
    }
}
