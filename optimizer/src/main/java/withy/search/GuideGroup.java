package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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
import withy.catalog.PartKind;
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
    final GroupTips tips;
    final long[] massMg;
    final long[] costMilli;
    final int[] durabilityClass;
    /** Pieces there are of the guide; the largest number where more can be had in time. */
    final int[] pieces;
    /** Pieces there are of the guide of which there are fewest. */
    final int fewestPieces;
    /** Index of the guide's foot shape in {@link GuideTable#footShapes()}. */
    final int[] footShape;

    /** Index of the guide's ring. */
    final int[] ring;

    final int rings;
    private final Set<String> ids = new HashSet<>();
    private final Guide[] guideOfRing;
    private final boolean[][][] follows = new boolean[GuideTable.RUNNER + 1][][];
    /** By number, those from {@link GuideTable#RUNNER} on alike. */
    private final int[] @Nullable [] standing = new int[GuideTable.RUNNER + 1][];

    /** By how many guides there are, and number. */
    private final int[][] @Nullable [] worthIt = new int[Station.MOST_GUIDES + 1][GuideTable.RUNNER + 1][];

    private final long[] @Nullable [] styles = new long[Station.MOST_GUIDES + 1][];
    private final long[] @Nullable [] missed = new long[Station.MOST_GUIDES + 1][];

    GuideGroup(GuideTable table, Ground ground, List<Guide> members, List<TipTop> tipTops) {
        this.ground = ground;
        List<Guide> sorted = new ArrayList<>(members);
        sorted.sort(Comparator.comparingDouble(guide -> -guide.ringSize()));
        guides = sorted.toArray(Guide[]::new);
        massMg = new long[guides.length];
        costMilli = new long[guides.length];
        durabilityClass = new int[guides.length];
        pieces = new int[guides.length];
        footShape = new int[guides.length];
        ring = new int[guides.length];
        Map<RingTrait, Guide> guideRings = new LinkedHashMap<>();
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
        guideOfRing = guideRings.values().toArray(Guide[]::new);
        tips = new GroupTips(table, ground, tipTops, guideOfRing);
    }

    /** The place of a ring among those met so far, itself added where it is new. */
    static int index(List<RingTrait> order, RingTrait ring) {
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

    /** True where none of some parts is a guide of it. */
    boolean hasNone(Map<String, PartKind> parts) {
        for (String id : parts.keySet()) {
            if (has(id)) {
                return false;
            }
        }
        return true;
    }

    /** Guides that may stand at a number; asked of the rules once a question. */
    int[] standing(Setting any, int number) {
        int asked = Math.min(number, GuideTable.RUNNER);
        int[] known = standing[asked];
        if (known == null) {
            known = standingNow(any, Station.guide(asked));
            standing[asked] = known;
        }
        return known;
    }

    private int[] standingNow(Setting any, Station station) {
        Refusal refusal = new Refusal();
        int[] fitting = new int[guides.length];
        int n = 0;
        for (int g = 0; g < guides.length; g++) {
            ground.rules.onPart(any, new Placed(station, guides[g], any.guideMm(1), 0), refusal.reset());
            if (!refusal.refused()) {
                fitting[n++] = g;
            }
        }
        return Arrays.copyOf(fitting, n);
    }

    /**
     * Guides that may stand at a number, but for those another that may stand there beats wherever weight is a burden: of the same ring, as light, cheap and
     * strong, with no more thread, and as good to look at.
     */
    int[] worthIt(Setting any, int number) {
        int asked = Math.min(number, GuideTable.RUNNER);
        int[] known = worthIt[any.guideCount()][asked];
        if (known == null) {
            known = unbeaten(any, standing(any, number));
            worthIt[any.guideCount()][asked] = known;
        }
        return known;
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

    /** Style points of each guide in a train of so many. */
    long[] styles(Setting any) {
        long[] known = styles[any.guideCount()];
        if (known == null) {
            known = styles(any, Station.guide(1), guides);
            styles[any.guideCount()] = known;
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
        long[] known = missed[count];
        if (known == null) {
            known = missed(count, Station.guide(1), guides);
            missed[count] = known;
        }
        return known;
    }

    private long[] missed(int count, Station station, Part[] parts) {
        return Arrays.stream(parts)
                .mapToLong(part -> ground.wishes.part(station, part, count))
                .toArray();
    }
}
