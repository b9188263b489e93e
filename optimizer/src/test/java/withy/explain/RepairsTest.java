package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver;
import withy.objectives.Solver.Watch;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The least that must give way, against edges that are planted. */
class RepairsTest {
    private static Repair.Change only(Impossible told, String field) {
        List<Repair> repairs = told.repairs().stream()
                .filter(one -> one.changes().get(0).field().equals(field))
                .toList();
        assertEquals(1, repairs.size(), field + " in " + told.repairs());
        assertEquals(1, repairs.get(0).changes().size());
        return repairs.get(0).changes().get(0);
    }

    /** Numbers with a planted edge: told is the least turn of the grid that reaches it, and the one before. */
    @Test
    void theLeastThatMustGiveWay() {
        Impossible packed = Impossible.of(
                Planted.inquiry(Planted.brief(), b -> b.packedMaxMm() == null || b.packedMaxMm() >= 1237));
        assertEquals(1, packed.conflicts().size());
        assertEquals("packedMaxMm", packed.conflicts().get(0).wishes().get(0).field());
        assertTrue(
                packed.conflicts().get(0).sentence().contains("1.20 m")
                        || packed.conflicts().get(0).sentence().contains("1,200 mm")
                        || packed.conflicts().get(0).sentence().contains("1200 mm"),
                packed.conflicts().get(0).sentence());
        Repair.Change longer = only(packed, "packedMaxMm");
        assertEquals(List.of(1200.0, 1240.0, 1230.0), List.of(longer.from(), longer.to(), longer.shy()));
        assertEquals(40.0 / 1200, packed.repairs().get(0).size(), 1e-12);
        assertEquals(1240.0, packed.repairs().get(0).brief().packedMaxMm());

        Impossible classes = Impossible.of(Planted.inquiry(Planted.brief(), b -> b.durabilityClass() <= 1));
        Repair.Change weaker = only(classes, "durabilityClass");
        assertEquals(List.of(3.0, 1.0, 2.0), List.of(weaker.from(), weaker.to(), weaker.shy()));

        Impossible days =
                Impossible.of(soon(b -> b.wantedBy() == null || b.wantedBy().isAfter(Fixtures.TODAY.plusDays(33))));
        Repair.Change later = only(days, "wantedBy");
        assertEquals(List.of(0.0, 4.0, 3.0), List.of(later.from(), later.to(), later.shy()));
        assertEquals(4 / 30.0, days.repairs().get(0).size(), 1e-12);

        Impossible lures =
                Impossible.of(Planted.inquiry(Planted.brief(), b -> b.lure().heaviestG() <= 11.2));
        Repair.Change lighter = only(lures, "lure.heaviest");
        assertEquals(List.of(14.0, 11.0, 11.5), List.of(lighter.from(), lighter.to(), lighter.shy()));

        Impossible reach = Impossible.of(Planted.inquiry(Planted.brief(), b -> b.reachMinMm() <= 207));
        Repair.Change nearer = only(reach, "reachMm");
        assertEquals(List.of(220.0, 205.0, 210.0), List.of(nearer.from(), nearer.to(), nearer.shy()));
        assertEquals("reachMm.min", nearer.knob());

        Impossible line =
                Impossible.of(Planted.inquiry(Planted.brief(), b -> b.line().strengthKg() <= 5.0));
        Repair.Change thinner = only(line, "line.strength");
        assertEquals(5.0, thinner.to(), 1e-9);
        Brief.MainLine told = line.repairs().get(0).brief().line();
        assertEquals(
                0.148 * Math.sqrt(5.0 / 6.8), told.diameterMm(), 1e-9, "strength goes with the square of the diameter");
        assertEquals(0.8 * 5.0 / 6.8, told.gauge(), 1e-9);

        Impossible pieces = Impossible.of(Planted.inquiry(Planted.brief(), b -> b.piecesMax() >= 4));
        Repair.Change more = only(pieces, "pieces");
        assertEquals(List.of(2.0, 4.0, 3.0), List.of(more.from(), more.to(), more.shy()));
    }

    private static Inquiry soon(Predicate<Brief> buildable) {
        Fixtures late = Fixtures.legal().part("cap", "facts.leadDays", 60);
        Solver planted = (query, seen) -> Planted.solution(late.catalog(), late.build(), query, buildable);
        return new Inquiry(
                late.catalog(), Planted.brief(), other -> planted, Watch.NONE, new QuantityText(UnitSystem.METRIC));
    }

    private static String sentence(Predicate<Brief> buildable) {
        return Impossible.of(Planted.inquiry(Planted.brief(), buildable))
                .repairs()
                .get(0)
                .sentence();
    }

    /** Turned numbers are told by how much and to what, in the reader's units; one of something in the singular. */
    @Test
    void whatGivesWayInWords() {
        assertEquals(
                "40 mm longer when packed, 1240 mm in all",
                sentence(b -> b.packedMaxMm() == null || b.packedMaxMm() >= 1237));
        assertEquals("durability class 2 instead of 3", sentence(b -> b.durabilityClass() <= 2));
        assertEquals("corrosion class 1 instead of 2", sentence(b -> b.corrosionClass() <= 1));
        assertEquals("lures up to 11 g only", sentence(b -> b.lure().heaviestG() <= 11.2));
        assertEquals("a usual lure of 9.5 g", sentence(b -> b.lure().usualG() >= 9.1));
        assertEquals("a main line of 5.0 kg", sentence(b -> b.line().strengthKg() <= 5.0));
        assertEquals("a leader of 4.9 kg", sentence(b -> b.leader().strengthKg() <= 4.95));
        assertEquals("4 pieces", sentence(b -> b.piecesMax() >= 4));
        assertEquals("one piece", sentence(b -> b.piecesMin() == 1));
        assertEquals("15 mm less from reel foot to butt, from 205 mm", sentence(b -> b.reachMinMm() <= 207));
        assertEquals("a rod 0.05 m longer, up to 2.20 m", sentence(b -> b.lengthMaxMm() >= 2191));
        Impossible day =
                Impossible.of(soon(b -> b.wantedBy() == null || b.wantedBy().isAfter(Fixtures.TODAY.plusDays(30))));
        assertEquals("one day more to wait", day.repairs().get(0).sentence());
        Impossible days =
                Impossible.of(soon(b -> b.wantedBy() == null || b.wantedBy().isAfter(Fixtures.TODAY.plusDays(33))));
        assertEquals("4 days more to wait", days.repairs().get(0).sentence());
    }

    /** A leader too weak to swing the largest fish aboard: told to the tenth that is enough. */
    @Test
    void aStrongerLeader() {
        Brief swung =
                Changed.with(Changed.with(Planted.brief(), "landing", Brief.Landing.LIFTED), "largestFishKg", 3.0);
        double needed = withy.rules.DeadLoad.leaderNeedsKg(swung);
        assertTrue(needed > 5.4, "needs " + needed);
        double told = Math.ceil(needed * 10 - 1e-9) / 10;
        Impossible weak = Impossible.of(
                Planted.inquiry(swung, b -> b.leader().strengthKg() >= withy.rules.DeadLoad.leaderNeedsKg(b) - 1e-9));
        Repair.Change change = weak.repairs().stream()
                .flatMap(one -> one.changes().stream())
                .filter(one -> one.field().equals("leader.strength"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(needed + ": " + weak));
        assertEquals("a leader of " + withy.explain.Turning.number(told) + " kg", change.words());
        Impossible fine =
                Impossible.of(Planted.inquiry(Planted.brief(), b -> b.leader().strengthKg() >= 6));
        assertTrue(
                fine.repairs().isEmpty(),
                "where the leader is strong enough nothing asks for another: " + fine.repairs());
    }

    /** Where one wish is not enough two give way, each as far as it must; what is given up as a whole counts 1. */
    @Test
    void twoGiveWayWhereOneIsNotEnough() {
        Impossible told = Impossible.of(Planted.inquiry(
                Planted.brief(),
                b -> b.handle().keeper() == null && (b.packedMaxMm() == null || b.packedMaxMm() >= 1211)));
        assertEquals(2, told.conflicts().size());
        assertEquals(1, told.repairs().size());
        Repair repair = told.repairs().get(0);
        assertEquals(2, repair.changes().size());
        assertEquals(1 + 20.0 / 1200, repair.size(), 1e-12);
        assertNull(repair.brief().handle().keeper());
        assertEquals(1220.0, repair.brief().packedMaxMm());
        assertTrue(repair.sentence().contains(Phrases.of("repair.handle.keeper", "")), repair.sentence());
    }

    /** Switches that are no number: fish swung aboard, braid, the knot, another reel, a form. */
    @Test
    void whatIsNoNumberIsSaidOtherwise() {
        Brief lifted = Changed.with(Planted.brief(), "landing", Brief.Landing.LIFTED);
        Impossible net = Impossible.of(Planted.inquiry(lifted, b -> b.landing() == Brief.Landing.NET));
        assertEquals(Phrases.of("repair.landing"), only(net, "landing").words());
        Impossible nylon =
                Impossible.of(Planted.inquiry(Planted.brief(), b -> b.line().kind() == Brief.LineKind.NYLON));
        assertEquals(Phrases.of("repair.line.kind"), only(nylon, "line.kind").words());
        assertEquals(0.148, nylon.repairs().get(0).brief().line().diameterMm());
        Impossible knot =
                Impossible.of(Planted.inquiry(Planted.brief(), b -> !b.leader().castThroughRings()));
        assertEquals(Phrases.of("repair.leader.knot"), only(knot, "leader.knot").words());
        Impossible reel =
                Impossible.of(Planted.inquiry(Planted.brief(), b -> b.reel().sizeClass() == 4000));
        assertEquals(Phrases.of("repair.reel", 4000), only(reel, "reel").words());
        Brief full = Changed.with(Planted.brief(), "handle.form", new Wish<>(HandleForm.FULL, true, 0));
        Impossible form = Impossible.of(Planted.inquiry(full, b -> b.handle().form() == null));
        assertEquals(
                Phrases.of("demand.handle.form.full"),
                form.conflicts().get(0).wishes().get(0).words());
        assertEquals(
                Phrases.of("repair.handle.form", ""), only(form, "handle.form").words());
        assertTrue(Double.isNaN(only(form, "handle.form").to()));
    }
}
