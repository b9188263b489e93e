package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
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

/** Which butt cap goes with which tip-top on a blank: together they make the rod's length. */
final class Ends {
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
     * @param caps caps by id; the empty id stands for no cap
     * @param tipTops tip-tops by id
     */
    record Group(Set<String> caps, Set<String> tipTops) {
        boolean withoutCap() {
            return caps.contains("");
        }

        boolean has(ButtCap cap) {
            return caps.contains(cap.id());
        }

        boolean has(TipTop tipTop) {
            return tipTops.contains(tipTop.id());
        }
    }

    /** The groups; none where no tip-top goes on, or no pair makes a rod of the length wanted. */
    List<Group> groups() {
        if (!anyTipGoesOn()) {
            return List.of();
        }
        Map<Double, Set<String>> capsByLength = new LinkedHashMap<>();
        capsByLength.computeIfAbsent(0.0, any -> new TreeSet<>()).add("");
        Map<Double, ButtCap> oneOf = new HashMap<>();
        for (ButtCap cap : ground.caps) {
            capsByLength.computeIfAbsent(cap.addedMm(), any -> new TreeSet<>()).add(cap.id());
            oneOf.putIfAbsent(cap.addedMm(), cap);
        }
        Map<Set<String>, Set<String>> capsByTips = new LinkedHashMap<>();
        capsByLength.forEach((added, caps) -> {
            Set<String> tips = tipsFor(oneOf.get(added));
            if (!tips.isEmpty()) {
                capsByTips.computeIfAbsent(tips, any -> new TreeSet<>()).addAll(caps);
            }
        });
        List<Group> groups = new ArrayList<>();
        capsByTips.forEach((tips, caps) -> groups.add(new Group(caps, tips)));
        return groups;
    }

    private boolean anyTipGoesOn() {
        double end = setting.blank().lengthMm();
        for (TipTop tipTop : ground.tipTopsByLength) {
            ground.rules.onPart(setting, new Placed(Station.TIP_TOP, tipTop, end, tipTop.addedMm()), refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }

    private Set<String> tipsFor(@Nullable ButtCap cap) {
        Set<String> tips = new TreeSet<>();
        double last = Double.NaN;
        boolean fits = false;
        for (TipTop tipTop : ground.tipTopsByLength) {
            if (tipTop.addedMm() != last) {
                ground.rules.onEnds(setting, cap, tipTop, refusal.reset());
                fits = !refusal.refused();
                last = tipTop.addedMm();
            }
            if (fits) {
                tips.add(tipTop.id());
            }
        }
        return tips;
    }
}
