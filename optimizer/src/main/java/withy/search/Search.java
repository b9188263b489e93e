package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief.Look;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.objectives.Solver;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.search.planning.EngineSettings;

/**
 * Finds the best legal build of a catalogue for a question and proves it: best-first over blanks and layouts by floors, each layout completed
 * exactly. What cannot be proven (a rule outside the chain) is handed to the engine with the bound that was reached. May be used by several threads; each question is worked by the thread that asks it.
 */
public final class Search implements Solver {
    private final Catalog catalog;
    private final Map<String, BlankShape> shapes = new LinkedHashMap<>();
    private final Map<Look, Style> styles = new LinkedHashMap<>();

    private final EngineSettings settings;

    /** Over one reading of the shop. */
    public Search(Catalog catalog) {
        this(catalog, EngineSettings.STANDARD);
    }

    /** The same with other settings for what cannot be proven. */
    public Search(Catalog catalog, EngineSettings settings) {
        this.catalog = catalog;
        this.settings = settings;
    }

    @Override
    public Solution solve(Query query, Watch watch) {
        Task task = new Task(catalog, query, style(query));
        Set<String> forced = new TreeSet<>(query.forced());
        if (query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("must"))) {
            query.brief().insisted().stream().filter(w -> w.hard()).forEach(w -> forced.add(w.partId()));
        }
        List<Stations> alternatives = Stations.alternatives(catalog, query, forced);
        Proof proof = new Proof(task, alternatives, this::shape, watch);
        Solution solution = proof.run();
        if (solution.proven() || watch.interrupted().getAsBoolean()) {
            return solution;
        }
        return new Unproven(task, alternatives, this::shape, proof).improve(solution, settings, watch);
    }

    /** The catalogue fitted to a question, with what was refused and why. */
    public Candidates candidates(Query query) {
        return Candidates.of(catalog, query);
    }

    private synchronized BlankShape shape(Blank blank) {
        return shapes.computeIfAbsent(blank.id(), id -> BlankShape.of(blank));
    }

    private synchronized Style style(Query query) {
        return styles.computeIfAbsent(query.brief().look(), look -> new Style(catalog, query.brief()));
    }

    static List<Integer> feet(double fromMm, double toMm, int grid) {
        List<Integer> feet = new ArrayList<>();
        for (int x = (int) Math.ceil(fromMm / grid) * grid; x <= toMm; x += grid) {
            feet.add(x);
        }
        return feet;
    }
}
