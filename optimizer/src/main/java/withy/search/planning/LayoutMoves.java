package withy.search.planning;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.rod.Build;
import withy.rod.Layout;

/**
 * The decoder: a move chooses a layout, the kernel completes it. Walks through all layouts in a shuffled order and ends when a whole round of them,
 * or the number of layouts that may be completed, brought nothing better.
 */
public final class LayoutMoves implements MoveIteratorFactory<RodPlan, Refit> {
    private List<Layout> shuffled = List.of();
    private int next;

    /** For the engine. */
    public LayoutMoves() {}

    @Override
    public void phaseStarted(ScoreDirector<RodPlan> director) {
        shuffled = List.of();
        next = 0;
    }

    @Override
    public long getSize(ScoreDirector<RodPlan> director) {
        return director.getWorkingSolution().rod().desk().problem().layouts().size();
    }

    @Override
    public Iterator<Refit> createOriginalMoveIterator(ScoreDirector<RodPlan> director) {
        RodChoice rod = director.getWorkingSolution().rod();
        shuffled = rod.desk().problem().layouts();
        return new Walk(rod);
    }

    @Override
    public Iterator<Refit> createRandomMoveIterator(ScoreDirector<RodPlan> director, Random random) {
        RodChoice rod = director.getWorkingSolution().rod();
        if (shuffled.isEmpty()) {
            shuffled = new ArrayList<>(rod.desk().problem().layouts());
            Collections.shuffle(shuffled, random);
        }
        return new Walk(rod);
    }

    /** Goes on where the last walk stopped; ends after one round without a build. */
    private final class Walk implements Iterator<Refit> {
        private final RodChoice rod;
        private @Nullable Refit ready;

        Walk(RodChoice rod) {
            this.rod = rod;
        }

        @Override
        public boolean hasNext() {
            for (int tried = 0;
                    ready == null && tried < shuffled.size() && rod.desk().layoutsLeft() > 0;
                    tried++) {
                Layout layout = shuffled.get(next);
                next = (next + 1) % shuffled.size();
                Build build = rod.desk().complete(layout, Set.of(), rod.desk().best());
                ready = build == null ? null : Refit.to(rod, build);
            }
            return ready != null;
        }

        @Override
        public Refit next() {
            if (!hasNext()) {
                throw new NoSuchElementException("no layout has a build");
            }
            Refit refit = Objects.requireNonNull(ready);
            ready = null;
            return refit;
        }
    }
}
