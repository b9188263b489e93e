package withy.benchmarks.peer;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import withy.benchmarks.peer.LayoutQueue.Piece;
import withy.oracle.CpSatRod;

/**
 * OR-Tools CP-SAT over all layouts: one model a layout, with the best score so far as an upper bound of its objective; two models at a
 * time, one worker each (the choices that split the problem best are enumerated, as its authors advise for independent parts).
 */
public final class CpSat implements Peer {
    @Override
    public String name() {
        return "OR-Tools CP-SAT";
    }

    @Override
    public String setUp() {
        return "ortools-java 9.15.6755; one model a layout, best so far as bound, two at a time with one worker each, seed "
                + SEED % 1000;
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
        CpModel model = stated.model();
        long best = race.best();
        if (best < Long.MAX_VALUE) {
            below(model, best);
        }
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed((int) (SEED % 1000))
                .setMaxTimeInSeconds(Math.max(0.001, Math.min(queue.seconds(), race.secondsLeft())));
        CpSolverStatus status = solver.solve(model, new CpSolverSolutionCallback() {
            @Override
            public void onSolutionCallback() {
                Predicate<BoolVar> chosen = this::booleanValue;
                race.offer(stated.build(chosen));
            }
        });
        return status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.INFEASIBLE;
    }

    /** Only builds that score less are of interest: the objective itself, as a constraint. */
    private static void below(CpModel model, long best) {
        var objective = model.getBuilder().getObjective();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (int i = 0; i < objective.getVarsCount(); i++) {
            sum.addTerm(model.getIntVarFromProtoIndex(objective.getVars(i)), objective.getCoeffs(i));
        }
        model.addLessOrEqual(sum, best - 1 - Math.round(objective.getOffset()));
    }
}
