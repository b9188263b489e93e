package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.app.MachineSheet.Amount;
import withy.app.MachineSheet.Point;
import withy.machine.BlankStiffness;
import withy.machine.HandleFit;
import withy.machine.HandleFit.NamedReel;
import withy.machine.LineBend;
import withy.machine.Pose;
import withy.machine.Quickness;
import withy.machine.RodMachine;
import withy.machine.WrapTable;
import withy.mechanics.BendResult;
import withy.mechanics.LineClearance;
import withy.mechanics.LineResult;
import withy.mechanics.OneThirdDrop;
import withy.mechanics.StiffnessProfile;
import withy.mechanics.TaperProfile;
import withy.rod.Rod;
import withy.rod.Station;
import withy.units.ForceUnit;

/** Writes a rod as a machine down as a {@link MachineSheet}: for the terminal, the page and the paper alike. */
public final class Machines {
    private Machines() {}

    /** A measured rod under its brief's working load. */
    public static MachineSheet of(Rod rod) {
        BlankStiffness stiffness = BlankStiffness.of(rod.setting().shape());
        return of(RodMachine.of(rod, stiffness, Pose.working(rod.brief()), List.<NamedReel>of()));
    }

    static MachineSheet of(RodMachine machine) {
        LineBend test = machine.staticTest();
        return new MachineSheet(
                Outlines.of(machine.rod()),
                stiffness(machine),
                hung(machine),
                line(machine, machine.working()),
                test == null ? null : line(machine, test),
                quick(machine.quickness()),
                wraps(machine.wraps()),
                handle(machine.handle()),
                machine.massAlong().stretches().stream()
                        .map(s -> new MachineSheet.Stretch(
                                round(s.fromMm(), 1), round(s.toMm(), 1), round(s.blankG(), 3), round(s.partsG(), 3)))
                        .toList());
    }

    private static MachineSheet.Stiffness stiffness(RodMachine machine) {
        BlankStiffness stiffness = machine.stiffness();
        return new MachineSheet.Stiffness(
                word(stiffness.source()),
                stiffness.modulusMpa() > 0 ? round(stiffness.modulusMpa(), 0) : null,
                stiffness.doubt(),
                along(stiffness.profile(), machine.rod().setting().profile()));
    }

    /** By every place where the law changes; at a step two lines. */
    static List<MachineSheet.StiffnessAt> along(StiffnessProfile stiffness, TaperProfile profile) {
        double[] breaks = stiffness.breaksMm();
        List<MachineSheet.StiffnessAt> along = new ArrayList<>();
        for (int i = 1; i < breaks.length; i++) {
            StiffnessProfile.Stretch stretch = stiffness.stretch(breaks[i - 1], breaks[i]);
            MachineSheet.StiffnessAt at = at(breaks[i - 1], profile.at(breaks[i - 1]), stretch.atNmm2(breaks[i - 1]));
            if (along.isEmpty() || !along.get(along.size() - 1).equals(at)) {
                along.add(at);
            }
            along.add(at(breaks[i], profile.before(breaks[i]), stretch.atNmm2(breaks[i])));
        }
        return along;
    }

    private static MachineSheet.StiffnessAt at(double x, double od, double ei) {
        return new MachineSheet.StiffnessAt(round(x, 2), round(od, 3), round(ei, 0));
    }

    private static MachineSheet.Hung hung(RodMachine machine) {
        double third = (machine.stiffness().profile().tipMm() - machine.rod().handleFrontMm()) / 3;
        List<MachineSheet.LoadDrop> curve = machine.hung().stream()
                .map(h -> h.bend() instanceof BendResult.Bent bent
                        ? new MachineSheet.LoadDrop(
                                round(h.loadG(), 1),
                                round(bent.dropMm(), 1),
                                round(-Math.toDegrees(bent.tip().angleRad()), 2),
                                shape(bent.nodes()))
                        : new MachineSheet.LoadDrop(round(h.loadG(), 1), null, null, List.of()))
                .toList();
        if (machine.oneThird() instanceof OneThirdDrop.Outcome.Found found) {
            return new MachineSheet.Hung(
                    round(found.weightG(), 1), round(third, 1), round(found.actionAngleDeg(), 1), null, curve);
        }
        String doubt = ((OneThirdDrop.Outcome.None) machine.oneThird()).reason();
        return new MachineSheet.Hung(null, round(third, 1), null, doubt, curve);
    }

    private static MachineSheet.Line line(RodMachine machine, LineBend bend) {
        Pose pose = bend.pose();
        double pullKg = pose.pullN() / ForceUnit.KILOGRAM_FORCE.newtons();
        Double lift = RodMachine.liftRatingKg(machine.rod().setting().blank());
        Double reserve = lift == null ? null : round(lift / pullKg, 2);
        double butt = round(pose.buttDeg(), 2);
        double pull = round(pose.pullDeg(), 2);
        LineResult.Held held = bend.held();
        if (held == null) {
            return new MachineSheet.Line(
                    butt,
                    pull,
                    round(pullKg, 3),
                    lift,
                    reserve,
                    null,
                    null,
                    null,
                    null,
                    null,
                    List.of(),
                    List.of(),
                    List.of(),
                    bend.doubt());
        }
        return new MachineSheet.Line(
                butt,
                pull,
                round(pullKg, 3),
                lift,
                reserve,
                round(held.dropMm(), 1),
                round(bend.handMomentNmm(), 0),
                number(bend.leastGapMm(), 2),
                number(Math.toDegrees(bend.largestTurnRad()), 2),
                number(Math.toDegrees(bend.allTurnsRad()), 2),
                rings(bend, held),
                shape(held.nodes()),
                path(held),
                null);
    }

    private static List<MachineSheet.RingUnderLoad> rings(LineBend bend, LineResult.Held held) {
        List<MachineSheet.RingUnderLoad> rings = new ArrayList<>();
        int last = held.rings().size();
        for (int number = 1; number <= last; number++) {
            LineResult.RingLoad ring = held.rings().get(number - 1);
            int span = number;
            LineClearance.Approach gap = bend.gaps().stream()
                    .filter(g -> g.ring() == span)
                    .findFirst()
                    .orElse(null);
            rings.add(new MachineSheet.RingUnderLoad(
                    number == last
                            ? Station.TIP_TOP.key()
                            : Station.guide(number).key(),
                    round(ring.sMm(), 1),
                    round(Math.abs(Math.toDegrees(ring.turnRad())), 2),
                    round(Math.hypot(ring.forwardN(), ring.upN()), 3),
                    gap == null ? null : round(gap.gapMm(), 2),
                    gap == null ? null : round(gap.sMm(), 1)));
        }
        return rings;
    }

    private static List<Point> path(LineResult.Held held) {
        List<Point> path = new ArrayList<>();
        path.add(new Point(round(held.reelXMm(), 2), round(held.reelYMm(), 2)));
        held.rings().forEach(ring -> path.add(new Point(round(ring.xMm(), 2), round(ring.yMm(), 2))));
        return path;
    }

    private static List<Point> shape(List<BendResult.Node> nodes) {
        return nodes.stream()
                .map(node -> new Point(round(node.xMm(), 2), round(node.yMm(), 2)))
                .distinct()
                .toList();
    }

    private static MachineSheet.Quick quick(Quickness q) {
        boolean known = q.doubt() == null;
        return new MachineSheet.Quick(
                round(q.heldMm(), 1),
                known ? round(q.blankHz(), 3) : null,
                known ? round(q.finishedHz(), 3) : null,
                known ? round(q.tipHertzPerGram(), 4) : null,
                q.costs().stream()
                        .map(c -> new MachineSheet.GroupCost(word(c.what()), round(c.massG(), 3), round(c.hertz(), 4)))
                        .toList(),
                q.guides().stream()
                        .map(g -> new MachineSheet.GuideCost(
                                g.station().key(),
                                round(g.xMm(), 1),
                                round(g.massG(), 3),
                                round(g.hertzPerGram(), 5),
                                round(g.hertz(), 5)))
                        .toList(),
                q.doubt());
    }

    private static MachineSheet.Wrapping wraps(WrapTable table) {
        return new MachineSheet.Wrapping(
                table.guides().stream()
                        .map(g -> new MachineSheet.GuideWrap(
                                g.station().key(),
                                g.feet(),
                                round(g.wrapMm(), 1),
                                round(g.turns(), 1),
                                round(g.underTurns(), 1),
                                amount(g.amount())))
                        .toList(),
                amount(table.total()),
                table.threads().stream()
                        .map(t -> new MachineSheet.ThreadSize(
                                t.thread().id(),
                                t.thread().facts().name(),
                                t.thread().letter(),
                                t.thread().diameterMm(),
                                amount(t.amount()),
                                round(t.weightG(), 3),
                                round(t.swingWeightKgM2(), 8),
                                t.own()))
                        .toList());
    }

    private static Amount amount(WrapTable.Amount a) {
        return new Amount(a.threadM(), a.threadG(), a.finishMl(), a.finishG());
    }

    private static HandSheet handle(HandleFit fit) {
        HandleFit.Forearm forearm = fit.forearm();
        return new HandSheet(
                round(fit.reachMm(), 2),
                fit.wantedMinMm(),
                fit.wantedMaxMm(),
                forearm == null ? null : round(forearm.leastMm(), 0),
                forearm == null ? null : round(forearm.mostMm(), 0),
                forearm == null ? null : round(forearm.womenPercent(), 0),
                forearm == null ? null : round(forearm.menPercent(), 0),
                fit.palmMm(),
                fit.barrelMm() > 0 ? fit.barrelMm() : null,
                fit.barrelMaxMm() > 0 ? fit.barrelMinMm() : null,
                fit.barrelMaxMm() > 0 ? fit.barrelMaxMm() : null,
                fit.reels().stream()
                        .map(r -> new HandSheet.ReelBalance(
                                r.name(),
                                r.massG(),
                                round(r.balanceMm(), 2),
                                round(r.tipHeavyNmm(), 2),
                                round(r.zoneGrams(), 2)))
                        .toList(),
                fit.counterweights().stream()
                        .map(c -> new HandSheet.Counterweight(
                                c.grams(),
                                round(c.balanceMm(), 2),
                                round(c.tipHeavyNmm(), 2),
                                round(c.swingWeightKgM2(), 8),
                                round(c.tipGrams(), 3)))
                        .toList());
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static @Nullable Double number(double value, int decimals) {
        return Double.isFinite(value) ? round(value, decimals) : null;
    }

    private static double round(double value, int decimals) {
        return Sheets.rounded(value, decimals);
    }
}
