package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Guide;
import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/** The tip-tops that may end the trains of one group of guides ({@link GuideGroup}). They fall into rings as guides do. */
final class GroupTips {
    private final Ground ground;
    final TipTop[] tops;
    /** Of each its price and work, thousandths of a minor unit. */
    final long[] costMilli;

    /** Of each the index of how deep its tube is in {@link GuideTable#tubeDepths()}. */
    final int[] depth;

    /** Of each the index of its ring. */
    final int[] ring;

    final int rings;
    private final TipTop[] tipOfRing;
    private final Guide[] guideOfRing;
    private final Map<String, int[]> on = new HashMap<>();
    private final long[] @Nullable [] missed = new long[Station.MOST_GUIDES + 1][];
    private boolean @Nullable [][] follows;
    private long @Nullable [] styles;
    private @Nullable Ending ending;

    /**
     * @param guideOfRing a guide of each ring of the group
     */
    GroupTips(GuideTable table, Ground ground, List<TipTop> tipTops, Guide[] guideOfRing) {
        this.ground = ground;
        this.guideOfRing = guideOfRing;
        this.tops = tipTops.toArray(TipTop[]::new);
        this.ring = new int[tops.length];
        this.costMilli = new long[tops.length];
        this.depth = new int[tops.length];
        Map<RingTrait, TipTop> ofRings = new LinkedHashMap<>();
        List<RingTrait> order = new ArrayList<>();
        for (int t = 0; t < tops.length; t++) {
            ring[t] = GuideGroup.index(order, RingTrait.of(tops[t]));
            costMilli[t] = ground.tariff.partMilli(tops[t], 1) + ground.tariff.workMilli(tops[t]);
            depth[t] = table.depthOf(tops[t]);
            ofRings.putIfAbsent(RingTrait.of(tops[t]), tops[t]);
        }
        this.rings = order.size();
        this.tipOfRing = ofRings.values().toArray(TipTop[]::new);
    }

    /** Whether a tip-top with ring j may stand ahead of a guide with ring i. */
    boolean[][] follows(Setting any) {
        boolean[][] may = follows;
        if (may == null) {
            Refusal refusal = new Refusal();
            may = new boolean[guideOfRing.length][rings];
            for (int i = 0; i < guideOfRing.length; i++) {
                for (int j = 0; j < rings; j++) {
                    ground.rules.onTip(any, guideOfRing[i], tipOfRing[j], refusal.reset());
                    may[i][j] = !refusal.refused();
                }
            }
            EqualRows.share(may);
            follows = may;
        }
        return may;
    }

    /** Tip-tops that fit a blank. */
    int[] on(Setting setting) {
        return on.computeIfAbsent(setting.blank().id(), id -> {
            Refusal refusal = new Refusal();
            double end = setting.blank().lengthMm();
            int[] fitting = new int[tops.length];
            int n = 0;
            for (int t = 0; t < tops.length; t++) {
                Placed placed = new Placed(Station.TIP_TOP, tops[t], end, tops[t].addedMm());
                ground.rules.onPart(setting, placed, refusal.reset());
                if (!refusal.refused()) {
                    fitting[n++] = t;
                }
            }
            return Arrays.copyOf(fitting, n);
        });
    }

    /** Those of them that make a rod of the length wanted with some cap and are not taken; what was asked last is kept. */
    int[] ending(Setting setting, Stations stations, List<Ends.Group> ends) {
        Ending known = ending;
        if (known == null || known.blank != setting.blank() || known.stations != stations || !known.ends.equals(ends)) {
            int[] tips = Arrays.stream(on(setting))
                    .filter(t -> stations.allows(Station.TIP_TOP, tops[t]))
                    .filter(t -> ends.stream().anyMatch(one -> one.has(tops[t])))
                    .toArray();
            known = new Ending(setting.blank(), stations, ends, tips);
            ending = known;
        }
        return known.tips;
    }

    private record Ending(Blank blank, Stations stations, List<Ends.Group> ends, int[] tips) {}

    /** Style points of each tip-top, the same whatever the number of guides. */
    long[] styles(Setting any) {
        long[] known = styles;
        if (known == null) {
            known = stylesNow(any);
            styles = known;
        }
        return known;
    }

    private long[] stylesNow(Setting any) {
        Blank blank = any.blank();
        HandleForm form = any.layout().form();
        return Arrays.stream(tops)
                .mapToLong(top -> ground.style.part(blank, form, Station.TIP_TOP, top, any.guideCount()))
                .toArray();
    }

    /** Missed wishes of each tip-top. */
    long[] missed(int count) {
        long[] known = missed[count];
        if (known == null) {
            known = missedNow(count);
            missed[count] = known;
        }
        return known;
    }

    private long[] missedNow(int count) {
        return Arrays.stream(tops)
                .mapToLong(top -> ground.wishes.part(Station.TIP_TOP, top, count))
                .toArray();
    }
}
