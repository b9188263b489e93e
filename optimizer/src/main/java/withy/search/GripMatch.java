package withy.search;

import java.util.BitSet;
import java.util.HashMap;
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
    private final Map<String, Integer> index = new HashMap<>();
    private final Map<String, BitSet> beside = new HashMap<>();

    GripMatch(Rulebook rules, List<Grip> rearGrips, List<Grip> fullGrips) {
        this.rules = rules;
        this.split = rearGrips;
        this.full = fullGrips;
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

    /** Rear grips that go with a fore grip, or all where there is none. */
    synchronized BitSet rearsBeside(Setting any, @Nullable Grip fore, boolean splitHandle) {
        String key = splitHandle + "/" + (fore == null ? "" : fore.id());
        return beside.computeIfAbsent(key, k -> {
            List<Grip> rears = splitHandle ? split : full;
            BitSet may = new BitSet(rears.size());
            Refusal refusal = new Refusal();
            for (int i = 0; i < rears.size(); i++) {
                refusal.reset();
                if (fore != null) {
                    rules.onGrips(any, rears.get(i), fore, refusal);
                }
                may.set(i, !refusal.refused());
            }
            return may;
        });
    }
}
