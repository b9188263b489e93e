package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import withy.catalog.Material;
import withy.explain.Phrases;
import withy.fixture.Fixtures;
import withy.rod.Rod;

/** What is minded where (handbook, section 8), and lead where weight in the butt is told. */
class CautionsTest {
    private static final Rod ROD = Fixtures.legal().brief("zoneFarMm", 1000.0).rod();

    private static List<String> said(String... keys) {
        return Stream.of(keys).map(key -> Phrases.of("caution." + key)).toList();
    }

    @Test
    void eachStandsWhereItBelongs() {
        assertEquals(said("carbon", "dust", "epoxy", "ratings", "rules"), Cautions.of(List.of(ROD)));
        assertEquals(said("carbon", "dust", "epoxy", "edges", "ratings", "rules"), Cautions.atBench(List.of(ROD)));
        assertEquals(said("carbon", "ratings", "rules"), Cautions.forCustomer(List.of(ROD)));
        assertEquals(said("carbon", "dust", "epoxy", "lead", "ratings", "rules"), Cautions.withWeight(List.of(ROD)));
        assertEquals(List.of(), Cautions.atBench(List.of()));
    }

    @Test
    void glassDoesNotConduct() {
        Rod glass = Fixtures.legal()
                .part("blank", "facts.material", Material.GLASS)
                .brief("zoneFarMm", 1000.0)
                .rod();
        assertFalse(Cautions.of(List.of(glass)).contains(Phrases.of("caution.carbon")));
        assertTrue(Cautions.of(List.of(glass, ROD)).contains(Phrases.of("caution.carbon")));
    }

    /** Who is told of grams at the butt thinks of lead first. */
    @Test
    void weightToldAtTheButtComesWithACaution() {
        Rod tipHeavy = Fixtures.legal()
                .brief("zoneNearMm", -200.0)
                .brief("zoneFarMm", -150.0)
                .rod();
        assertTrue(tipHeavy.figures().counterweightG() > 0);
        assertTrue(Cautions.of(List.of(tipHeavy)).contains(Phrases.of("caution.lead")));
        assertTrue(Cautions.atBench(List.of(ROD, tipHeavy)).contains(Phrases.of("caution.lead")));
        assertFalse(Cautions.forCustomer(List.of(tipHeavy)).contains(Phrases.of("caution.lead")));
    }
}
