package withy.benchmarks.peer;

import java.util.concurrent.CancellationException;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.propagation.PropagationEngine;

/** Choco looks at the clock between branches only, and one round of propagation can take longer than all the time there is: this one looks within it. */
final class Punctual extends PropagationEngine {
    private final long endNanos;

    Punctual(Model model, long endNanos) {
        super(model);
        this.endNanos = endNanos;
    }

    @Override
    protected void propagateEvents() throws ContradictionException {
        if (System.nanoTime() - endNanos >= 0) {
            throw new CancellationException("out of time within propagation");
        }
        super.propagateEvents();
    }
}
