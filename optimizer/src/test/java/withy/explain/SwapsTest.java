package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.explain.Swaps.Swap;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/** One station filled otherwise, against every way of filling it tried here. */
class SwapsTest {
    private static Inquiry inquiry(Fixtures fixture) {
        return FewBuilds.of(fixture).inquiry(fixture.theBrief());
    }

    private static Swaps swaps(Fixtures fixture, Station station) {
        return new Swaps(inquiry(fixture), fixture.build(), station);
    }

    private static Swap swap(Fixtures fixture, Station station, String part) {
        return swaps(fixture, station).swap(fixture.partOf(part));
    }

    /** Parts made for a place, and only those. */
    @ParameterizedTest
    @CsvSource({
        "buttCap, cap",
        "buttGrip, butt-grip",
        "rearGrip, rear-grip",
        "foreGrip, fore-grip",
        "rearCheck, check",
        "foreCheck, check",
        "windingCheck, check",
        "seat, seat",
        "hood, hood",
        "seatArbors, arbor",
        "keeper, keeper",
        "guide-3, guide-20 guide-10 guide-6 guide-5",
        "tipTop, tip-top",
        "thread, thread",
        "finish, finish",
        "adhesive, adhesive",
        "decal, decal",
        "blank, blank"
    })
    void partsMadeForAPlace(String place, String parts) {
        Station station = stations().stream()
                .filter(one -> one.key().equals(place))
                .findFirst()
                .orElseThrow();
        List<String> made = swaps(Fixtures.legal(), station).parts().stream()
                .map(Part::id)
                .sorted()
                .toList();
        assertEquals(List.of(parts.split(" ")).stream().sorted().toList(), made);
        Part stranger = Fixtures.legal().partOf(place.equals("decal") ? "cap" : "decal");
        assertNull(swaps(Fixtures.legal(), station).nearest(stranger), "not made for it");
    }

    private static List<Station> stations() {
        return List.of(
                Station.BUTT_CAP,
                Station.BUTT_GRIP,
                Station.REAR_GRIP,
                Station.FORE_GRIP,
                Station.REAR_CHECK,
                Station.FORE_CHECK,
                Station.WINDING_CHECK,
                Station.SEAT,
                Station.HOOD,
                Station.SEAT_ARBORS,
                Station.KEEPER,
                Station.guide(3),
                Station.TIP_TOP,
                Station.THREAD,
                Station.FINISH,
                Station.ADHESIVE,
                Station.DECAL,
                Station.BLANK);
    }

    @Test
    void aFullHandleHasAGripOfItsOwn() {
        Fixtures full = Fixtures.legal().fullHandle();
        assertEquals(
                List.of("full-grip"),
                swaps(full, Station.REAR_GRIP).parts().stream().map(Part::id).toList());
        full.copy("full-grip", "full-long").part("full-long", "lengthMm", 400.0).part("full-long", "shortestMm", 20.0);
        Swap swap = swap(full, Station.REAR_GRIP, "full-long");
        assertNotNull(swap.found());
        assertEquals(
                0.0, swap.found().build().choices().get(Station.REAR_GRIP).cutMm(), "its place says how long it is");
    }

    /** A grip goes in as sold, as long as the one that is there, or as short as it can be: the best of the legal ones. */
    @ParameterizedTest
    @CsvSource({"120, 20", "60, 20", "75, 32", "80, 70", "60, 60", "65, 61"})
    void gripsAreCut(double length, double shortest) {
        Fixtures fixture = Fixtures.legal().copy("rear-grip", "other");
        fixture.part("other", "lengthMm", length)
                .part("other", "shortestMm", shortest)
                .part("other", "facts.weightG", length * 0.05);
        Grip grip = (Grip) fixture.partOf("other");
        List<Double> cuts = new ArrayList<>(List.of(0.0));
        if (shortest <= 60 && length > 60) {
            cuts.add(60.0);
        }
        double least = Math.ceil(shortest / 5) * 5;
        if (least < length) {
            cuts.add(least);
        }
        holdsBest(
                fixture,
                Station.REAR_GRIP,
                grip,
                cuts.stream()
                        .map(cut -> fixture.build().with(Station.REAR_GRIP, new Choice("other", cut)))
                        .toList());
        fixture.put(Station.REAR_GRIP, "rear-grip", 40);
        assertNotNull(swap(fixture, Station.REAR_GRIP, "other").found());
    }

    private static void holdsBest(Fixtures fixture, Station station, Part part, List<Build> ways) {
        Inquiry inquiry = inquiry(fixture);
        Long best = null;
        int fewest = Integer.MAX_VALUE;
        for (Build way : ways) {
            Found found = inquiry.measured(way);
            int broken = Breach.all(found.rod(), FewBuilds.METRIC).size();
            if (broken == 0 && (best == null || inquiry.score(found.vector()) < best)) {
                best = inquiry.score(found.vector());
            }
            fewest = Math.min(fewest, broken);
        }
        Swap swap = new Swaps(inquiry, fixture.build(), station).swap(part);
        assertNotNull(swap.found());
        assertTrue(ways.contains(swap.found().build()), swap.found().build().signature());
        assertEquals(best != null, swap.legal());
        if (best != null) {
            assertEquals(best, inquiry.score(swap.found().vector()));
            assertTrue(Judge.legal(swap.found().rod(), Rulebook.standard()));
        } else {
            assertEquals(
                    fewest, Breach.all(swap.found().rod(), FewBuilds.METRIC).size());
            assertEquals(Breach.all(swap.found().rod(), FewBuilds.METRIC).get(0), swap.breach());
        }
    }

    /** A seat brings the hood of its family and size, and arbors, that suit it: every pair tried. */
    @ParameterizedTest
    @CsvSource({"12.6, m24, 16", "20.4, m24, 16", "15.5, m24, 16", "12.6, m24, 17", "12.6, other, 16", "11.0, m24, 16"})
    void aSeatBringsHoodAndArbors(double bore, String family, int size) {
        Fixtures fixture = Fixtures.legal().copy("seat", "other");
        fixture.part("other", "boreMm", bore)
                .part("other", "hoodFamily", family)
                .part("other", "size", size);
        fixture.copy("hood", "hood-17")
                .part("hood-17", "size", 17)
                .copy("arbor", "arbor-15")
                .part("arbor-15", "odMm", 15.2);
        List<Build> ways = new ArrayList<>();
        for (String hood : List.of("", "hood", "hood-17")) {
            for (String arbor : List.of("", "arbor", "arbor-15")) {
                boolean suits = hood.isEmpty() || family.equals("m24") && size == (hood.equals("hood") ? 16 : 17);
                Build with = fixture.build().with(Station.SEAT, Choice.of("other"));
                with = hood.isEmpty() ? with : with.with(Station.HOOD, Choice.of(hood));
                with = arbor.isEmpty() ? with : with.with(Station.SEAT_ARBORS, Choice.of(arbor));
                if (suits) {
                    ways.add(with);
                }
            }
        }
        Swap swap = swap(fixture, Station.SEAT, "other");
        assertNotNull(swap.found());
        assertTrue(ways.contains(swap.found().build()), swap.found().build().signature());
        Inquiry inquiry = inquiry(fixture);
        List<Found> legal = ways.stream()
                .map(inquiry::measured)
                .filter(one -> Judge.legal(one.rod(), Rulebook.standard()))
                .toList();
        assertEquals(!legal.isEmpty(), swap.legal());
        if (swap.legal()) {
            long best = legal.stream()
                    .mapToLong(one -> inquiry.score(one.vector()))
                    .min()
                    .orElseThrow();
            assertEquals(best, inquiry.score(swap.found().vector()));
        }
    }

    /** What the brief alone refuses is not measured; what is nearest to it is, when asked. */
    @Test
    void whatTheBriefRefuses() {
        Fixtures fixture =
                Fixtures.legal().copy("cap", "other").brief("refused", List.of(new PartWish("other", true, 0)));
        Swap swap = swap(fixture, Station.BUTT_CAP, "other");
        assertNull(swap.found());
        assertNotNull(swap.breach());
        assertFalse(swap.legal());
        Found nearest = swaps(fixture, Station.BUTT_CAP).nearest(fixture.partOf("other"));
        assertNotNull(nearest);
        assertEquals("other", nearest.build().partAt(Station.BUTT_CAP));
    }

    /** A blank no rod of the list stands on is told by the same rod on it. */
    @Test
    void aBlankThatNoRodStandsOn() {
        Fixtures fixture = Fixtures.legal().copy("blank", "stout").part("stout", "lengthMm", 2120.0);
        Swap swap = swap(fixture, Station.BLANK, "stout");
        assertNotNull(swap.found());
        assertEquals("stout", swap.found().build().layout().blankId());
        assertEquals(fixture.build().choices(), swap.found().build().choices());
        assertEquals(Breach.first(swap.found().rod(), FewBuilds.METRIC), swap.breach());
    }

    /** Emptied where that is legal, never of what is not there; legal ones first, then by rule and name. */
    @Test
    void allWaysOfAPlaceInOrder() {
        Fixtures fixture = Fixtures.legal();
        List<Swap> keeper = swaps(fixture, Station.KEEPER).all();
        assertEquals(
                List.of("keeper"), keeper.stream().map(one -> one.part().id()).toList());
        fixture.put(Station.KEEPER, "keeper");
        List<Swap> emptied = swaps(fixture, Station.KEEPER).all();
        assertEquals(1, emptied.size());
        assertNull(emptied.get(0).part());
        assertTrue(emptied.get(0).legal());
        assertTrue(swaps(fixture, Station.SEAT).all().isEmpty(), "a rod without a seat is none");
        Swaps guides = swaps(fixture, Station.guide(1));
        List<Swap> all = new ArrayList<>(guides.all());
        all.sort(guides.order());
        assertEquals(
                List.of("guide-10", "guide-5", "guide-6"),
                all.stream().map(one -> one.part().id()).sorted().toList());
        for (int i = 1; i < all.size(); i++) {
            Swap a = all.get(i - 1);
            Swap b = all.get(i);
            assertTrue(a.legal() || !b.legal());
            if (!a.legal()) {
                String x = a.breach().verdict().rule() + " " + a.part().id();
                String y = b.breach().verdict().rule() + " " + b.part().id();
                assertTrue(x.compareTo(y) < 0, x + " before " + y);
            }
        }
    }

    /** A butt grip that must be in makes the handle a split one, against a nice wish and without one; a full one that must be leaves nothing. */
    @Test
    void aButtGripSplitsTheHandle() {
        Fixtures fixture = Fixtures.legal();
        Brief brief = fixture.theBrief();
        Query plain = Query.of(brief, Rulebook.standard());
        assertSame(plain, Split.where(fixture.catalog(), plain));
        Query cap = plain.forcing(Set.of("cap", "rear-grip", "nowhere"));
        assertSame(cap, Split.where(fixture.catalog(), cap));
        Brief expected = Changed.with(brief, "handle.form", new Wish<>(HandleForm.SPLIT, true, 0));
        Query butt = plain.forcing(Set.of("butt-grip", "cap"));
        assertEquals(butt.withBrief(expected), Split.where(fixture.catalog(), butt));
        Brief nice = Changed.with(brief, "handle.form", new Wish<>(HandleForm.FULL, false, 2));
        assertEquals(butt.withBrief(expected), Split.where(fixture.catalog(), butt.withBrief(nice)));
        Brief split = Changed.with(brief, "handle.form", new Wish<>(HandleForm.SPLIT, true, 0));
        assertEquals(butt.withBrief(expected), Split.where(fixture.catalog(), butt.withBrief(split)));
        Brief full = Changed.with(brief, "handle.form", new Wish<>(HandleForm.FULL, true, 0));
        assertNull(Split.where(fixture.catalog(), butt.withBrief(full)));
        Query lawless = butt.withBrief(full).withRulebook(Rulebook.standard().without("handle"));
        assertEquals(lawless.withBrief(expected), Split.where(fixture.catalog(), lawless));
    }
}
