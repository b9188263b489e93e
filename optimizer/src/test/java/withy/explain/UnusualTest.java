package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
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

/** A lighter finish than the house's, which is in no rod that nobody asks it for: whatever speaks of it says why it is not there. */
class UnusualTest {
    private static final String WHY = "left out unless asked for, because the finish of the house is Tarn finish";

    private final FewBuilds shop;
    private final Brief brief;

    UnusualTest() {
        Fixtures thin = Fixtures.legal();
        thin.copy("finish", "finish-thin")
                .part("finish-thin", "densityGMl", 0.4)
                .part("finish-thin", "facts.model", "finish-thin");
        thin.part("finish-thin", "facts.weightG", 20.0);
        this.shop = FewBuilds.of(thin).or(Station.FINISH, "finish-thin");
        this.brief = FewBuilds.weighing(thin.theBrief(), Map.of(Objective.WEIGHT, 5.0));
    }

    private static Found first(Inquiry inquiry) {
        Found first = inquiry.first();
        assertNotNull(first);
        return first;
    }

    @Test
    void nobodyWouldNotice() {
        Inquiry inquiry = shop.inquiry(brief);
        Found first = first(inquiry);
        assertEquals("finish", first.build().partAt(Station.FINISH));
        Finding finding = WhyNot.of(inquiry, Set.of("finish-thin"));
        assertEquals(Outcome.EQUAL, finding.outcome());
        assertTrue(inquiry.score(finding.opponent().vector()) < inquiry.score(first.vector()), "it would be better");
        assertTrue(
                finding.sentence().endsWith(" a hand or a purse would notice. It is " + WHY + "."), finding.sentence());
    }

    /** Where so little is noticed it is neither equal nor does it lose. */
    @Test
    void betterAndYetNotTaken() {
        Brief fine = Changed.with(
                brief,
                "steps",
                Map.of(
                        Objective.WEIGHT, 3.0,
                        Objective.BALANCE, 1e6,
                        Objective.SWING_WEIGHT, 0.0005,
                        Objective.PRICE, 1e9,
                        Objective.STYLE, 1e6,
                        Objective.DURABILITY, 1e6));
        Inquiry inquiry = shop.inquiry(fine);
        Finding finding = WhyNot.of(inquiry, Set.of("finish-thin"));
        assertTrue(
                finding.sentence().startsWith("Tarn finish-thin: it is " + WHY + ". The best rod with it is "),
                finding.outcome() + " " + finding.sentence());
        assertTrue(finding.sentence().endsWith(" lighter and lighter to swing by 0.0007 kg·m²."), finding.sentence());
        assertEquals(Outcome.UNUSUAL, finding.outcome());
        assertEquals(List.of(), finding.flips());
    }

    @Test
    void inLedgerAndDrawer() {
        Inquiry inquiry = shop.inquiry(brief);
        Found first = first(inquiry);
        List<String> lighter = Ledger.of(inquiry, first).stream()
                .filter(line -> line.part().equals("finish-thin"))
                .map(Ledger.Line::sentence)
                .toList();
        assertEquals(1, lighter.size());
        assertTrue(lighter.get(0).endsWith("g lighter; " + WHY), "what nobody notices goes unsaid: " + lighter.get(0));
        List<Drawer.Line> drawer = Drawer.of(inquiry, first, Station.FINISH).lines();
        assertEquals(2, drawer.size());
        assertTrue(drawer.get(0).sentence().endsWith("; " + WHY), drawer.get(0).sentence());
        assertEquals(Phrases.of("drawer.here"), drawer.get(1).sentence());
    }

    /** A brief that names it gets it; nothing is left to say. */
    @Test
    void askedFor() {
        Inquiry inquiry = shop.inquiry(Changed.with(brief, "insisted", List.of(new PartWish("finish-thin", true, 1))));
        assertNull(Unusual.instead(inquiry, shop.catalog().find("finish-thin")));
        assertNull(Unusual.instead(shop.inquiry(brief), shop.catalog().find("finish")));
        assertNull(Unusual.instead(shop.inquiry(brief), shop.catalog().find("cap")));
    }

    @Test
    void allThatIsLeftOut() {
        Fixtures other = Fixtures.legal();
        other.copy("thread", "thread-d").part("thread-d", "letter", "D");
        other.copy("adhesive", "adhesive-b");
        other.copy("blank", "blank-cast").part("blank-cast", "rodTypes", Set.of(withy.catalog.RodType.CASTING));
        Inquiry inquiry = FewBuilds.of(other).inquiry(other.theBrief());
        assertEquals("spinning rods are wrapped here with thread A", said(inquiry, other, "thread-d"));
        assertEquals("the glue of the house is Tarn adhesive", said(inquiry, other, "adhesive-b"));
        assertEquals("it is not sold for spinning rods", said(inquiry, other, "blank-cast"));
    }

    private static String said(Inquiry inquiry, Fixtures shop, String part) {
        return Unusual.instead(inquiry, shop.partOf(part));
    }
}
