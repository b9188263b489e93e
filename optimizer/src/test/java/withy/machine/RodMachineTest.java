package withy.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.fixture.Fixtures;
import withy.machine.HandleFit.NamedReel;
import withy.mechanics.BendCase;
import withy.mechanics.BendResult;
import withy.mechanics.BendUnderLoad;
import withy.mechanics.LineResult;
import withy.mechanics.OneThirdDrop;
import withy.mechanics.PointLoad;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;

/** Sums, levers and inequalities of the whole report on a legal rod; no published figures of a whole rod were found. */
class RodMachineTest {
    private static final double G = 9.80665e-3;

    private final Rod rod = Fixtures.legal().rod();
    private final BlankStiffness stiffness = BlankStiffness.of(rod.setting().shape());
    private final RodMachine machine = RodMachine.of(rod, stiffness, Pose.working(rod.brief()), List.of());

    /** The blank alone, held at its butt, drops by a third under the maker's weight. */
    @Test
    void theMakersTestIsMet() {
        Rod tested = Fixtures.legal().part("blank", "thirdTestG", 300.0).rod();
        BlankStiffness scaled = BlankStiffness.of(tested.setting().shape());
        assertEquals(BlankStiffness.Source.THIRD_TEST, scaled.source());
        double length = tested.setting().blank().lengthMm();
        BendResult bend = BendUnderLoad.solve(new BendCase(
                scaled.profile(), 0, 0, tested.setting().shape().tube(), List.of(PointLoad.hung(length, 300))));
        assertEquals(length / 3, assertInstanceOf(BendResult.Bent.class, bend).dropMm(), 1e-4);
    }

    @Test
    void withoutATestTheSourceSaysSo() {
        Rod plain = Fixtures.legal().part("blank", "thirdTestG", null).rod();
        Rod bare = Fixtures.legal()
                .part("blank", "thirdTestG", null)
                .part("blank", "wallMm", null)
                .rod();
        BlankStiffness wall = BlankStiffness.of(plain.setting().shape());
        BlankStiffness weight = BlankStiffness.of(bare.setting().shape());
        assertEquals(BlankStiffness.Source.WEIGHT, weight.source());
        assertEquals(
                BlankStiffness.usualModulusMpa(bare.setting().blank().facts().material()), weight.modulusMpa());
        if (plain.setting().blank().wallMm() != null) {
            assertEquals(BlankStiffness.Source.WALL, wall.source());
        }
    }

    /** An impossible test is told of, not believed: the blank already sinks further under its own weight. */
    @Test
    void anUnbelievableTestIsDoubted() {
        Rod tested = Fixtures.legal().part("blank", "thirdTestG", 1e-9).rod();
        BlankStiffness plain = BlankStiffness.of(tested.setting().shape());
        assertTrue(plain.source() == BlankStiffness.Source.THIRD_TEST || plain.doubt() != null);
    }

    /** Everything ahead of the handle is carried once: blank excluded, the masses are those of the shares. */
    @Test
    void carriedMassesAreThoseOfTheShares() {
        double guides = 0;
        for (int number = 1; number <= rod.setting().guideCount(); number++) {
            guides +=
                    rod.shares().getOrDefault(Station.guide(number), Share.NONE).massMg() / 1000.0;
        }
        double carried = Carried.of(rod).stream()
                .filter(c -> c.what() == Carried.Group.GUIDES || c.what() == Carried.Group.WRAPS)
                .mapToDouble(Carried::massG)
                .sum();
        assertEquals(guides, carried, 1e-9);
    }

    @Test
    void massAlongTheRodAddsUpToItsWeightAndBalance() {
        double mass = 0;
        double moment = 0;
        for (MassAlong.Stretch stretch : machine.massAlong().stretches()) {
            mass += stretch.blankG() + stretch.partsG();
            moment += (stretch.blankG() + stretch.partsG()) * (stretch.fromMm() + stretch.toMm()) / 2;
        }
        assertEquals(rod.figures().weightG(), mass, 1e-3);
        double balance = rod.setting().footMm()
                + (double) rod.total().momentMgMm() / rod.total().massMg();
        assertEquals(balance, moment / mass, 15);
    }

    /** Property: parts only ever slow the rod, and a group's cost lies near the sum of its guides' first-order costs. */
    @Test
    void partsSlowTheRod() {
        Quickness quick = machine.quickness();
        assertNull(quick.doubt());
        assertTrue(quick.finishedHz() < quick.blankHz());
        quick.costs().forEach(cost -> assertTrue(cost.hertz() >= 0, cost.toString()));
        double guides =
                quick.guides().stream().mapToDouble(Quickness.GuideCost::hertz).sum();
        double groups = quick.costs().stream()
                .filter(c -> c.what() == Carried.Group.GUIDES || c.what() == Carried.Group.WRAPS)
                .mapToDouble(Quickness.GroupCost::hertz)
                .sum();
        assertEquals(groups, guides, 0.15 * groups);
        double before = 0;
        for (Quickness.GuideCost guide : quick.guides()) {
            assertTrue(guide.hertzPerGram() > before, guide.toString());
            before = guide.hertzPerGram();
        }
        assertTrue(quick.tipHertzPerGram() > before);
    }

    /** The hand's moment is the pull times its distance from the hand, worked out here from the line's last point. */
    @Test
    void theHandFeelsPullTimesLever() {
        LineBend working = machine.working();
        LineResult.Held held = working.held();
        assertNotNull(held, String.valueOf(working.doubt()));
        Pose pose = working.pose();
        double behind = rod.handleFrontMm() - rod.setting().handMm();
        double butt = Math.toRadians(pose.buttDeg());
        LineResult.RingLoad tip = held.rings().get(held.rings().size() - 1);
        double x = tip.xMm() + behind * Math.cos(butt);
        double y = tip.yMm() + behind * Math.sin(butt);
        double pull = Math.toRadians(pose.pullDeg());
        double lever = Math.abs(x * Math.sin(pull) - y * Math.cos(pull));
        assertEquals(pose.pullN() * lever, working.handMomentNmm(), 1e-6 * working.handMomentNmm());
        assertEquals(2 * 9.80665, pose.pullN(), 1e-12);
    }

    @Test
    void theStaticTestHangsTheWeightOfAThird() {
        OneThirdDrop.Outcome.Found third = assertInstanceOf(OneThirdDrop.Outcome.Found.class, machine.oneThird());
        LineBend test = machine.staticTest();
        assertNotNull(test);
        assertEquals(third.weightG() * G, test.pose().pullN(), 1e-9);
        LineResult.Held held = test.held();
        assertNotNull(held, String.valueOf(test.doubt()));
        double free = rod.setting().blank().lengthMm() - rod.handleFrontMm();
        assertEquals(free / 3, held.dropMm(), 0.05 * free);
        assertEquals(rod.setting().guideCount() + 1, test.gaps().size());
    }

    @Test
    void aRodWithoutTipTopHasNoLineAndSaysSo() {
        Rod without = Fixtures.legal().empty(Station.TIP_TOP).rod();
        LineBend bend =
                new RodBend(without, BlankStiffness.of(without.setting().shape())).line(Pose.working(without.brief()));
        assertNull(bend.held());
        assertTrue(String.valueOf(bend.doubt()).contains("tip-top"), bend.doubt());
        assertTrue(Double.isNaN(bend.leastGapMm()));
    }

    /** Guides above the blank: lower rings bring the line nearer. */
    @Test
    void lowerRingsBringTheLineNearer() {
        Rod casting = Fixtures.legal().casting().rod();
        Rod low = Fixtures.legal().casting().part("guide-5", "heightMm", 3.5).rod();
        double high = gap(casting);
        assertTrue(gap(low) < high - 1, gap(low) + " and " + high);
    }

    private static double gap(Rod rod) {
        LineBend bend = new RodBend(rod, BlankStiffness.of(rod.setting().shape())).line(Pose.hung(200));
        assertNull(bend.doubt());
        return bend.leastGapMm();
    }

    @Test
    void wrapsAreThoseOfTheRodAndThinThreadIsLighter() {
        WrapTable wraps = machine.wraps();
        assertEquals(rod.setting().guideCount(), wraps.guides().size());
        assertEquals(rod.total().threadMg() / 1000.0, wraps.total().threadG(), 1e-12);
        assertEquals(
                1, wraps.threads().stream().filter(WrapTable.ThreadSize::own).count());
        WrapTable.GuideWrap first = wraps.guides().get(0);
        assertEquals(
                first.wrapMm() / rod.with().thread().diameterMm(), first.turns(), 1e-9, "turns = covered / thread");
        Rod thick = Fixtures.legal()
                .part("thread", "diameterMm", 2 * rod.with().thread().diameterMm())
                .part("thread", "tex", 4 * rod.with().thread().tex())
                .rod();
        assertTrue(WrapTable.of(thick).total().massG() > wraps.total().massG());
        assertTrue(WrapTable.of(thick).total().threadM() < wraps.total().threadM());
    }

    @Test
    void handleFiguresAreThoseOfTheRod() {
        HandleFit fit =
                HandleFit.of(rod, List.of(new NamedReel("same", rod.brief().reel())));
        assertEquals(rod.balance().pointMm(), fit.reels().get(0).balanceMm(), 1e-9);
        assertEquals(rod.figures().tipHeavyNmm(), fit.reels().get(0).tipHeavyNmm(), 1e-6);
        assertEquals(fit.reels().get(0).balanceMm(), fit.reels().get(1).balanceMm(), 0);
        assertEquals(
                rod.figures().counterweightG(), Math.max(0, fit.reels().get(0).zoneGrams()), 1e-9);
        double hand = rod.setting().handMm();
        HandleFit.Counterweight ten = fit.counterweights().get(1);
        assertEquals(10, ten.grams());
        assertEquals(10e-3 * hand * hand * 1e-6, ten.swingWeightKgM2(), 1e-12);
        double tip = rod.setting().blank().lengthMm() - hand;
        assertEquals(ten.swingWeightKgM2(), ten.tipGrams() * 1e-3 * tip * tip * 1e-6, 1e-12);
    }

    /** Medians of ANSUR II, computed from the public data. */
    @Test
    void forearmsFollowTheTable() {
        assertEquals(0.5, ForearmTable.MEN.share(348), 1e-12);
        assertEquals(0.5, ForearmTable.WOMEN.share(316), 1e-12);
        assertEquals(0, ForearmTable.WOMEN.share(200), 0);
        assertEquals(1, ForearmTable.MEN.share(500), 0);
        HandleFit.Forearm forearm = machine.handle().forearm();
        assertNotNull(forearm);
        assertEquals(rod.figures().reelToButtMm() / 0.8, forearm.leastMm(), 1e-9);
        assertFalse(forearm.menPercent() < 0);
    }
}
