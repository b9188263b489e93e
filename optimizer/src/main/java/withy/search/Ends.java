package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/** Which butt cap goes with which tip-top on a blank: together they make the rod's length. Parts that add the same length go with the same parts. */
final class Ends {
    /** What no cap adds, mm. */
    private static final double NO_CAP_MM = 0;

    private final Ground ground;
    private final Setting setting;
    private final Refusal refusal = new Refusal();

    Ends(Ground ground, Setting setting) {
        this.ground = ground;
        this.setting = setting;
    }

    /**
     * Caps that go with the same tip-tops: within one group every cap goes with every tip-top.
     *
     * @param capsMm what its caps add to the rod's length, mm; no cap adds nothing
     * @param tipTopsMm what its tip-tops add, mm
     */
    record Group(Set<Double> capsMm, Set<Double> tipTopsMm) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Group that && capsMm.equals(that.capsMm) && tipTopsMm.equals(that.tipTopsMm);
        }

        @Override
        public int hashCode() {
            return 31 * capsMm.hashCode() + tipTopsMm.hashCode();
        }

        boolean withoutCap() {
            return capsMm.contains(NO_CAP_MM);
        }

        boolean has(ButtCap cap) {
            return capsMm.contains(cap.addedMm());
        }

        boolean has(TipTop tipTop) {
            return tipTopsMm.contains(tipTop.addedMm());
        }
    }

    /** The groups; none where no tip-top goes on, or no pair makes a rod of the length wanted. */
    List<Group> groups() {
        if (!anyTipGoesOn()) {
            return List.of();
        }
        Map<Set<Double>, Set<Double>> capsByTips = new LinkedHashMap<>();
        ground.oneCapOfLength.forEach((addedMm, cap) -> {
            Set<Double> tips = tipsFor(cap);
            if (!tips.isEmpty()) {
                capsByTips.computeIfAbsent(tips, any -> new TreeSet<>()).add(addedMm);
            }
        });
        List<Group> groups = new ArrayList<>();
        capsByTips.forEach((tips, caps) -> groups.add(new Group(caps, tips)));
        return groups;
    }

    private boolean anyTipGoesOn() {
        double end = setting.blank().lengthMm();
        for (TipTop tipTop : ground.tipTops) {
            ground.rules.onPart(setting, new Placed(Station.TIP_TOP, tipTop, end, tipTop.addedMm()), refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }

    private Set<Double> tipsFor(@Nullable ButtCap cap) {
        Set<Double> tips = new TreeSet<>();
        for (TipTop tipTop : ground.oneTipTopOfLength) {
            ground.rules.onEnds(setting, cap, tipTop, refusal.reset());
            if (!refusal.refused()) {
                tips.add(tipTop.addedMm());
            }
        }
        return tips;
    }

    /** One cap of each length that is added, null for none, by that length. */
    static Map<Double, @Nullable ButtCap> oneCapOfLength(List<ButtCap> caps) {
        Map<Double, @Nullable ButtCap> one = new LinkedHashMap<>();
        one.put(NO_CAP_MM, null);
        for (ButtCap cap : caps) {
            one.putIfAbsent(cap.addedMm(), cap);
        }
        return one;
    }

    /** One tip-top of each length that is added. */
    static List<TipTop> oneTipTopOfLength(List<TipTop> tipTops) {
        Map<Double, TipTop> one = new LinkedHashMap<>();
        tipTops.forEach(tipTop -> one.putIfAbsent(tipTop.addedMm(), tipTop));
        return List.copyOf(one.values());
    }
}
