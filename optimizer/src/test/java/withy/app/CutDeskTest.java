package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import withy.app.CutSheet.Cut;

/** Lengths laid into pieces. */
class CutDeskTest {
    private static Cut cut(double mm) {
        return new Cut(1, "seatArbors", mm, 10, 12);
    }

    @Test
    void theSawTakesItsPart() {
        // 100 mm hold four lengths of 25 mm only for a saw without width
        List<Cut> four = List.of(cut(25), cut(25), cut(25), cut(25));
        assertEquals(1, CutDesk.laid(four, 100, 0).size());
        assertEquals(2, CutDesk.laid(four, 100, 0.1).size());
        assertEquals(0, CutDesk.offcut(four, 100, 0));
        // 3 × 25 and 3 cuts of 2 mm
        assertEquals(19, CutDesk.offcut(four.subList(0, 3), 100, 2), 1e-9);
        // the last length ends with the piece: two cuts part three lengths
        assertEquals(1, CutDesk.laid(four.subList(0, 3), 79, 2).size());
        assertEquals(2, CutDesk.laid(four.subList(0, 3), 78.9, 2).size());
        assertEquals(0, CutDesk.offcut(four.subList(0, 3), 79, 2));
    }

    @Test
    void everyLengthIsSawnOnceAndNothingIsLost() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double kerf = random.nextInt(4) / 2.0;
            double sold = 60 + random.nextInt(100);
            List<Cut> wanted = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(12); i++) {
                wanted.add(cut(5 + random.nextInt(55)));
            }
            List<List<Cut>> pieces = CutDesk.laid(wanted, sold, kerf);
            List<Cut> sawn = new ArrayList<>();
            pieces.forEach(sawn::addAll);
            Comparator<Cut> byLength = Comparator.comparingDouble(Cut::lengthMm);
            assertEquals(
                    wanted.stream().sorted(byLength).toList(),
                    sawn.stream().sorted(byLength).toList(),
                    "seed " + seed);
            for (List<Cut> piece : pieces) {
                double used = piece.stream().mapToDouble(Cut::lengthMm).sum();
                assertTrue(used + (piece.size() - 1) * kerf <= sold + 0.01, "seed " + seed);
                double offcut = CutDesk.offcut(piece, sold, kerf);
                assertTrue(offcut == 0 || Math.abs(used + piece.size() * kerf + offcut - sold) < 1e-9, "seed " + seed);
            }
            // no two pieces could be one
            for (int i = 1; i < pieces.size(); i++) {
                List<Cut> both = new ArrayList<>(pieces.get(i - 1));
                both.addAll(pieces.get(i));
                double used = both.stream().mapToDouble(Cut::lengthMm).sum();
                assertTrue(used + (both.size() - 1) * kerf > sold, "seed " + seed);
            }
        }
    }
}
