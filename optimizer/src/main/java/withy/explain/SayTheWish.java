package withy.explain;

import java.util.Map;
import java.util.Set;
import withy.rules.Verdict;

/** Rules whose sentence says the wish it is about, so that it need not be said again. */
final class SayTheWish {
    /** Field of the brief, by rule and check. */
    private static final Map<String, String> FIELDS = Map.ofEntries(
            Map.entry("lure-range/usual", "lure.usual"),
            Map.entry("lure-range/heaviest", "lure.heaviest"),
            Map.entry("length/fewest-pieces", "pieces"),
            Map.entry("length/most-pieces", "pieces"),
            Map.entry("length/blank-longest", "lengthMm"),
            Map.entry("length/section-longest", "packedMaxMm"),
            Map.entry("length/finished-shortest", "lengthMm"),
            Map.entry("length/finished-longest", "lengthMm"),
            Map.entry("length/packed", "packedMaxMm"),
            Map.entry("durability/class", "durabilityClass"),
            Map.entry("ring-for-line/braid", "line.kind"),
            Map.entry("handle/reach-shortest", "reachMm"),
            Map.entry("handle/reach-longest", "reachMm"),
            Map.entry("handle/butt-grip-absent", "handle.form"),
            Map.entry("salt/corrosion-class", "water"),
            Map.entry("budget/price", "budgetMinor"),
            Map.entry("must/refused-part", "refused"));

    /** Rules and checks that are nothing but a wish. */
    private static final Set<String> WISHES = Set.of("reel-fit/hood-end", "handle/one-material");

    private SayTheWish() {}

    /** True where what is broken is nothing but a wish, so that no fact stands between. */
    static boolean isOne(Verdict broken) {
        return broken.rule().equals("must")
                || broken.check().endsWith("-wish")
                || WISHES.contains(broken.rule() + "/" + broken.check());
    }

    /** True where the sentence of a broken rule says what this wish asks. */
    static boolean of(Verdict broken, Conflict.Asked wish) {
        return wish.field().equals(FIELDS.get(broken.rule() + "/" + broken.check()));
    }
}
