package withy.app;

import java.util.Locale;
import withy.rod.Rod;
import withy.rules.Verdict;
import withy.units.QuantityText;

/** A verdict in words. */
final class Sentence {
    private Sentence() {}

    static String of(Verdict verdict, Rod rod, QuantityText units) {
        String numbers = Double.isNaN(verdict.measured())
                ? ""
                : String.format(
                        Locale.ROOT,
                        ": %.2f against %.2f %s",
                        verdict.measured(),
                        verdict.limit(),
                        verdict.unit().symbol());
        return verdict.rule() + ", " + verdict.check() + numbers;
    }
}
