package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Objective;
import withy.explain.Finding.Outcome;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.rod.Station;

/** Wishes that would be nice, told in a why-not: what they turn, and that it is said once of several. */
class NiceWishesToldTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));

    private static Finding why(Brief brief, String part) {
        return WhyNot.of(SHOP.inquiry(brief), Set.of(part));
    }

    /** Of several wishes it is said once that they would be nice. */
    @Test
    void severalNiceWishesAreToldTogether() {
        String missed = together("insisted", 0.5, "seat", "blank");
        assertTrue(
                missed.contains(
                        "dearer and without the Tarn seat or the Tarn blank, which would both be nice. In return"),
                missed);
        String met = together("insisted", 0.1, "seat-light", "blank-light");
        assertTrue(
                met.contains(" and has the Tarn seat-light and the Tarn blank-light, which would both be nice."), met);
        String spared = together("refused", 0.5, "seat-light", "blank-light");
        assertTrue(
                spared.contains(
                        "dearer and with Tarn seat-light and Tarn blank-light, which it would be nicer without."),
                spared);
        List<Missed> three = List.of(
                new Missed("insisted", "the cap", null),
                new Missed("handle.keeper", "a hook keeper", null),
                new Missed("handle.trigger", "no trigger", "a trigger"),
                new Missed("insisted", "the seat", null));
        assertEquals(
                List.of(
                        "without the cap, a hook keeper or the seat, which would all be nice",
                        "with a trigger, which it would be nicer without"),
                Missed.losses(three));
        assertEquals(
                List.of("has the cap, a hook keeper, no trigger and the seat, which would all be nice"),
                Missed.gains(three));
    }

    private static String together(String field, double steps, String... wished) {
        List<PartWish> wishes = List.of(wished).stream()
                .map(id -> new PartWish(id, false, steps))
                .toList();
        return WhyNot.of(SHOP.inquiry(Changed.with(BRIEF, field, wishes)), Set.of("seat-light", "blank-light"))
                .sentence();
    }

    /** The same in all six figures, but for a wish that would be nice. */
    @Test
    void aNiceWishAloneMayOutdoATwin() {
        Brief nice = Changed.with(BRIEF, "refused", List.of(new PartWish("cap-twin", false, 0.5)));
        Finding finding = why(nice, "cap-twin");
        assertEquals(Outcome.DOMINATED, finding.outcome());
        assertEquals(
                "Tarn cap-twin: the rod with Tarn cap instead is at least as good in everything, and has no Tarn cap-twin, which would"
                        + " be nice.",
                finding.sentence());
        Brief wished = Changed.with(BRIEF, "insisted", List.of(new PartWish("cap-twin", false, 0.5)));
        assertEquals(Outcome.CHOSEN, why(wished, "cap-twin").outcome());
    }

    /** A rod that has what another part would spare is not as good in everything, whatever the two wishes count. */
    @Test
    void whatMissesAnotherWishDoesNotOutdo() {
        Brief both = Changed.with(
                BRIEF, "refused", List.of(new PartWish("cap-twin", false, 0.5), new PartWish("cap", false, 0.3)));
        Finding finding = why(both, "cap-twin");
        assertEquals(Outcome.LOSES, finding.outcome(), finding.sentence());
        assertEquals(
                "Tarn cap-twin: it can be built in, but the best rod with it is one that would be nicer without it."
                        + " In return it has no Tarn cap, which would be nice.",
                finding.sentence());
    }

    /** What scores best among the rods that are as good in figures lacks something nice; another does not. */
    @Test
    void anotherThatHasAllTheWishesOutdoesThem() {
        Fixtures f = Fixtures.legal();
        f.copy("cap", "cap-fair").part("cap-fair", "facts.priceMinor", 3_000);
        f.copy("cap", "cap-gilded").part("cap-gilded", "facts.priceMinor", 8_000);
        f.copy("seat", "seat-light").part("seat-light", "facts.weightG", 9.0);
        f.part("seat-light", "facts.priceMinor", 9_500);
        f.brief("budgetMinor", 90_000L);
        FewBuilds shop =
                FewBuilds.of(f).or(Station.BUTT_CAP, "cap-fair", "cap-gilded").or(Station.SEAT, "seat-light");
        Brief dear = FewBuilds.weighing(shop.brief(), Map.of(Objective.PRICE, 2.0));
        Brief nice = Changed.with(dear, "refused", List.of(new PartWish("cap", false, 0.01)));
        Finding finding = WhyNot.of(shop.inquiry(nice), Set.of("seat-light", "cap-gilded"));
        assertTrue(finding.first().build().holds(Set.of("cap")), "it lacks what would be nice");
        assertEquals(Outcome.DOMINATED, finding.outcome(), finding.sentence());
        assertNotNull(finding.better());
        assertTrue(finding.better().build().holds(Set.of("seat-light", "cap-fair")), finding.sentence());
    }
}
