package withy.explain;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Sentences;
import withy.rules.Verdict;
import withy.units.QuantityText;

/**
 * A rule broken, as the judge has it.
 *
 * @param verdict rule, check, measured, limit, unit, parts
 * @param sentence the same in words
 */
public record Breach(Verdict verdict, String sentence) {

    static Breach of(Verdict verdict, Inquiry inquiry) {
        return new Breach(verdict, new Sentences(inquiry.catalog(), inquiry.units()).of(verdict));
    }

    /** Everything a rod breaks, in the order of the rules. */
    static List<Breach> all(Rod rod, QuantityText units) {
        Sentences sentences = new Sentences(rod.setting().catalog(), units);
        return Judge.broken(rod, Rulebook.standard()).stream()
                .map(verdict -> new Breach(verdict, sentences.of(verdict)))
                .toList();
    }

    /** The first thing a rod breaks; null where it breaks nothing. */
    static @Nullable Breach first(Rod rod, QuantityText units) {
        List<Verdict> broken = Judge.broken(rod, Rulebook.standard());
        return broken.isEmpty()
                ? null
                : new Breach(broken.get(0), new Sentences(rod.setting().catalog(), units).of(broken.get(0)));
    }
}
