package withy.oracle;

import static withy.oracle.CpRod.sum;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.oracle.CpRod.Piece;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Consumables;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Judge;

/**
 * One layout as a constraint model for OR-Tools CP-SAT, an independent solver: a literal for each part at each place, pairs that a
 * rule refuses forbidden, sums linear in the measured whole numbers. Knows nothing of the search's graphs and bounds.
 */
public final class CpSatRod {
    /** Work after which the solver gives up; its own deterministic count, about seconds. */
    private static final double MOST_WORK = 300;

    private final CpRod rod;
    private final List<List<Piece>> guides = new ArrayList<>();
    private final List<Piece> tips = new ArrayList<>();

    private CpSatRod(CpRod rod) {
        this.rod = rod;
    }

    /**
     * What it found.
     *
     * @param build a best legal build of the layout, or null where there is none
     * @param score its score, measured
     */
    record Found(@Nullable Build build, long score) {}

    static Found solve(Catalog catalog, Query query, Setting setting, List<Consumables> with) {
        return of(catalog, query, setting, with, () -> false).solve();
    }

    /**
     * The model of a layout, stated and not solved; its objective is the score itself.
     *
     * @param over true ends it with a {@link java.util.concurrent.CancellationException}
     */
    public static CpSatRod of(
            Catalog catalog, Query query, Setting setting, List<Consumables> with, BooleanSupplier over) {
        Loader.loadNativeLibraries();
        CpSatRod stated = new CpSatRod(new CpRod(catalog, query, setting, with, over));
        CpHandle handle = new CpHandle(stated.rod);
        handle.build();
        stated.train();
        stated.ends(handle.caps());
        handle.clear(stated.guides.get(0));
        stated.rod.finish(handle.seats());
        return stated;
    }

    /** The model, for any solver. */
    public CpModel model() {
        return rod.model;
    }

    private Found solve() {
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(7).setMaxDeterministicTime(MOST_WORK);
        CpSolverStatus status = solver.solve(rod.model);
        if (status == CpSolverStatus.INFEASIBLE) {
            return new Found(null, Long.MAX_VALUE);
        }
        if (status != CpSolverStatus.OPTIMAL) {
            throw new IllegalStateException("the constraint solver says " + status + " of " + rod.setting.layout());
        }
        Found found = measured(build(solver::booleanValue));
        if (found.score() != Math.round(solver.objectiveValue())) {
            throw new IllegalStateException("the constraint model scores " + solver.objectiveValue() + ", measured "
                    + found.score() + " of " + rod.setting.layout());
        }
        return found;
    }

    /** A guide a number, never one the rules refuse after the one before; a tip-top. */
    private void train() {
        for (int number = 1; number <= rod.setting.guideCount(); number++) {
            List<Piece> at = new ArrayList<>();
            for (Choice choice : rod.menu.at(Station.guide(number), PartKind.GUIDE, false)) {
                Guide guide = (Guide) java.util.Objects.requireNonNull(rod.catalog.find(choice.partId()));
                Placed placed = new Placed(Station.guide(number), guide, rod.setting.guideMm(number), 0);
                if (rod.fits(placed)) {
                    int nth = number;
                    at.add(rod.wrapped(placed.station(), choice, guide, placed, fitter -> fitter.guide(guide, nth)));
                }
            }
            rod.model.addEquality(sum(at), 1);
            if (number > 1) {
                follow(guides.get(number - 2), at, number - 1);
            }
            guides.add(at);
        }
        for (Choice choice : rod.menu.at(Station.TIP_TOP, PartKind.TIP_TOP, false)) {
            TipTop tip = (TipTop) java.util.Objects.requireNonNull(rod.catalog.find(choice.partId()));
            Placed placed = new Placed(Station.TIP_TOP, tip, rod.setting.blank().lengthMm(), tip.addedMm());
            if (rod.fits(placed)) {
                tips.add(rod.wrapped(Station.TIP_TOP, choice, tip, placed, fitter -> fitter.tipTop(tip)));
            }
        }
        rod.model.addEquality(sum(tips), 1);
        for (Piece last : guides.get(guides.size() - 1)) {
            List<Piece> open = new ArrayList<>();
            for (Piece tip : tips) {
                rod.rules.onTip(rod.setting, (Guide) last.part(), (TipTop) tip.part(), rod.refusal.reset());
                if (!rod.refusal.refused()) {
                    open.add(tip);
                }
            }
            implies(last, open);
        }
    }

    private void follow(List<Piece> rears, List<Piece> fronts, int number) {
        for (Piece rear : rears) {
            List<Piece> open = new ArrayList<>();
            for (Piece front : fronts) {
                rod.rules.onGuides(rod.setting, (Guide) rear.part(), number, (Guide) front.part(), rod.refusal.reset());
                if (!rod.refusal.refused()) {
                    open.add(front);
                }
            }
            implies(rear, open);
        }
    }

    private void implies(Piece one, List<Piece> open) {
        LinearExprBuilder some = LinearExpr.newBuilder().add(sum(open));
        rod.model.addLessOrEqual(one.literal(), some);
    }

    private void ends(List<Piece> caps) {
        for (Piece cap : caps) {
            for (Piece tip : tips) {
                rod.rules.onEnds(rod.setting, (ButtCap) cap.part(), (TipTop) tip.part(), rod.refusal.reset());
                if (rod.refusal.refused()) {
                    rod.notTogether(List.of(cap), List.of(tip));
                }
            }
        }
    }

    /** The build of a solution, told by its true literals. */
    public Build build(Predicate<BoolVar> chosen) {
        SortedMap<Station, Choice> choices = new TreeMap<>();
        for (Piece piece : rod.pieces) {
            if (piece.choice() != null && chosen.test(piece.literal())) {
                choices.put(piece.station(), piece.choice());
            }
        }
        choices.put(Station.FINISH, Choice.of(rod.with.finish().id()));
        choices.put(Station.ADHESIVE, Choice.of(rod.with.adhesive().id()));
        return new Build(rod.setting.layout(), choices);
    }

    private Found measured(Build build) {
        Rod measured = Rod.measure(rod.catalog, rod.brief, build);
        if (!Judge.legal(measured, rod.rules)) {
            throw new IllegalStateException(
                    "the constraint model lets an illegal build pass: " + build.signature() + " "
                            + Judge.judge(measured, rod.rules).stream()
                                    .filter(verdict -> !verdict.outcome().legal())
                                    .toList());
        }
        Style style = new Style(rod.catalog, rod.brief);
        ObjectiveVector vector = ObjectiveVector.of(measured, style, new NiceWishes(rod.brief));
        return new Found(build, rod.scoring.score(vector));
    }
}
