package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.catalog.PartFacts;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.shop.Piece;

/** What is foretold of a rod follows the pieces on the scale, as a rod measured with parts of that weight does. */
class PredictionTest {
    private static Piece piece(String part, int number, double weightG) {
        return new Piece(part, number, "shelf", null, weightG, 1L);
    }

    private static void follows(String part, int pieces, double heavierG) {
        Rod rod = Fixtures.legal().rod();
        PartFacts facts = Fixtures.legal().partOf(part).facts();
        double weightG = facts.massMg() / 1000.0 + heavierG;
        Rod heavier = Fixtures.legal().part(part, "facts.measuredG", weightG).rod();
        List<Piece> weighed = new ArrayList<>();
        for (int number = 1; number <= pieces; number++) {
            weighed.add(piece(part, number, weightG));
        }
        Prediction foretold = Prediction.read(Prediction.of(rod).json());
        assertEquals(heavier.figures().weightG(), foretold.weightOfG(weighed), 0.002, part);
        assertEquals(heavier.figures().balanceFromReelFootMm(), foretold.balanceOfMm(weighed), 0.02, part);
    }

    @Test
    void weightAndBalanceFollowTheScale() {
        follows("tip-top", 1, 0.1);
        follows("cap", 1, 2);
        follows("seat", 1, -1.5);
        follows("blank", 1, 3);
        // four of them, from the fourth ring to the last
        follows("guide-5", 4, 0.05);
    }

    @Test
    void whatWasNotWeighedIsAsReckoned() {
        Prediction foretold = Prediction.of(Fixtures.legal().rod());
        List<Piece> unweighed = List.of(new Piece("cap", 1, "shelf", null, null, 1L));
        assertEquals(foretold.balanceMm(), foretold.balanceOfMm(unweighed), 1e-9);
        assertEquals(foretold.weightG(), foretold.weightOfG(unweighed));
    }

    @Test
    void aPredictionKeptWithoutArmsStaysAsItWasTold() {
        String kept = "{\"schema\":1,\"weightG\":80,\"toleranceG\":2,\"balanceMm\":90,\"kinds\":{},"
                + "\"unitsG\":{\"cap\":4}}";
        Prediction old = Prediction.read(kept);
        List<Piece> weighed = List.of(piece("cap", 1, 5));
        assertEquals(90, old.balanceOfMm(weighed));
        assertEquals(81, old.weightOfG(weighed));
    }
}
