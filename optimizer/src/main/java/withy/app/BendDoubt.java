package withy.app;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.explain.Phrases;
import withy.machine.BlankStiffness;
import withy.mechanics.OneThirdDrop;
import withy.rod.BlankShape;
import withy.units.QuantityText;

/** What is odd about a bend test, to be measured again before anything rests on it. */
public final class BendDoubt {
    /**
     * Two blanks of one model hardly differ by this factor, nor does a maker's test from the shop's; a slip of the decimal point is ten times.
     * ASSUMED.
     */
    private static final double MOST_TIMES_TESTED = 2;

    /** Where the list knows no test, stiffness follows from diameters and a usual modulus, which says far less. ASSUMED. */
    private static final double MOST_TIMES_FORETOLD = 5;

    private BendDoubt() {}

    /** One sentence where the test is many times off what the list leads to expect, else null. */
    public static @Nullable String of(Blank blank, BendTestAnswer answer, QuantityText units) {
        Double listed = blank.thirdTestG();
        Double right = listed == null ? foretoldG(blank) : listed;
        double most = listed == null ? MOST_TIMES_FORETOLD : MOST_TIMES_TESTED;
        double tested = answer.thirdTestG();
        if (right == null || tested <= right * most && tested >= right / most) {
            return null;
        }
        boolean stiffer = tested > right;
        double times = stiffer ? tested / right : right / tested;
        return Phrases.of(
                (listed == null ? "bendtest.doubtForetold" : "bendtest.doubt") + (stiffer ? ".stiffer" : ".softer"),
                units.mass(tested),
                String.format(Locale.ROOT, times < 10 ? "%.1f" : "%.0f", times),
                units.mass(right));
    }

    private static @Nullable Double foretoldG(Blank blank) {
        BlankShape shape = BlankShape.of(blank);
        OneThirdDrop.Outcome third = OneThirdDrop.of(
                BlankStiffness.of(shape).profile(), shape.profile().startMm(), shape.tube(), List.of());
        return third instanceof OneThirdDrop.Outcome.Found found ? found.weightG() : null;
    }
}
