package withy.benchmarks.peer;

import com.google.ortools.sat.BoolVar;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.chocosolver.solver.Solver;
import withy.benchmarks.peer.LayoutQueue.Piece;
import withy.oracle.CpSatRod;

/** Choco over all layouts: the same models put into its own variables and constraints, its default search, two at a time. */
public final class Choco implements Peer {
    @Override
    public String name() {
        return "Choco";
    }

    @Override
    public String setUp() {
        return "choco-solver 4.10.18; the same models, its default search (dom/wdeg, last conflict, best bound), two at a time; its integers have 32 bits, so it"
                + " sees the score in " + ChocoModel.UNITS_A_STEP + "ths of a step";
    }

    @Override
    public boolean proves() {
        return true;
    }

    @Override
    public void run(Question question, Race race) throws Exception {
        LayoutQueue queue = new LayoutQueue(question);
        TwoThreads.run(index -> {
            Piece piece;
            while (!race.over() && (piece = queue.take()) != null) {
                boolean settled = false;
                try {
                    settled = settle(question, race, piece, queue);
                } catch (CancellationException outOfTime) {
                    // this layout stays open
                } finally {
                    queue.done(piece, settled);
                }
            }
        });
        if (queue.allSettled()) {
            race.proven();
        }
    }

    private static boolean settle(Question question, Race race, Piece piece, LayoutQueue queue) {
        CpSatRod stated = CpSatRod.of(question.catalog(), question.query(), piece.setting(), queue.with(), race::over);
        ChocoModel model = new ChocoModel(stated.model().model());
        if (!model.below(race.best())) {
            return true;
        }
        Solver solver = model.solver();
        long limitMs = Math.max(1, Math.round(1000 * Math.min(queue.seconds(), race.secondsLeft())));
        solver.limitTime(limitMs + "ms");
        solver.setEngine(new Punctual(solver.getModel(), System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(limitMs)));
        Predicate<BoolVar> chosen = literal -> model.isTrue(literal.getIndex());
        while (solver.solve()) {
            race.offer(stated.build(chosen));
        }
        return !solver.isStopCriterionMet();
    }
}
