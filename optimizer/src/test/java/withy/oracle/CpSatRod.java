package withy.oracle;

import static withy.oracle.CpRod.sum;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
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
 * One layout with one thread as a constraint model for OR-Tools CP-SAT, an independent solver: a literal for each part at each place, pairs that a
 * rule refuses forbidden, sums linear in the measured whole numbers. Knows nothing of the search's graphs and bounds.
 */
final class CpSatRod {
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

    static Found solve(Catalog catalog, Query query, Setting setting, Consumables with) {
        Loader.loadNativeLibraries();
        CpRod rod = new CpRod(catalog, query, setting, with);
        return new CpSatRod(rod).solve();
    }

    private Found solve() {
        CpHandle handle = new CpHandle(rod);
        handle.build();
        train();
        ends(handle.caps());
        handle.clear(guides.get(0));
        rod.finish(handle.seats());
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(7).setMaxDeterministicTime(MOST_WORK);
        CpSolverStatus status = solver.solve(rod.model);
        if (status == CpSolverStatus.INFEASIBLE) {
            return new Found(null, Long.MAX_VALUE);
        }
        if (status != CpSolverStatus.OPTIMAL) {
            throw new IllegalStateException("the constraint solver says " + status + " of " + rod.setting.layout());
        }
        return measured(build(solver));
    }

    /** A guide a number, never one the rules refuse after the one before; a tip-top. */
    private void train() {
        for (int number = 1; number <= rod.setting.guideCount(); number++) {
            List<Piece> at = new ArrayList<>();
            for (Choice choice : rod.menu.at(Station.guide(number), PartKind.GUIDE, false)) {
                Guide guide = (Guide) java.util.Objects.requireNonNull(rod.catalog.find(choice.partId()));
                Placed placed = new Placed(Station.guide(number), guide, rod.setting.guideMm(number), 0);
                if (rod.fits(placed)) {
                    at.add(rod.add(placed.station(), choice, guide, placed, rod.fitter.guide(guide, number), 1));
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
                tips.add(rod.add(Station.TIP_TOP, choice, tip, placed, rod.fitter.tipTop(tip), 1));
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

    private Build build(CpSolver solver) {
        SortedMap<Station, Choice> choices = new TreeMap<>();
        for (Piece piece : rod.pieces) {
            if (piece.choice() != null && solver.booleanValue(piece.literal())) {
                choices.put(piece.station(), piece.choice());
            }
        }
        choices.put(Station.THREAD, Choice.of(rod.with.thread().id()));
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
