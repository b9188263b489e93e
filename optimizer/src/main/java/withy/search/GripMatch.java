package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.rod.Setting;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** Which rear grips may stand beside which fore grip; asked of the rules once a fore grip. */
final class GripMatch {
    private final Rulebook rules;
    private final List<Grip> split;
    private final List<Grip> full;
    private final List<Grip> butts;
    private final Map<String, BitSet> buttsBeside = new HashMap<>();
    private final Map<String, Integer> index = new HashMap<>();
    /** By the candidates themselves: each is one object through a question. */
    private final Map<Grip, BitSet> besideSplit = new IdentityHashMap<>();

    private final Map<Grip, BitSet> besideFull = new IdentityHashMap<>();
    private final Map<BitSet, BitSet> sets = new HashMap<>();
    private final BitSet allSplit;
    private final BitSet allFull;

    GripMatch(Rulebook rules, List<Grip> rearGrips, List<Grip> fullGrips, List<Grip> buttGrips) {
        this.rules = rules;
        this.split = rearGrips;
        this.full = fullGrips;
        this.butts = buttGrips;
        for (int i = 0; i < buttGrips.size(); i++) {
            index.put(buttGrips.get(i).id(), i);
        }
        this.allSplit = all(rearGrips.size());
        this.allFull = all(fullGrips.size());
        for (int i = 0; i < rearGrips.size(); i++) {
            index.put(rearGrips.get(i).id(), i);
        }
        for (int i = 0; i < fullGrips.size(); i++) {
            index.put(fullGrips.get(i).id(), i);
        }
    }

    /** Index of a rear grip in the sets of {@link #rearsBeside}. */
    int index(Grip rear, boolean splitHandle) {
        Integer i = index.get(rear.id());
        if (i == null) {
            throw new IllegalStateException("not a candidate: " + rear.id() + (splitHandle ? " split" : " full"));
        }
        return i;
    }

    /** Rear grips that go with a fore grip, or all where there is none; equal sets are one object. */
    BitSet rearsBeside(Setting any, @Nullable Grip fore, boolean splitHandle) {
        if (fore == null) {
            return splitHandle ? allSplit : allFull;
        }
        return besideFore(any, fore, splitHandle);
    }

    private synchronized BitSet besideFore(Setting any, Grip fore, boolean splitHandle) {
        Map<Grip, BitSet> beside = splitHandle ? besideSplit : besideFull;
        BitSet known = beside.get(fore);
        if (known != null) {
            return known;
        }
        List<Grip> rears = splitHandle ? split : full;
        BitSet may = new BitSet(rears.size());
        Refusal refusal = new Refusal();
        for (int i = 0; i < rears.size(); i++) {
            rules.onGrips(any, rears.get(i), fore, refusal.reset());
            may.set(i, !refusal.refused());
        }
        BitSet one = sets.computeIfAbsent(may, set -> set);
        beside.put(fore, one);
        return one;
    }

    /** Index of a butt grip in the sets of {@link #buttsBeside}. */
    int buttIndex(Grip butt) {
        return index(butt, true);
    }

    /** Butt grips that go with a rear grip; equal sets are one object. */
    synchronized BitSet buttsBeside(Setting any, Grip rear) {
        BitSet known = buttsBeside.get(rear.id());
        if (known != null) {
            return known;
        }
        BitSet may = new BitSet(butts.size());
        Refusal refusal = new Refusal();
        for (int i = 0; i < butts.size(); i++) {
            rules.onGrips(any, butts.get(i), rear, refusal.reset());
            may.set(i, !refusal.refused());
        }
        BitSet one = sets.computeIfAbsent(may, set -> set);
        buttsBeside.put(rear.id(), one);
        return one;
    }

    private static BitSet all(int size) {
        BitSet set = new BitSet(size);
        set.set(0, size);
        return set;
    }
}
