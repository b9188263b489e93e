package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Guides and tip-tops of which one train can be made. Guides fall into rings (equal ring size, frame finish and ring material); which may follow
 * which is told by ring.
 */
final class GuideGroup {
    private final Ground ground;
    final Guide[] guides;
    final TipTop[] tipTops;
    final long[] massMg;
    final long[] costMilli;
    /** Of each tip-top. */
    final long[] tipCostMilli;

    /** Index of how deep the tip-top's tube is in {@link GuideTable#tubeDepths()}. */
    final int[] tipDepth;

    final int[] durabilityClass;
    /** Pieces there are of the guide; the largest number where more can be had in time. */
    final int[] pieces;
    /** Pieces there are of the guide of which there are fewest. */
    final int fewestPieces;
    /** Index of the guide's foot shape in {@link GuideTable#footShapes()}. */
    final int[] footShape;

    /** Index of the guide's ring, and of the tip-top's. */
    final int[] ring;

    final int[] tipRing;
    final int rings;
    final int tipRings;
    private final Set<String> ids = new HashSet<>();
    private final Guide[] guideOfRing;
    private final TipTop[] tipOfRing;
    private final boolean[][][] follows = new boolean[GuideTable.RUNNER + 1][][];
    private final Map<Integer, int[]> standing = new HashMap<>();
    private final Map<Integer, int[]> worthIt = new HashMap<>();
    private final Map<Integer, long[]> styles = new HashMap<>();
    private final Map<Integer, long[]> missed = new HashMap<>();
    private final Map<Integer, long[]> tipMissed = new HashMap<>();
    private final Map<String, int[]> tipsOn = new HashMap<>();
    private boolean @Nullable [][] tipFollows;
    private long @Nullable [] tipStyles;
    private @Nullable Ending ending;

    GuideGroup(GuideTable table, Ground ground, List<Guide> members, List<TipTop> tips) {
        this.ground = ground;
        List<Guide> sorted = new ArrayList<>(members);
        sorted.sort(Comparator.comparingDouble(guide -> -guide.ringSize()));
        guides = sorted.toArray(Guide[]::new);
        tipTops = tips.toArray(TipTop[]::new);
        massMg = new long[guides.length];
        costMilli = new long[guides.length];
        durabilityClass = new int[guides.length];
        pieces = new int[guides.length];
        footShape = new int[guides.length];
        ring = new int[guides.length];
        tipRing = new int[tipTops.length];
        tipCostMilli = new long[tipTops.length];
        tipDepth = new int[tipTops.length];
        Map<RingTrait, Guide> guideRings = new LinkedHashMap<>();
        Map<RingTrait, TipTop> tipTopRings = new LinkedHashMap<>();
        List<RingTrait> order = new ArrayList<>();
        for (int g = 0; g < guides.length; g++) {
            ids.add(guides[g].id());
            massMg[g] = guides[g].massMg();
            pieces[g] = table.pieces(guides[g]);
            footShape[g] = table.shapeOf(guides[g]);
            durabilityClass[g] = guides[g].facts().durabilityClass();
            costMilli[g] = ground.tariff.partMilli(guides[g], 1) + ground.tariff.workMilli(guides[g]);
            ring[g] = index(order, RingTrait.of(guides[g]));
            guideRings.putIfAbsent(RingTrait.of(guides[g]), guides[g]);
        }
        fewestPieces = Arrays.stream(pieces).min().orElse(Integer.MAX_VALUE);
        rings = order.size();
        order.clear();
        for (int t = 0; t < tipTops.length; t++) {
            tipRing[t] = index(order, RingTrait.of(tipTops[t]));
            tipCostMilli[t] = ground.tariff.partMilli(tipTops[t], 1) + ground.tariff.workMilli(tipTops[t]);
            tipDepth[t] = table.depthOf(tipTops[t]);
            tipTopRings.putIfAbsent(RingTrait.of(tipTops[t]), tipTops[t]);
        }
        tipRings = order.size();
        guideOfRing = guideRings.values().toArray(Guide[]::new);
        tipOfRing = tipTopRings.values().toArray(TipTop[]::new);
    }

    private static int index(List<RingTrait> order, RingTrait ring) {
        int known = order.indexOf(ring);
        if (known < 0) {
            order.add(ring);
            return order.size() - 1;
        }
        return known;
    }

    boolean has(String guideId) {
        return ids.contains(guideId);
    }

    /** Guides that may stand at a number; asked of the rules once a question. */
    int[] standing(Setting any, int number) {
        int asked = Math.min(number, GuideTable.RUNNER);
        return standing.computeIfAbsent(asked, key -> {
            Refusal refusal = new Refusal();
            int[] fitting = new int[guides.length];
            int n = 0;
            for (int g = 0; g < guides.length; g++) {
                Station station = Station.guide(asked);
                ground.rules.onPart(any, new Placed(station, guides[g], any.guideMm(1), 0), refusal.reset());
                if (!refusal.refused()) {
                    fitting[n++] = g;
                }
            }
            return Arrays.copyOf(fitting, n);
        });
    }

    /**
     * Guides that may stand at a number, but for those another that may stand there beats wherever weight is a burden: of the same ring, as light, cheap and
     * strong, with no more thread, and as good to look at.
     */
    int[] worthIt(Setting any, int number) {
        int asked = Math.min(number, GuideTable.RUNNER);
        return worthIt.computeIfAbsent(any.guideCount() * 100 + asked, key -> unbeaten(any, standing(any, number)));
    }

    /** Guides none of the others of these beats so. */
    int[] unbeaten(Setting any, int[] of) {
        long[] style = styles(any);
        long[] wished = missed(any.guideCount());
        int[] unbeaten = new int[of.length];
        int n = 0;
        for (int one : of) {
            boolean stands = true;
            for (int i = 0; i < of.length && stands; i++) {
                stands = ring[of[i]] != ring[one] || !beats(of[i], one, style, wished);
            }
            if (stands) {
                unbeaten[n++] = one;
            }
        }
        return Arrays.copyOf(unbeaten, n);
    }

    private boolean beats(int one, int other, long[] style, long[] wished) {
        boolean asGood = asGood(one, other, style, wished);
        return one != other && asGood && (one < other || !asGood(other, one, style, wished));
    }

    /** Of guides of one ring. */
    private boolean asGood(int one, int other, long[] style, long[] wished) {
        return massMg[one] <= massMg[other]
                && costMilli[one] <= costMilli[other]
                && durabilityClass[one] >= durabilityClass[other]
                && guides[one].feet() <= guides[other].feet()
                && guides[one].footLengthMm() <= guides[other].footLengthMm()
                && style[one] >= style[other]
                && wished[one] <= wished[other];
    }

    /** Whether a guide with ring j may stand at number + 1 where one with ring i stands at number; asked of rings that may stand there only. */
    boolean[][] follows(Setting any, int number) {
        int asked = Math.min(number, GuideTable.RUNNER);
        boolean[][] may = follows[asked];
        if (may == null) {
            Refusal refusal = new Refusal();
            may = new boolean[rings][rings];
            int[] here = ringsOf(standing(any, number));
            int[] next = ringsOf(standing(any, number + 1));
            for (int i : here) {
                for (int j : next) {
                    ground.rules.onGuides(any, guideOfRing[i], asked, guideOfRing[j], refusal.reset());
                    may[i][j] = !refusal.refused();
                }
            }
            EqualRows.share(may);
            follows[asked] = may;
        }
        return may;
    }

    private int[] ringsOf(int[] of) {
        return Arrays.stream(of).map(g -> ring[g]).distinct().toArray();
    }

    /** Whether a tip-top with ring j may stand ahead of a guide with ring i. */
    boolean[][] tipFollows(Setting any) {
        boolean[][] may = tipFollows;
        if (may == null) {
            Refusal refusal = new Refusal();
            may = new boolean[rings][tipRings];
            for (int i = 0; i < rings; i++) {
                for (int j = 0; j < tipRings; j++) {
                    ground.rules.onTip(any, guideOfRing[i], tipOfRing[j], refusal.reset());
                    may[i][j] = !refusal.refused();
                }
            }
            EqualRows.share(may);
            tipFollows = may;
        }
        return may;
    }

    /** Tip-tops that fit a blank. */
    int[] tipsOn(Setting setting) {
        return tipsOn.computeIfAbsent(setting.blank().id(), id -> {
            Refusal refusal = new Refusal();
            double end = setting.blank().lengthMm();
            int[] fitting = new int[tipTops.length];
            int n = 0;
            for (int t = 0; t < tipTops.length; t++) {
                Placed placed = new Placed(Station.TIP_TOP, tipTops[t], end, tipTops[t].addedMm());
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
            int[] tips = Arrays.stream(tipsOn(setting))
                    .filter(t -> stations.allows(Station.TIP_TOP, tipTops[t]))
                    .filter(t -> ends.stream().anyMatch(one -> one.has(tipTops[t])))
                    .toArray();
            known = new Ending(setting.blank(), stations, ends, tips);
            ending = known;
        }
        return known.tips;
    }

    private record Ending(Blank blank, Stations stations, List<Ends.Group> ends, int[] tips) {}

    /** Style points of each guide in a train of so many. */
    long[] styles(Setting any) {
        return styles.computeIfAbsent(any.guideCount(), count -> styles(any, Station.guide(1), guides));
    }

    /** Style points of each tip-top, the same whatever the number of guides. */
    long[] tipStyles(Setting any) {
        long[] known = tipStyles;
        if (known == null) {
            known = styles(any, Station.TIP_TOP, tipTops);
            tipStyles = known;
        }
        return known;
    }

    private long[] styles(Setting any, Station station, Part[] parts) {
        Blank blank = any.blank();
        HandleForm form = any.layout().form();
        return Arrays.stream(parts)
                .mapToLong(part -> ground.style.part(blank, form, station, part, any.guideCount()))
                .toArray();
    }

    /** Missed wishes of each guide in a train of so many. */
    long[] missed(int count) {
        return missed.computeIfAbsent(count, any -> missed(count, Station.guide(1), guides));
    }

    /** Missed wishes of each tip-top. */
    long[] tipMissed(int count) {
        return tipMissed.computeIfAbsent(count, any -> missed(count, Station.TIP_TOP, tipTops));
    }

    private long[] missed(int count, Station station, Part[] parts) {
        return Arrays.stream(parts)
                .mapToLong(part -> ground.wishes.part(station, part, count))
                .toArray();
    }
}
