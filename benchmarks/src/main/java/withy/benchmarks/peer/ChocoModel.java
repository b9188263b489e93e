package withy.benchmarks.peer;

import com.google.ortools.sat.ConstraintProto;
import com.google.ortools.sat.CpModelProto;
import com.google.ortools.sat.CpObjectiveProto;
import com.google.ortools.sat.IntegerVariableProto;
import com.google.ortools.sat.LinearConstraintProto;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.constraints.Constraint;
import org.chocosolver.solver.variables.BoolVar;
import org.chocosolver.solver.variables.IntVar;
import withy.objectives.Scoring;

/**
 * A model of linear constraints over literals in Choco's terms. Its integers have 32 bits: where coefficients are larger they are divided, and rounded
 * so that no solution is lost; the score is told in {@value #UNITS_A_STEP}ths of a step. What it finds is judged outside, so nothing illegal passes.
 */
final class ChocoModel {
    /** Least difference of score it sees: so many to a step. */
    static final int UNITS_A_STEP = 10_000;

    private static final double SCORE_UNIT = Scoring.SCALE / UNITS_A_STEP;

    /** Parts of one rod, at most: each may hide half a unit by rounding. */
    private static final int MOST_PARTS = 40;

    /** Largest sum of coefficients that is sure not to overflow. */
    private static final double MOST_REACH = 1e9;

    /** Bounds beyond are none. */
    private static final long OPEN = 1L << 60;

    private final Model model = new Model();
    private final CpModelProto from;
    private final List<IntVar> variables = new ArrayList<>();
    /** By how much a variable is divided; 1 for most. */
    private final List<Double> units = new ArrayList<>();

    private final IntVar objective;

    ChocoModel(CpModelProto from) {
        this.from = from;
        Map<Integer, Long> prices = new HashMap<>();
        CpObjectiveProto wanted = from.getObjective();
        for (int i = 0; i < wanted.getVarsCount(); i++) {
            prices.merge(wanted.getVars(i), wanted.getCoeffs(i), Long::sum);
        }
        for (int i = 0; i < from.getVariablesCount(); i++) {
            add(from.getVariables(i), prices.getOrDefault(i, 0L));
        }
        from.getConstraintsList().forEach(this::post);
        this.objective = objective(prices);
        model.setObjective(Model.MINIMIZE, objective);
    }

    Solver solver() {
        return model.getSolver();
    }

    boolean isTrue(int literal) {
        return literal >= 0
                ? variables.get(literal).getValue() == 1
                : variables.get(-literal - 1).getValue() == 0;
    }

    /** Only scores below; false where none can be. */
    boolean below(long best) {
        if (best == Long.MAX_VALUE) {
            return true;
        }
        double left = (best - from.getObjective().getOffset()) / SCORE_UNIT + MOST_PARTS;
        if (left <= objective.getLB()) {
            return false;
        }
        model.arithm(objective, "<", (int) Math.min(left, objective.getUB() + 1))
                .post();
        return true;
    }

    private void add(IntegerVariableProto variable, long price) {
        long low = variable.getDomain(0);
        long high = variable.getDomain(variable.getDomainCount() - 1);
        if (low == 0 && high == 1) {
            variables.add(model.boolVar());
            units.add(1.0);
            return;
        }
        // what is priced by the smallest unit is told in units of the score
        double unit = high > IntVar.MAX_INT_BOUND ? Math.max(1, SCORE_UNIT / Math.max(1, Math.abs(price))) : 1;
        double most = Math.min(IntVar.MAX_INT_BOUND, high / unit);
        variables.add(model.intVar((int) (low / unit), (int) most, true));
        units.add(unit);
    }

    private void post(ConstraintProto constraint) {
        if (!constraint.hasLinear() || constraint.getEnforcementLiteralCount() > 1) {
            throw new IllegalArgumentException(
                    "only linear constraints under one literal are known, not " + constraint);
        }
        LinearConstraintProto linear = constraint.getLinear();
        double reach = 0;
        double unit = 1;
        for (int i = 0; i < linear.getVarsCount(); i++) {
            reach += Math.abs((double) linear.getCoeffs(i));
            unit = Math.max(unit, units.get(linear.getVars(i)));
        }
        unit = Math.max(unit, reach / MOST_REACH);
        long low = linear.getDomain(0);
        long high = linear.getDomain(linear.getDomainCount() - 1);
        if (low == high && unit == 1) {
            post(constraint, unit, low, "=");
            return;
        }
        if (low > -OPEN) {
            post(constraint, unit, low, ">=");
        }
        if (high < OPEN) {
            post(constraint, unit, high, "<=");
        }
    }

    /** Rounded toward what lets more pass. */
    private void post(ConstraintProto constraint, double unit, long bound, String operator) {
        LinearConstraintProto linear = constraint.getLinear();
        int n = linear.getVarsCount();
        IntVar[] of = new IntVar[n];
        int[] by = new int[n];
        boolean less = operator.equals("<=");
        for (int i = 0; i < n; i++) {
            of[i] = variables.get(linear.getVars(i));
            double c = linear.getCoeffs(i) * units.get(linear.getVars(i)) / unit;
            by[i] = (int) (less ? Math.floor(c) : Math.ceil(c));
        }
        int limit = (int) (less ? Math.ceil(bound / unit) : Math.floor(bound / unit));
        Constraint one = model.scalar(of, by, operator, limit);
        if (constraint.getEnforcementLiteralCount() == 0) {
            one.post();
        } else {
            one.impliedBy((BoolVar) variables.get(constraint.getEnforcementLiteral(0)));
        }
    }

    private IntVar objective(Map<Integer, Long> prices) {
        List<IntVar> of = new ArrayList<>();
        List<Integer> by = new ArrayList<>();
        prices.forEach((variable, price) -> {
            int rounded = (int) Math.round(price * units.get(variable) / SCORE_UNIT);
            if (rounded != 0) {
                of.add(variables.get(variable));
                by.add(rounded);
            }
        });
        IntVar sum = model.intVar(-IntVar.MAX_INT_BOUND / 2, IntVar.MAX_INT_BOUND / 2, true);
        of.add(sum);
        by.add(-1);
        model.scalar(
                        of.toArray(IntVar[]::new),
                        by.stream().mapToInt(Integer::intValue).toArray(),
                        "=",
                        0)
                .post();
        return sum;
    }
}
