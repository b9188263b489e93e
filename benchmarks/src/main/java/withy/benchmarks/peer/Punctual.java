package withy.benchmarks.peer;

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

    /** The time is up; the solver is of no further use. */
    static final class TooLate extends RuntimeException {
        private static final long serialVersionUID = 1L;

        TooLate() {
            super("out of time within propagation", null, false, false);
        }
    }

    @Override
    protected void propagateEvents() throws ContradictionException {
        if (System.nanoTime() - endNanos >= 0) {
            throw new TooLate();
        }
        super.propagateEvents();
    }
}
