package withy.explain;

import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import withy.rules.Rulebook;

/** The rules with some left out or looser: the same book each time, so that a question asked under it is known again. For one thread. */
final class Rulebooks {
    private final Map<String, Rulebook> without = new TreeMap<>();
    private final Map<Rulebook, Rulebook> anyHand = new IdentityHashMap<>();
    private final Map<Rulebook, Rulebook> anyReel = new IdentityHashMap<>();

    /** The standard rules without some, by their codes. */
    Rulebook without(Set<String> codes) {
        return without.computeIfAbsent(String.join(" ", new TreeSet<>(codes)), key -> {
            Rulebook book = Rulebook.standard();
            for (String code : codes) {
                book = book.without(code);
            }
            return book;
        });
    }

    /** Rules for whoever's hand. */
    Rulebook anyHand(Rulebook rules) {
        return anyHand.computeIfAbsent(rules, Rulebook::anyHand);
    }

    /** Rules for whatever reel. */
    Rulebook anyReel(Rulebook rules) {
        return anyReel.computeIfAbsent(rules, Rulebook::anyReel);
    }
}
