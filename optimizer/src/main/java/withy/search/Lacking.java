package withy.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;

/**
 * The best build without each of some parts of another. One without the first may lack the second as well: then it is the best without the second, too, but for
 * those that have the first, which alone are still looked at.
 */
final class Lacking {
    private final Search search;
    private final Query query;
    private final Watch watch;

    /**
     * @param query what is asked of them besides
     */
    Lacking(Search search, Query query, Watch watch) {
        this.search = search;
        this.query = query;
        this.watch = watch;
    }

    /** The answers in the order of the parts; the first is looked for beside the others. */
    List<Solution> each(List<String> ids) {
        List<Callable<List<Solution>>> questions = new ArrayList<>();
        questions.add(() -> oneAfterAnother(ids.subList(0, Math.min(1, ids.size()))));
        questions.add(() -> oneAfterAnother(ids.subList(Math.min(1, ids.size()), ids.size())));
        return Workers.all(questions, Workers.MOST).stream()
                .flatMap(List::stream)
                .toList();
    }

    private List<Solution> oneAfterAnother(List<String> ids) {
        List<Solution> found = new ArrayList<>();
        for (String id : ids) {
            Query refusing = query.refusing(with(query.refused(), Stream.of(id)));
            Solution one = throughOthers(id, refusing, ids, found);
            found.add(one == null ? search.solveAlone(refusing, watch) : one);
        }
        return found;
    }

    /** By what was found without parts before; null where that does not tell it. */
    private @Nullable Solution throughOthers(String id, Query refusing, List<String> ids, List<Solution> found) {
        Solution best = null;
        List<String> had = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            Solution one = found.get(i);
            Build build = one.build();
            if (one.proven() && build != null && !build.partIds().contains(id)) {
                had.add(ids.get(i));
                best = best == null || one.score() < best.score() ? one : best;
            }
        }
        if (best == null) {
            return null;
        }
        Query rest = refusing.forcing(with(query.forced(), had.stream()));
        Solution better = search.below(best.score(), rest, watch);
        if (!better.proven()) {
            return null;
        }
        return better.build() == null ? best : better;
    }

    /** Some ids and more. */
    static Set<String> with(Set<String> ids, Stream<String> more) {
        Set<String> all = new TreeSet<>(ids);
        more.forEach(all::add);
        return all;
    }
}
